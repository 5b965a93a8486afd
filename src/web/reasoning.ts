// The trace as a foldable list, and which questions used a fact.
import type { Evidence, Finding, Outcome } from '../findings/finding.ts';
import { limitWords } from '../findings/limit-words.ts';
import type { Evaluation } from '../evaluation.ts';
import { spokenTime } from '../presenters/clock.ts';
import { isVerified } from '../presenters/answer.ts';
import { sentenceCase } from '../presenters/words.ts';
import { list, listed, make } from './dom.ts';
import { neededByWords, outcomeSigns, outcomeWords, sourceWords, spoken } from './words.ts';

export interface Reasoning {
  readonly element: HTMLElement;
  readonly show: (evaluation: Evaluation) => void;
  /** Where the questions that used a fact are listed: beside the chart. */
  readonly used: HTMLElement;
  /** Lists the questions that used one of these facts, and says how many they are. */
  readonly explain: (references: readonly string[], what: string) => string;
}

/**
 * An empty trace.
 *
 * Given    onEvidence   called with the reference of a piece of evidence a person chose
 */
export function createReasoning(onEvidence: (reference: string) => void): Reasoning {
  const used = make('div', { class: 'used-by' });
  const trace = make('div', { class: 'trace' });
  let shown: Evaluation | undefined;
  const open = (question: string): void => {
    const item = document.getElementById(itemId(question));
    if (!(item instanceof HTMLDetailsElement)) return;
    item.open = true;
    const group = item.closest('details.group');
    if (group instanceof HTMLDetailsElement) group.open = true;
    item.scrollIntoView({ block: 'nearest' });
    item.querySelector('summary')?.focus();
  };
  return {
    element: make(
      'section',
      { class: 'reasoning', 'aria-labelledby': 'reasoning-heading' },
      make('h2', { id: 'reasoning-heading' }, 'Reasoning'),
      trace,
    ),
    used,
    show: (evaluation) => {
      const opened = new Set([...trace.querySelectorAll('details[open]')].map(({ id }) => id));
      const isFirst = shown === undefined;
      shown = evaluation;
      used.replaceChildren();
      trace.replaceChildren(...groupsOf(evaluation).map((group) => groupItem(group, onEvidence, open)));
      if (isFirst) return;
      for (const details of trace.querySelectorAll('details')) details.open = opened.has(details.id);
    },
    explain: (references, what) => {
      const users = (shown?.assessment.findings ?? []).filter(({ evidence }) =>
        evidence.some(({ reference }) => references.includes(reference)),
      );
      const buttons = users.map((finding) =>
        make(
          'button',
          { type: 'button', class: 'link', onclick: () => open(finding.question) },
          `${verdict(finding)} ${spoken(finding.asks)} ${outcomeWords[finding.outcome]}`,
        ),
      );
      used.replaceChildren(
        make('h3', {}, `Used by: ${what}`),
        users.length === 0 ? make('p', {}, 'No question rests on it.') : list('ul', buttons),
      );
      return `Used by ${users.length} ${users.length === 1 ? 'question' : 'questions'}.`;
    },
  };
}

interface Group {
  readonly id: string;
  readonly heading: string;
  readonly isOpen: boolean;
  readonly findings: readonly Finding[];
}

/** Decisive ones first and open, the rest folded by outcome. */
function groupsOf({ assessment }: Evaluation): readonly Group[] {
  const { findings, classification } = assessment;
  const deciding = findings.filter(
    ({ question, outcome }) =>
      outcome === 'met' && classification.some((each) => question === `class:${each}`),
  );
  const behind = new Set(deciding.flatMap(({ restsOn }) => restsOn ?? []));
  const steps = findings.filter(({ question, outcome }) => outcome === 'met' && behind.has(question));
  const rest = findings.filter((each) => !deciding.includes(each) && !steps.includes(each));
  const of = (outcome: Outcome) => rest.filter((each) => each.outcome === outcome);
  return [
    { id: 'decides', heading: 'What decides', isOpen: true, findings: [...deciding, ...steps] },
    { id: 'open', heading: 'What cannot be told', isOpen: false, findings: of('cannot-tell') },
    { id: 'also', heading: 'What else holds', isOpen: false, findings: of('met') },
    { id: 'no', heading: 'What does not hold', isOpen: false, findings: of('not-met') },
    { id: 'none', heading: 'What is not about her now', isOpen: false, findings: of('not-applicable') },
  ].filter((group) => group.findings.length > 0);
}

function groupItem(
  { id, heading, isOpen, findings }: Group,
  onEvidence: (reference: string) => void,
  open: (question: string) => void,
): HTMLElement {
  return make(
    'details',
    { class: 'group', id: `group-${id}`, open: isOpen },
    make('summary', {}, `${heading} (${findings.length})`),
    ...findings.map((finding) => findingItem(finding, onEvidence, open)),
  );
}

const itemId = (question: string): string => `finding-${question.replaceAll(':', '-')}`;

const verdict = ({ outcome }: Finding): string => outcomeSigns[outcome];

function findingItem(
  finding: Finding,
  onEvidence: (reference: string) => void,
  open: (question: string) => void,
): HTMLElement {
  const { question, asks, outcome, because, evidence, thresholds, source, restsOn, missing } = finding;
  return make(
    'details',
    { class: `finding ${outcome}`, id: itemId(question) },
    make(
      'summary',
      {},
      make('span', { class: 'sign', 'aria-hidden': 'true' }, verdict(finding)),
      ` ${spoken(asks)} `,
      make('strong', {}, outcomeWords[outcome]),
    ),
    make('p', {}, spoken(because)),
    ...listed(
      'Evidence',
      evidence.map((each) => evidenceButton(each, onEvidence)),
    ),
    ...listed(
      'Limits',
      thresholds.map(
        (each) =>
          `${each.id.replaceAll('-', ' ')}: ${limitWords(each)}${isVerified(each.citation.known) === false ? ' (not verified)' : ''}. ${sourceWords(each.citation)}`,
      ),
    ),
    ...(missing === undefined
      ? []
      : [
          make(
            'p',
            { class: 'missing' },
            `Missing: ${missing.what}, ${neededByWords[missing.by]}. ${missing.how}`,
          ),
        ]),
    ...listed(
      'Rests on',
      (restsOn ?? []).map((each) =>
        make(
          'button',
          { type: 'button', class: 'link', onclick: () => open(each) },
          each.replace(/^class:/, '').replaceAll('-', ' '),
        ),
      ),
    ),
    make('p', { class: 'source' }, `Source: ${sourceWords(source)}`),
  );
}

function evidenceButton(
  { reference, what, at, asSent, asCompared, remark }: Evidence,
  onEvidence: (reference: string) => void,
) {
  const compared = asCompared === undefined || asCompared === asSent ? '' : `, compared as ${asCompared}`;
  const words = `${sentenceCase(what)} ${asSent}${compared}${at === undefined ? '' : `, ${spokenTime(at)}`}${remark === undefined ? '' : ` (${remark})`}`;
  return make(
    'button',
    { type: 'button', class: 'link', onclick: () => onEvidence(reference) },
    spoken(words),
  );
}

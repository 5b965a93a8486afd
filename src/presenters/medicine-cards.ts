// Cards for the moment of ordering: what the rules say about the medicines on the order, and about no others.
import type { Evaluation } from '../evaluation.ts';
import type { MedicineNotice } from '../findings/finding.ts';
import { fill, translated } from '../messages/say.ts';
import { medicineLines } from './care-lines.ts';
import { toTelling, type CardContext, type Telling } from './card-context.ts';
import {
  cardExtension,
  cardSource,
  cardUuid,
  closingLines,
  gapLines,
  newestLines,
  section,
} from './card-parts.ts';
import type { Card, CardsResponse } from './card-types.ts';
import { escapeMarkdown, fitSummary } from './markdown.ts';
import { spokenValue } from './newest-data.ts';
import { offeredReasons } from './override-reasons.ts';
import { rankedCards } from './rank-cards.ts';
import { ageWords, sentenceCase } from './words.ts';

const mostCards = 3;

const rank: Readonly<Record<MedicineNotice['severity'], number>> = { avoid: 0, caution: 1, note: 2 };

/**
 * The cards about the medicines that a hook proposes.
 *
 * Given    evaluation   the answer, the proposed orders being part of what was judged
 *          context      `proposed`: the orders spoken about; absent: none
 * Returns  one card for each medicine with something to say, at most three, the rest named in the third; empty when
 *          the rules say nothing about these orders
 * Throws   never
 * Notes    1. A medicine that is in use already is the business of the main service, not of the one who orders another.
 *          2. To avoid is a warning; nothing here is critical, which is kept for what cannot wait.
 */
export function toMedicineCards(evaluation: Evaluation, context: CardContext = {}): CardsResponse {
  if (evaluation.timeline.woman.hasDied === true) return { cards: [] };
  const telling = toTelling(evaluation, context);
  const groups = groupsOf(aboutProposed(telling));
  const kept = groups.slice(0, mostCards - 1);
  const rest = groups.slice(mostCards - 1).flat();
  return rankedCards([...kept, ...(rest.length === 0 ? [] : [rest])].map((each) => cardOf(telling, each)));
}

function aboutProposed({ evaluation, context }: Telling): readonly MedicineNotice[] {
  const proposed = new Set((context.proposed ?? []).flatMap(({ references }) => references));
  return evaluation.assessment.medicines
    .filter(({ evidence }) => evidence.some(({ reference }) => proposed.has(reference)))
    .toSorted((a, b) => rank[a.severity] - rank[b.severity]);
}

/** One group for each medicine, the gravest first. */
function groupsOf(notices: readonly MedicineNotice[]): readonly (readonly MedicineNotice[])[] {
  const groups = new Map<string, readonly MedicineNotice[]>();
  for (const notice of notices) groups.set(notice.medicine, [...(groups.get(notice.medicine) ?? []), notice]);
  return [...groups.values()];
}

function cardOf(telling: Telling, notices: readonly MedicineNotice[]): Card | undefined {
  const [first] = notices;
  if (first === undefined) return undefined;
  const { evaluation, messages } = telling;
  const said = { ...evaluation, assessment: { ...evaluation.assessment, medicines: notices } };
  const rules = notices.map(({ rule }) => `medicine:${rule}`);
  const evidence = notices.flatMap((notice) => notice.evidence.map(({ reference }) => reference));
  return {
    uuid: cardUuid(telling, rules[0] ?? 'other', [rules, evidence]),
    summary: summaryOf(telling, first, notices),
    detail: [
      ...section(telling, 'orders', medicineLines({ evaluation: said, messages }).map(escapeMarkdown)),
      ...section(telling, 'why', whyLines(telling, notices)),
      ...section(telling, 'newest', newestLines(telling)),
      ...section(telling, 'not-seen', gapLines(telling)),
      ...closingLines(telling),
    ].join('\n'),
    indicator: first.severity === 'avoid' ? 'warning' : 'info',
    source: cardSource(telling, 'medicine-safety'),
    overrideReasons: offeredReasons(messages, 'medicine'),
    extension: cardExtension(telling, rules),
  };
}

function summaryOf({ messages }: Telling, first: MedicineNotice, notices: readonly MedicineNotice[]): string {
  const [sentence = '', ...more] = spokenValue(translated(messages, first.sentence)).split(/(?<=[.]) /);
  const names = [...new Set(notices.map(({ medicine }) => medicine))].slice(1).join(', ');
  return fitSummary([
    fill(messages.phrases.medicine, { medicine: sentenceCase(first.medicine), sentence }),
    ...more,
    names === '' ? '' : fill(messages.phrases['other-orders'], { names }),
  ]);
}

/** What it rests on: the time of pregnancy, the facts, and the publication. */
function whyLines({ evaluation, messages }: Telling, notices: readonly MedicineNotice[]): readonly string[] {
  const age = fill(messages.phrases['gestational-age'], {
    age: ageWords(evaluation.gestationalAge, messages),
  });
  const facts = notices.flatMap(({ evidence }) =>
    evidence.map(({ what, asSent }) => (asSent === '' ? what : `${what}: ${asSent}`)),
  );
  const sources = notices.map(({ source }) => [source.publication, source.section, source.year].join(', '));
  return [...new Set([age, ...facts, ...sources])].map((line) => escapeMarkdown(spokenValue(line)));
}

// The sections of the assessment card, in the order in which each role reads them.
import type { Threshold } from '../guidelines/guideline.ts';
import type { Missing } from '../findings/finding.ts';
import { limitWords } from '../findings/limit-words.ts';
import { fill, translated } from '../messages/say.ts';
import { isVerified } from './answer.ts';
import { medicineLines, preventionLines, qualityLines, riskLines, treatmentLines } from './care-lines.ts';
import { gapLines, indicatorOf, missingLine, newestLines, section } from './card-parts.ts';
import type { Role, Telling } from './card-context.ts';
import { classFindings } from './class-findings.ts';
import { differsLine } from './comparison.ts';
import { escapeMarkdown } from './markdown.ts';
import { reasonsOf, stepsOf } from './reasons.ts';
import { toSuggestions } from './suggestions.ts';
import { ageWords } from './words.ts';

const sections = {
  'do-now': (telling) =>
    section(telling, 'do-now', stepsOf(telling.evaluation, telling.messages).map(escapeMarkdown), true),
  later: (telling) =>
    section(telling, 'later', stepsOf(telling.evaluation, telling.messages, 'later').map(escapeMarkdown)),
  tell: (telling) =>
    section(telling, 'tell', stepsOf(telling.evaluation, telling.messages, 'tell').map(escapeMarkdown)),
  newest: (telling) => section(telling, 'newest', [...newestLines(telling), ageLine(telling)]),
  trend: (telling) => section(telling, 'trend', telling.trend),
  why: (telling) => section(telling, 'why', [...whyLines(telling), ...otherClasses(telling)]),
  limits: (telling) => section(telling, 'limits', limitLines(telling)),
  change: (telling) =>
    section(telling, 'change', changeLines(telling, telling.evaluation.assessment.missing)),
  medicines: (telling) => section(telling, 'medicines', medicineLines(telling).map(escapeMarkdown)),
  treatment: (telling) => section(telling, 'treatment', treatmentLines(telling).map(escapeMarkdown)),
  prevention: (telling) => section(telling, 'prevention', preventionLines(telling).map(escapeMarkdown)),
  quality: (telling) => section(telling, 'quality', qualityLines(telling).map(escapeMarkdown)),
  risk: (telling) => section(telling, 'risk', riskLines(telling).map(escapeMarkdown)),
  held: (telling) => section(telling, 'held', heldLines(telling)),
  open: (telling) => section(telling, 'open', openLines(telling)),
  'not-seen': (telling) => section(telling, 'not-seen', gapLines(telling)),
  differs: (telling) => section(telling, 'differs', differsLines(telling)),
} as const satisfies Readonly<Record<string, (telling: Prepared) => readonly string[]>>;

/** A telling with its trend, which the missing card shows too. */
type Prepared = Telling & { readonly trend: readonly string[] };
type Section = keyof typeof sections;

/** A nurse-midwife acts first and reads why after; a physician weighs the figures first. */
const order: Readonly<Record<Role, readonly Section[]>> = {
  'nurse-midwife': [
    'do-now',
    'newest',
    'trend',
    'why',
    'change',
    'medicines',
    'treatment',
    'tell',
    'later',
    'prevention',
    'quality',
    'held',
    'open',
    'not-seen',
    'risk',
    'differs',
  ],
  physician: [
    'newest',
    'trend',
    'why',
    'limits',
    'do-now',
    'treatment',
    'medicines',
    'later',
    'prevention',
    'change',
    'differs',
    'quality',
    'held',
    'open',
    'not-seen',
    'tell',
    'risk',
  ],
};

/**
 * The detail of the assessment card, without its closing lines.
 *
 * Notes    1. Both roles read the same facts and steps; the physician also the limits, and in another order.
 */
export function assessmentSections(telling: Prepared): readonly string[] {
  return order[telling.role].flatMap((name) => sections[name](telling));
}

function ageLine({ evaluation, messages }: Telling): string {
  const age = ageWords(evaluation.gestationalAge, messages);
  return escapeMarkdown(fill(messages.phrases['gestational-age'], { age }));
}

function whyLines({ evaluation, messages }: Telling): readonly string[] {
  return reasonsOf(evaluation, messages).map(escapeMarkdown);
}

function otherClasses({ evaluation, messages }: Telling): readonly string[] {
  return evaluation.assessment.classification
    .slice(1)
    .map((each) => escapeMarkdown(fill(messages.phrases.also, { name: messages.classWords[each] })));
}

/** The limits of the questions that gave the classes and the urgency. */
function limitLines({ evaluation, messages }: Telling): readonly string[] {
  const behind = classFindings(evaluation).flatMap((finding) => finding.restsOn ?? []);
  const met = evaluation.assessment.findings.filter(
    ({ outcome, question }) => outcome === 'met' && behind.includes(question),
  );
  const byId = new Map(met.flatMap(({ thresholds }) => thresholds.map((each) => [each.id, each] as const)));
  return [...byId.values()].map((each) => escapeMarkdown(limitLine(each, messages.phrases['not-verified'])));
}

function limitLine(threshold: Threshold, notVerified: string): string {
  const text = `${threshold.id} ${limitWords(threshold)}`;
  return isVerified(threshold.citation.known) === false ? fill(notVerified, { text }) : text;
}

/** What is missing, each with the classes it could make of this. */
export function changeLines({ messages }: Telling, missing: readonly Missing[]): readonly string[] {
  const classes: Readonly<Record<string, string>> = messages.classWords;
  return missing
    .filter(({ couldChange }) => couldChange.length > 0)
    .map(({ what, couldChange }) => {
      const names = couldChange.map((each) => classes[each] ?? each).join(', ');
      return escapeMarkdown(
        fill(messages.phrases['could-change'], { what: translated(messages, what), names }),
      );
    });
}

function heldLines({ evaluation, messages }: Telling): readonly string[] {
  const { heldConditions, heldReferral } = toSuggestions(evaluation);
  const { phrases } = messages;
  const conditions = heldConditions.map((reference) => fill(phrases['held-condition'], { reference }));
  const referral =
    heldReferral === undefined ? [] : [fill(phrases['held-referral'], { reference: heldReferral })];
  return [...conditions, ...referral].map(escapeMarkdown);
}

/** Open questions that can wait; those that cannot have a card of their own. */
function openLines(telling: Telling): readonly string[] {
  return telling.evaluation.assessment.missing
    .filter((missing) => indicatorOf(missing.by) === 'info')
    .map((missing) => missingLine(telling, missing));
}

function differsLines({ evaluation }: Telling): readonly string[] {
  const line = differsLine(evaluation.differs);
  return line === undefined ? [] : [escapeMarkdown(line)];
}

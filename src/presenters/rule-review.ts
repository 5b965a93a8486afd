// Which rules a clinician has reviewed, and whether the data changed since. Wording only.
import type { Guideline, Need } from '../guidelines/guideline.ts';
import type { Review } from '../guidelines/reviews.ts';
import { markdownTable } from './markdown-table.ts';
import { questionsUnder } from './rule-sources.ts';

export interface ReviewInput {
  /** The default guideline first. */
  readonly guidelines: readonly Guideline[];
  readonly reviews: readonly Review[];
  readonly fingerprint: (data: unknown) => string;
}

interface Reviewed {
  readonly id: string;
  readonly when?: Need;
}

interface Kind {
  /** Before the id in the name of a rule: `urgency:seizure`. */
  readonly name: string;
  readonly words: string;
  readonly rulesOf: (guideline: Guideline) => readonly Reviewed[];
}

const kinds: readonly Kind[] = [
  { name: 'class', words: 'classes', rulesOf: (each) => each.classRules },
  { name: 'urgency', words: 'urgency', rulesOf: (each) => each.urgencyRules },
  { name: 'referral', words: 'where to refer', rulesOf: referrals },
  { name: 'step', words: 'steps', rulesOf: (each) => each.actionRules },
  { name: 'medicine', words: 'medicines', rulesOf: (each) => each.medicineRules ?? [] },
  { name: 'treatment', words: 'treatment options', rulesOf: (each) => each.treatmentRules ?? [] },
  { name: 'prevention', words: 'prevention', rulesOf: (each) => each.preventionRules ?? [] },
  { name: 'quality', words: 'doubts about a measurement', rulesOf: (each) => each.qualityRules ?? [] },
];

function referrals({ referralRules }: Guideline): readonly Reviewed[] {
  return referralRules.map((rule) => ({ ...rule, id: rule.level }));
}

/** The name under which a rule is reviewed: that of a class has nothing before it. */
export const reviewName = (kind: string, id: string): string => (kind === 'class' ? id : `${kind}:${id}`);

/** "not reviewed (fingerprint 0123456789ab)", by the key of a rule: `class:pre-eclampsia`. */
export function reviewWords(key: string, input: ReviewInput): string {
  const [kind, id] = [key.slice(0, key.indexOf(':')), key.slice(key.indexOf(':') + 1)];
  const found = kinds.find(({ name }) => name === kind);
  if (found === undefined) return 'not reviewed';
  const mark = markOf(found, id, input);
  const review = input.reviews.filter((each) => each.rule === reviewName(kind, id)).at(-1);
  if (review === undefined) return `not reviewed (fingerprint ${mark})`;
  const by = `${review.role}, ${review.date}`;
  return review.fingerprint.startsWith(mark) || mark.startsWith(review.fingerprint)
    ? `reviewed by ${by} (fingerprint ${mark})`
    : `changed since the review by ${by} (fingerprint was ${review.fingerprint.slice(0, 12)}, is ${mark})`;
}

/** Over the rule and its questions in every guideline: touching any number of it shows. */
function markOf({ rulesOf }: Kind, id: string, { guidelines, fingerprint }: ReviewInput): string {
  const data = guidelines.map((guideline) => {
    const rule = rulesOf(guideline).find((each) => each.id === id);
    if (rule === undefined) return [];
    return rule.when === undefined ? [rule] : [rule, questionsUnder(rule.when, guideline)];
  });
  return fingerprint(data).slice(0, 12);
}

/** Every rule with its state, by kind. */
export function reviewLines(input: ReviewInput): readonly string[] {
  const rows = kinds.flatMap(({ name, words, rulesOf }) => {
    const ids = [...new Set(input.guidelines.flatMap((each) => rulesOf(each).map(({ id }) => id)))];
    return ids.map((id) => [words, `\`${reviewName(name, id)}\``, reviewWords(`${name}:${id}`, input)]);
  });
  const reviewed = rows.filter(([, , state = '']) => state.startsWith('reviewed')).length;
  return [
    `${reviewed} of ${rows.length} rules are reviewed as they stand. A review names the fingerprint that was read; when a number, a condition or a sentence of the rule changes in any guideline, the fingerprint changes and the review no longer counts.`,
    '',
    ...markdownTable(['kind', 'rule', 'state'], rows),
  ];
}

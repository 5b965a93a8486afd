// Medicines in use or ordered that are to be avoided or used with care. Runs the rules; nothing clinical inside.
import type { Evidence, MedicineNotice, Outcome } from '../findings/finding.ts';
import type { Guideline, MedicineId, MedicineRule, Threshold } from '../guidelines/guideline.ts';
import type { Medicine } from '../timeline/timeline.ts';
import { allergiesOnRecord, conditionsOnRecord, markedAgainst } from './against.ts';
import { ofMedicine } from './checks/pressure-drugs.ts';
import { idWords } from '../id-words.ts';
import { combine, lookUp } from './combine.ts';
import { milliseconds } from './compare.ts';
import { isGivenWithin, isNotOver } from './doses.ts';
import { uniqueEvidence } from './unique-evidence.ts';
import type { View } from './view.ts';

export interface JudgedMedicine {
  readonly outcome: Outcome;
  /** The medicines the rule speaks of; with what else it rests on, as evidence. */
  readonly medicines: readonly Medicine[];
  readonly evidence: readonly Evidence[];
}

/**
 * What is to be said about medicines.
 *
 * Given    view       facts of one woman
 *          guideline  its medicine rules
 *          outcomes   of questions, classes, urgency and referral rules
 * Returns  one notice for each rule that is met, in the order of the rules; a rule that cannot tell gives a note where
 *          the data has a sentence for it
 * Throws   when the data names an unknown question
 * Notes    1. Medicines in use, medicines only ordered and doses given lately count, unless the rule says otherwise.
 *          2. A medicine that has stopped says nothing.
 * Source   the rules come from the guideline data
 */
export function judgeMedicines(
  view: View,
  guideline: Guideline,
  outcomes: ReadonlyMap<string, Outcome>,
): readonly MedicineNotice[] {
  return (guideline.medicineRules ?? []).flatMap((rule) => {
    const judged = judgeMedicine(view, rule, outcomes);
    if (judged.outcome === 'met')
      return [marked(view, guideline, asNotice(rule, judged, rule.severity, rule.sentence))];
    if (judged.outcome === 'cannot-tell' && rule.whenCannotTell !== undefined)
      return [asNotice(rule, judged, 'note', rule.whenCannotTell)];
    return [];
  });
}

/** What is named instead, with what the record holds against it. */
const marked = (view: View, guideline: Guideline, notice: MedicineNotice): MedicineNotice =>
  notice.alternative === undefined
    ? notice
    : { ...notice, alternative: markedAgainst(view, guideline, notice.alternative) };

/** One rule: not-applicable when the medicine is not there at all. */
export function judgeMedicine(
  view: View,
  rule: MedicineRule,
  outcomes: ReadonlyMap<string, Outcome>,
): JudgedMedicine {
  const medicines = medicinesFor(view, rule);
  if (medicines.length === 0) return { outcome: 'not-applicable', medicines: [], evidence: [] };
  const beside = [
    besideConditions(view, rule),
    besideMedicines(view, rule, medicines),
    rule.ofAllergy && allergiesOnRecord(view, agentsIn(medicines)),
  ];
  const evidence = uniqueEvidence([...medicines.map(ofMedicine), ...beside.flatMap((item) => item ?? [])]);
  if (beside.some((item) => item !== undefined && item.length === 0))
    return { outcome: 'not-met', medicines, evidence };
  return { outcome: combine(rule.when, lookUp(outcomes)), medicines, evidence };
}

const agentsIn = (medicines: readonly Medicine[]): readonly MedicineId[] =>
  medicines.map(({ medicine }) => medicine);

function medicinesFor(view: View, rule: MedicineRule): readonly Medicine[] {
  const statuses = rule.statuses ?? ['active', 'ordered'];
  const all = view.timeline.medicines;
  const { longerThan, except, givenWithin } = rule;
  return all
    .filter((item) => rule.medicines.includes(item.medicine))
    .filter(
      (item) =>
        statuses.some((status) => isInStatus(view, item, status, undefined)) ||
        (item.status === 'given' && isInStatus(view, item, 'given', givenWithin)),
    )
    .filter((item) => !all.some((other) => isSameProduct(item, other) && except?.includes(other.medicine)))
    .filter((item) => rule.ofAllergy !== true || allergiesOnRecord(view, [item.medicine]).length > 0)
    .filter((item) => longerThan === undefined || isLongerThan(view, item, milliseconds(longerThan)));
}

const isSameProduct = (one: Medicine, other: Medicine): boolean =>
  one.source.reference === other.source.reference;

const isLongerThan = (view: View, { start }: Medicine, ms: number): boolean =>
  start !== undefined && view.timeline.asOf - start.latest > ms;

/** Undefined when the rule asks for no condition. */
function besideConditions(view: View, rule: MedicineRule): readonly Evidence[] | undefined {
  const { conditions } = rule;
  return conditions === undefined ? undefined : conditionsOnRecord(view, conditions);
}

/** Undefined when the rule asks for no other medicine. */
function besideMedicines(
  view: View,
  rule: MedicineRule,
  medicines: readonly Medicine[],
): readonly Evidence[] | undefined {
  const { alongside } = rule;
  if (alongside === undefined) return undefined;
  return view.timeline.medicines
    .filter(
      (item) =>
        alongside.medicines.includes(item.medicine) &&
        medicines.some((first) => !isSameProduct(first, item)) &&
        alongside.statuses.some((status) => isInStatus(view, item, status, alongside.within)),
    )
    .map(ofMedicine);
}

type Status = NonNullable<MedicineRule['alongside']>['statuses'][number];

/** A dose given counts while it lies inside the time; without a time of giving it counts. */
function isInStatus(view: View, item: Medicine, status: Status, within: Threshold | undefined): boolean {
  switch (status) {
    case 'given':
      return within !== undefined && isGivenWithin(view, item, within) !== false;
    case 'order-in-force':
      return item.isOrder === true && item.status === 'active' && isNotOver(view, item);
    case 'active':
    case 'ordered':
      return item.status === status && isNotOver(view, item);
  }
}

function asNotice(
  rule: MedicineRule,
  { medicines, evidence }: JudgedMedicine,
  severity: MedicineNotice['severity'],
  sentence: string,
): MedicineNotice {
  const { alternative } = rule;
  const names = medicines.map((item) => (item.asSent === '' ? idWords(item.medicine) : item.asSent));
  return {
    rule: rule.id,
    medicine: [...new Set(names)].join(', '),
    severity,
    sentence,
    ...(alternative === undefined ? {} : { alternative: alternativeText(alternative) }),
    evidence,
    source: rule.citation,
  };
}

/** The alternative names its own source: it is often another publication. */
function alternativeText({ sentence, citation }: NonNullable<MedicineRule['alternative']>): string {
  const { publication, year, known } = citation;
  if (known === 'common-practice') return `${sentence} (common practice)`;
  return `${sentence} (${publication}, ${String(year)}${known === 'read' ? '' : `, ${idWords(known)}`})`;
}

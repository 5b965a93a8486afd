// Drugs the publications name for her state, with what in the record speaks against each. Never an order.
import type { Evidence, Outcome, TreatmentOption } from '../findings/finding.ts';
import type { Guideline, TreatmentRule } from '../guidelines/guideline.ts';
import { recordAgainst } from './against.ts';
import { ofMedicine } from './checks/pressure-drugs.ts';
import { combine, lookUp } from './combine.ts';
import { givenWithin, isNotOver } from './doses.ts';
import { firstLevelSite, isPossibleAt, type Site } from './site.ts';
import { uniqueEvidence } from './unique-evidence.ts';
import type { View } from './view.ts';

type Against = TreatmentOption['against'][number];

/**
 * The options for her state.
 *
 * Given    guideline  its treatment rules
 *          outcomes   of questions, classes, urgency and referral rules
 *          site       what can be done here; default a first-level site
 * Returns  options whose state is met, in the order of the rules; empty when her state asks for none. Of each purpose
 *          the option of the lowest rank with nothing against it is offered first, if there is one
 * Throws   when the data names an unknown question
 * Notes    1. A reason against is shown, and hides nothing: the prescriber decides.
 * Source   the rules come from the guideline data
 */
export function chooseTreatments(
  view: View,
  guideline: Guideline,
  outcomes: ReadonlyMap<string, Outcome>,
  site: Site = firstLevelSite,
): readonly TreatmentOption[] {
  const held = (guideline.treatmentRules ?? [])
    .filter((rule) => combine(rule.when, lookUp(outcomes)) === 'met')
    .map((rule) => ({ rule, against: reasonsAgainst(view, rule, outcomes, site) }));
  const first = new Map<TreatmentRule['purpose'], TreatmentRule>();
  for (const { rule, against } of held)
    if (against.length === 0 && isBefore(rule, first.get(rule.purpose))) first.set(rule.purpose, rule);
  return held.map(({ rule, against }) => ({
    id: rule.id,
    medicine: rule.medicine,
    purpose: rule.purpose,
    dose: rule.dose,
    against,
    offeredFirst: first.get(rule.purpose) === rule,
    source: rule.citation,
  }));
}

const isBefore = (rule: TreatmentRule, other: TreatmentRule | undefined): boolean =>
  (rule.rank ?? Infinity) < (other?.rank ?? Infinity);

function reasonsAgainst(
  view: View,
  rule: TreatmentRule,
  outcomes: ReadonlyMap<string, Outcome>,
  site: Site,
): readonly Against[] {
  const found = rule.against.flatMap((reason): readonly Against[] => {
    const evidence = [...recordAgainst(view, reason), ...medicineEvidence(view, reason)];
    const isState = reason.when !== undefined && combine(reason.when, lookUp(outcomes)) === 'met';
    return evidence.length > 0 || isState
      ? [{ sentence: reason.sentence, evidence: uniqueEvidence(evidence) }]
      : [];
  });
  return isPossibleAt(site, rule.siteNeeds)
    ? found
    : [...found, { sentence: `Not at this site: at ${site.next ?? 'the next level'}.`, evidence: [] }];
}

type Reason = TreatmentRule['against'][number];

function medicineEvidence(view: View, { medicines = [], given }: Reason): readonly Evidence[] {
  const inUse = view.timeline.medicines.filter(
    (item) => item.status === 'active' && medicines.includes(item.medicine) && isNotOver(view, item),
  );
  const doses = given === undefined ? [] : givenWithin(view, given.medicines, given.within);
  return [...new Set([...inUse, ...doses])].map(ofMedicine);
}

// What the record says: conditions, medicines, single laboratory values.
import type { QuestionCheck } from '../../guidelines/guideline.ts';
import type { KnownCondition, LaboratoryResult, Medicine } from '../../timeline/timeline.ts';
import {
  cannotTell,
  met,
  notApplicable,
  notMet,
  numberText,
  ofFact,
  ofResult,
  type Answer,
} from '../answer.ts';
import { inUnitOf, milliseconds, satisfies } from '../compare.ts';
import { dosesInUse } from '../doses.ts';
import { uniqueEvidence } from '../unique-evidence.ts';
import type { View } from '../view.ts';
import { newestResult, resultsOf } from './laboratory-values.ts';
import { ofMedicine } from './pressure-drugs.ts';
import { idWords } from '../../id-words.ts';

type Options<K extends QuestionCheck['check']> = Extract<QuestionCheck, { check: K }>;

/** Active, and not dated before this pregnancy. An undated one counts. */
export function isOfThisPregnancy(view: View, item: KnownCondition): boolean {
  if (item.state !== 'active') return false;
  const at = item.onset ?? item.recorded;
  return at === undefined || view.place(at).outside !== 'earlier';
}

/** Is one of these conditions in the record? `not-met` means "not recorded", which is not "absent". */
export function conditionRecorded(view: View, options: Options<'condition-recorded'>): Answer {
  const found = view.timeline.conditions.filter((item) => {
    if (!options.conditions.includes(item.condition)) return false;
    if (options.scope === 'ever') return true;
    return options.scope === 'active' ? item.state === 'active' : isOfThisPregnancy(view, item);
  });
  if (found.length === 0) return notMet('Not recorded.');
  return met(`Recorded: ${[...new Set(found.map((item) => idWords(item.condition)))].join(', ')}.`, {
    evidence: found.map((item) => ofFact(`condition, ${item.condition}`, item, item.onset ?? item.recorded)),
  });
}

/** Is one of these medicines being taken, or given in doses where asked? */
export function medicineActive(view: View, options: Options<'medicine-active'>): Answer {
  const doses = options.doses === undefined ? [] : dosesInUse(view, options.medicines, options.doses);
  const found = [
    ...view.timeline.medicines.filter(
      (item) => options.medicines.includes(item.medicine) && isTaken(view, item, options),
    ),
    ...doses.filter((dose) => isBegunIn(view, dose, options.activeIn)),
  ];
  if (found.length === 0) return notMet('Not recorded.');
  const other = (options.otherIndications ?? []).filter((condition) =>
    view.timeline.conditions.some((item) => item.condition === condition && item.state === 'active'),
  );
  const evidence = uniqueEvidence(found.map(ofMedicine));
  if (other.length > 0)
    return notMet(`Another reason is recorded: ${other.map(idWords).join(', ')}.`, { evidence });
  return met(`In use: ${[...new Set(found.map((item) => idWords(item.medicine)))].join(', ')}.`, {
    evidence,
  });
}

function isTaken(view: View, item: Medicine, options: Options<'medicine-active'>): boolean {
  if (item.status !== 'active') return false;
  if (item.end !== undefined && item.end.latest < view.timeline.asOf) return false;
  if (options.startKnown === true && item.start === undefined) return false;
  return isBegunIn(view, item, options.activeIn);
}

function isBegunIn(view: View, item: Medicine, period: Options<'medicine-active'>['activeIn']): boolean {
  if (period === undefined) return true;
  const start = item.start === undefined ? view.now : view.place(item.start);
  const isEarlier = start.outside === 'earlier' && period === 'before-20-weeks';
  return isEarlier || (start.outside === undefined && start.period === period);
}

/** Does the newest, recent value of an analyte reach a limit? */
export function laboratoryReaches(view: View, options: Options<'laboratory-reaches'>): Answer {
  const thresholds = [options.limit];
  const result = newestResult(view, options.analyte);
  const oldest = view.timeline.asOf - milliseconds(options.freshWithin);
  if (result === undefined || result.at.latest < oldest)
    return cannotTell(`No recent ${idWords(options.analyte)} was received.`, { thresholds });
  const compared = inUnitOf(result.measured, result.byUnit, options.limit);
  if (compared === undefined)
    return cannotTell(`${idWords(options.analyte)} is in another unit.`, {
      thresholds,
      evidence: [ofResult(result)],
    });
  const evidence = [ofResult(result, `${numberText(compared.measured.value)} ${compared.threshold.unit}`)];
  const verdict = satisfies(compared.measured, compared.threshold);
  const text = `${idWords(options.analyte)} ${result.asSent} at ${result.at.text}.`;
  if (verdict === undefined) return cannotTell(text, { thresholds, evidence });
  return verdict ? met(text, { thresholds, evidence }) : notMet(text, { thresholds, evidence });
}

/** Are so many fetuses recorded? No count is "not recorded", not one. */
export function fetusesReach(view: View, options: Options<'fetuses-reach'>): Answer {
  const { fetuses } = view.timeline.pregnancy;
  const thresholds = [options.limit];
  if (fetuses === undefined) return notMet('The number of fetuses is not recorded.', { thresholds });
  const text = `Number of fetuses recorded: ${String(fetuses.count)}.`;
  const evidence = [ofFact('number of fetuses', { asSent: String(fetuses.count), source: fetuses.source })];
  return satisfies({ value: fetuses.count }, options.limit) === true
    ? met(text, { thresholds, evidence })
    : notMet(text, { thresholds, evidence });
}

/** Has a value fallen far from its highest earlier value, though no cut-off is crossed? */
export function laboratoryFall(view: View, options: Options<'laboratory-fall'>): Answer {
  const thresholds = [options.limit];
  const results = resultsOf(view, options.analyte);
  const newest = results.at(-1);
  const oldest = view.timeline.asOf - milliseconds(options.freshWithin);
  const unit = newest?.byUnit.sentUnit ?? '';
  const earlier = results.filter((result) => result !== newest && result.byUnit.values[unit] !== undefined);
  if (newest === undefined || newest.at.latest < oldest || earlier.length === 0)
    return notApplicable('There are no two results to compare.', { thresholds });
  const valueOf = (result: LaboratoryResult): number => result.byUnit.values[unit] ?? 0;
  const highest = earlier.reduce((best, result) => (valueOf(result) > valueOf(best) ? result : best));
  const fall = ((valueOf(highest) - valueOf(newest)) / valueOf(highest)) * 100;
  const evidence = [ofResult(highest), ofResult(newest, `${numberText(fall)} % lower`)];
  const text = `${idWords(options.analyte)} ${highest.asSent} at ${highest.at.text}, now ${newest.asSent}.`;
  return satisfies({ value: fall }, options.limit) === true
    ? met(text, { thresholds, evidence })
    : notMet(text, { thresholds, evidence });
}

// Doubts about one reading by itself: numbers, rest, position, method, time.
import type { PressureLimits, Threshold } from '../../guidelines/guideline.ts';
import type { QualityCheck, QualityRule } from '../../guidelines/quality-rule.ts';
import type { PressureReading, Source } from '../../timeline/timeline.ts';
import { ofReading } from '../answer.ts';
import { isOfThisPregnancy } from '../checks/records.ts';
import { judgeUrine } from '../checks/judge-urine.ts';
import { satisfies } from '../compare.ts';
import type { View } from '../view.ts';
import { doubtAbout, isRecent, recentReadings, type Doubt } from './recent.ts';

export type RuleOf<K extends QualityCheck['check']> = Extract<QualityRule, { check: K }>;

/** A pressure that could not be used, for one of the given reasons. */
export function unusablePressures(view: View, rule: RuleOf<'unusable-pressure'>): Doubt | undefined {
  const found = view.timeline.unusablePressures.filter(
    ({ why, at }) =>
      rule.why.some((wanted) => wanted === why) && (at === undefined || isRecent(view, at, rule.freshWithin)),
  );
  const mends = found.flatMap(({ fault, sources }) =>
    fault === undefined ? [] : [`${sources[0]?.reference ?? ''} ${fault.element}: ${fault.message}`],
  );
  return doubtAbout(found.flatMap(ofUnusable), mends.length === 0 ? undefined : mends.join(' '));
}

const ofUnusable = (item: View['timeline']['unusablePressures'][number]) =>
  item.sources.map(({ reference }: Source) => ({
    reference,
    what: 'blood pressure that cannot be used',
    ...(item.at === undefined ? {} : { at: item.at.text }),
    asSent: item.asSent,
  }));

const readingsThat = (
  view: View,
  { freshWithin }: QualityRule,
  isDoubtful: (reading: PressureReading) => boolean,
): Doubt | undefined => doubtAbout(recentReadings(view, freshWithin).filter(isDoubtful).flatMap(ofReading));

/** Systolic less diastolic, too small or too large. */
export function pulsePressure(view: View, rule: RuleOf<'pulse-pressure'>): Doubt | undefined {
  return readingsThat(view, rule, ({ systolicMmHg, diastolicMmHg }) => {
    if (systolicMmHg === undefined || diastolicMmHg === undefined) return false;
    const gap = { value: systolicMmHg - diastolicMmHg };
    return satisfies(gap, rule.narrow) === true || satisfies(gap, rule.wide) === true;
  });
}

/** Too little rest, or something written beside it that raises the pressure. Nothing recorded: no doubt. */
export function rest(view: View, rule: RuleOf<'rest'>): Doubt | undefined {
  return readingsThat(view, rule, ({ technique }) => {
    const { restMinutes, disturbances = [] } = technique;
    if (disturbances.length > 0) return true;
    return restMinutes !== undefined && satisfies({ value: restMinutes }, rule.tooShort) === true;
  });
}

export function position(view: View, rule: RuleOf<'position'>): Doubt | undefined {
  const doubtful: readonly (string | undefined)[] = rule.positions;
  return readingsThat(view, rule, ({ technique }) => doubtful.includes(technique.position));
}

/** A systolic felt at the wrist, alone or with a diastolic that nobody can have heard. */
export function palpated(view: View, rule: RuleOf<'palpated'>): Doubt | undefined {
  return readingsThat(
    view,
    rule,
    ({ systolicMmHg, technique }) => technique.method === 'palpation' && systolicMmHg !== undefined,
  );
}

/** Only the day, or less, is known; or no time at all. */
export function timeNotExact(view: View, rule: RuleOf<'time-not-exact'>): Doubt | undefined {
  const readings = recentReadings(view, rule.freshWithin).filter(({ at }) => at.precision !== 'minute');
  const undated = view.timeline.unusablePressures.filter(({ at }) => at === undefined);
  return doubtAbout([...readings.flatMap(ofReading), ...undated.flatMap(ofUnusable)]);
}

/**
 * Was the pressure measured by a device, near a limit, in a woman in whom pre-eclampsia is in question?
 *
 * Notes    1. In question: such a disease is recorded, or the urine shows protein by the guideline's own measure.
 *          2. Whether the device is validated is not asked: nothing in FHIR tells it reliably.
 */
export function automatedNearLimit(view: View, rule: RuleOf<'automated-near-limit'>): Doubt | undefined {
  if (!isPreEclampsiaInQuestion(view, rule)) return undefined;
  return readingsThat(
    view,
    rule,
    (reading) =>
      reading.technique.method === 'oscillometry' &&
      rule.limits.some((limits) => isNear(reading, limits, rule.within)),
  );
}

function isPreEclampsiaInQuestion(view: View, rule: RuleOf<'automated-near-limit'>): boolean {
  const isRecorded = view.timeline.conditions.some(
    (item) => rule.conditions.includes(item.condition) && isOfThisPregnancy(view, item),
  );
  return (
    isRecorded ||
    view.timeline.urineProteins.some(
      (result) =>
        isRecent(view, result.at, rule.freshWithin) &&
        judgeUrine(result, rule.proteinuria).verdict === 'significant',
    )
  );
}

function isNear(reading: PressureReading, limits: PressureLimits, within: Threshold): boolean {
  const halves = [
    [reading.systolicMmHg, limits.systolic.value],
    [reading.diastolicMmHg, limits.diastolic.value],
  ] as const;
  return halves.some(
    ([value, limit]) => value !== undefined && satisfies({ value: Math.abs(value - limit) }, within) === true,
  );
}

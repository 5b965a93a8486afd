// Doubts that show only when readings are compared: within a visit, between arms, between visits.
import type { Threshold } from '../../guidelines/guideline.ts';
import type { PressureReading } from '../../timeline/timeline.ts';
import { ofOccasion, ofReading, pressureText } from '../answer.ts';
import { satisfies } from '../compare.ts';
import type { Occasion, View } from '../view.ts';
import { visitValue, type Pressure } from '../visit-value.ts';
import { repeatedValue } from './digit-preference.ts';
import { doubtAbout, isRecent, recentOccasions, type Doubt } from './recent.ts';
import type { RuleOf } from './single-readings.ts';

/** Largest difference in either half, in mm[Hg]; undefined when no half is known of both. */
function difference(a: Pressure, b: Pressure): number | undefined {
  const gaps = [
    [a.systolicMmHg, b.systolicMmHg],
    [a.diastolicMmHg, b.diastolicMmHg],
  ].flatMap(([left, right]) => (left === undefined || right === undefined ? [] : [Math.abs(left - right)]));
  return gaps.length === 0 ? undefined : Math.max(...gaps);
}

const isOver = (gap: number | undefined, limit: Threshold): boolean =>
  gap !== undefined && satisfies({ value: gap }, limit) === true;

/** The newest visit has two readings of an arm, far apart, and no third. */
export function visitDifference(view: View, rule: RuleOf<'visit-difference'>): Doubt | undefined {
  const newest = recentOccasions(view, rule.freshWithin).at(-1);
  const pair = armsOf(newest).find(({ readings }) => readings.length === 2)?.readings ?? [];
  const [first, second] = pair;
  if (first === undefined || second === undefined) return undefined;
  return isOver(difference(first, second), rule.difference) ? doubtAbout(pair.flatMap(ofReading)) : undefined;
}

interface ArmReadings {
  readonly arm: PressureReading['arm'];
  readonly readings: readonly PressureReading[];
}

function armsOf(occasion: Occasion | undefined): readonly ArmReadings[] {
  const readings = occasion?.readings ?? [];
  return [...new Set(readings.map(({ arm }) => arm))].map((arm) => ({
    arm,
    readings: readings.filter((reading) => reading.arm === arm),
  }));
}

/** The two newest visits have no arm in common, as far as arms are recorded. */
export function armChanged(view: View, rule: RuleOf<'arm-changed'>): Doubt | undefined {
  const [newest, earlier] = [...recentOccasions(view, rule.freshWithin)].reverse();
  if (newest === undefined || earlier === undefined) return undefined;
  const [now, before] = [newest, earlier].map((occasion) => armsOf(occasion).map(({ arm }) => arm));
  if (now === undefined || before === undefined) return undefined;
  if ([...now, ...before].includes(undefined) || now.some((arm) => before.includes(arm))) return undefined;
  return doubtAbout([...ofOccasion(earlier), ...ofOccasion(newest)]);
}

/** Both arms were measured at a visit, and their averages lie apart. The newest such visit is told. */
export function armsDiffer(view: View, rule: RuleOf<'arms-differ'>): Doubt | undefined {
  for (const occasion of [...recentOccasions(view, rule.freshWithin)].reverse()) {
    const arms = armsOf(occasion);
    const left = averageOf(arms, 'left', rule);
    const right = averageOf(arms, 'right', rule);
    if (left === undefined || right === undefined) continue;
    const gap = difference(left, right);
    if (!isOver(gap, rule.over) || (rule.upTo !== undefined && !isOver(gap, rule.upTo))) return undefined;
    return doubtAbout(
      occasion.readings.flatMap(ofReading),
      `Left ${pressureText(left)}, right ${pressureText(right)} mm[Hg].`,
    );
  }
  return undefined;
}

function averageOf(
  arms: readonly ArmReadings[],
  side: 'left' | 'right',
  rule: RuleOf<'arms-differ'>,
): Pressure | undefined {
  const readings = arms.find(({ arm }) => arm === side)?.readings;
  if (readings === undefined) return undefined;
  const visit = { occasionLength: rule.freshWithin, thirdReadingWhenDifferenceOver: rule.over };
  return visitValue(readings, visit).value;
}

/** The same pair of numbers on several days of this pregnancy, the newest of them recent. */
export function sameValue(view: View, rule: RuleOf<'same-value'>): Doubt | undefined {
  const readings = view.readings.map(({ reading }) => reading);
  const repeated = repeatedValue(
    readings.map((reading) => ({ ...reading, day: reading.at.localDay })),
    rule.visits,
  );
  if (repeated === undefined) return undefined;
  const same = readings.filter(
    ({ systolicMmHg, diastolicMmHg }) =>
      systolicMmHg === repeated.systolicMmHg && diastolicMmHg === repeated.diastolicMmHg,
  );
  const newest = same.at(-1);
  if (newest === undefined || !isRecent(view, newest.at, rule.freshWithin)) return undefined;
  return doubtAbout(
    same.flatMap(ofReading),
    `${pressureText(repeated)} mm[Hg] on ${String(repeated.visits)} days.`,
  );
}

// Every limit of every edition, typed from the sources, as probes: one woman for each value.
import type { StripAnswer } from '../../support/codes.ts';
import type { Probe } from '../../support/probe.ts';
import * as build from '../../support/resources.ts';
import { asOf, morning, raisedTwice, stepsOf, thirtyWeeks, type LimitRow } from './limit-row.ts';
import { afterBirthLimits } from './after-birth-limits.ts';
import { citedLimits } from './cited-limits.ts';
import { hellpRows } from './hellp-limits.ts';
import { lookBackLimits } from './look-back-limits.ts';
import { organLimits } from './organ-limits.ts';
import { pressureLimits } from './pressure-limits.ts';
import { timeLimits } from './time-limits.ts';
import { stripRows, urineLimits } from './urine-limits.ts';

const ofRow = (row: LimitRow): readonly Probe[] =>
  stepsOf(row).flatMap(([value, outcome]) => {
    const woman = { asOf, sent: row.woman(value) };
    return row.editions.map((guideline) => ({
      title: `${row.what}: ${String(value)} ${row.unit}`,
      guideline,
      woman,
      outcomes: { [row.question]: outcome },
    }));
  });

const strips: readonly Probe[] = stripRows.flatMap(({ editions, question, expected }) =>
  editions.flatMap((guideline) =>
    Object.entries(expected).map(([grade, outcome]) => ({
      title: `strip ${grade}`,
      guideline,
      woman: { asOf, sent: [thirtyWeeks, ...raisedTwice, build.strip(morning, grade as StripAnswer)] },
      outcomes: { [question]: outcome },
    })),
  ),
);

/** Named groups of probes, in the order in which they are read. */
export const limitProbes: readonly (readonly [title: string, probes: readonly Probe[]])[] = [
  ...[
    ...pressureLimits,
    ...urineLimits,
    ...organLimits,
    ...timeLimits,
    ...afterBirthLimits,
    ...lookBackLimits,
  ].map((row) => [`${row.what} (${row.question}, ${row.unit})`, ofRow(row)] as const),
  ['strips, grade by grade', strips],
  ['HELLP', hellpRows],
  ['limits as the trace prints them', citedLimits],
];

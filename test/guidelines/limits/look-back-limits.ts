// How far back a dose, a blood test or a fit counts. All are defaults of ours (D).
import * as build from '../../support/resources.ts';
import { day, everyEdition, hour, secondsBefore, thirtyWeeks, type LimitRow } from './limit-row.ts';

const around = (seconds: number): LimitRow['values'] => [seconds - 1, seconds, seconds + 1];

export const lookBackLimits: readonly LimitRow[] = [
  {
    what: 'blood was tested within the last day',
    source: 'D: a day',
    editions: everyEdition,
    question: 'blood-tested',
    counts: 'up-to',
    values: around(24 * hour),
    unit: 's',
    woman: (age) => [
      thirtyWeeks,
      ...(['platelets', 'creatinine', 'alt'] as const).map((name) =>
        build.lab(
          secondsBefore(age),
          name,
          100,
          name === 'creatinine' ? 'umol/L' : name === 'alt' ? 'U/L' : '10*9/L',
        ),
      ),
    ],
  },
  {
    what: 'two doses within 48 hours are treatment that goes on',
    source: 'D: a medicine given daily is in use for two days after a dose',
    editions: everyEdition,
    question: 'treated',
    counts: 'up-to',
    values: around(48 * hour),
    unit: 's',
    woman: (age) => [
      thirtyWeeks,
      build.given('labetalol', secondsBefore(age)),
      build.given('labetalol', secondsBefore(20 * hour)),
    ],
  },
  {
    what: 'doses less than four hours apart are one treatment',
    source: 'D: a drug for severe pressure is repeated within the hour',
    editions: everyEdition,
    question: 'treated',
    counts: 'from',
    values: around(4 * hour),
    unit: 's',
    woman: (gap) => [
      thirtyWeeks,
      build.given('labetalol', secondsBefore(10 * hour)),
      build.given('labetalol', secondsBefore(10 * hour - gap)),
    ],
  },
  {
    what: 'a fit of an undated pregnancy is looked for as long as a pregnancy and the weeks after it last',
    source: 'D: 350 days',
    editions: everyEdition,
    question: 'seizure-in-pregnancy',
    counts: 'up-to',
    values: around(350 * day),
    unit: 's',
    woman: (age) => [build.symptom(secondsBefore(age), 'seizure', true)],
  },
  {
    what: 'magnesium given a day ago still counts as given',
    source: 'D: a course lasts a day',
    editions: everyEdition,
    question: 'magnesium-given',
    counts: 'up-to',
    values: [24 * hour - 1, 24 * hour, 24 * hour + 1],
    unit: 's',
    woman: (age) => [thirtyWeeks, build.given('magnesium-sulfate', secondsBefore(age))],
  },
];

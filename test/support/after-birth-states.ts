// Days after a birth with the steps that belong to each. Expectations: clinical-rules.md 2.5, rules 40, 41 and 46; 2.13.
import type { ActionState } from './magnesium-states.ts';
import { afterBirth, afterPreEclampsia, asOf, noDangerSymptoms } from './plain-stories.ts';
import type { PlainTimeline } from './timeline-builder.ts';

const dayMs = 86_400_000;
const bornBefore = (days: number): string =>
  new Date(Date.parse(asOf) - days * dayMs).toISOString().slice(0, 10);

const untested: PlainTimeline = { ...afterPreEclampsia, labs: [], strips: [] };
const withPreEclampsia = (days: number, rest: PlainTimeline = untested): PlainTimeline => ({
  ...rest,
  birth: bornBefore(days),
  conditions: [{ condition: 'pre-eclampsia', at: bornBefore(days + 5) }],
});
const quiet: PlainTimeline = {
  asOf,
  pressures: [{ at: '2026-03-10T09:00:00Z', systolic: 126, diastolic: 78 }],
  symptoms: noDangerSymptoms,
};
const hypertensive = (days: number, rest: PlainTimeline): PlainTimeline => ({
  ...rest,
  birth: bornBefore(days),
  conditions: [{ condition: 'gestational-hypertension', at: bornBefore(days + 5) }],
});

const firstDays = ['after-birth-checks', 'after-birth-pre-eclampsia-checks'];
const firstWeek = ['after-birth-checks-first-week', 'after-birth-pre-eclampsia-checks'];
const later = ['after-birth-checks-later', 'after-birth-pre-eclampsia-checks-later'];
const review = ['six-week-review-due', 'six-week-urine-due'];
const advice = ['recurrence', 'recurrence-after-pre-eclampsia', 'heart-and-vessels', 'reclassify-as-chronic'];

export const daysAfterBirth: readonly ActionState[] = [
  [
    'pre-eclampsia, the day of birth',
    withPreEclampsia(0),
    [...firstDays, 'after-birth-blood'],
    firstWeek.slice(0, 1),
  ],
  ['pre-eclampsia, day 2', withPreEclampsia(2), [...firstDays, 'after-birth-blood'], firstWeek.slice(0, 1)],
  ['pre-eclampsia, day 3', withPreEclampsia(3), [...firstWeek, 'after-birth-blood'], ['after-birth-checks']],
  [
    'pre-eclampsia, day 5',
    withPreEclampsia(5),
    [...firstWeek, 'after-birth-blood-late'],
    ['after-birth-blood'],
  ],
  ['pre-eclampsia, day 6', withPreEclampsia(6), [...later, 'six-week-review'], [...firstDays, ...firstWeek]],
  [
    'pre-eclampsia, day 41',
    withPreEclampsia(41),
    [...later, 'six-week-review', 'six-week-urine', ...advice],
    review,
  ],
  ['pre-eclampsia, day 42', withPreEclampsia(42), [...review, ...advice], [...later, 'six-week-review']],
  ['pre-eclampsia, day 50, nothing raised', withPreEclampsia(50, quiet), [...review, ...advice], later],
  [
    'pre-eclampsia, day 50, one plus on the strip',
    withPreEclampsia(50, { ...quiet, strips: [{ at: '2026-03-10T09:00:00Z', grade: 1 }] }),
    ['six-week-review-due', 'kidney-review'],
    ['six-week-urine-due'],
  ],
  ['pre-eclampsia, day 84', withPreEclampsia(84, quiet), review, later],
  ['pre-eclampsia, day 85', withPreEclampsia(85, quiet), [], [...review, ...advice]],
  [
    'gestational hypertension, day 50',
    hypertensive(50, quiet),
    ['six-week-review-due', 'pre-eclampsia-after-gestational', 'heart-and-vessels'],
    ['six-week-urine-due', 'recurrence-after-pre-eclampsia'],
  ],
  ['no hypertension, day 50', { ...quiet, birth: bornBefore(50) }, [], [...review, ...advice]],
  [
    'chronic hypertension on record, raised on day 60',
    {
      ...afterBirth,
      birth: bornBefore(60),
      conditions: [{ condition: 'chronic-hypertension', at: '2019-05-01' }],
    },
    ['after-the-window', 'six-week-review-due'],
    ['reclassify-as-chronic'],
  ],
  [
    'on drugs, day 14',
    { ...hypertensive(14, afterBirth), medicines: [{ medicine: 'labetalol', start: '2026-03-01' }] },
    ['after-birth-treated-checks', 'after-birth-checks-later'],
    [],
  ],
  [
    'on drugs, day 15',
    { ...hypertensive(15, afterBirth), medicines: [{ medicine: 'labetalol', start: '2026-03-01' }] },
    ['after-birth-checks-later'],
    ['after-birth-treated-checks'],
  ],
  [
    'a birth known by its month only: its last day counts',
    { ...withPreEclampsia(10), birth: '2026-02' },
    later,
    [...firstDays, 'six-week-review-due'],
  ],
];

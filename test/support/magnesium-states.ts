// States of a woman on magnesium, with the steps that belong to each. Expectations: clinical-rules.md 2.7, case X38.
import * as story from './plain-stories.ts';
import type { PlainTimeline } from './timeline-builder.ts';

/** In words, the woman, what is to be done, and what is not. */
export type ActionState = readonly [string, PlainTimeline, readonly string[], readonly string[]];

const magnesium = (
  plain: PlainTimeline,
  dose: Omit<NonNullable<PlainTimeline['medicines']>[number], 'medicine'>,
): PlainTimeline => ({ ...plain, medicines: [{ medicine: 'magnesium-sulfate', ...dose }] });

const afterBirth: PlainTimeline = {
  ...story.afterPreEclampsia,
  pressures: [{ at: '2026-03-10T09:00:00Z', systolic: 135, diastolic: 85 }],
};

export const magnesiumStates: readonly ActionState[] = [
  [
    'severe pre-eclampsia, magnesium running (case X38)',
    {
      ...story.severePreEclampsia,
      medicines: [{ medicine: 'magnesium-sulfate', start: '2026-03-10T11:30:00Z' }],
    },
    ['magnesium-no-second-load', 'magnesium-signs'],
    ['magnesium-loading', 'magnesium-on-order'],
  ],
  [
    'severe pre-eclampsia, magnesium given as one dose',
    magnesium(story.severePreEclampsia, { status: 'given', start: '2026-03-10T11:30:00Z' }),
    ['magnesium-no-second-load', 'magnesium-antidote'],
    ['magnesium-loading'],
  ],
  [
    'severe pre-eclampsia, an infusion of magnesium stopped after its load',
    magnesium(story.severePreEclampsia, {
      status: 'stopped',
      start: '2026-03-10T11:00:00Z',
      end: '2026-03-10T11:20:00Z',
    }),
    ['magnesium-no-second-load'],
    ['magnesium-loading'],
  ],
  [
    'severe pre-eclampsia, magnesium recorded for a later hour',
    magnesium(story.severePreEclampsia, { status: 'given', start: '2026-03-10T12:30:00Z' }),
    ['magnesium-loading'],
    ['magnesium-no-second-load', 'magnesium-on-order'],
  ],
  [
    'severe pre-eclampsia, a course of magnesium that ended the day before yesterday',
    magnesium(story.severePreEclampsia, { status: 'stopped', start: '2026-03-07', end: '2026-03-08' }),
    ['magnesium-loading'],
    ['magnesium-no-second-load'],
  ],
  [
    'severe pre-eclampsia, magnesium ordered and not known to be given',
    magnesium(story.severePreEclampsia, { isOrder: true, start: '2026-03-10T11:58:00Z' }),
    ['magnesium-loading', 'magnesium-on-order'],
    ['magnesium-no-second-load'],
  ],
  [
    'severe pre-eclampsia, an order of magnesium carried out, as the order says',
    magnesium(story.severePreEclampsia, { isOrder: true, status: 'stopped', start: '2026-03-10T11:30:00Z' }),
    ['magnesium-loading', 'magnesium-on-order'],
    ['magnesium-no-second-load'],
  ],
  [
    'severe pre-eclampsia, magnesium given at a time not recorded',
    magnesium(story.severePreEclampsia, { status: 'given' }),
    ['magnesium-loading', 'magnesium-on-order'],
    ['magnesium-no-second-load'],
  ],
  [
    'pre-eclampsia without severe features, on magnesium',
    magnesium(story.preEclampsia, { start: '2026-03-10T08:00:00Z' }),
    ['magnesium-signs-while-given', 'magnesium-antidote-while-given', 'magnesium-goes-on'],
    ['magnesium-signs', 'magnesium-stop'],
  ],
  [
    'after birth, on magnesium',
    magnesium(afterBirth, { start: '2026-03-10T08:00:00Z' }),
    ['magnesium-signs-while-given', 'magnesium-antidote-while-given', 'magnesium-goes-on'],
    ['magnesium-stop'],
  ],
  [
    'slow breathing on magnesium',
    {
      ...magnesium(story.severePreEclampsia, { start: '2026-03-10T08:00:00Z' }),
      labs: [{ at: '2026-03-10T11:00:00Z', analyte: 'respiratory-rate', value: 11, unit: '/min' }],
    },
    ['magnesium-stop', 'magnesium-antidote'],
    ['magnesium-loading', 'magnesium-no-second-load'],
  ],
];

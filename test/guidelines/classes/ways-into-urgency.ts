// The ways into an urgency that no case file walks: one row each, expected from the clinical rules and decisions.
import * as build from '../../support/resources.ts';
import { except, thirtyWeeks } from '../limits/limit-row.ts';
import {
  at,
  sixteenWeeks,
  dayFive,
  normalNow,
  raised,
  raisedPair,
  settledNow,
  fewerMovements,
  chronic,
  lisinopril,
  undatedLabetalol,
  type WayIn,
} from './women.ts';

export const intoUrgency: readonly WayIn[] = [
  {
    title: 'one raised reading with very low platelets, the length of the pregnancy not known: emergency',
    source: 'decision 1 by analogy, rule 11: ours',
    given: [raised('10', '13:30'), build.lab(at('10'), 'platelets', 60, '10*9/L')],
    urgency: 'emergency',
  },
  {
    title: 'very low platelets at normal pressure, before 20 weeks: same day',
    source: 'rule 33: HELLP also without hypertension; ours',
    given: [sixteenWeeks, normalNow, build.lab(at('10'), 'platelets', 60, '10*9/L')],
    urgency: 'same-day',
  },
  {
    title: 'very low platelets at normal pressure, the length of the pregnancy not known: same day',
    source: 'rule 33: HELLP also without hypertension; ours',
    given: [normalNow, build.lab(at('10'), 'platelets', 60, '10*9/L')],
    urgency: 'same-day',
  },
  {
    title: 'a stroke beside pre-eclampsia on record, at normal pressure: emergency',
    source: '1.3: stroke is a severe sign of the brain',
    given: [
      thirtyWeeks,
      ...settledNow,
      build.condition('pre-eclampsia', at('01')),
      build.condition('stroke', at('08')),
    ],
    urgency: 'emergency',
  },
  {
    title: 'vaginal bleeding, the length of the pregnancy not known: same day',
    source: 'rule 7; same day without pain is ours',
    given: [normalNow, build.symptom(at('10', '13:00'), 'vaginal-bleeding', true)],
    urgency: 'same-day',
  },
  {
    title: 'pre-eclampsia on record, undated, normal now: same day',
    source: '2.4 rule 30',
    given: [...settledNow, build.condition('pre-eclampsia', at('01'))],
    lists: ['pre-eclampsia'],
    urgency: 'same-day',
  },
  {
    title: 'chronic hypertension at 30 weeks, raised this morning and lower since: same day',
    source: 'decision 6',
    given: [thirtyWeeks, chronic, raised('10', '12:00'), normalNow],
    lists: ['chronic-hypertension'],
    urgency: 'same-day',
  },
  {
    title: 'a pair nine days apart asks for a fresh one only while the pressure is raised',
    source: 'decision 12',
    editions: except('sogc-2022'),
    given: [
      thirtyWeeks,
      build.pressure('2025-02-20T09:00:00Z', 146, 92),
      build.pressure('2025-03-01T09:00:00Z', 146, 92),
      ...settledNow,
    ],
    leads: 'gestational-hypertension',
    urgency: 'within-7-days',
  },
  {
    title: 'undated, raised once and lower on repeat: within seven days',
    source: 'decision 6',
    editions: except('sogc-2022', 'nice-2023'),
    given: [build.pressure(at('10', '09:00'), 146, 92), normalNow],
    leads: 'transient-hypertension',
    urgency: 'within-7-days',
  },
  {
    title: 'undated, confirmed and lower since this morning: same day',
    source: 'decision 6',
    given: [raised('09', '12:00'), raised('10', '12:00'), normalNow],
    lists: ['hypertension-timing-unknown'],
    urgency: 'same-day',
  },
  ...(
    [
      ['chronic', [chronic, ...settledNow]],
      ['gestational', [...raisedPair, ...settledNow]],
      ['treated, its beginning unknown', [undatedLabetalol, ...settledNow]],
    ] as const
  ).map(([which, given]): WayIn => ({
    title: `fewer movements with hypertension (${which}): same day`,
    source: '2.1 rule 8',
    given: [thirtyWeeks, ...given, fewerMovements],
    urgency: 'same-day',
  })),
  {
    title: 'fewer movements without hypertension are no matter of these rules',
    source: '2.1 rule 8',
    given: [thirtyWeeks, ...settledNow, fewerMovements],
    leads: 'normotensive',
    urgency: 'routine',
  },
  ...(
    [
      ['at 16 weeks', sixteenWeeks],
      ['at 30 weeks', thirtyWeeks],
      ['undated', undefined],
    ] as const
  ).map(([when, dating]): WayIn => ({
    title: `an agent to avoid, ${when}: same day`,
    source: 'decision 7',
    given: [...(dating === undefined ? [] : [dating]), ...settledNow, lisinopril],
    urgency: 'same-day',
  })),
  {
    title: 'raised after birth, lower an hour later: within 48 hours',
    source: 'decision 7',
    editions: except('sogc-2022', 'nice-2023', 'isshp-2021'),
    given: [dayFive, raised('10', '12:30'), normalNow],
    leads: 'raised-unconfirmed',
    urgency: 'within-48-hours',
  },
];

// What is long past: a fit of weeks ago, a disorder on record once the six weeks are over; expected from rules and decisions.
import * as build from '../../support/resources.ts';
import { thirtyWeeks } from '../limits/limit-row.ts';
import { at, chronic, dayFive, normalNow, raised, settledNow, type WayIn } from './women.ts';

/** On record since the birth, seven weeks ago; nothing is wrong today. */
const longOver = (
  [
    ['eclampsia', 'eclampsia'],
    ['hellp', 'hellp'],
    ['pre-eclampsia-severe', 'pre-eclampsia-severe-features'],
    ['pre-eclampsia', 'pre-eclampsia'],
    ['superimposed-pre-eclampsia', 'superimposed-pre-eclampsia'],
  ] as const
).map(([recorded, named]): WayIn => ({
  title: `${recorded} on record counts no more seven weeks after the birth`,
  source: '2.2 rule 12: the window ends on day 42',
  given: [build.birth('2025-01-18T06:00:00Z'), build.condition(recorded, '2025-01-17'), ...settledNow],
  without: [named],
  urgency: 'routine',
}));

export const longAfter: readonly WayIn[] = [
  ...longOver,
  {
    title: 'raised eight weeks after a birth with chronic hypertension on record is chronic hypertension',
    source: '2.4 rule 25: within seven days below 160/110',
    given: [build.birth('2025-01-10T06:00:00Z'), chronic, raised('09'), raised('10', '13:20')],
    lists: ['chronic-hypertension'],
    without: ['cannot-classify', 'normotensive'],
    urgency: 'within-7-days',
  },
  {
    title: 'a fit weeks ago, the length of the pregnancy not known, is eclampsia',
    source: 'decision 2: of unknown gestation',
    given: [normalNow, build.symptom('2025-02-20T09:00:00Z', 'seizure', true)],
    leads: 'eclampsia',
    urgency: 'emergency',
  },
  {
    title: 'a coma weeks ago that nothing explains is eclampsia as a fit is',
    source: '2.1 rule 1',
    given: [thirtyWeeks, normalNow, build.symptom('2025-02-20T09:00:00Z', 'coma', true)],
    leads: 'eclampsia',
    urgency: 'emergency',
  },
  {
    title: 'severe only after birth is not gestational',
    source: '2.5 rule 42: new after birth',
    given: [dayFive, build.pressure(at('09'), 172, 114), build.pressure(at('09', '09:20'), 172, 114)],
    without: ['gestational-hypertension-severe-range', 'gestational-hypertension'],
    urgency: 'emergency',
  },
  {
    title: 'a fit soon after birth, nearly three weeks ago, is eclampsia',
    source: 'decision 2: within six weeks after birth',
    given: [
      build.birth('2025-02-18T06:00:00Z'),
      normalNow,
      build.symptom('2025-02-20T09:00:00Z', 'seizure', true),
    ],
    leads: 'eclampsia',
    urgency: 'emergency',
  },
  {
    title: 'seven weeks after birth severe pre-eclampsia measured in the pregnancy is past',
    source: '2.4 rule 31, 2.5 rule 12: the window ends on day 42',
    given: [
      build.dueDate('2024-12-20T09:00:00Z', '2025-01-30'),
      build.pressure('2025-01-10T09:00:00Z', 172, 114),
      build.pressure('2025-01-10T09:20:00Z', 172, 114),
      build.ratio('2025-01-10T10:00:00Z', 60, 'mg/mmol'),
      build.birth('2025-01-20T06:00:00Z'),
      normalNow,
    ],
    without: ['pre-eclampsia-severe-features', 'pre-eclampsia', 'gestational-hypertension-severe-range'],
  },
  {
    title: 'raised seven weeks after a birth, with protein: not isolated protein',
    source: 'rule 35: protein is isolated at normal pressure',
    given: [
      build.birth('2025-01-10T06:00:00Z'),
      raised('10', '09:00'),
      raised('10', '13:20'),
      build.strip(at('10', '13:30'), '2+'),
    ],
    lists: ['cannot-classify'],
    without: ['isolated-proteinuria', 'normotensive'],
    urgency: 'same-day',
  },
];

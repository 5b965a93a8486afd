// How far the pregnancy is, for the answer.
import type { GestationalAge } from '../evaluation.ts';
import { datingEvidence, weeksAndDays } from './checks/period-now.ts';
import type { View } from './view.ts';

const dayMs = 86_400_000;

/** Gestational age, or days after birth, at `asOf`. */
export function gestationalAgeOf(view: View): GestationalAge {
  const { now, timeline, values } = view;
  const { dating, birth, remarks } = timeline.pregnancy;
  const days = now.gestationalAgeDays;
  return {
    ...(days === undefined ? {} : { days, text: weeksAndDays(days) }),
    period: now.period,
    ...(now.daysAfterBirth === undefined ? {} : { daysAfterBirth: now.daysAfterBirth }),
    ...(dating === undefined ? {} : { method: dating.method }),
    ...(dating === undefined || birth !== undefined
      ? {}
      : {
          dueDate: new Date((dating.startDay + values.pregnancyLengthDays.value) * dayMs)
            .toISOString()
            .slice(0, 10),
        }),
    evidence: datingEvidence(view).map((item) => item.reference),
    remarks: [...remarks, ...(dating?.remarks ?? [])],
  };
}

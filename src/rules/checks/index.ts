// The table of checks: the only list to extend when a new kind of question is needed.
import type { QuestionCheck } from '../../guidelines/guideline.ts';
import type { Answer } from '../answer.ts';
import type { View } from '../view.ts';
import { daysAfterBirth } from './days-after-birth.ts';
import { hellp } from './hellp.ts';
import { homePressure } from './home-pressure.ts';
import { bloodTested } from './laboratory-values.ts';
import { organInvolvement } from './organ-involvement.ts';
import { laboratoryOnMedicine, medicineGiven, medicinePerhapsGiven } from './medicine-doses.ts';
import { periodNow } from './period-now.ts';
import { pressureConfirmed, pressurePairStale } from './pressure-confirmed.ts';
import {
  pressureNormalNow,
  pressureRaisedNow,
  pressureRaisedOnce,
  pressureRaisedOpen,
  pressureSettled,
  pressureTransient,
} from './pressure-now.ts';
import { proteinuria, urineTested } from './proteinuria.ts';
import {
  conditionRecorded,
  fetusesReach,
  laboratoryFall,
  laboratoryReaches,
  medicineActive,
} from './records.ts';
import {
  pressureControlLost,
  severePressureClosed,
  severePressureConfirmed,
  severePressureCurrent,
  severePressureOpen,
} from './severe-pressure.ts';
import { symptomPresent } from './symptoms.ts';
import { unusablePressure } from './unusable-pressure.ts';

type OptionsByCheck = { readonly [K in QuestionCheck['check']]: Extract<QuestionCheck, { check: K }> };
type Checks = { readonly [K in keyof OptionsByCheck]: (view: View, options: OptionsByCheck[K]) => Answer };

export const checks: Checks = {
  'period-now': periodNow,
  'days-after-birth': daysAfterBirth,
  'pressure-raised-once': pressureRaisedOnce,
  'pressure-raised-now': pressureRaisedNow,
  'pressure-raised-open': pressureRaisedOpen,
  'pressure-normal-now': pressureNormalNow,
  'pressure-confirmed': pressureConfirmed,
  'pressure-pair-stale': pressurePairStale,
  'pressure-settled': pressureSettled,
  'pressure-transient': pressureTransient,
  'severe-pressure-open': severePressureOpen,
  'severe-pressure-closed': severePressureClosed,
  'severe-pressure-confirmed': severePressureConfirmed,
  'severe-pressure-current': severePressureCurrent,
  'pressure-control-lost': pressureControlLost,
  'unusable-pressure': unusablePressure,
  'fetuses-reach': fetusesReach,
  'home-pressure': homePressure,
  proteinuria,
  'urine-tested': urineTested,
  'blood-tested': bloodTested,
  'organ-involvement': organInvolvement,
  hellp,
  'symptom-present': symptomPresent,
  'condition-recorded': conditionRecorded,
  'laboratory-reaches': laboratoryReaches,
  'laboratory-fall': laboratoryFall,
  'laboratory-on-medicine': laboratoryOnMedicine,
  'medicine-active': medicineActive,
  'medicine-given': medicineGiven,
  'medicine-perhaps-given': medicinePerhapsGiven,
};

/** Answers one question: the check of its name, with its own options. */
export function answerQuestion<K extends keyof OptionsByCheck>(
  view: View,
  question: OptionsByCheck[K] & { readonly check: K },
): Answer {
  return checks[question.check](view, question);
}

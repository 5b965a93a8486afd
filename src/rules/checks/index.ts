// The table of checks: the only list to extend when a new kind of question is needed.
import type { QuestionCheck } from '../../guidelines/guideline.ts';
import type { Answer } from '../answer.ts';
import type { View } from '../view.ts';
import { hellp } from './hellp.ts';
import { homePressure } from './home-pressure.ts';
import { organInvolvement } from './organ-involvement.ts';
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
import { conditionRecorded, fetusesReach, laboratoryReaches, medicineActive } from './records.ts';
import {
  severePressureClosed,
  severePressureConfirmed,
  severePressureCurrent,
  severePressureOpen,
} from './severe-pressure.ts';
import { symptomPresent } from './symptoms.ts';
import { unusablePressure } from './unusable-pressure.ts';

type Checks = {
  readonly [K in QuestionCheck['check']]: (
    view: View,
    options: Extract<QuestionCheck, { check: K }>,
  ) => Answer;
};

export const checks: Checks = {
  'period-now': periodNow,
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
  'unusable-pressure': unusablePressure,
  'fetuses-reach': fetusesReach,
  'home-pressure': homePressure,
  proteinuria,
  'urine-tested': urineTested,
  'organ-involvement': organInvolvement,
  hellp,
  'symptom-present': symptomPresent,
  'condition-recorded': conditionRecorded,
  'laboratory-reaches': laboratoryReaches,
  'medicine-active': medicineActive,
};

/** Answers one question. The pairing of name and options is proved by the table's type. */
export function answerQuestion<K extends QuestionCheck['check']>(
  view: View,
  question: Extract<QuestionCheck, { check: K }> & { readonly check: K },
): Answer {
  return checks[question.check](view, question);
}

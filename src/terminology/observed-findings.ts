// Diagnoses that the terminology table lists as findings to be observed as well. Data only.
import { conditionCodes } from './condition-codes.ts';

/** An observation may say that they are there, or that they are not. */
export const observedFindings = ['placental-abruption', 'fetal-growth-restriction', 'fetal-death'] as const;

const observed: ReadonlySet<string> = new Set(observedFindings);

/** Their codes. */
export const observedFindingCodes = conditionCodes.filter(({ conditions }) =>
  conditions.some((condition) => observed.has(condition)),
);

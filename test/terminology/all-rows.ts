// Every code row the program holds, with its system, for the checks against the terminology table.
import type { SystemCode } from '../../src/terminology/code-row.ts';
import { conditionCodes } from '../../src/terminology/condition-codes.ts';
import { laboratoryCodes } from '../../src/terminology/laboratory-codes.ts';
import { loinc } from '../../src/terminology/loinc.ts';
import { medicineCodes } from '../../src/terminology/medicine-codes.ts';
import { presenceCodes } from '../../src/terminology/presence.ts';
import {
  pressureCodes,
  pressurePanelCodes,
  unusedPressureCodes,
} from '../../src/terminology/pressure-codes.ts';
import { familyRelations } from '../../src/terminology/relations.ts';
import { severityCodes, symptomHolderCodes } from '../../src/terminology/severity.ts';
import { snomed } from '../../src/terminology/snomed.ts';
import { stripCodes, stripFindingCodes } from '../../src/terminology/strip-grades.ts';
import {
  referralCodes,
  suggestedConditionCodes,
  suggestedReferralCodes,
  type SuggestedCodes,
} from '../../src/terminology/suggested-codes.ts';
import { symptomCodes } from '../../src/terminology/symptom-codes.ts';
import { systems } from '../../src/terminology/systems.ts';
import { urineProteinCodes, urineSignCodes } from '../../src/terminology/urine-codes.ts';

export interface CheckedRow extends SystemCode {
  readonly checkedAs?: string;
}

const suggested: readonly SuggestedCodes[] = Object.values(suggestedConditionCodes);

export const allRows: readonly CheckedRow[] = [
  ...Object.values(loinc).flatMap((rows) => rows.map((row) => ({ ...row, system: systems.loinc }))),
  ...Object.values(snomed).flatMap((rows) => rows.map((row) => ({ ...row, system: systems.snomed }))),
  ...pressureCodes,
  ...pressurePanelCodes,
  ...unusedPressureCodes,
  ...urineProteinCodes,
  ...urineSignCodes,
  ...laboratoryCodes,
  ...stripCodes,
  ...stripFindingCodes,
  ...presenceCodes,
  ...severityCodes,
  ...symptomHolderCodes,
  ...symptomCodes,
  ...conditionCodes,
  ...medicineCodes,
  ...familyRelations.codes,
  ...referralCodes,
  ...suggested.flatMap(({ codes, afterBirth }) => [...codes, ...(afterBirth ?? [])]),
  ...Object.values(suggestedReferralCodes).flat(),
];

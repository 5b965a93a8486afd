// Which texts make an Observation worth reading: every code and name that a reader of the timeline looks for.
import { laboratoryCodes } from '../terminology/laboratory-codes.ts';
import {
  birthObservationCodes,
  countCodes,
  datingCodes,
  pregnancyStatusCodes,
} from '../terminology/pregnancy-codes.ts';
import { observedFindingCodes } from '../terminology/observed-findings.ts';
import { pressureCodes, pressurePanelCodes, unusedPressureCodes } from '../terminology/pressure-codes.ts';
import { severityWordsBeforeNames, symptomHolders, symptomNameList } from './symptom-texts.ts';
import { stripFindingCodes } from '../terminology/strip-grades.ts';
import { symptomCodes } from '../terminology/symptom-codes.ts';
import { systems } from '../terminology/systems.ts';
import { urineProteinCodes, urineSignCodes } from '../terminology/urine-codes.ts';

export interface WantedStrings {
  /** The whole string, apart from case and from signs other than letters and digits. */
  readonly whole: readonly string[];
  /** How the string begins: codes of systems in which a longer code is a kind of the shorter one. */
  readonly beginnings: readonly string[];
}

const hierarchies: readonly string[] = [systems.icd10, systems.icd10cm, systems.icd11];
const isHierarchical = ({ system }: { readonly system: string }): boolean => hierarchies.includes(system);

/**
 * The texts by which an Observation is recognised.
 *
 * Given    localCodes  codes of a site that stand for one of ours; default none
 * Returns  every code the timeline looks for in `code` or `component.code`, the names of symptoms that count as
 *          text, and `entered-in-error`, because results derived from such a one fall with it
 * Throws   never
 * Notes    1. Codes of values (grades, severities) are not listed: they matter only under a listed code.
 * Source   the code tables of src/terminology
 */
export function wantedStrings(localCodes: readonly string[] = []): WantedStrings {
  const coded = [
    ...pressureCodes,
    ...pressurePanelCodes,
    ...unusedPressureCodes,
    ...datingCodes,
    ...countCodes,
    ...birthObservationCodes,
    ...pregnancyStatusCodes,
    ...urineProteinCodes,
    ...urineSignCodes,
    ...laboratoryCodes,
    ...stripFindingCodes,
    ...symptomHolders,
    ...symptomCodes,
    ...observedFindingCodes,
  ];
  const names = symptomNameList.flatMap((name) => [
    name,
    ...severityWordsBeforeNames.map((word) => `${word} ${name}`),
  ]);
  return {
    whole: [
      ...coded.filter((row) => !isHierarchical(row)).map(({ code }) => code),
      ...names,
      // The Kelvin sign is a `k` in lower case and no letter to a reader of bytes.
      ...names.map((name) => name.replaceAll('k', '')),
      ...localCodes,
      'entered-in-error',
    ],
    beginnings: coded.filter(isHierarchical).map(({ code }) => code),
  };
}

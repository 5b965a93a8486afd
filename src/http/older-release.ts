// Resources of an older FHIR release, recognised by their shape before they are misread as R4.
import { isObject } from './json-object.ts';

/** Types that R4 no longer has. */
const olderTypes: readonly string[] = [
  'ProcedureRequest',
  'ReferralRequest',
  'MedicationOrder',
  'DiagnosticOrder',
  'DeviceUseRequest',
  'DeviceUseStatement',
  'NutritionRequest',
  'EligibilityRequest',
];

/** Elements that are texts or lists in an older release and something else in R4. */
const olderElements: Readonly<Record<string, (resource: Readonly<Record<string, unknown>>) => boolean>> = {
  Condition: (resource) =>
    typeof resource['clinicalStatus'] === 'string' || typeof resource['verificationStatus'] === 'string',
  Observation: (resource) => resource['comments'] !== undefined || resource['related'] !== undefined,
  MedicationRequest: (resource) => isObject(resource['requester']) && 'agent' in resource['requester'],
  AllergyIntolerance: (resource) =>
    typeof resource['clinicalStatus'] === 'string' || typeof resource['verificationStatus'] === 'string',
};

/**
 * Is it written in DSTU2 or STU3?
 *
 * Given    resource   as sent
 * Returns  true for a type or an element that R4 does not have in that form; false when nothing speaks for it
 * Source   FHIR R4, changes from STU3 (from memory); checklist H-03
 */
export function isOfOlderRelease(resource: unknown): boolean {
  if (!isObject(resource) || typeof resource['resourceType'] !== 'string') return false;
  const type = resource['resourceType'];
  return olderTypes.includes(type) || olderElements[type]?.(resource) === true;
}

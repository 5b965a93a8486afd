// Is there anything in a resource that changes its meaning in a way we do not know (F-M01)?
import { isObject } from './json.ts';
import type { ResourceJson } from './json.ts';
import type { Reason } from './ledger.ts';

/** An element that may carry a modifier extension, and its own elements that may. */
interface Element {
  readonly name: string;
  readonly within?: readonly Element[];
}

const named = (...names: readonly string[]): readonly Element[] => names.map((name) => ({ name }));
const timing = (name: string): Element => ({ name, within: named('repeat') });
const dosage: readonly Element[] = [timing('timing'), { name: 'doseAndRate' }];
/** Not allowed on these by the standard; where it is sent all the same it is honoured. */
const odd = named('code', 'valueQuantity', 'valueCodeableConcept');

/**
 * Elements of the types that are read which may carry a modifier extension.
 *
 * Source   FHIR R4 4.0.1 JSON schema: the definitions that have modifierExtension
 */
const MODIFIABLE: ReadonlyMap<string, readonly Element[]> = new Map([
  ['Patient', named('contact', 'communication', 'link')],
  [
    'Observation',
    [
      ...odd,
      timing('effectiveTiming'),
      { name: 'referenceRange' },
      { name: 'component', within: [...odd, { name: 'referenceRange' }] },
    ],
  ],
  ['Condition', named('code', 'stage', 'evidence')],
  ['MedicationStatement', [{ name: 'dosage', within: dosage }]],
  [
    'MedicationRequest',
    [
      { name: 'dosageInstruction', within: dosage },
      { name: 'dispenseRequest', within: named('initialFill') },
      { name: 'substitution' },
    ],
  ],
  ['MedicationAdministration', named('performer', 'dosage')],
  ['ServiceRequest', [{ name: 'code' }, timing('occurrenceTiming')]],
  ['Medication', named('ingredient', 'batch')],
  ['Procedure', named('code', 'performer', 'focalDevice')],
  [
    'Encounter',
    named('statusHistory', 'classHistory', 'participant', 'diagnosis', 'hospitalization', 'location'),
  ],
  ['Specimen', named('collection', 'processing', 'container')],
  ['Device', named('udiCarrier', 'deviceName', 'specialization', 'version', 'property')],
  ['AllergyIntolerance', named('reaction')],
  ['FamilyMemberHistory', named('condition')],
]);
const NO_ELEMENTS: readonly Element[] = [];

/**
 * Does a resource carry a modifier extension or a rule set we do not know?
 *
 * Given    resource  any; of a type that is not read only its top is looked at
 * Returns  undefined when it carries none; else the reason, naming the element
 * Throws   never
 * Notes    1. No modifier extension and no rule set is known, so that any of them excludes the resource.
 *          2. `contained` is looked at when a reference into it is followed, not here.
 * Source   FHIR R4 4.0.1, Extensibility and Resource.implicitRules; fhir.md F-M01
 */
export function unknownModifier(resource: ResourceJson): Reason | undefined {
  if (resource.implicitRules !== undefined) return reasonFor('implicitRules');
  const element = modifierIn(resource, MODIFIABLE.get(resource.resourceType) ?? NO_ELEMENTS);
  return element === undefined ? undefined : reasonFor(element);
}

function modifierIn(value: unknown, elements: readonly Element[]): string | undefined {
  if (!isObject(value)) return undefined;
  if (isFilled(value.modifierExtension)) return 'modifierExtension';
  for (const element of elements) {
    const member = value[element.name];
    if (member === undefined) continue;
    const found = modifierInMember(member, element.within ?? NO_ELEMENTS);
    if (found !== undefined) return `${element.name}${found}`;
  }
  return undefined;
}

function modifierInMember(member: unknown, elements: readonly Element[]): string | undefined {
  if (!Array.isArray(member)) {
    const found = modifierIn(member, elements);
    return found === undefined ? undefined : `.${found}`;
  }
  for (let at = 0; at < member.length; at++) {
    const found = modifierIn(member[at], elements);
    if (found !== undefined) return `[${at}].${found}`;
  }
  return undefined;
}

function isFilled(value: unknown): boolean {
  return value !== undefined && value !== null && !(Array.isArray(value) && value.length === 0);
}

function reasonFor(element: string): Reason {
  const message = `${element} may change the meaning and is not known here: send the resource without it if it may be read plainly.`;
  return { code: 'modifier-not-understood', element, message };
}

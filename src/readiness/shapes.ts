// In which shape was a resource sent? Words for the readiness check; looks at the form only.
import { observationKindOf } from '../timeline/observation-kind.ts';
import { fieldsOf, listOf, textOf, codingsOf, type Fields } from '../timeline/fields.ts';

export interface Shape {
  readonly element: string;
  readonly shape: string;
}

const elementOfKind = {
  pressure: 'blood pressure',
  'pressure-circumstance': 'how a blood pressure was taken',
  dating: 'gestational age',
  birth: 'birth',
  count: 'gravidity and parity',
  'pregnancy-status': 'pregnancy status',
  'urine-protein': 'urine protein',
  'urine-sign': 'urine, other signs',
  laboratory: 'laboratory',
  symptom: 'symptoms',
  finding: 'conditions',
} as const;

const elementOfType: Readonly<Record<string, string>> = {
  Condition: 'conditions',
  AllergyIntolerance: 'conditions',
  FamilyMemberHistory: 'conditions',
  MedicationStatement: 'medicines',
  MedicationRequest: 'medicines',
  MedicationAdministration: 'medicines',
  ServiceRequest: 'referrals',
  Encounter: 'contacts',
  Procedure: 'birth',
};

/** The element a resource belongs to and its shape; undefined for what no rule asks for. */
export function shapeOf(resource: unknown): Shape | undefined {
  const fields = fieldsOf(resource);
  const type = textOf(fields['resourceType']) ?? '';
  if (type !== 'Observation') {
    const element = elementOfType[type];
    return element === undefined ? undefined : { element, shape: type };
  }
  const kind = observationKindOf(fields);
  if (kind === undefined) return undefined;
  const shape = kind === 'pressure' ? pressureShape(fields) : valueShape(fields);
  return { element: elementOfKind[kind], shape };
}

function pressureShape(fields: Fields): string {
  if (listOf(fields['hasMember']).length > 0) return 'panel with hasMember';
  const parts = listOf(fields['component']);
  if (parts.length > 0)
    return `panel with ${parts.length} components, ${unitsOf(parts.map((part) => part['valueQuantity']))}`;
  if (fields['valueString'] !== undefined) return 'both halves as one text';
  return `stand-alone half, ${unitsOf([fields['valueQuantity']])}`;
}

function unitsOf(quantities: readonly unknown[]): string {
  return [...new Set(quantities.map(unitOf))].sort().join(' and ');
}

function unitOf(quantity: unknown): string {
  const { code, unit, system } = fieldsOf(quantity);
  if (textOf(code) !== undefined)
    return system === 'http://unitsofmeasure.org'
      ? `UCUM ${String(code)}`
      : `unit code ${String(code)} without UCUM`;
  return textOf(unit) === undefined ? 'no unit' : `unit text ${String(unit)}`;
}

const systemNames: Readonly<Record<string, string>> = {
  'http://loinc.org': 'LOINC',
  'http://snomed.info/sct': 'SNOMED CT',
};

function valueShape(fields: Fields): string {
  const name = Object.keys(fields).find((key) => /^value[A-Z]/.test(key));
  if (name === undefined) return listOf(fields['component']).length > 0 ? 'components' : 'no value';
  if (name === 'valueQuantity') return `quantity, ${unitOf(fields[name])}`;
  if (name !== 'valueCodeableConcept') return name.replace(/^value/, '').toLowerCase();
  const system = codingsOf(fields[name])[0]?.system;
  return system === undefined ? 'text without a code' : `code of ${systemNames[system] ?? system}`;
}

// Each hand-written look into a resource against the same look written in FHIRPath.
import fhirpath from 'fhirpath';
import model from 'fhirpath/fhir-context/r4';
import { describe, expect, it } from 'vitest';
import { readValue } from '../../src/timeline/coded-value.ts';
import { codingsOf, fieldsOf, listOf } from '../../src/timeline/fields.ts';
import { readQuantity } from '../../src/timeline/quantity.ts';

const loinc = 'http://loinc.org';
const snomed = 'http://snomed.info/sct';

const samples: readonly Readonly<Record<string, unknown>>[] = [
  {
    resourceType: 'Observation',
    status: 'final',
    code: { coding: [{ system: loinc, code: '777-3' }] },
    effectiveDateTime: '2025-03-10T09:00:00Z',
    valueQuantity: { value: 132.5, unit: '10*9/L', system: 'http://unitsofmeasure.org', code: '10*9/L' },
  },
  {
    resourceType: 'Observation',
    status: 'preliminary',
    code: {
      coding: [
        { system: loinc, code: '85354-9' },
        { system: snomed, code: '75367002' },
      ],
    },
    effectivePeriod: { start: '2025-03-10T09:00:00+05:30', end: '2025-03-10T09:05:00+05:30' },
    component: [
      {
        code: { coding: [{ system: loinc, code: '8462-4' }] },
        valueQuantity: { value: 114.96244492813044, unit: 'mmHg' },
      },
      { code: { coding: [{ system: loinc, code: '8480-6' }] }, valueQuantity: { value: 169, unit: 'mmHg' } },
    ],
  },
  {
    resourceType: 'Observation',
    status: 'amended',
    code: { coding: [{ system: loinc, code: '20454-5' }], text: 'Urine protein' },
    effectiveDateTime: '2025-03',
    valueCodeableConcept: { coding: [{ system: snomed, code: '167277001' }] },
  },
  {
    resourceType: 'Observation',
    status: 'final',
    code: { text: 'headache' },
    effectiveInstant: '2025-03-10T09:00:00.000Z',
    valueBoolean: false,
  },
  { resourceType: 'Observation', status: 'cancelled', code: { coding: [{ display: 'no code' }] } },
];

const path = (resource: unknown, expression: string): unknown[] => {
  const found: unknown = fhirpath.evaluate(resource, expression, undefined, model);
  return Array.isArray(found) ? found.map(String) : [];
};

const codesOf = (concept: unknown): string[] => codingsOf(concept).flatMap(({ code }) => code ?? []);
const systemsOf = (concept: unknown): string[] => codingsOf(concept).flatMap(({ system }) => system ?? []);
const present = (values: readonly unknown[]): string[] =>
  values.filter((value) => value !== undefined).map(String);

describe.each(samples.map((resource, position) => ({ resource, position })))(
  'sample $position',
  ({ resource }) => {
    it('status, time and codes', () => {
      expect(present([resource['status']])).toEqual(path(resource, 'Observation.status'));
      const times = [
        resource['effectiveDateTime'],
        resource['effectiveInstant'],
        fieldsOf(resource['effectivePeriod'])['start'],
      ];
      expect(present(times)).toEqual(
        path(
          resource,
          'Observation.effective.ofType(dateTime) | Observation.effective.ofType(instant) | Observation.effective.start',
        ),
      );
      expect(codesOf(resource['code'])).toEqual(path(resource, 'Observation.code.coding.code'));
      expect(systemsOf(resource['code'])).toEqual(path(resource, 'Observation.code.coding.system'));
    });

    it('the sole value', () => {
      const sole = readValue(resource);
      expect(sole.kind === 'usable').toBe(path(resource, 'Observation.value').length > 0);
      const codes = sole.kind === 'usable' && sole.name === 'valueCodeableConcept' ? codesOf(sole.value) : [];
      expect(codes).toEqual(path(resource, 'Observation.value.ofType(CodeableConcept).coding.code'));
      const truth = sole.kind === 'usable' && sole.name === 'valueBoolean' ? [String(sole.value)] : [];
      expect(truth).toEqual(path(resource, 'Observation.value.ofType(boolean)'));
    });

    it('the number of a quantity, as sent', () => {
      const read = readQuantity(resource['valueQuantity'], 'platelets');
      expect(read.kind === 'usable' ? [String(read.byUnit.values[read.byUnit.sentUnit])] : []).toEqual(
        path(resource, 'Observation.value.ofType(Quantity).value'),
      );
    });

    it('components, their codes and numbers', () => {
      const components = listOf(resource['component']);
      expect(components.flatMap((component) => codesOf(component['code']))).toEqual(
        path(resource, 'Observation.component.code.coding.code'),
      );
      const numbers = components.flatMap((component) => {
        const read = readQuantity(component['valueQuantity'], 'pressure');
        return read.kind === 'usable' ? [String(read.measured.value)] : [];
      });
      expect(numbers).toEqual(path(resource, 'Observation.component.value.ofType(Quantity).value'));
    });
  },
);

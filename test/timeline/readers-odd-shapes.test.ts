// No shape of an element makes a reader throw: one odd entry never ends a run.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAllergy, readConditions, readFamilyHistory } from '../../src/timeline/conditions.ts';
import { readLaboratory } from '../../src/timeline/laboratory.ts';
import { readMedicines } from '../../src/timeline/medicines.ts';
import { readRequest } from '../../src/timeline/requests.ts';
import { readSymptoms, readSymptomsOfCondition } from '../../src/timeline/symptoms.ts';
import { readUrineProtein, readUrineSign } from '../../src/timeline/urine-protein.ts';
import { at, contextWith, received } from './received.ts';

const loinc = 'http://loinc.org';
const snomed = 'http://snomed.info/sct';
const knownCodes = [
  [loinc, '777-3'],
  [loinc, '20454-5'],
  [loinc, '2890-2'],
  [loinc, '5802-4'],
  [loinc, '75325-1'],
  [snomed, '25064002'],
  [snomed, '398254007'],
  [snomed, '7947003'],
] as const;

const code = fc.oneof(
  fc.constantFrom(...knownCodes).map(([system, value]) => ({ coding: [{ system, code: value }] })),
  fc.anything(),
);
const odd = fc.dictionary(
  fc.constantFrom(
    'valueQuantity',
    'valueString',
    'valueCodeableConcept',
    'valueBoolean',
    'interpretation',
    'component',
    'note',
    'referenceRange',
    'specimen',
    'clinicalStatus',
    'verificationStatus',
    'severity',
    'onsetDateTime',
    'abatementDateTime',
    'medicationCodeableConcept',
    'medicationReference',
    'dosage',
    'dosageInstruction',
    'dispenseRequest',
    'effectivePeriod',
    'status',
    'intent',
    'relationship',
    'condition',
    'reaction',
    'authoredOn',
  ),
  fc.oneof(fc.anything(), code, fc.string()),
);

describe('odd shapes', () => {
  it('give a result or a reason, never an exception', () => {
    fc.assert(
      fc.property(code, odd, (named, fields) => {
        const context = contextWith();
        const resource: never = JSON.parse(JSON.stringify({ ...fields, code: named })) as never;
        const one = received<never>(resource);
        const results = [
          readLaboratory(one, context, at),
          readUrineProtein(one, context, at),
          readUrineSign(one, context, at),
          readSymptoms(one, context, at),
          readSymptomsOfCondition(one, context),
          readConditions(one, context),
          readAllergy(one, context),
          readFamilyHistory(one, context),
          readMedicines(one, context),
          readRequest(one, context),
        ];
        expect(results).not.toContain(undefined);
      }),
      { numRuns: 2000 },
    );
  });
});

// F-J01: each line of fhir.md section 13 "passes although wrong" is an error in strict and seen in lenient.
import { describe, expect, it } from 'vitest';
import { validateStrict } from '../../../src/bundle/strict/validate-strict.ts';
import { evaluate } from '../../../src/evaluate.ts';
import { receive, withReception } from '../../../src/receive.ts';
import { RequestError } from '../../../src/errors.ts';
import { bundle, half, patient, pressure, type Json } from '../make.ts';

const asOf = '2026-02-02T00:00:00Z';
const at = 'Bundle.entry[1].resource';
const withObservation = (more: Json): Json => bundle([patient(), pressure('o', more)]);
const errors = (input: unknown): readonly string[] =>
  validateStrict(input)
    .filter(({ severity }) => severity === 'error')
    .map(({ code, type, expression }) => `${code}/${type} ${expression}`);

const condition = (more: Json): Json =>
  bundle([
    patient(),
    { resourceType: 'Condition', id: 'c', subject: { reference: 'Patient/1' }, code: { text: 'x' }, ...more },
  ]);

/** What was sent, the error of strict, and the codes lenient gives (set aside, or issue). */
const passesAlthoughWrong: readonly (readonly [string, Json, string, readonly string[]])[] = [
  [
    'an Observation without status',
    withObservation({ status: undefined }),
    `required/required ${at}.status`,
    ['status-missing'],
  ],
  [
    'a Bundle without type',
    { ...withObservation({}), type: undefined },
    'required/required Bundle.type',
    ['bundle-type-missing'],
  ],
  [
    'a ServiceRequest without status and intent',
    bundle([
      patient(),
      { resourceType: 'ServiceRequest', id: 's', subject: { reference: 'Patient/1' }, code: { text: 'x' } },
    ]),
    `required/required ${at}.status`,
    [],
  ],
  [
    'two values',
    withObservation({ component: undefined, valueString: '152/98', valueInteger: 152 }),
    `choice/structure ${at}.valueInteger`,
    ['value-ambiguous', 'choice'],
  ],
  [
    'two effective times',
    withObservation({ effectivePeriod: { start: '2026-01-01' } }),
    `choice/structure ${at}.effectivePeriod`,
    ['time-invalid', 'choice'],
  ],
  [
    'obs-6 broken',
    withObservation({ component: undefined, valueString: '152/98', dataAbsentReason: { text: 'x' } }),
    `obs-6/invariant ${at}.dataAbsentReason`,
    ['value-ambiguous', 'obs-6'],
  ],
  [
    'obs-7 broken',
    withObservation({
      code: { coding: [{ system: 'http://loinc.org', code: '8480-6' }] },
      valueQuantity: { value: 152, unit: 'mmHg', system: 'http://unitsofmeasure.org', code: 'mm[Hg]' },
      component: [half('8480-6', 152)],
    }),
    `obs-7/invariant ${at}.component`,
    ['component-repeats-value'],
  ],
  ['bdl-1 broken', { ...withObservation({}), total: 2 }, 'bdl-1/invariant Bundle.total', ['bdl-1']],
  [
    'bdl-3 broken',
    { ...withObservation({}), type: 'transaction' },
    'bdl-3/invariant Bundle.entry[0].request',
    ['bdl-3'],
  ],
  [
    'con-3 broken: entered in error and active (con-5)',
    condition({
      clinicalStatus: {
        coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-clinical', code: 'active' }],
      },
      verificationStatus: {
        coding: [
          { system: 'http://terminology.hl7.org/CodeSystem/condition-ver-status', code: 'entered-in-error' },
        ],
      },
    }),
    `con-5/invariant ${at}.clinicalStatus`,
    ['entered-in-error'],
  ],
  [
    '31 February',
    withObservation({ effectiveDateTime: '2026-02-31' }),
    `no-such-day/value ${at}.effectiveDateTime`,
    ['time-invalid'],
  ],
  [
    'a subject that is a Medication',
    withObservation({ subject: { reference: 'Medication/1' } }),
    `reference-type/value ${at}.subject.reference`,
    ['other-subject'],
  ],
  [
    'an empty reference',
    withObservation({ subject: {} }),
    `empty/structure ${at}.subject`,
    ['subject-adopted'],
  ],
  [
    'a dangling reference',
    bundle([patient(), pressure('o', { subject: { reference: 'urn:uuid:0' } }), pressure('p')]),
    `reference-unresolved/not-found ${at}.subject.reference`,
    ['other-subject'],
  ],
  [
    'a bogus clinicalStatus',
    condition({
      clinicalStatus: {
        coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-clinical', code: 'bogus' }],
      },
    }),
    `code-invalid/code-invalid ${at}.clinicalStatus`,
    ['code-invalid'],
  ],
  ['an empty list', withObservation({ component: [] }), `empty/structure ${at}.component`, ['value-missing']],
  [
    'contained inside contained',
    withObservation({
      contained: [{ resourceType: 'Device', id: 'd', contained: [{ resourceType: 'Device' }] }],
    }),
    `dom-2/invariant ${at}.contained[0].contained`,
    // Nothing is ever read from there: it cannot change an answer.
    [],
  ],
];

function lenientCodes(input: unknown): readonly string[] {
  const received = receive(input, { isStrict: false });
  const { account } = withReception(evaluate(received.input, { asOf, subject: 'Patient/1' }), received);
  const aside = account.entries.flatMap((entry) => (entry.outcome === 'set-aside' ? [entry.code] : []));
  return [...aside, ...account.issues.map(({ code }) => code)];
}

describe('F-J01: what the schema lets pass', () => {
  it.each(passesAlthoughWrong)('%s is an error in strict', (_what, input, expected) => {
    expect(errors(JSON.parse(JSON.stringify(input)))).toContain(expected);
  });

  it.each(passesAlthoughWrong)(
    '%s is named in lenient, and the rest is evaluated',
    (_what, input, _strict, codes) => {
      expect(lenientCodes(JSON.parse(JSON.stringify(input)))).toEqual(expect.arrayContaining([...codes]));
    },
  );

  it('a sound bundle has no fault', () => {
    expect(validateStrict(JSON.parse(JSON.stringify(withObservation({}))))).toEqual([]);
  });

  it('strict refuses the request and names everything: 400 for broken form, 422 for broken rules only', () => {
    const refusal = (input: unknown): readonly [number, number] | undefined => {
      try {
        receive(JSON.parse(JSON.stringify(input)), { isStrict: true });
        return undefined;
      } catch (error) {
        return error instanceof RequestError ? [error.status, error.issues.length] : undefined;
      }
    };
    expect(
      refusal(
        bundle([pressure('a', { status: undefined }), pressure('b', { effectiveDateTime: '2026-02-31' })]),
      ),
    ).toEqual([400, 2]);
    expect(refusal({ ...withObservation({}), total: 2 })).toEqual([422, 1]);
    expect(refusal(withObservation({}))).toBeUndefined();
  });

  it('F-H05: null paired with an extension is legal in a list of primitives', () => {
    const absent = {
      extension: [{ url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason', valueCode: 'masked' }],
    };
    const name = [{ given: [null, 'Ada'], _given: [absent, null] }];
    expect(errors(bundle([patient('1', { name })]))).toEqual([]);
    expect(errors(bundle([patient('1', { name: [{ given: [null, 'Ada'] }] })]))).toHaveLength(1);
  });

  it('QUIRKS: a time without a zone and an underscore in an id are warnings, not errors', () => {
    const issues = validateStrict(
      JSON.parse(JSON.stringify(withObservation({ id: 'a_b', effectiveDateTime: '2026-02-01T10:00' }))),
    );
    expect(issues.map(({ severity, code }) => `${severity} ${code}`)).toEqual([
      'warning id-odd',
      'warning time-incomplete',
    ]);
  });

  it('names every fault of one resource, though the schema stops at the first', () => {
    const found = errors(
      JSON.parse(
        JSON.stringify(
          withObservation({
            foo: 1,
            status: 'done',
            component: [{ ...half('8480-6', 150), valueQuantity: 'x' }, { bar: 1 }],
          }),
        ),
      ),
    );
    expect(found).toEqual(
      expect.arrayContaining([
        `unknown-element/structure ${at}.foo`,
        `code-invalid/code-invalid ${at}.status`,
        `wrong-type/structure ${at}.component[0].valueQuantity`,
        `unknown-element/structure ${at}.component[1].bar`,
      ]),
    );
  });

  it('a contained resource in a contained one costs no more than any other fault', () => {
    let deep: Json = { resourceType: 'Patient', id: 'x' };
    for (let level = 0; level < 20; level += 1)
      deep = { resourceType: 'Patient', id: 'x', contained: [deep] };
    const started = performance.now();
    expect(errors(withObservation({ contained: [deep] })).length).toBeGreaterThan(0);
    expect(performance.now() - started).toBeLessThan(1000);
  });
});

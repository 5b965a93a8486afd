// Rows F-B14, F-R08, F-R12 and F-P11 of the FHIR checklist: whom the resources are about.
import { describe, expect, it } from 'vitest';
import { readBundle, subjectsOf } from '../../src/bundle/read-bundle.ts';
import { RequestError } from '../../src/errors.ts';
import {
  bundle,
  entries,
  issueCodes,
  laboratory,
  patient,
  pressure,
  read,
  setAsideOf,
  usableOf,
} from './make.ts';

const of = (reference: string) => ({ subject: { reference } });
const weight = (id: string, reference: string) => laboratory(id, '29463-7', of(reference));

function ambiguity(input: unknown): RequestError | undefined {
  try {
    readBundle(input, {});
  } catch (error) {
    if (error instanceof RequestError) return error;
    throw error;
  }
  return undefined;
}

describe('which woman', () => {
  it.each(['Patient/2', '2', 'https://ehr.example.org/fhir/Patient/2', 'Patient/2/_history/4'])(
    'the one asked for: %s',
    (subject) => {
      const input = bundle([patient('1'), patient('2'), pressure('a'), pressure('b', of('Patient/2'))]);
      const result = readBundle(input, { subject });
      expect(result.subject).toBe('Patient/2');
      expect(result.patient?.reference).toBe('Patient/2');
      expect(usableOf(result)).toEqual(['Patient/2', 'Observation/b']);
      expect(setAsideOf(result)).toEqual(['Observation/a other-subject']);
      expect(result.notNeeded.map(({ reference, why }) => `${reference}: ${why}`)).toEqual([
        'Patient/1: another person',
      ]);
    },
  );

  it('the only Patient; what is about others is set aside', () => {
    const result = read(
      patient('1'),
      pressure('a'),
      pressure('b', of('Patient/9')),
      pressure('c', of('Group/1')),
    );
    expect(usableOf(result)).toEqual(['Patient/1', 'Observation/a']);
    expect(setAsideOf(result)).toEqual(['Observation/b other-subject', 'Observation/c other-subject']);
  });

  it('of several the only one with pressures or pregnancy data: a newborn does not confuse', () => {
    const input = [patient('newborn'), patient('1'), weight('w', 'Patient/newborn'), pressure('a')];
    for (const order of [input, [...input].reverse()]) {
      expect(readBundle(bundle(order), {}).subject).toBe('Patient/1');
      expect(subjectsOf(bundle(order))).toEqual(['Patient/1']);
    }
  });

  it('without a Patient the only one named', () => {
    expect(read(pressure('a'), weight('w', 'Patient/1')).subject).toBe('Patient/1');
    expect(read(pressure('a')).patient).toBeUndefined();
    expect(read({ resourceType: 'Encounter', id: 'e', status: 'finished', ...of('Patient/1') }).subject).toBe(
      'Patient/1',
    );
  });

  it('F-B14 several women: 422 business-rule, asking for the name; each can be listed', () => {
    const input = bundle([
      patient('2'),
      patient('1'),
      pressure('a'),
      pressure('b', of('Patient/2')),
      weight('w', 'Patient/3'),
    ]);
    const failure = ambiguity(input);
    expect(failure?.status).toBe(422);
    expect(failure?.issues).toMatchObject([{ severity: 'error', type: 'business-rule' }]);
    expect(failure?.message).toContain('subject');
    expect(subjectsOf(input)).toEqual(['Patient/1', 'Patient/2', 'Patient/3']);
  });

  it('nobody at all: no subject', () => {
    expect(read().subject).toBeUndefined();
    expect(subjectsOf(bundle([]))).toEqual([]);
  });
});

describe('one person, many spellings', () => {
  const identifier = { system: 'https://id.example.org', value: '19' };
  const woman = patient('1', { identifier: [identifier] });
  it.each([
    ['relative', { reference: 'Patient/1' }],
    ['versioned', { reference: 'Patient/1/_history/2' }],
    ['absolute', { reference: 'https://ehr.example.org/fhir/Patient/1' }],
    ['http for https', { reference: 'http://ehr.example.org/fhir/Patient/1' }],
    ['with a display', { reference: 'Patient/1', display: 'x' }],
    ['F-R08 logical', { identifier }],
    ['conditional', { reference: 'Patient?identifier=https://id.example.org|19' }],
  ])('%s', (_how, subject) => {
    const entry = { fullUrl: 'https://ehr.example.org/fhir/Patient/1', resource: woman };
    const result = readBundle(entries({ resource: pressure('a', { subject }) }, entry), {});
    expect(usableOf(result)).toEqual(['Observation/a', 'Patient/1']);
  });

  it('urn:uuid', () => {
    const result = readBundle(
      entries(
        { fullUrl: 'urn:uuid:7', resource: patient('x') },
        { resource: pressure('a', of('urn:uuid:7')) },
      ),
      {},
    );
    expect(result.subject).toBe('Patient/x');
    expect(usableOf(result)).toEqual(['Patient/x', 'Observation/a']);
  });

  it('contained, by its identifier or by its content', () => {
    const contained = (person: object) => ({
      contained: [{ resourceType: 'Patient', id: 'p', ...person }],
      ...of('#p'),
    });
    expect(usableOf(read(woman, pressure('a', contained({ identifier: [identifier] }))))).toEqual([
      'Patient/1',
      'Observation/a',
    ]);
    const twice = read(
      pressure('a', contained({ birthDate: '1998-01-01' })),
      pressure('b', { ...contained({ birthDate: '1998-01-01' }), effectiveDateTime: '2026-02-02' }),
    );
    expect(twice.usable).toHaveLength(2);
    const other = pressure('b', contained({ birthDate: '1999-01-01' }));
    expect(ambiguity(bundle([pressure('a', contained({ birthDate: '1998-01-01' })), other]))?.status).toBe(
      422,
    );
  });

  it('one id on two servers is two persons', () => {
    const entry = (server: string) => ({ fullUrl: `https://${server}/Patient/1`, resource: patient('1') });
    const first = { fullUrl: 'https://one.example.org/Observation/a', resource: pressure('a') };
    const second = { fullUrl: 'https://two.example.org/Observation/b', resource: pressure('b') };
    const input = entries(entry('one.example.org'), entry('two.example.org'), first, second);
    const result = readBundle(input, { subject: 'https://two.example.org/Patient/1' });
    expect(usableOf(result)).toEqual(['Patient/1', 'Observation/b']);
    expect(setAsideOf(result)).toEqual(['Observation/a other-subject']);
  });
});

describe('F-R12 no subject', () => {
  const nameless = pressure('a', { subject: undefined });

  it('is hers when she is the only Patient, with a warning', () => {
    const result = read(
      patient(),
      nameless,
      pressure('b', { subject: { display: 'her' }, effectiveDateTime: '2026-02-02' }),
    );
    expect(result.usable).toHaveLength(3);
    expect(issueCodes(result)).toEqual(['subject-adopted', 'subject-adopted']);
    expect(result.issues).toMatchObject([
      { severity: 'warning', expression: 'Bundle.entry[1].resource.subject' },
      {},
    ]);
  });

  it('is hers when nothing names anybody', () => {
    expect(usableOf(read(nameless))).toEqual(['Observation/a']);
    expect(usableOf(readBundle(nameless, { subject: 'Patient/1' }))).toEqual(['Observation/a']);
  });

  it('is set aside otherwise', () => {
    const later = pressure('b', { effectiveDateTime: '2026-02-02' });
    expect(setAsideOf(read(nameless, later))).toEqual(['Observation/a subject-missing']);
    expect(setAsideOf(readBundle(bundle([patient('1'), patient('2'), nameless, later]), {}))).toEqual([
      'Observation/a subject-missing',
    ]);
  });

  it.each([['Patient/1'], [['Patient/1']], [{ reference: 5 }], [null]])(
    'a subject of the wrong JSON type (%j) is malformed',
    (subject) => {
      expect(setAsideOf(read(patient(), pressure('a', { subject })))).toEqual(['Observation/a malformed']);
    },
  );

  it('is no fault of a Medication, a Device or a Specimen', () => {
    const things = ['Medication', 'Device', 'Specimen'].map((resourceType) => ({ resourceType, id: 'x' }));
    expect(usableOf(read(pressure('a'), ...things))).toEqual([
      'Observation/a',
      'Medication/x',
      'Device/x',
      'Specimen/x',
    ]);
  });
});

describe('F-P11 focus', () => {
  it.each([
    [[{ reference: 'Patient/fetus' }]],
    [[{ display: 'fetus' }]],
    [{ reference: 'Patient/fetus' }],
    [[{ reference: 'Patient/1' }, { reference: 'Device/1' }]],
  ])('%j is not the mother', (focus) => {
    const result = read(patient(), pressure('a', { focus }));
    expect(result.setAside).toMatchObject([
      { code: 'not-the-mother', expression: 'Bundle.entry[1].resource.focus' },
    ]);
  });

  it.each([[[{ reference: 'Patient/1' }]], [[]]])('%j is used', (focus) => {
    expect(usableOf(read(patient(), pressure('a', { focus })))).toEqual(['Patient/1', 'Observation/a']);
  });
});

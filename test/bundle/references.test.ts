// Rows F-R01 to F-R12 of the FHIR checklist: following references inside the input.
import { describe, expect, it } from 'vitest';
import { readBundle } from '../../src/bundle/read-bundle.ts';
import type { ReadBundle } from '../../src/bundle/read-bundle-types.ts';
import { entries, laboratory, patient, pressure, read } from './make.ts';
import type { Json } from './make.ts';

const encounter = (id: string, more: Json = {}): Json => ({
  resourceType: 'Encounter',
  id,
  status: 'finished',
  subject: { reference: 'Patient/1' },
  ...more,
});

/** Where a reference leads from the first usable resource. */
function target(result: ReadBundle, reference: unknown): string | undefined {
  const [from] = result.usable;
  return from === undefined ? undefined : result.resolve(reference, from)?.path;
}

const SECOND = 'Bundle.entry[1].resource';

describe('literal references', () => {
  it('F-R01, F-R02 a relative one belongs to the server of its holder', () => {
    const result = readBundle(
      entries(
        { fullUrl: 'https://one.example.org/fhir/Observation/a', resource: pressure('a') },
        { fullUrl: 'https://one.example.org/fhir/Encounter/e', resource: encounter('e') },
        {
          fullUrl: 'https://two.example.org/fhir/Encounter/e',
          resource: encounter('e', { status: 'planned' }),
        },
      ),
      {},
    );
    expect(target(result, { reference: 'Encounter/e' })).toBe(SECOND);
    expect(target(result, { reference: 'https://two.example.org/fhir/Encounter/e' })).toBe(
      'Bundle.entry[2].resource',
    );
  });

  it('F-R03 a relative one from a holder known by urn:uuid is found by Type/id, if only one fits', () => {
    const result = readBundle(
      entries(
        { fullUrl: 'urn:uuid:1', resource: pressure('a') },
        { fullUrl: 'urn:uuid:2', resource: encounter('e') },
      ),
      {},
    );
    expect(target(result, { reference: 'Encounter/e' })).toBe(SECOND);
    expect(target(result, { reference: 'Encounter/f' })).toBeUndefined();
  });

  it.each([
    ['F-R04', 'https://ehr.example.org:8443/fhir/Encounter/e', SECOND],
    ['F-R04 scheme and host in any case', 'HTTPS://EHR.example.org:8443/fhir/Encounter/e', SECOND],
    ['F-R04 the path keeps its case', 'https://ehr.example.org:8443/FHIR/Encounter/e', undefined],
    ['F-R05 versioned', 'https://ehr.example.org:8443/fhir/Encounter/e/_history/3', SECOND],
    ['F-R05 versioned and relative', 'Encounter/e/_history/3', SECOND],
    ['F-R09 http for https', 'http://ehr.example.org:8443/fhir/Encounter/e', SECOND],
    ['F-R09 another port', 'https://ehr.example.org/fhir/Encounter/e', undefined],
    ['F-R10 another server', 'https://other.example.org/fhir/Encounter/e', undefined],
  ])('%s: %s', (_row, reference, path) => {
    const result = readBundle(
      entries(
        { fullUrl: 'https://ehr.example.org:8443/fhir/Observation/a', resource: pressure('a') },
        { fullUrl: 'https://ehr.example.org:8443/fhir/Encounter/e', resource: encounter('e') },
      ),
      {},
    );
    expect(target(result, { reference })).toBe(path);
  });

  it('F-R04 urn:uuid and urn:oid match exactly', () => {
    const result = readBundle(
      entries(
        { resource: pressure('a') },
        { fullUrl: 'urn:uuid:ab', resource: encounter('e') },
        { fullUrl: 'urn:oid:1.2', resource: encounter('f') },
      ),
      {},
    );
    expect(target(result, { reference: 'urn:uuid:ab' })).toBe(SECOND);
    expect(target(result, { reference: 'urn:oid:1.2' })).toBe('Bundle.entry[2].resource');
    expect(target(result, { reference: 'urn:uuid:AB' })).toBeUndefined();
  });

  it('F-R06 more than one match is no match', () => {
    const result = readBundle(
      entries(
        { resource: pressure('a') },
        { fullUrl: 'urn:uuid:2', resource: encounter('e') },
        { fullUrl: 'urn:uuid:2', resource: encounter('f') },
      ),
      {},
    );
    expect(target(result, { reference: 'urn:uuid:2' })).toBeUndefined();
  });

  it('leads to the version or the copy that was kept', () => {
    const result = read(
      pressure('panel', { effectiveDateTime: '2026-03-01', hasMember: [] }),
      laboratory('x', '777-3', { meta: { versionId: '1' } }),
      laboratory('x', '777-3', { meta: { versionId: '2' }, status: 'corrected' }),
      laboratory('w', '777-3'),
    );
    expect(target(result, { reference: 'Observation/x/_history/1' })).toBe('Bundle.entry[3].resource');
  });

  it('never leads to a resource that was set aside', () => {
    const result = read(
      pressure('panel'),
      laboratory('x', '777-3', { status: 'entered-in-error' }),
      encounter('e', { status: 'cancelled' }),
    );
    expect(target(result, { reference: 'Observation/x' })).toBeUndefined();
    expect(target(result, { reference: 'Encounter/e' })).toBeUndefined();
  });

  it('leads to a resource of a type that is not read', () => {
    const result = read(pressure('a'), { resourceType: 'Practitioner', id: 'p' });
    expect(target(result, { reference: 'Practitioner/p' })).toBe(SECOND);
  });
});

describe('F-R07 contained resources', () => {
  const member = { ...laboratory('m', '777-3'), subject: undefined };
  const holder = pressure('a', { contained: [member, { ...member, id: 'bad', status: 'entered-in-error' }] });

  it('are found in their own container only', () => {
    const result = read(holder, pressure('b', { effectiveDateTime: '2026-02-02' }));
    const [first, second] = result.usable;
    expect(first && result.resolve({ reference: '#m' }, first)).toMatchObject({
      path: 'Bundle.entry[0].resource.contained[0]',
      reference: 'Observation/a#m',
      resource: { id: 'm' },
    });
    expect(second && result.resolve({ reference: '#m' }, second)).toBeUndefined();
  });

  it('see the container as #, and each other', () => {
    const result = read(holder);
    const [container] = result.usable;
    const inner = container && result.resolve({ reference: '#m' }, container);
    expect(container && result.resolve({ reference: '#' }, container)).toBe(container);
    expect(inner && result.resolve({ reference: '#' }, inner)).toBe(container);
  });

  it('are refused by the same status rules, and are not counted', () => {
    const result = read(holder);
    expect(target(result, { reference: '#bad' })).toBeUndefined();
    expect(result.received).toBe(1);
  });
});

describe('other references', () => {
  const identifier = { system: 'https://id.example.org', value: '19' };
  const result = read(pressure('a'), patient('1', { identifier: [identifier] }));

  it('F-R08 an identifier finds the Patient; a literal that leads somewhere wins', () => {
    expect(target(result, { identifier })).toBe(SECOND);
    expect(target(result, { reference: 'Observation/a', identifier })).toBe('Bundle.entry[0].resource');
    expect(target(result, { identifier: { value: '19' } })).toBeUndefined();
  });

  it('F-B03 a conditional reference finds by identifier', () => {
    expect(target(result, { reference: 'Patient?identifier=https://id.example.org|19' })).toBe(SECOND);
    expect(target(result, { reference: 'Patient?identifier=https%3A%2F%2Fid.example.org%7C19' })).toBe(
      SECOND,
    );
    expect(target(result, { reference: 'Patient?identifier=%E0%A4%A' })).toBeUndefined();
  });

  it.each([
    [{ display: 'a woman' }],
    [undefined],
    [null],
    [7],
    [[]],
    [{}],
    [{ reference: 5 }],
    [{ reference: '' }],
    [''],
  ])('F-R11 %j leads nowhere, without an error', (reference) => {
    expect(target(result, reference)).toBeUndefined();
  });
});

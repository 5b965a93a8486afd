// Rows F-B01 to F-B13 of the FHIR checklist: the kinds of input.
import { describe, expect, it } from 'vitest';
import { readBundle } from '../../src/bundle/read-bundle.ts';
import { RequestError } from '../../src/errors.ts';
import { bundle, entries, issueCodes, patient, pressure, setAsideOf, usableOf } from './make.ts';

function failureOf(input: unknown): RequestError | undefined {
  try {
    readBundle(input, {});
  } catch (error) {
    if (error instanceof RequestError) return error;
    throw error;
  }
  return undefined;
}

describe('kinds of bundle', () => {
  it('F-B01 a searchset is used with its includes; a further page is said to be missing', () => {
    const read = readBundle(
      {
        resourceType: 'Bundle',
        type: 'searchset',
        total: 40,
        link: [
          { relation: 'self', url: 'https://ehr.example.org/Observation' },
          { relation: 'next', url: 'https://ehr.example.org/page/2' },
        ],
        entry: [
          { resource: pressure('a'), search: { mode: 'match' } },
          { resource: patient(), search: { mode: 'include' } },
          { resource: { resourceType: 'OperationOutcome', issue: [] }, search: { mode: 'outcome' } },
        ],
      },
      {},
    );
    expect(usableOf(read)).toEqual(['Observation/a', 'Patient/1']);
    expect(read.issues.map(({ code, expression }) => `${code} ${expression}`)).toEqual([
      'incomplete Bundle.link[1]',
      'outcome-received Bundle.entry[2].resource',
    ]);
  });

  it('F-B02 a collection is used whole', () => {
    const read = readBundle(bundle([patient(), pressure('a')]), {});
    expect(read.received).toBe(2);
    expect(read.usable.map((received) => received.path)).toEqual([
      'Bundle.entry[0].resource',
      'Bundle.entry[1].resource',
    ]);
  });

  it.each(['transaction', 'batch'])(
    'F-B03 a %s is data: posted bodies are used, DELETE removes, GET is said',
    (type) => {
      const read = readBundle(
        {
          resourceType: 'Bundle',
          type,
          entry: [
            { request: { method: 'DELETE', url: 'Observation/old' } },
            {
              resource: pressure('old', { effectiveDateTime: '2026-01-01T10:00:00Z' }),
              request: { method: 'PUT', url: 'Observation/old' },
            },
            {
              fullUrl: 'urn:uuid:1',
              resource: pressure('new'),
              request: { method: 'POST', url: 'Observation' },
            },
            { request: { method: 'GET', url: 'Patient/1' } },
          ],
        },
        {},
      );
      expect(usableOf(read)).toEqual(['Observation/new']);
      expect(setAsideOf(read)).toEqual(['Observation/old deleted']);
      expect(issueCodes(read)).toEqual(['request-not-executed']);
    },
  );

  it('F-B03 a conditional DELETE removes by identifier; a PATCH body is no resource', () => {
    const identifier = [{ system: 'https://lab.example.org', value: '77' }];
    const read = readBundle(
      {
        resourceType: 'Bundle',
        type: 'transaction',
        entry: [
          { request: { method: 'DELETE', url: 'Observation?identifier=https://lab.example.org%7C77' } },
          { resource: pressure('a', { identifier }) },
          { resource: pressure('b'), request: { method: 'PATCH', url: 'Observation/b' } },
        ],
      },
      {},
    );
    expect(setAsideOf(read)).toEqual(['Observation/a deleted', 'Observation/b malformed']);
  });

  it.each(['transaction-response', 'batch-response'])(
    'F-B04 a %s may have entries without a resource',
    (type) => {
      const read = readBundle(
        {
          resourceType: 'Bundle',
          type,
          entry: [
            { response: { status: '201' } },
            {
              response: { status: '200', outcome: { resourceType: 'OperationOutcome' } },
              resource: pressure('a'),
            },
          ],
        },
        {},
      );
      expect(read.received).toBe(1);
      expect(usableOf(read)).toEqual(['Observation/a']);
      expect(issueCodes(read)).toEqual(['outcome-received']);
    },
  );

  it.each(['document', 'message', 'subscription-notification'])(
    'F-B06 to F-B08 a %s is used whole',
    (type) => {
      const first = { resourceType: 'Composition', id: 'c' };
      const read = readBundle(bundle([first, patient(), pressure('a')], { type }), {});
      expect(usableOf(read)).toEqual(['Patient/1', 'Observation/a']);
      expect(read.notNeeded.map(({ reference, why }) => `${reference}: ${why}`)).toEqual([
        'Composition/c: resource type not read',
      ]);
      expect(read.issues).toEqual([]);
    },
  );

  it.each([undefined, 'bag'])('F-B09 a Bundle of type %s is read as a collection, with a warning', (type) => {
    const read = readBundle(bundle([pressure('a')], { type }), {});
    expect(usableOf(read)).toEqual(['Observation/a']);
    expect(read.issues).toMatchObject([{ severity: 'warning', expression: 'Bundle.type' }]);
  });

  it('F-B10 without fullUrl the Type/id stands in; with one that disagrees the id is taken and the place named', () => {
    const read = readBundle(
      entries(
        { resource: patient() },
        { fullUrl: 'https://ehr.example.org/Observation/9', resource: pressure('a') },
      ),
      {},
    );
    expect(usableOf(read)).toEqual(['Patient/1', 'Observation/a']);
    expect(read.issues).toMatchObject([{ code: 'full-url-mismatch', expression: 'Bundle.entry[1].fullUrl' }]);
  });

  it('F-B10 a resource without id is known by its fullUrl, else by its place', () => {
    const nameless = pressure('x', { id: undefined });
    const other = pressure('y', { id: undefined, effectiveDateTime: '2026-02-02' });
    const read = readBundle(entries({ fullUrl: 'urn:uuid:7', resource: nameless }, { resource: other }), {});
    expect(usableOf(read)).toEqual(['urn:uuid:7', 'Bundle.entry[1].resource']);
  });

  it.each([[null], [5], [{}], [[]]])(
    'F-B11 an empty entry (%j) is no resource: skipped, with a warning',
    (entry) => {
      const read = readBundle(
        { resourceType: 'Bundle', type: 'collection', entry: [entry, { resource: pressure('a') }] },
        {},
      );
      expect(read.received).toBe(1);
      expect(read.issues).toMatchObject([{ code: 'entry-empty', expression: 'Bundle.entry[0]' }]);
    },
  );

  it('F-B12 a nested Bundle is not counted, its entries are, under their own place', () => {
    const inner = bundle([pressure('a'), pressure('b', { effectiveDateTime: '2026-02-02' })]);
    const read = readBundle(bundle([inner, patient()]), {});
    expect(read.received).toBe(3);
    expect(read.usable.map((received) => received.path)).toEqual([
      'Bundle.entry[0].resource.entry[0].resource',
      'Bundle.entry[0].resource.entry[1].resource',
      'Bundle.entry[1].resource',
    ]);
  });

  it('F-B12 bundles nested without end are set aside at a fixed depth', () => {
    let nested: Record<string, unknown> = bundle([pressure('a')]);
    for (let depth = 0; depth < 3000; depth++) nested = bundle([nested]);
    const read = readBundle(nested, {});
    expect(read.received).toBe(1);
    expect(read.setAside).toMatchObject([{ resourceType: 'Bundle', code: 'malformed' }]);
  });
});

describe('other input', () => {
  it('F-B13 a single resource', () => {
    const read = readBundle(pressure('a'), {});
    expect(read.usable).toMatchObject([{ index: 0, path: 'Observation', reference: 'Observation/a' }]);
    expect(read.subject).toBe('Patient/1');
  });

  it('F-B13 Parameters with resources and bundles in its parameters and parts', () => {
    const read = readBundle(
      {
        resourceType: 'Parameters',
        parameter: [
          { name: 'subject', valueString: 'Patient/1' },
          { name: 'data', resource: bundle([pressure('a')]) },
          { name: 'more', part: [{ name: 'woman', resource: patient() }] },
        ],
      },
      {},
    );
    expect(read.usable.map((received) => received.path)).toEqual([
      'Parameters.parameter[1].resource.entry[0].resource',
      'Parameters.parameter[2].part[0].resource',
    ]);
  });

  it('F-K01 lines of resources, as an array', () => {
    const header = { resourceType: 'Parameters', parameter: [{ name: 'header' }] };
    const read = readBundle([header, patient(), bundle([pressure('a')]), 'text'], {});
    expect(read.usable.map((received) => received.path)).toEqual(['[1]', '[2].entry[0].resource']);
    expect(read.notNeeded).toMatchObject([{ path: '[0]', resourceType: 'Parameters' }]);
    expect(read.setAside).toMatchObject([{ path: '[3]', code: 'not-a-resource' }]);
  });

  it.each([[undefined], [null], ['Bundle'], [7], [{}], [{ resourceType: 7 }], [{ hook: 'patient-view' }]])(
    'F-E03 %j is no resource at all: 400 structure',
    (input) => {
      const failure = failureOf(input);
      expect(failure?.status).toBe(400);
      expect(failure?.issues).toMatchObject([{ severity: 'error', type: 'structure' }]);
    },
  );

  it.each([[null], ['text'], [4], [[]], [{}], [{ resourceType: '' }], [{ resourceType: 3 }]])(
    'an entry whose resource is %j is counted and set aside',
    (resource) => {
      const read = readBundle(bundle([patient(), resource]), {});
      expect(read.received).toBe(2);
      expect(read.setAside).toMatchObject([
        { code: 'not-a-resource', expression: 'Bundle.entry[1].resource' },
      ]);
    },
  );

  it('entries that are no array are an error of the bundle, not a crash', () => {
    const read = readBundle(
      { resourceType: 'Bundle', type: 'collection', entry: { resource: pressure('a') } },
      {},
    );
    expect(read.received).toBe(0);
    expect(read.issues).toMatchObject([{ severity: 'error', code: 'malformed', expression: 'Bundle.entry' }]);
  });
});

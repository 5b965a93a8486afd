// Rows F-B05, F-M05 to F-M08 of the FHIR checklist and X34 of the clinical rules: versions, deletes, copies.
import { describe, expect, it } from 'vitest';
import { readBundle } from '../../src/bundle/read-bundle.ts';
import { half, issueCodes, laboratory, patient, pressure, read, setAsideOf, usableOf } from './make.ts';
import type { Json } from './make.ts';

function version(id: string, meta: Json, more: Json = {}): Json {
  return pressure(id, { meta, ...more });
}

function history(...entry: readonly Json[]): Json {
  return { resourceType: 'Bundle', type: 'history', entry };
}

const put = { method: 'PUT', url: 'Observation/a' };
const remove = { request: { method: 'DELETE', url: 'Observation/a' }, response: { status: '204' } };

describe('F-M05 versions of one resource', () => {
  it('the highest versionId is kept, as a number, in any order', () => {
    const nine = version('a', { versionId: '9', lastUpdated: '2026-02-03T10:00:00Z' });
    const ten = version('a', { versionId: '10', lastUpdated: '2026-02-02T10:00:00Z' }, { status: 'amended' });
    for (const result of [read(nine, ten), read(ten, nine)]) {
      expect(result.usable).toMatchObject([{ resource: { status: 'amended' } }]);
      expect(setAsideOf(result)).toEqual(['Observation/a older-version']);
      expect(result.issues).toEqual([]);
    }
  });

  it('without numbers the newest lastUpdated is kept, zones compared as instants', () => {
    const older = version('a', { versionId: 'x', lastUpdated: '2026-02-02T12:00:00+05:30' });
    const newer = version(
      'a',
      { versionId: 'y', lastUpdated: '2026-02-02T08:00:00Z' },
      { status: 'corrected' },
    );
    for (const result of [read(older, newer), read(newer, older)]) {
      expect(result.usable).toMatchObject([{ resource: { status: 'corrected' } }]);
    }
  });

  it('with neither, the last in order is kept, with a warning', () => {
    const result = read(pressure('a'), pressure('a', { status: 'corrected' }));
    expect(result.usable).toMatchObject([{ path: 'Bundle.entry[1].resource' }]);
    expect(issueCodes(result)).toEqual(['version-order-assumed']);
  });

  it('a newest version that is in error leaves nothing', () => {
    const result = read(
      version('a', { versionId: '1' }),
      version('a', { versionId: '2' }, { status: 'entered-in-error' }),
    );
    expect(setAsideOf(result)).toEqual(['Observation/a older-version', 'Observation/a entered-in-error']);
  });

  it('the same content twice is a duplicate', () => {
    const result = read(patient(), pressure('a'), pressure('a'), patient());
    expect(setAsideOf(result)).toEqual(['Patient/1 duplicate', 'Observation/a duplicate']);
    expect(result.issues).toEqual([]);
    expect(result.subject).toBe('Patient/1');
  });

  it('one id on two servers is two resources', () => {
    const subject = { reference: 'https://one.example.org/Patient/1' };
    const result = readBundle(
      {
        resourceType: 'Bundle',
        type: 'collection',
        entry: [
          { fullUrl: 'https://one.example.org/Observation/a', resource: pressure('a', { subject }) },
          {
            fullUrl: 'https://two.example.org/Observation/a',
            resource: pressure('a', { subject, effectiveDateTime: '2026-02-02' }),
          },
        ],
      },
      {},
    );
    expect(result.usable).toHaveLength(2);
  });
});

describe('F-B05 history', () => {
  const newest = {
    resource: pressure('a', { status: 'corrected' }),
    request: put,
    response: { status: '200' },
  };
  const oldest = { resource: pressure('a'), request: put, response: { status: '201' } };

  it('the first entry is the newest', () => {
    const result = readBundle(history(newest, oldest), {});
    expect(result.usable).toMatchObject([{ path: 'Bundle.entry[0].resource' }]);
    expect(setAsideOf(result)).toEqual(['Observation/a older-version']);
  });

  it('a DELETE wins when it is the newest, and not when the resource came back after it', () => {
    expect(setAsideOf(readBundle(history(remove, newest, oldest), {}))).toEqual([
      'Observation/a deleted',
      'Observation/a older-version',
    ]);
    expect(usableOf(readBundle(history(newest, remove, oldest), {}))).toEqual(['Observation/a']);
  });

  it('times, where all give one, decide rather than the order', () => {
    const dated = {
      resource: version('a', { lastUpdated: '2026-02-02T10:00:00Z' }),
      request: put,
      response: { status: '200' },
    };
    const removal = { ...remove, response: { status: '204', lastModified: '2026-02-03T10:00:00Z' } };
    expect(setAsideOf(readBundle(history(dated, removal), {}))).toEqual(['Observation/a deleted']);
  });
});

describe('F-M06 one result sent again under another id', () => {
  const identifier = [{ system: 'https://lab.example.org', value: '77' }];
  const first = laboratory('a', '777-3', { identifier, issued: '2026-02-01T12:00:00Z' });
  const again = laboratory('b', '777-3', {
    identifier,
    issued: '2026-02-01T15:00:00Z',
    valueQuantity: { value: 90 },
  });

  it('the newest sending is kept, in any order', () => {
    for (const result of [read(first, again), read(again, first)]) {
      expect(usableOf(result)).toEqual(['Observation/b']);
      expect(setAsideOf(result)).toEqual(['Observation/a duplicate']);
    }
  });

  it('F-M08 a newest sending in error takes the earlier ones with it', () => {
    const withdrawn = { ...again, status: 'entered-in-error' };
    expect(setAsideOf(read(first, withdrawn))).toEqual([
      'Observation/a entered-in-error',
      'Observation/b entered-in-error',
    ]);
  });

  it('without a time a corrected sending is later than a final one; without that both stay, with a warning', () => {
    const plain = { ...first, issued: undefined };
    expect(usableOf(read({ ...again, issued: undefined, status: 'corrected' }, plain))).toEqual([
      'Observation/b',
    ]);
    const undecided = read({ ...again, issued: undefined }, plain);
    expect(undecided.usable).toHaveLength(2);
    expect(issueCodes(undecided)).toEqual(['newest-unknown']);
  });

  it('an identifier shared by different results (an accession number) joins nothing', () => {
    const other = laboratory('b', '2160-0', { identifier, issued: '2026-02-01T15:00:00Z' });
    const later = laboratory('c', '777-3', { identifier, effectiveDateTime: '2026-02-02T10:00:00Z' });
    expect(usableOf(read(first, other, later))).toEqual(['Observation/a', 'Observation/b', 'Observation/c']);
  });
});

describe('F-M07 and X34 the same reading under several ids', () => {
  it.each<[string, Json]>([
    ['identical', {}],
    ['in another zone', { effectiveDateTime: '2026-02-01T15:30:00+05:30' }],
    ['within the same minute', { effectiveDateTime: '2026-02-01T10:00:40.5Z' }],
    ['with its components the other way round', { component: [half('8462-4', 98), half('8480-6', 152)] }],
    [
      'with other wording',
      { code: { coding: [{ system: 'http://loinc.org', code: '85354-9', display: 'BP' }], text: 'BP' } },
    ],
    [
      'with a local code beside it',
      {
        code: {
          coding: [
            { system: 'https://x.example.org', code: 'bp' },
            { system: 'http://loinc.org', code: '85354-9' },
          ],
        },
      },
    ],
    [
      'with other metadata',
      { meta: { lastUpdated: '2026-02-09T10:00:00Z' }, category: [], issued: '2026-02-01T11:00:00Z' },
    ],
  ])('%s: counted once, the smallest reference stays', (_how, more) => {
    for (const result of [
      read(pressure('a'), pressure('b', more)),
      read(pressure('b', more), pressure('a')),
    ]) {
      expect(usableOf(result)).toEqual(['Observation/a']);
      expect(setAsideOf(result)).toEqual(['Observation/b duplicate']);
    }
  });

  it.each<[string, Json]>([
    ['a minute later', { effectiveDateTime: '2026-02-01T10:01:00Z' }],
    ['another value', { component: [half('8480-6', 153), half('8462-4', 98)] }],
    ['another arm', { bodySite: { coding: [{ system: 'http://snomed.info/sct', code: '368208006' }] } }],
    ['a date without a time', { effectiveDateTime: '2026-02-01' }],
    ['another code', { code: { coding: [{ system: 'http://loinc.org', code: '55284-4' }] } }],
    [
      'the same code of another system',
      { code: { coding: [{ system: 'https://x.example.org', code: '85354-9' }] } },
    ],
    [
      'a comparator',
      {
        component: [
          {
            ...half('8480-6', 152),
            valueQuantity: { value: 152, comparator: '<', unit: 'mmHg', code: 'mm[Hg]' },
          },
          half('8462-4', 98),
        ],
      },
    ],
  ])('%s: two readings', (_how, more) => {
    expect(read(pressure('a'), pressure('b', more)).usable).toHaveLength(2);
  });

  it('a zone crossing midnight at the end of February is the same minute', () => {
    const here = pressure('a', { effectiveDateTime: '2028-02-29T23:30:00-05:00' });
    const there = pressure('b', { effectiveDateTime: '2028-03-01T04:30:00Z' });
    expect(usableOf(read(here, there))).toEqual(['Observation/a']);
  });

  it('a final copy is kept before a preliminary one', () => {
    expect(usableOf(read(pressure('a', { status: 'preliminary' }), pressure('b')))).toEqual([
      'Observation/b',
    ]);
  });

  it('a copy of an error is judged by its own status', () => {
    expect(usableOf(read(pressure('a', { status: 'entered-in-error' }), pressure('b')))).toEqual([
      'Observation/b',
    ]);
  });
});

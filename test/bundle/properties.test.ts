// What holds for any input: nothing is lost, nothing is thrown, order decides nothing.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readBundle, subjectsOf } from '../../src/bundle/read-bundle.ts';
import type { ReadBundle } from '../../src/bundle/read-bundle-types.ts';
import { RequestError } from '../../src/errors.ts';
import { bundle, half, laboratory, patient, pressure } from './make.ts';
import type { Json } from './make.ts';

const junk = fc.jsonValue({ maxDepth: 3 });
const or = (likely: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> =>
  fc.oneof({ weight: 4, arbitrary: likely }, { weight: 1, arbitrary: junk });

const type = fc.constantFrom(
  'Patient',
  'Observation',
  'Condition',
  'Encounter',
  'Medication',
  'Bundle',
  'Parameters',
  'Claim',
  'constructor',
);
const reference = fc.record(
  {
    reference: or(
      fc.constantFrom(
        'Patient/1',
        'Patient/2',
        '#p',
        '#',
        'urn:uuid:1',
        'https://x.example.org/Patient/1',
        'Observation/1/_history/2',
        '__proto__',
      ),
    ),
    identifier: or(fc.constant({ system: 's', value: 'v' })),
  },
  { requiredKeys: [] },
);
const code = or(fc.constant({ coding: [{ system: 'http://loinc.org', code: '85354-9' }] }));
const resource = fc.record(
  {
    resourceType: or(type),
    id: or(fc.constantFrom('1', '2', '3')),
    meta: or(
      fc.record({
        versionId: or(fc.constantFrom('1', '2', 'x')),
        lastUpdated: or(fc.constant('2026-02-01T10:00:00Z')),
      }),
    ),
    identifier: or(fc.array(or(fc.constant({ system: 's', value: 'v' })))),
    status: or(fc.constantFrom('final', 'entered-in-error', 'cancelled', 'corrected')),
    subject: or(reference),
    focus: or(fc.array(or(reference), { maxLength: 2 })),
    derivedFrom: or(
      fc.array(or(fc.constantFrom({ reference: 'Observation/1' }, { reference: 'Observation/2' })), {
        maxLength: 2,
      }),
    ),
    contained: or(fc.array(or(fc.constant({ resourceType: 'Patient', id: 'p' })), { maxLength: 2 })),
    code,
    effectiveDateTime: or(fc.constantFrom('2026-02-01T10:00:00Z', '2026-02-01', '2026-13-77T99:99:99+99:99')),
    effectivePeriod: junk,
    component: or(fc.array(or(fc.constant(half('8480-6', 150))), { maxLength: 2 })),
    entry: or(fc.array(fc.record({ resource: junk }), { maxLength: 2 })),
    parameter: junk,
    modifierExtension: or(fc.constant([])),
  },
  { requiredKeys: ['resourceType'] },
);
const entry = fc.record(
  {
    fullUrl: or(
      fc.constantFrom('urn:uuid:1', 'https://x.example.org/Patient/1', 'http://x.example.org/Observation/2'),
    ),
    resource: or(resource),
    request: or(
      fc.record({
        method: or(fc.constantFrom('DELETE', 'POST', 'PATCH')),
        url: or(fc.constantFrom('Observation/1', 'Patient?identifier=s|v', '%')),
      }),
    ),
    response: or(fc.record({ etag: or(fc.constant('W/"2"')), lastModified: junk, outcome: junk })),
  },
  { requiredKeys: ['resource'] },
);
const anyBundle = fc.record(
  {
    resourceType: fc.constant('Bundle'),
    type: or(fc.constantFrom('collection', 'history', 'transaction', 'searchset')),
    link: or(fc.array(fc.record({ relation: fc.constant('next') }))),
    entry: or(fc.array(or(entry), { maxLength: 8 })),
  },
  { requiredKeys: ['resourceType', 'entry'] },
);
const anyInput = fc.oneof(anyBundle, fc.array(or(resource), { maxLength: 6 }), resource, junk);

/** The reading, or undefined when the request as a whole was refused; anything else thrown fails the test. */
function attempt(input: unknown, subject?: string): ReadBundle | undefined {
  try {
    return readBundle(input, { subject });
  } catch (error) {
    if (error instanceof RequestError) return undefined;
    throw error;
  }
}

function accountedFor(read: ReadBundle): readonly number[] {
  const all = [...read.usable, ...read.setAside, ...read.notNeeded];
  return all.map((item) => item.index).sort((one, other) => one - other);
}

describe('any input', () => {
  it('every resource received ends in exactly one place', () => {
    fc.assert(
      fc.property(anyInput, fc.constantFrom(undefined, 'Patient/1', 'Patient/2'), (input, subject) => {
        const read = attempt(input, subject);
        if (read === undefined) return;
        expect(accountedFor(read)).toEqual(Array.from({ length: read.received }, (_, index) => index));
      }),
      { numRuns: 3000 },
    );
  });

  it('the candidates can each be asked for, and following any reference never fails', () => {
    fc.assert(
      fc.property(anyInput, or(reference), (input, anyReference) => {
        if (attempt(input, 'Patient/1') === undefined) return;
        for (const subject of subjectsOf(input)) {
          const read = readBundle(input, { subject });
          expect(read.subject).toBe(subject);
          for (const received of read.usable) read.resolve(anyReference, received);
        }
      }),
      { numRuns: 1000 },
    );
  });
});

const dated = (resourceJson: Json, minute: number): Json => ({
  ...resourceJson,
  effectiveDateTime: `2026-02-01T10:${String(10 + minute)}:00Z`,
});
const plausible = fc
  .uniqueArray(
    fc.record({
      id: fc.nat({ max: 30 }),
      minute: fc.nat({ max: 3 }),
      laboratory: fc.boolean(),
      final: fc.boolean(),
    }),
    {
      selector: (row) => row.id,
      maxLength: 12,
    },
  )
  .map((rows) =>
    rows.map((row) => {
      const status = row.final ? 'final' : 'entered-in-error';
      const made = row.laboratory
        ? laboratory(`o${row.id}`, '777-3', { status })
        : pressure(`o${row.id}`, { status });
      return dated(made, row.minute);
    }),
  )
  .map((resources) => [patient(), ...resources]);

function outcomeOf(resources: readonly unknown[]): readonly string[] {
  const read = readBundle(bundle(resources), {});
  const lines = read.setAside.map((item) => `${item.reference} ${item.code}`);
  return [...read.usable.map((received) => `${received.reference} usable`), ...lines].sort();
}

describe('plausible bundles', () => {
  it('the order of entries decides nothing', () => {
    const shuffled = plausible.chain((resources) =>
      fc.tuple(fc.constant(resources), fc.shuffledSubarray(resources, { minLength: resources.length })),
    );
    fc.assert(
      fc.property(shuffled, ([one, other]) => {
        expect(outcomeOf(one)).toEqual(outcomeOf(other));
      }),
    );
  });

  it('sending everything twice changes nothing that is used', () => {
    fc.assert(
      fc.property(plausible, (resources) => {
        const once = readBundle(bundle(resources), {}).usable.map((received) => received.reference);
        const twice = readBundle(bundle([...resources, ...resources]), {}).usable.map(
          (received) => received.reference,
        );
        expect([...twice].sort()).toEqual([...once].sort());
      }),
    );
  });
});

describe('hostile size', () => {
  const many = Array.from({ length: 20_000 }, (_, at) => at);
  it.each<[string, (at: number) => Json]>([
    ['many copies', (at) => pressure(`o${at}`)],
    ['many values in one minute', (at) => pressure(`o${at}`, { component: [half('8480-6', at)] })],
    ['many versions', (at) => pressure('o', { meta: { versionId: String(at) } })],
    [
      'a long chain in error',
      (at) =>
        pressure(
          `o${at}`,
          at === 0
            ? { status: 'entered-in-error' }
            : { derivedFrom: [{ reference: `Observation/o${at - 1}` }] },
        ),
    ],
    [
      'one shared identifier',
      (at) =>
        pressure(`o${at}`, { identifier: [{ system: 's', value: 'v' }], issued: '2026-02-01T10:00:00Z' }),
    ],
    ['many persons by urn', (at) => pressure(`o${at}`, { subject: { reference: `urn:uuid:${at}` } })],
  ])('%s is read in time that grows with its size', (_what, make) => {
    const input = bundle(many.map(make));
    const started = performance.now();
    const read = readBundle(input, { subject: 'Patient/1' });
    expect(read.received).toBe(many.length);
    expect(accountedFor(read)).toHaveLength(many.length);
    expect(performance.now() - started).toBeLessThan(5000);
  });
});

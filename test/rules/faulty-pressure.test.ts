// A pressure with a fault of form never classifies, is never lost, and says what to mend (decisions 5 and 14).
import fc from 'fast-check';
import type { FhirResource } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { urgencies } from '../../src/guidelines/guideline.ts';
import { guidelineIds } from '../../src/guidelines/registry.ts';
import { evaluate } from '../../src/index.ts';
import { faults, type FaultName } from '../support/pressure-faults.ts';
import * as build from '../support/resources.ts';

const asOf = '2025-03-10T12:00:00Z';
const at = '2025-03-10T11:00:00Z';
const woman = [
  build.patient(),
  build.observation(build.loinc('11778-8'), '2025-03-05T10:00:00Z', { valueDateTime: '2025-05-19' }),
  build.strip(at, 'negative'),
];

type Sent = Readonly<Record<string, unknown>>;

/** The answer about the woman with these resources, FHIR or not. */
const answerTo = (
  resources: readonly (FhirResource | Sent)[],
  options: { asOf?: string; guideline?: string } = {},
) =>
  evaluate(
    {
      resourceType: 'Bundle',
      type: 'collection',
      entry: [...woman, ...resources].map((resource, index) => ({
        resource: { id: `r${index}`, ...resource },
      })),
    },
    { asOf, ...options },
  );

const names = Object.keys(faults).filter((name): name is FaultName => name in faults);
const faulty = (name: FaultName, systolic: number, diastolic: number, time = at): Sent => ({
  ...faults[name](build.pressure(time, systolic, diastolic)),
  id: 'faulty',
});
const rank = ({ urgency }: { readonly urgency: string }): number =>
  urgencies.findIndex((each) => each === urgency);

describe('a pressure of 180/115 today that cannot be used', () => {
  it.each(names)('with %s is an emergency, to be repeated', (name) => {
    const answer = answerTo([faulty(name, 180, 115)]);
    expect(answer.urgency).toBe('emergency');
    expect(answer.actions?.map(({ id }) => id)).toContain('repeat-unusable-reading');
  });

  it.each(names)('with %s is told with its place and its mend', (name) => {
    const notice = answerTo([faulty(name, 180, 115)]).quality?.find(
      ({ rule }) => rule === 'pressure-in-faulty-form',
    );
    expect(notice?.sentence).toMatch(/Observation\/faulty [A-Za-z]+\S*: \S/);
    expect(notice?.evidence?.[0]?.reference).toBe('Observation/faulty');
  });
});

describe('a pressure that cannot be used', () => {
  const byNumber: FaultName = 'a whole number instead of a quantity';

  it('is the same day when it is raised and not severe', () => {
    expect(answerTo([faulty(byNumber, 144, 92)]).urgency).toBe('same-day');
  });

  it('asks for nothing when its number is known and below the limits (decision 14)', () => {
    expect(answerTo([faulty(byNumber, 118, 76)])).toMatchObject({
      urgency: 'routine',
      classification: ['cannot-classify'],
    });
  });

  it('is the same day when its number is below the limits in a unit nobody knows', () => {
    expect(answerTo([faulty('a unit nobody knows', 118, 76)]).urgency).toBe('same-day');
  });

  it('below the limits takes nothing away from a sound reading', () => {
    const answer = answerTo([
      build.pressure('2025-03-10T10:00:00Z', 118, 76),
      faulty('the status unknown', 116, 74),
    ]);
    expect(answer).toMatchObject({ urgency: 'routine', classification: ['normotensive'] });
  });

  it('is answered by a sound reading five minutes later', () => {
    const answer = answerTo([faulty(byNumber, 180, 115), build.pressure('2025-03-10T11:05:00Z', 118, 76)]);
    expect(answer).toMatchObject({ urgency: 'routine', classification: ['normotensive'] });
  });

  it('is no reason to hurry once it is older than a week', () => {
    expect(answerTo([faulty('no status', 180, 115, '2025-03-03T12:00:00Z')]).urgency).toBe('emergency');
    expect(answerTo([faulty('no status', 180, 115, '2025-03-03T11:59:00Z')]).urgency).toBe('routine');
  });

  it('counts without any time', () => {
    const sent = { ...faulty('no status', 180, 115), effectiveDateTime: undefined };
    expect(answerTo([sent]).urgency).toBe('emergency');
  });

  it('one half by itself counts too', () => {
    const half = build.observation(build.loinc('8480-6'), at, { valueInteger: 180 });
    expect(answerTo([half]).urgency).toBe('emergency');
  });

  it('the sound half of it is used', () => {
    const { component, ...panel } = build.pressure(at, 150, 95);
    const [systolic, diastolic] = component ?? [];
    const sent = { ...panel, component: [{ code: systolic?.code, valueInteger: 150 }, diastolic] };
    expect(answerTo([sent])).toMatchObject({ urgency: 'same-day', classification: ['raised-unconfirmed'] });
  });
});

describe('what is not taken for an alarm', () => {
  it.each(['entered-in-error', 'cancelled'] as const)('a pressure that was %s (X33)', (status) => {
    expect(answerTo([build.pressure(at, 180, 115, { status })]).urgency).toBe('routine');
  });

  it('the badly sent pressure of another person', () => {
    const other = { ...faulty('no status', 180, 115), subject: { reference: 'Patient/other' } };
    expect(answerTo([other, build.pressure(at, 118, 76)])).toMatchObject({
      urgency: 'routine',
      classification: ['normotensive'],
    });
  });

  it('one that is about the newborn', () => {
    const newborn = { ...faulty('no status', 180, 115), focus: [{ reference: 'Patient/newborn' }] };
    expect(answerTo([newborn]).urgency).toBe('routine');
  });

  it('one that was sent again with its right status', () => {
    const identifier = [{ system: 'https://example.org', value: '7' }];
    const again = { ...build.pressure(at, 118, 76), identifier };
    expect(answerTo([{ ...faulty('no status', 180, 115), identifier }, again]).urgency).toBe('routine');
  });

  it('a text without two numbers, and a date', () => {
    for (const valueString of ['see paper chart', 'not taken on 10/03/2025'])
      expect(answerTo([build.observation(build.loinc('85354-9'), at, { valueString })]).urgency).toBe(
        'routine',
      );
  });

  it('a reading of the future: whatever comes later changes no answer, and the account says what to compare', () => {
    const answer = answerTo([build.pressure('2025-03-10T12:10:00Z', 180, 115)]);
    expect(answer.urgency).toBe('routine');
    expect(JSON.stringify(answer.account)).toContain('compare the clock and the time zone of the sender');
    expect(answerTo([faulty('no status', 180, 115, '2025-03-10T12:10:00Z')])).toMatchObject({
      urgency: 'routine',
    });
  });
});

describe('properties', () => {
  const kinds = fc.constantFrom(...names);
  const ofOneTime = fc.constantFrom(...names.filter((name) => name !== 'two times'));
  const others = fc.array(fc.constantFrom([118, 76], [144, 92], [166, 104]), { maxLength: 2 });
  const earlier = (readings: readonly (readonly number[])[]) =>
    readings.map(([systolic, diastolic], index) =>
      build.pressure(`2025-03-0${index + 5}T10:00:00Z`, systolic, diastolic),
    );

  it('a fault never makes a pressure less urgent than if it were absent, under any guideline', () => {
    const numbers = fc.tuple(fc.integer({ min: 105, max: 200 }), fc.integer({ min: 50, max: 100 }));
    fc.assert(
      fc.property(
        kinds,
        numbers,
        others,
        fc.constantFrom(...guidelineIds),
        (kind, [systolic, diastolic], readings, guideline) => {
          const before = earlier(readings);
          const absent = answerTo(before, { guideline });
          const sent = answerTo([...before, faulty(kind, systolic, diastolic)], { guideline });
          expect(rank(sent)).toBeLessThanOrEqual(rank(absent));
        },
      ),
    );
  });

  it('one that lies after the moment of the answer changes nothing but the account', () => {
    fc.assert(
      fc.property(ofOneTime, others, fc.integer({ min: 10, max: 59 }), (kind, readings, minutes) => {
        const before = earlier(readings);
        const later = faulty(kind, 180, 115, `2025-03-10T12:${minutes}:00Z`);
        const told = (sent: readonly Sent[]) => ({ ...answerTo([...before, ...sent]), account: undefined });
        expect(told([later])).toEqual(told([]));
      }),
    );
  });

  it('a severe number with a fault is an emergency', () => {
    const severe = fc.oneof(
      fc.tuple(fc.integer({ min: 160, max: 260 }), fc.integer({ min: 50, max: 140 })),
      fc.tuple(fc.integer({ min: 141, max: 260 }), fc.integer({ min: 110, max: 140 })),
    );
    fc.assert(
      fc.property(kinds, severe, others, (kind, [systolic, diastolic], readings) => {
        expect(answerTo([...earlier(readings), faulty(kind, systolic, diastolic)]).urgency).toBe('emergency');
      }),
    );
  });
});

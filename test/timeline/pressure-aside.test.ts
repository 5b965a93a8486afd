// Pressures set aside: for their form, their numbers, their time; and what is said of the half that is missing.
import type { FhirResource, Observation, ObservationComponent } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { judgePressure } from '../../src/timeline/pressure-judgement.ts';
import type { PressureCandidate } from '../../src/timeline/pressure-candidate.ts';
import type { TimelineValues, UnusablePressure } from '../../src/timeline/timeline.ts';
import { diastolicOnly, loinc, observation, pressure, quantity, snomed } from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { at, diastolic, panel, pressures, systolic } from './pressure-support.ts';
import { moment } from './received.ts';
import { values } from './values.ts';

const unusableIn = (...sent: readonly FhirResource[]): readonly UnusablePressure[] =>
  built(sent).timeline.unusablePressures;
const issuesOf = (...sent: readonly FhirResource[]) => built(sent).issues.map(({ code }) => code);
const component = (code: string, fields: Partial<ObservationComponent>): ObservationComponent => ({
  code: loinc(code),
  ...fields,
});
const bare = (code: string, value: number) => component(code, { valueQuantity: { value } });
const absent = (code: string) => component(code, { dataAbsentReason: { coding: [{ code: 'unknown' }] } });

describe('a pressure set aside as a whole for its form (decision 5)', () => {
  const modified = { modifierExtension: [{ url: 'urn:x', valueBoolean: true }] };
  const faulty = (fields: object): Observation => ({ ...pressure(at, 170, 112), ...modified, ...fields });

  it('keeps its numbers, with the fault and its element', () => {
    const [found] = unusableIn(faulty({}));
    expect(found).toMatchObject({ why: 'faulty-form', systolic: 170, diastolic: 112, at: { text: at } });
    expect(found?.fault?.element).toBe('modifierExtension');
    expect(found?.fault?.message).toMatch(/./);
    // it has been said already, in the reading of the bundle
    expect(built([faulty({ component: [systolic(170)] })])).toMatchObject({ setAside: [], issues: [] });
  });

  it('keeps nothing of one that lies in the future', () => {
    expect(unusableIn(faulty({ effectiveDateTime: '2026-02-20' }))).toEqual([]);
  });

  it('is looked for under the codes of pressure only', () => {
    const other = observation(loinc('8302-2'), at, { valueString: '170/112', ...modified });
    expect(unusableIn(other)).toEqual([]);
  });

  const twice = (effectiveDateTime: string, start: string) =>
    unusableIn({ ...pressure(effectiveDateTime, 170, 112), effectivePeriod: { start } }).map(
      (found) => found.at?.text,
    );
  const [early, late, future] = ['2026-01-30T09:00:00Z', '2026-01-31T09:00:00Z', '2026-02-20T09:00:00Z'];

  it.each([
    ['the second', early, late, late],
    ['the first', late, early, late],
    ['the only one not in the future, the first', early, future, early],
    ['the only one not in the future, the second', future, early, early],
    ['the only one of the calendar', early, '2026-02-31', early],
    ['a whole day, which may be later', late, '2026-01-31', '2026-01-31'],
  ])('of two times that were sent counts the later one: %s', (_, first, second, expected) => {
    expect(twice(first, second)).toEqual([expected]);
  });

  it('of two times that both lie in the future is not kept, of none of the calendar has none', () => {
    expect(twice(future, '2026-02-21')).toEqual([]);
    expect(twice('2026-02-30', '2026-02-31')).toEqual([undefined]);
  });
});

describe('a reading with a fault in one half', () => {
  const odd = (code: string, value: number) => component(code, { valueQuantity: quantity(value, 'mg/dL') });

  it('is named by the fault of form before a missing unit', () => {
    expect(unusableIn(panel([bare('8480-6', 150), odd('8462-4', 95)]))).toMatchObject([
      { why: 'unit-unknown', systolic: 150, diastolic: 95, asSent: '150 (no unit) / 95 mg/dL' },
    ]);
    expect(unusableIn(panel([bare('8480-6', 150), diastolic(95)]))).toMatchObject([{ why: 'unit-missing' }]);
  });

  it('told twice differently is a fault of form, and the higher number counts', () => {
    expect(unusableIn(panel([systolic(150), systolic(160), diastolic(95)]))).toMatchObject([
      { why: 'faulty-form', systolic: 160, asSent: '150 or 160/95 mm[Hg]' },
    ]);
  });

  it('told twice alike counts by the sound one, in either order', () => {
    const asText = component('8480-6', { valueString: '150' });
    for (const two of [
      [asText, systolic(150)],
      [systolic(150), asText],
    ])
      expect(pressures([panel([...two, diastolic(95)])])).toMatchObject([
        { systolicMmHg: 150, diastolicMmHg: 95 },
      ]);
  });

  it.each([
    ['180', '180/- (no unit)'],
    ['180 mmHg', '180/- mmHg'],
    ['180mm[Hg]', '180/- mm[Hg]'],
    ['180 mm hg', '180/- mm hg'],
    ['24.05 kPa', '24.05/- kPa'],
    ['about 24,05kPa', '24.05/- kPa'],
  ])('as the text %j is kept as %s', (valueString, asSent) => {
    const [found] = unusableIn(panel([component('8480-6', { valueString })]));
    expect(found).toMatchObject({ asSent, systolic: 180 });
  });

  it('keeps each half in its own unit', () => {
    const kpa = component('8480-6', { valueQuantity: quantity(20, 'kPa') });
    expect(pressures([panel([kpa, diastolic(95)])])[0]?.asSent).toBe('20 kPa / 95 mm[Hg]');
    expect(pressures([panel([kpa])])[0]?.asSent).toBe('20/- kPa');
  });

  it.each(['<', '<='] as const)('known only to be below (%s) a number is not used', (comparator) => {
    const below = component('8480-6', { valueQuantity: { ...quantity(180, 'mm[Hg]'), comparator } });
    const result = built([panel([below])]);
    expect(result.timeline).toMatchObject({ pressures: [], unusablePressures: [] });
    expect(codesOf(result)).toEqual(['value-not-readable']);
  });

  it('below zero is not used, whatever unit the site declares', () => {
    const result = built([panel([bare('8480-6', -150)])], { defaultPressureUnit: 'mm[Hg]' });
    expect(result.timeline).toMatchObject({ pressures: [], unusablePressures: [] });
    const sound = built([panel([bare('8480-6', 150)])], { defaultPressureUnit: 'mm[Hg]' });
    expect(sound.timeline.pressures[0]?.remarks).toContain(
      'no unit was sent; mm[Hg] is the unit this site declares',
    );
  });
});

describe('what is said of a half that is missing (F-P05)', () => {
  it.each<[string, ObservationComponent]>([
    ['absent for a reason', absent('8462-4')],
    ['without any value', component('8462-4', {})],
  ])('%s: that it is missing, and nothing more', (_, half) => {
    expect(issuesOf(panel([systolic(150), half]))).toEqual(['pressure-half-missing']);
  });

  it('with a fault of its own: the fault alone, though it is absent elsewhere', () => {
    const words = component('8462-4', { valueString: 'high' });
    expect(issuesOf(panel([systolic(150), absent('8462-4'), words]))).toEqual(['value-type-not-usable']);
    expect(issuesOf(panel([systolic(150), words]))).toEqual(['value-type-not-usable']);
  });

  it('of an average: its fault is an issue, and the average is used', () => {
    const odd = component('96609-3', { valueQuantity: quantity(87, 'mg/dL') });
    const half = component('96608-5', { valueQuantity: quantity(138, 'mm[Hg]') });
    const result = built([observation(loinc('96607-7'), at, { component: [half, odd] })]);
    expect(result.timeline.meanPressures).toMatchObject([{ systolicMmHg: 138 }]);
    expect(result.setAside).toEqual([]);
    expect(result.issues.map(({ code }) => code)).toContain('unit-unknown');
  });

  it('is a remark of the reading: which half, and how it was taken', () => {
    expect(pressures([diastolicOnly(at, 95)])[0]?.remarks).toEqual(['the systolic pressure is missing']);
    const standing = { ...pressure(at, 150, 95), method: snomed('10904000') };
    expect(pressures([standing])[0]?.remarks).toEqual(['taken standing']);
  });

  it('a fault in the numbers is the reason before a value that is absent', () => {
    expect(codesOf(built([panel([absent('8480-6'), diastolic(200)])]))).toEqual(['value-out-of-range']);
    expect(codesOf(built([panel([absent('8480-6'), bare('8462-4', 95)])]))).toEqual(['unit-missing']);
  });

  it('a lower bound of the diastolic half alone is an issue too', () => {
    const bound = component('8462-4', { valueQuantity: { ...quantity(95, 'mm[Hg]'), comparator: '>=' } });
    expect(issuesOf(panel([systolic(150), bound]))).toEqual(['value-not-readable']);
  });
});

describe('felt at the wrist (Q8)', () => {
  const felt = (...components: NonNullable<Observation['component']>) =>
    pressures([panel(components, { method: snomed('113011001') })])[0];
  it('has no diastolic half, whatever was sent as one', () => {
    expect(felt(systolic(150), diastolic(95))).toMatchObject({
      isDiastolicUnheard: true,
      remarks: ['the systolic pressure was felt, so no diastolic was heard'],
    });
    expect(felt(systolic(150))).not.toHaveProperty('isDiastolicUnheard');
    expect(felt(systolic(150))?.remarks).toEqual(['the diastolic pressure is missing']);
    expect(felt(diastolic(95))).not.toHaveProperty('isDiastolicUnheard');
    expect(pressures([pressure(at, 150, 95)])[0]).not.toHaveProperty('isDiastolicUnheard');
  });
});

describe('the plausible range (Q2)', () => {
  const half = (name: 'systolic' | 'diastolic', mmHg: number) => ({
    [name]: { half: name, isMean: false, mmHg, unit: 'mm[Hg]', sent: String(mmHg), remarks: [] },
  });
  const judged = (name: 'systolic' | 'diastolic', mmHg: number, plausible: TimelineValues['plausible']) => {
    const time = { from: moment(at), to: moment(at) };
    const rest = { isMean: false, time, sources: [], setting: 'unknown', technique: {}, isStandAlone: true };
    const candidate = { ...rest, ...half(name, mmHg) } as unknown as PressureCandidate;
    return judgePressure(candidate, { values: { ...values, plausible } }).unusablePressure?.why;
  };
  const closed = values.plausible;
  const open = {
    systolicLow: { ...closed.systolicLow, comparator: '>' },
    systolicHigh: { ...closed.systolicHigh, comparator: '<' },
    diastolicLow: { ...closed.diastolicLow, comparator: '>' },
    diastolicHigh: { ...closed.diastolicHigh, comparator: '<' },
  } as const;
  const [above, below] = ['above-plausible-range', 'below-plausible-range'];

  it.each([
    ['systolic', 260, undefined, above],
    ['systolic', 261, above, above],
    ['systolic', 259, undefined, undefined],
    ['systolic', 60, undefined, below],
    ['systolic', 59, below, below],
    ['systolic', 61, undefined, undefined],
    ['diastolic', 160, undefined, above],
    ['diastolic', 161, above, above],
    ['diastolic', 30, undefined, below],
    ['diastolic', 29, below, below],
  ] as const)('%s %i: %s with its ends, %s without them', (name, mmHg, whenClosed, whenOpen) => {
    expect(judged(name, mmHg, closed)).toBe(whenClosed);
    expect(judged(name, mmHg, open)).toBe(whenOpen);
  });
});

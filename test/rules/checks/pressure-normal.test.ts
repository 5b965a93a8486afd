// Whether the pressure is normal now, beside numbers that cannot be used and newer contacts. Clinical rules 2.3, 2.8.
import { describe, expect, it } from 'vitest';
import type { Timeline, UnusablePressure } from '../../../src/timeline/timeline.ts';
import { moment, reading, strip, symptom, unusable } from '../facts.ts';
import { ask, limit, raisedIds, raisedLimits as limits, told } from './ask.ts';

const day = limit('<=', 1, 'd');
const at = (...pressures: Timeline['pressures']): Partial<Timeline> => ({ pressures });
const raised = (when: string) => reading(when, 150, 96);
const normal = (when: string) => reading(when, 120, 76);
const sentRaised = '150/96 mm[Hg]';
const sentNormal = '120/76 mm[Hg]';

describe('normal now', () => {
  const ready = (facts: Partial<Timeline>) =>
    told(ask({ check: 'pressure-normal-now', limits, freshWithin: day }, facts));
  const beside = (unusablePressures: Timeline['unusablePressures'], ...pressures: Timeline['pressures']) =>
    ready({ unusablePressures, pressures }).outcome;
  const numbers = (why: UnusablePressure['why'], systolic?: number, diastolic?: number) => ({
    ...unusable(why, '10:00'),
    ...(systolic === undefined ? {} : { systolic }),
    ...(diastolic === undefined ? {} : { diastolic }),
  });

  it('needs both halves of the newest contact below the limits', () => {
    expect(ready({}).outcome).toBe('cannot-tell');
    const answer = (outcome: string, cited: string) => ({ outcome, cited: [cited], limits: raisedIds });
    expect(ready(at(normal('09:00')))).toEqual(answer('met', sentNormal));
    expect(ready(at(raised('09:00')))).toEqual(answer('not-met', sentRaised));
    expect(ready(at(reading('09:00', 120, undefined)))).toEqual(answer('cannot-tell', '120/- mm[Hg]'));
  });

  it('is open beside a number that cannot be used, as new as the contact or without a time', () => {
    expect(beside([unusable('above-plausible-range', '09:00')], normal('09:00'))).toBe('cannot-tell');
    expect(beside([unusable('above-plausible-range')], normal('09:00'))).toBe('cannot-tell');
    expect(beside([unusable('above-plausible-range', '08:59')], normal('09:00'))).toBe('met');
  });

  it('is answered by a reading of the same contact taken after that number, and by none taken with it', () => {
    const between = unusable('above-plausible-range', '09:02');
    expect(beside([between], normal('09:00'), normal('09:04'))).toBe('met');
    expect(beside([between], normal('09:00'), normal('09:02'))).toBe('cannot-tell');
    expect(ready({ unusablePressures: [between], pressures: [normal('09:00')] })).toEqual({
      outcome: 'cannot-tell',
      cited: [sentNormal],
      limits: raisedIds,
    });
  });

  it('is open while one of several such numbers is not answered', () => {
    const at = (clock: string) => unusable('above-plausible-range', clock);
    const visit = [normal('09:00'), normal('09:02'), normal('09:08')];
    expect(beside([at('09:01'), at('09:06')], ...visit)).toBe('met');
    expect(beside([at('09:01'), at('09:08')], ...visit)).toBe('cannot-tell');
    expect(beside([at('08:59'), at('09:00')], normal('09:00'))).toBe('cannot-tell');
  });

  it.each([
    ['time-unusable', 120, 76, 'met'],
    ['faulty-form', 120, 76, 'met'],
    ['unit-missing', 120, 76, 'cannot-tell'],
    ['faulty-form', 120, 96, 'cannot-tell'],
    ['faulty-form', 150, 76, 'cannot-tell'],
    ['faulty-form', 120, undefined, 'cannot-tell'],
    ['faulty-form', undefined, 76, 'cannot-tell'],
  ] as const)('beside numbers at fault by %s, %s/%s: %s', (why, systolic, diastolic, outcome) => {
    expect(beside([numbers(why, systolic, diastolic)], normal('09:00'))).toBe(outcome);
  });

  it('looks past a number that takes nothing away, at one that does', () => {
    const pair = [numbers('faulty-form', 120, 76), numbers('above-plausible-range')];
    expect(beside(pair, normal('09:00'))).toBe('cannot-tell');
  });

  it.each([
    ['the urine', '12:00', 'met'],
    ['the urine', '12:01', 'cannot-tell'],
  ])('says nothing of a contact more than the span later, known from %s at %s: %s', (_, clock, outcome) => {
    const pressures = [normal('2025-03-09T12:00:00Z')];
    expect(ready({ pressures, urineProteins: [strip(clock, 0)] })).toEqual({
      outcome,
      cited: [sentNormal],
      limits: raisedIds,
    });
    const asked = { ...symptom('headache', 'absent'), at: moment(clock) };
    expect(ready({ pressures, symptoms: [asked] }).outcome).toBe(outcome);
  });

  it('takes the newest of several contacts, and a symptom without a time for none', () => {
    const pressures = [normal('2025-03-08T09:00:00Z')];
    const urine = [strip('2025-03-08T09:00:00Z', 0), strip('11:00', 0), strip('2025-03-08T10:00:00Z', 0)];
    expect(ready({ pressures, urineProteins: urine }).outcome).toBe('cannot-tell');
    const { at: _at, ...undated } = symptom('headache', 'absent');
    expect(ready({ pressures, symptoms: [undated] }).outcome).toBe('met');
    expect(ready({ pressures, symptoms: [undated], urineProteins: urine }).outcome).toBe('cannot-tell');
  });
});

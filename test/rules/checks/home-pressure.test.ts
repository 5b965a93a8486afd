// The home average, the question by itself. Clinical rules 1.1, rules 26 and 27; decision 11.
import { describe, expect, it } from 'vitest';
import type { MeanPressure, Timeline } from '../../../src/timeline/timeline.ts';
import { moment, reading } from '../facts.ts';
import { ask, raisedIds, raisedLimits as limits, told } from './ask.ts';

const asked = (want: 'raised' | 'below', facts: Partial<Timeline>, onlyWithoutClinic?: boolean) =>
  ask(
    {
      check: 'home-pressure',
      limits,
      want,
      ...(onlyWithoutClinic === undefined ? {} : { onlyWithoutClinic }),
    },
    facts,
  );
const outcomes = (facts: Partial<Timeline>) =>
  (['raised', 'below'] as const).map((want) => asked(want, facts).outcome);
const mean = (to: string, systolicMmHg: number, more: Partial<MeanPressure> = {}): MeanPressure => ({
  from: moment('2025-03-01'),
  to: moment(to),
  systolicMmHg,
  diastolicMmHg: 80,
  setting: 'home',
  asSent: `${String(systolicMmHg)}/80 average`,
  sources: [{ reference: 'Observation/mean', preliminary: false }],
  ...more,
});
const means = (...meanPressures: readonly MeanPressure[]) => ({ meanPressures });
const singles = (...homePressures: Timeline['homePressures']) => ({ homePressures });
const nothing = ['cannot-tell', 'cannot-tell'];

describe('the home average', () => {
  it('is raised from either limit on, and below them otherwise', () => {
    expect(outcomes(means(mean('09:00', 140)))).toEqual(['met', 'not-met']);
    expect(outcomes(means(mean('09:00', 139)))).toEqual(['not-met', 'met']);
    expect(told(asked('raised', means(mean('09:00', 140))))).toEqual({
      outcome: 'met',
      cited: ['140/80 average'],
      limits: raisedIds,
    });
  });

  it('was not received', () => {
    expect(told(asked('raised', {}))).toEqual({ outcome: 'cannot-tell', cited: [], limits: raisedIds });
    expect(outcomes(means(mean('09:00', 150, { setting: 'clinic' })))).toEqual(nothing);
    expect(outcomes(means(mean('2024-01-01', 150)))).toEqual(nothing);
  });

  it('is the newest of several, by its end', () => {
    expect(outcomes(means(mean('09:00', 150), mean('08:00', 120)))).toEqual(['met', 'not-met']);
    expect(outcomes(means(mean('08:00', 120), mean('09:00', 150)))).toEqual(['met', 'not-met']);
  });

  it('is taken as one where the setting is not stated, and that is said', () => {
    const what = (setting: MeanPressure['setting']) =>
      asked('raised', means(mean('09:00', 150, { setting }))).evidence?.[0]?.what;
    expect(outcomes(means(mean('09:00', 150, { setting: 'unknown' })))).toEqual(['met', 'not-met']);
    expect(what('unknown')).toBe('blood pressure average, setting not stated');
    expect(what('home')).toBe('home blood pressure, average');
  });

  it('of which a half is missing, or that may be higher, is not below the limits', () => {
    const { diastolicMmHg: _half, ...systolicOnly } = mean('09:00', 120);
    expect(outcomes(means(systolicOnly))).toEqual(nothing);
    expect(outcomes(means(mean('09:00', 120, { lowerBounds: { systolic: '>' } })))).toEqual(nothing);
    expect(told(asked('below', means(systolicOnly))).cited).toEqual(['120/80 average']);
  });
});

describe('single home readings', () => {
  const [high, low] = [reading('08:00', 150, 80), reading('09:00', 131, 78)];

  it('are averaged from two on', () => {
    expect(outcomes(singles(high))).toEqual(nothing);
    expect(outcomes(singles(high, low))).toEqual(['met', 'not-met']);
    expect(outcomes(singles(high, reading('09:00', 129, 78)))).toEqual(['not-met', 'met']);
    expect(told(asked('raised', singles(high, low))).cited).toEqual(['150/80 mm[Hg]', '131/78 mm[Hg]']);
  });

  it('of an earlier pregnancy are not among them', () => {
    expect(outcomes(singles(reading('2024-01-01T09:00:00Z', 150, 90), low))).toEqual(nothing);
  });

  it('each half is averaged over those that have it', () => {
    expect(outcomes(singles(reading('08:00', undefined, 92), reading('09:00', 120, 88)))).toEqual([
      'met',
      'not-met',
    ]);
    expect(asked('raised', singles(reading('08:00', 130, undefined), low)).because).toContain('130.5/78');
    expect(outcomes(singles(reading('08:00', 120, undefined), reading('09:00', 120, undefined)))).toEqual(
      nothing,
    );
    expect(
      asked('raised', singles(reading('08:00', undefined, 70), reading('09:00', undefined, 72))).because,
    ).toContain('-/71');
  });

  it('that may be higher leave the average open', () => {
    const bound = { ...reading('08:00', 120, 70), lowerBounds: { systolic: '>' as const } };
    expect(outcomes(singles(bound, reading('09:00', 120, 70)))).toEqual(nothing);
  });

  it('newer than an average take its place, and older do not', () => {
    const both = (to: string) =>
      outcomes({ ...means(mean(to, 120)), ...singles(high, reading('09:00', 150, 80)) });
    expect(both('08:30')).toEqual(['met', 'not-met']);
    expect(both('09:30')).toEqual(['not-met', 'met']);
  });
});

describe('where the clinic has readings', () => {
  it('the question does not apply when it is asked only without them', () => {
    const facts = { ...means(mean('09:00', 150)), pressures: [reading('09:00', 120, 70)] };
    expect(told(asked('raised', facts, true))).toEqual({
      outcome: 'not-applicable',
      cited: [],
      limits: raisedIds,
    });
    expect(asked('raised', facts, false).outcome).toBe('met');
    expect(asked('raised', facts).outcome).toBe('met');
    expect(asked('raised', means(mean('09:00', 150)), true).outcome).toBe('met');
  });
});

// A pressure that cannot be used asks for action by itself, or not. Decisions 5 and 14; fhir checklist F-V04, F-V09.
import { describe, expect, it } from 'vitest';
import type { Timeline, UnusablePressure } from '../../../src/timeline/timeline.ts';
import { reading, unusable } from '../facts.ts';
import {
  ask,
  limit,
  raisedIds,
  raisedLimits as limits,
  severeIds,
  severeLimits as severe,
  told,
} from './ask.ts';

const answer = (level: 'emergency' | 'same-day', facts: Partial<Timeline>) =>
  ask(
    {
      check: 'unusable-pressure',
      limits,
      severe,
      level,
      supersededAfter: limit('>=', 30, 'min'),
      freshWithin: limit('<=', 1, 'd'),
    },
    facts,
  );
/** The level it asks for. */
function levelOf(facts: Partial<Timeline>): string {
  const met = (['emergency', 'same-day'] as const).filter((level) => answer(level, facts).outcome === 'met');
  return met.join(' and ') || 'nothing';
}
type Numbers = readonly [systolic: number | undefined, diastolic: number | undefined];
const sent = (
  why: UnusablePressure['why'],
  [systolic, diastolic]: Numbers,
  at?: string,
): UnusablePressure => ({
  ...unusable(why, at),
  ...(systolic === undefined ? {} : { systolic }),
  ...(diastolic === undefined ? {} : { diastolic }),
});
const alone = (...unusablePressures: readonly UnusablePressure[]) => levelOf({ unusablePressures });

describe('the level', () => {
  it.each<[UnusablePressure['why'], Numbers, string]>([
    ['above-plausible-range', [undefined, undefined], 'emergency'],
    ['diastolic-not-below-systolic', [100, 100], 'same-day'],
    ['diastolic-not-below-systolic', [90, 160], 'emergency'],
    ['diastolic-not-below-systolic', [110, 120], 'emergency'],
    ['diastolic-not-below-systolic', [60, 120], 'same-day'],
    ['diastolic-not-below-systolic', [165, undefined], 'emergency'],
    ['diastolic-not-below-systolic', [undefined, 112], 'emergency'],
    ['below-plausible-range', [undefined, 112], 'emergency'],
    ['below-plausible-range', [165, undefined], 'emergency'],
    ['below-plausible-range', [145, undefined], 'same-day'],
    ['below-plausible-range', [undefined, undefined], 'same-day'],
    ['unit-missing', [160, 80], 'emergency'],
    ['unit-missing', [150, 80], 'same-day'],
    ['unit-missing', [120, 80], 'nothing'],
    ['unit-missing', [undefined, undefined], 'nothing'],
    ['time-unusable', [120, 80], 'nothing'],
    ['time-unusable', [140, 80], 'same-day'],
    ['faulty-form', [120, 80], 'nothing'],
    ['faulty-form', [120, 90], 'same-day'],
    ['unit-unknown', [undefined, undefined], 'same-day'],
  ])('%s with %j asks for: %s', (why, numbers, level) => {
    expect(alone(sent(why, numbers, '09:00'))).toBe(level);
  });

  it('of each that asks for it is told, the newest in words', () => {
    const two = [
      sent('above-plausible-range', [300, 90], '08:00'),
      sent('diastolic-not-below-systolic', [90, 160], '09:00'),
    ];
    const { outcome, evidence, because } = answer('emergency', { unusablePressures: two });
    expect([outcome, evidence?.length]).toEqual(['met', 2]);
    expect(because).toContain('the diastolic not below the systolic');
    expect(told(answer('same-day', { unusablePressures: two }))).toEqual({
      outcome: 'not-met',
      cited: [],
      limits: [...raisedIds, ...severeIds],
    });
  });

  it('a fault that can be mended is named', () => {
    const fault = { element: 'component', message: 'Send one component for each half.' };
    const facts = (more: object) => ({
      unusablePressures: [{ ...sent('faulty-form', [150, 90], '09:00'), ...more }],
    });
    expect(answer('same-day', facts({ fault })).because).toMatch(/\. Send one component for each half\.$/);
    expect(answer('same-day', facts({})).because).toMatch(/\(sent: as sent\)\.$/);
  });

  it('the time is cited where there is one', () => {
    const times = (at?: string) =>
      answer('emergency', { unusablePressures: [unusable('above-plausible-range', at)] }).evidence?.map(
        ({ at: when, what }) => [when, what],
      );
    expect(times('09:00')).toEqual([['2025-03-10T09:00:00Z', 'blood pressure that cannot be used']]);
    expect(times()).toEqual([[undefined, 'blood pressure that cannot be used']]);
  });
});

describe('it is answered', () => {
  const beside = (item: UnusablePressure, ...pressures: Timeline['pressures']) =>
    levelOf({ unusablePressures: [item], pressures });
  const doubtful = unusable('above-plausible-range', '09:00');

  it('by a usable reading long enough after it, and never without a time', () => {
    expect(beside(doubtful, reading('09:29', 120, 70))).toBe('emergency');
    expect(beside(doubtful, reading('09:30', 120, 70))).toBe('nothing');
    expect(beside(doubtful, reading('08:00', 120, 70))).toBe('emergency');
    expect(beside(doubtful, reading('08:00', 120, 70), reading('11:00', 120, 70))).toBe('nothing');
    expect(beside(unusable('above-plausible-range'), reading('11:00', 120, 70))).toBe('emergency');
  });

  it('by its age when the fault is one of form, and by it alone', () => {
    const old = '2025-03-09T11:59:00Z';
    expect(alone(sent('faulty-form', [150, 90], '2025-03-09T12:00:00Z'))).toBe('same-day');
    expect(alone(sent('faulty-form', [150, 90], old))).toBe('nothing');
    expect(alone(unusable('unit-unknown', old))).toBe('nothing');
    expect(alone(sent('unit-missing', [150, 90], old))).toBe('same-day');
    expect(alone(unusable('above-plausible-range', old))).toBe('emergency');
  });

  it('by belonging to an earlier pregnancy', () => {
    expect(alone(unusable('above-plausible-range', '2023-01-01T09:00:00Z'))).toBe('nothing');
  });
});

describe('a reading sent as "at least"', () => {
  const atLeast = (systolic: number | undefined, diastolic: number | undefined, at = '09:00') => ({
    ...reading(at, systolic, diastolic),
    lowerBounds: { systolic: '>' as const },
  });
  const of = (...pressures: Timeline['pressures']) => levelOf({ pressures });

  it('may be severe once raised, may be raised otherwise, and is severe already', () => {
    expect(of(atLeast(150, 80))).toBe('emergency');
    expect(of(atLeast(139, 80))).toBe('same-day');
    expect(of(atLeast(160, 80))).toBe('nothing');
    expect(of(reading('09:00', 150, 80))).toBe('nothing');
    expect(of(atLeast(undefined, 95))).toBe('emergency');
    expect(of(atLeast(139, undefined))).toBe('same-day');
  });

  it('is cited as the reading it is, and answered by its age or a later reading', () => {
    const [cited] = answer('emergency', { pressures: [atLeast(150, 80)] }).evidence ?? [];
    expect([cited?.what, cited?.asSent]).toEqual(['blood pressure', '150/80 mm[Hg]']);
    expect(of(atLeast(150, 80, '2025-03-09T11:59:00Z'))).toBe('nothing');
    expect(of(atLeast(150, 80), reading('09:40', 120, 70))).toBe('nothing');
  });
});

// A guideline may name the class; it never lowers the urgency of the first level (decision 4).
import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/findings/finding.ts';
import { liftToFloor } from '../../src/rules/urgency-floor.ts';
import { assess } from '../support/assess.ts';

const at = (clock: string): string => `2025-03-10T${clock}:00Z`;

/** Exactly 160/110 twice: severe at the first level, "over" is not reached under NICE (A07). */
const atTheLimit = {
  asOf: at('09:30'),
  gestation: '34+0',
  pressures: [
    { at: at('09:00'), systolic: 160, diastolic: 110 },
    { at: at('09:16'), systolic: 160, diastolic: 110 },
  ],
};
/** Both answers, worked out inside each test. */
const both = () => {
  const nice = assess(atTheLimit, 'nice-2023');
  const floor = assess(atTheLimit);
  return { nice, floor, lifted: liftToFloor(nice, floor) };
};
const ids = (items: readonly { readonly id: string }[]): readonly string[] => items.map(({ id }) => id);
const rulesOf = ({ urgencyBecause }: Assessment): readonly string[] => urgencyBecause.map(({ rule }) => rule);

describe('an answer below the floor', () => {
  it('starts out less urgent', () => {
    const { nice, floor } = both();
    expect([nice.urgency, floor.urgency]).toEqual(['same-day', 'emergency']);
  });

  it('keeps its class and takes the urgency and the referral of the floor', () => {
    const { nice, floor, lifted } = both();
    expect(lifted.classification).toEqual(nice.classification);
    expect(lifted.urgency).toBe('emergency');
    expect(lifted.referral).toEqual(floor.referral);
  });

  it('gives the reasons of the floor first, then its own, each once', () => {
    const { nice, floor, lifted } = both();
    const added = rulesOf(nice).filter((rule) => !rulesOf(floor).includes(rule));
    expect(rulesOf(lifted)).toEqual([...rulesOf(floor), ...added]);
    expect(new Set(rulesOf(lifted)).size).toBe(rulesOf(lifted).length);
  });

  it('adds the steps and the drugs it lacks, each once, steps in order', () => {
    const { nice, floor, lifted } = both();
    expect(new Set(ids(lifted.actions))).toEqual(new Set([...ids(nice.actions), ...ids(floor.actions)]));
    expect(ids(lifted.actions).length).toBe(new Set(ids(lifted.actions)).size);
    const orders = lifted.actions.map(({ order }) => order);
    expect(orders).toEqual([...orders].sort((a, b) => a - b));
    expect(new Set(ids(lifted.treatment))).toEqual(
      new Set([...ids(nice.treatment), ...ids(floor.treatment)]),
    );
    expect(ids(lifted.treatment).length).toBe(new Set(ids(lifted.treatment)).size);
  });

  it('keeps its own steps and drugs where both have one of the same id', () => {
    const { nice, lifted } = both();
    for (const own of nice.actions) expect(lifted.actions).toContain(own);
    for (const own of nice.treatment) expect(lifted.treatment).toContain(own);
  });

  it('keeps its own referral where the floor has none', () => {
    const { nice, floor } = both();
    const { referral: _referral, ...withoutReferral } = floor;
    expect(liftToFloor(nice, withoutReferral).referral).toEqual(nice.referral);
    const { referral: _own, ...bare } = nice;
    expect(liftToFloor(bare, withoutReferral)).not.toHaveProperty('referral');
  });
});

describe('an answer at or above the floor', () => {
  it('is left as it is', () => {
    const { nice, floor } = both();
    expect(liftToFloor(floor, floor)).toBe(floor);
    expect(liftToFloor(floor, nice)).toBe(floor);
  });
});

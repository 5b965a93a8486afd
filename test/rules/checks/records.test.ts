// What the record says, each question by itself: conditions, and medicines in use.
import { describe, expect, it } from 'vitest';
import type { Medicine, Timeline } from '../../../src/timeline/timeline.ts';
import { condition, medicine, moment } from '../facts.ts';
import { ask, limit, told } from './ask.ts';

describe('a condition on record', () => {
  const recorded = (scope: 'active' | 'this-pregnancy' | 'ever', more: object = {}) =>
    told(
      ask(
        { check: 'condition-recorded', conditions: ['stroke'], scope },
        { conditions: [condition('asthma'), { ...condition('stroke'), ...more }] },
      ),
    );
  const found = { outcome: 'met', cited: ['stroke'], limits: [] };
  const earlier = { onset: moment('2023-05-01') };

  it('counts in each scope while it is active and of this pregnancy', () => {
    for (const scope of ['active', 'this-pregnancy', 'ever'] as const) {
      expect(recorded(scope)).toEqual(found);
      expect(recorded(scope, { onset: moment('2025-01-01') })).toEqual(found);
    }
  });

  it('that is over counts only when asked for ever', () => {
    expect(recorded('ever', { state: 'inactive' }).outcome).toBe('met');
    expect(recorded('active', { state: 'inactive' }).outcome).toBe('not-met');
    expect(recorded('this-pregnancy', { state: 'inactive' }).outcome).toBe('not-met');
  });

  it('dated before this pregnancy does not count as of this one, by its onset or, without it, its record', () => {
    expect(recorded('active', earlier).outcome).toBe('met');
    expect(recorded('this-pregnancy', earlier).outcome).toBe('not-met');
    expect(recorded('this-pregnancy', { recorded: moment('2023-05-01') }).outcome).toBe('not-met');
    expect(recorded('this-pregnancy', { ...earlier, recorded: moment('2025-01-01') }).outcome).toBe(
      'not-met',
    );
  });

  it('is named once, however often it is recorded; its time is that of its onset', () => {
    const twice = [
      { ...condition('stroke'), onset: moment('2025-01-01'), recorded: moment('2025-02-01') },
      { ...condition('stroke'), recorded: moment('2025-02-03') },
    ];
    const { because, evidence } = ask(
      { check: 'condition-recorded', conditions: ['stroke', 'asthma'], scope: 'ever' },
      { conditions: [...twice, condition('asthma')] },
    );
    expect(because).toBe('Recorded: stroke, asthma.');
    expect(evidence?.map(({ at }) => at)).toEqual(['2025-01-01', '2025-02-03', undefined]);
  });
});

describe('a medicine in use', () => {
  type More = Partial<Extract<Parameters<typeof ask>[0], { check: 'medicine-active' }>>;
  const inUse = (items: readonly Medicine[], more: More = {}, facts: Partial<Timeline> = {}) =>
    told(
      ask(
        { check: 'medicine-active', medicines: ['labetalol'], ...more },
        { medicines: [medicine('aspirin', 'active'), ...items], ...facts },
      ),
    );
  const outcome = (...given: Parameters<typeof inUse>) => inUse(...given).outcome;
  const taken = medicine('labetalol', 'active', '2025-03-01');

  it('counts while it is active and its end has not come', () => {
    expect(inUse([taken])).toEqual({ outcome: 'met', cited: ['labetalol'], limits: [] });
    expect(outcome([])).toBe('not-met');
    expect(outcome([{ ...taken, status: 'ordered' }])).toBe('not-met');
    expect(outcome([{ ...taken, end: moment('12:00') }])).toBe('met');
    expect(outcome([{ ...taken, end: moment('11:59') }])).toBe('not-met');
  });

  it('begun in another part of the pregnancy does not count where the part is asked', () => {
    const before = { activeIn: 'before-20-weeks' } as const;
    const from = { activeIn: 'from-20-weeks' } as const;
    const old = medicine('labetalol', 'active', '2024-10-01');
    const older = medicine('labetalol', 'active', '2020-01-01');
    expect([outcome([taken], before), outcome([taken], from)]).toEqual(['not-met', 'met']);
    expect([outcome([old], before), outcome([old], from)]).toEqual(['met', 'not-met']);
    expect([outcome([older], before), outcome([older], from)]).toEqual(['met', 'not-met']);
  });

  it('without its start is taken now, unless the start has to be known', () => {
    const undated = medicine('labetalol', 'active');
    expect(outcome([undated], { activeIn: 'from-20-weeks' })).toBe('met');
    expect(outcome([undated], { activeIn: 'before-20-weeks' })).toBe('not-met');
    expect(outcome([undated], { activeIn: 'from-20-weeks', startKnown: true })).toBe('not-met');
    expect(outcome([taken], { startKnown: true })).toBe('met');
    expect(outcome([undated], { startKnown: false })).toBe('met');
  });

  it('says nothing beside another active reason for it', () => {
    const other = { otherIndications: ['heart-failure'] } as const;
    const failing = condition('heart-failure');
    const beside = (item: typeof failing) => inUse([taken], other, { conditions: [item] });
    expect(beside(failing)).toEqual({ outcome: 'not-met', cited: ['labetalol'], limits: [] });
    expect(beside({ ...failing, state: 'inactive' }).outcome).toBe('met');
    expect(beside(condition('asthma')).outcome).toBe('met');
    expect(inUse([taken], {}, { conditions: [failing] }).outcome).toBe('met');
  });

  describe('by its doses', () => {
    const doses = { within: limit('<=', 1, 'd'), apart: limit('>=', 4, 'h') };
    const dose = (start: string, more: Partial<Medicine> = {}) => ({
      ...medicine('labetalol', 'given', start),
      ...more,
    });
    const once = { doses: { within: doses.within } };

    it('counts where they are asked for, inside the time', () => {
      expect(outcome([dose('09:00')])).toBe('not-met');
      expect(outcome([dose('09:00')], once)).toBe('met');
      expect(outcome([dose('2025-03-09T12:00:00Z')], once)).toBe('met');
      expect(outcome([dose('2025-03-09T11:59:00Z')], once)).toBe('not-met');
      expect(outcome([medicine('labetalol', 'given')], once)).toBe('not-met');
      expect(outcome([medicine('aspirin', 'given', '09:00')], once)).toBe('not-met');
      const stopped = { ...medicine('labetalol', 'stopped'), end: moment('09:00') };
      expect(outcome([stopped], once)).toBe('not-met');
    });

    it('counts from two so far apart, of one medicine, where that is asked', () => {
      const two = (...items: readonly Medicine[]) =>
        outcome(items, { medicines: ['labetalol', 'nifedipine'], doses });
      expect(two(dose('04:00'))).toBe('not-met');
      expect(two(dose('04:00'), dose('08:00'))).toBe('met');
      expect(two(dose('08:00'), dose('04:00'))).toBe('met');
      expect(two(dose('04:00'), dose('07:59'))).toBe('not-met');
      expect(two(dose('04:00'), medicine('nifedipine', 'given', '08:00'))).toBe('not-met');
      expect(two(dose('04:00'), dose('08:00', { status: 'ordered' }))).toBe('not-met');
      expect(two(dose('04:00'), dose('08:00', { isOrder: true }))).toBe('not-met');
    });

    it('takes the end of a dose where nothing else tells its time', () => {
      const { start: _start, ...ended } = dose('04:00');
      const until = (end: string): Medicine => ({ ...ended, end: moment(end) });
      expect(outcome([until('04:00'), until('08:00')], { doses })).toBe('met');
      expect(outcome([until('04:00'), until('07:59')], { doses })).toBe('not-met');
      expect(outcome([dose('04:00'), until('07:59')], { doses })).toBe('not-met');
    });

    it('counts in the part of the pregnancy in which they were given', () => {
      expect(outcome([dose('09:00')], { ...once, activeIn: 'from-20-weeks' })).toBe('met');
      expect(outcome([dose('09:00')], { ...once, activeIn: 'before-20-weeks' })).toBe('not-met');
    });
  });
});

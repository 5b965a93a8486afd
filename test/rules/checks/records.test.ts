// What the record says, each question by itself: conditions, medicines in use, one value against a limit, a fall, fetuses.
import { describe, expect, it } from 'vitest';
import type { Medicine, Timeline } from '../../../src/timeline/timeline.ts';
import { condition, lab, medicine, moment } from '../facts.ts';
import { ask, limit, told } from './ask.ts';

const source = { reference: 'Observation/one', preliminary: false };

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

describe('a value against a limit', () => {
  const reached = (...laboratory: Timeline['laboratory']) =>
    told(
      ask(
        {
          check: 'laboratory-reaches',
          analyte: 'creatinine',
          limit: limit('>=', 90, 'umol/L'),
          freshWithin: limit('<=', 2, 'd'),
        },
        { laboratory },
      ),
    );
  const creatinine = (when: string, value: number) => lab(when, 'creatinine', value, 'umol/L');
  const named = { limits: ['>= 90 umol/L'] };

  it('is met at the limit by the newest', () => {
    const urate = lab('10:00', 'urate', 300, 'umol/L');
    const value = (outcome: string, cited: string) => ({ outcome, cited: [cited], ...named });
    expect(reached(creatinine('08:00', 60), creatinine('09:00', 90), urate)).toEqual(
      value('met', '90 umol/L'),
    );
    expect(reached(creatinine('08:00', 95), creatinine('09:00', 89))).toEqual(value('not-met', '89 umol/L'));
    const bound = lab('09:00', 'creatinine', 95, 'umol/L', '<');
    expect(reached(bound)).toEqual(value('cannot-tell', '95 umol/L'));
  });

  it('is open without a recent one, and cites one in another unit', () => {
    expect(reached()).toEqual({ outcome: 'cannot-tell', cited: [], ...named });
    expect(reached(creatinine('2025-03-08T12:00:00Z', 95)).outcome).toBe('met');
    expect(reached(creatinine('2025-03-08T11:59:00Z', 95))).toEqual({
      outcome: 'cannot-tell',
      cited: [],
      ...named,
    });
    expect(reached(lab('09:00', 'creatinine', 1.1, 'mg/dL'))).toEqual({
      outcome: 'cannot-tell',
      cited: ['1.1 mg/dL'],
      ...named,
    });
  });

  it('of an earlier pregnancy is none', () => {
    expect(reached(creatinine('2024-01-01T09:00:00Z', 95)).cited).toEqual([]);
  });
});

describe('a fall', () => {
  const fall = (...laboratory: Timeline['laboratory']) =>
    ask(
      {
        check: 'laboratory-fall',
        analyte: 'platelets',
        limit: limit('>=', 30, '%'),
        freshWithin: limit('<=', 2, 'd'),
      },
      { laboratory },
    );
  const count = (when: string, value: number, unit = '10*9/L') => lab(when, 'platelets', value, unit);
  const named = { limits: ['>= 30 %'] };

  it('is reckoned from the highest earlier value of this pregnancy', () => {
    const three = [count('2025-01-01T09:00:00Z', 200), count('2025-02-01T09:00:00Z', 300)];
    expect(told(fall(...three, count('09:00', 210)))).toEqual({
      outcome: 'met',
      cited: ['300 10*9/L', '210 10*9/L'],
      ...named,
    });
    expect(told(fall(...three, count('09:00', 211))).outcome).toBe('not-met');
    expect(fall(...three, count('09:00', 210)).evidence?.at(-1)?.asCompared).toBe('30 % lower');
    expect(told(fall(count('2024-01-01T09:00:00Z', 400), count('09:00', 210))).outcome).toBe(
      'not-applicable',
    );
  });

  it('needs a fresh value, and an earlier one in its unit', () => {
    const none = { outcome: 'not-applicable', cited: [], ...named };
    expect(told(fall())).toEqual(none);
    expect(told(fall(count('09:00', 210)))).toEqual(none);
    expect(told(fall(count('2025-02-01T09:00:00Z', 300), count('2025-03-08T11:59:00Z', 200)))).toEqual(none);
    expect(told(fall(count('2025-02-01T09:00:00Z', 300), count('2025-03-08T12:00:00Z', 200))).outcome).toBe(
      'met',
    );
    expect(told(fall(count('2025-02-01T09:00:00Z', 300_000, '/uL'), count('09:00', 100)))).toEqual(none);
  });
});

describe('the number of fetuses', () => {
  const reach = (count?: number) =>
    told(
      ask(
        { check: 'fetuses-reach', limit: limit('>=', 2, '1') },
        { pregnancy: { remarks: [], ...(count === undefined ? {} : { fetuses: { count, source } }) } },
      ),
    );

  it('is compared as it is recorded, and not recorded is not one', () => {
    expect(reach(2)).toEqual({ outcome: 'met', cited: ['2'], limits: ['>= 2 1'] });
    expect(reach(1)).toEqual({ outcome: 'not-met', cited: ['1'], limits: ['>= 2 1'] });
    expect(reach()).toEqual({ outcome: 'not-met', cited: [], limits: ['>= 2 1'] });
  });
});

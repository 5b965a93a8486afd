// One value against a limit, a fall from an earlier one, and the number of fetuses, each question by itself.
import { describe, expect, it } from 'vitest';
import type { Timeline } from '../../../src/timeline/timeline.ts';
import { lab } from '../facts.ts';
import { ask, limit, told } from './ask.ts';

const source = { reference: 'Observation/one', preliminary: false };

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

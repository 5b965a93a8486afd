// Severe pressure, each question by itself: open, closed, confirmed, current, control lost. Clinical rules 2.3; decisions 5 and 14.
import { describe, expect, it } from 'vitest';
import type { Timeline } from '../../../src/timeline/timeline.ts';
import { medicine, moment, reading, symptom } from '../facts.ts';
import { ask, limit, severeConfirmation, severeIds, severeLimits as limits, told } from './ask.ts';

const rule = { limits, severeConfirmation, dangerSymptoms: ['headache'] } as const;
const high = (when: string) => reading(when, 170, 112);
const low = (when: string) => reading(when, 130, 80);
const [sentHigh, sentLow] = ['170/112 mm[Hg]', '130/80 mm[Hg]'];
const at = (...pressures: Timeline['pressures']): Partial<Timeline> => ({ pressures });
const headache = { symptoms: [symptom('headache')] };
const drug = (start: string) => ({ medicines: [medicine('labetalol', 'given', start)] });

const open = (facts: Partial<Timeline>) => told(ask({ check: 'severe-pressure-open', ...rule }, facts));
const closed = (facts: Partial<Timeline>) => told(ask({ check: 'severe-pressure-closed', ...rule }, facts));
const confirmed = (facts: Partial<Timeline>, period: 'any' | 'from-20-weeks' | 'before-20-weeks' = 'any') =>
  told(ask({ check: 'severe-pressure-confirmed', ...rule, period }, facts));
const settledAfter = limit('>=', 1, 'd');
const current = (facts: Partial<Timeline>) =>
  told(ask({ check: 'severe-pressure-current', ...rule, settledAfter }, facts));
const earlierBy = limit('>=', 2, 'd');
const lost = (facts: Partial<Timeline>, days?: number) =>
  told(ask({ check: 'pressure-control-lost', ...rule, earlierBy }, facts, days));

describe('without a severe reading', () => {
  it.each([open, closed, confirmed, current, lost])(
    'each question is not met, or open without any',
    (asked) => {
      expect(asked({})).toEqual({ outcome: 'cannot-tell', cited: [], limits: severeIds });
      expect(asked(at(low('09:00')))).toEqual({ outcome: 'not-met', cited: [], limits: severeIds });
    },
  );
});

describe('a severe reading is open', () => {
  const limited = [...severeIds, '<= 60 min'];

  it('until it is repeated', () => {
    expect(open(at(high('09:00')))).toEqual({ outcome: 'met', cited: [sentHigh], limits: limited });
    expect(open(at(high('09:00'), low('09:30')))).toEqual({ outcome: 'not-met', cited: [], limits: limited });
    expect(open(at(high('09:00'), low('09:29'))).outcome).toBe('met');
    expect(open(at(high('09:00'), high('09:15')))).toEqual({
      outcome: 'not-met',
      cited: [],
      limits: limited,
    });
    expect(open(at(high('09:00'), high('09:14'))).outcome).toBe('met');
  });

  it('and so is each that is neither confirmed nor closed, the last being cited', () => {
    expect(open(at(reading('09:00', 168, 100), high('09:10'))).cited).toEqual([sentHigh]);
    expect(open(at(high('06:00'), low('06:40'), low('08:00'))).outcome).toBe('not-met');
    expect(open(at(high('06:00'), high('06:20'), reading('06:25', 165, 100))).outcome).toBe('not-met');
  });

  it('but not once a danger symptom or a drug confirms it', () => {
    expect(open({ ...at(high('09:00')), ...headache }).outcome).toBe('not-met');
    expect(open({ ...at(high('09:00')), ...drug('09:05') }).outcome).toBe('not-met');
  });

  it('a reading of which a half is missing does not close it', () => {
    expect(open(at(high('09:00'), reading('09:40', 130, undefined))).outcome).toBe('met');
  });

  it('at home as in the clinic', () => {
    expect(open({ homePressures: [high('09:00')], pressures: [low('08:00')] }).outcome).toBe('met');
    expect(open({ homePressures: [high('09:00')], pressures: [low('09:40')] }).outcome).toBe('not-met');
  });
});

describe('a severe reading is closed', () => {
  const limited = [...severeIds, '>= 30 min'];

  it('by one below the limits long enough after it', () => {
    const found = { outcome: 'met', cited: [sentHigh, sentLow], limits: limited };
    expect(closed(at(high('09:00'), low('09:30')))).toEqual(found);
    expect(closed(at(high('09:00'), low('09:29')))).toEqual({
      outcome: 'not-met',
      cited: [],
      limits: limited,
    });
  });

  it('the newest of several is told', () => {
    const pair = at(reading('06:00', 168, 100), high('06:14'), low('07:00'));
    expect(closed(pair).cited).toEqual([sentHigh, sentLow]);
  });

  it('and one that was confirmed is not', () => {
    expect(closed(at(high('09:00'), high('09:20'), low('09:45'))).outcome).toBe('not-met');
  });

  it('never when a drug came between, though other readings came before the drug', () => {
    const treated = { ...at(high('09:00'), low('09:10'), low('09:40')), ...drug('09:15') };
    expect([closed(treated).outcome, open(treated).outcome]).toEqual(['not-met', 'met']);
  });

  it('never beside a danger symptom, nor when a drug brought it down', () => {
    const pressures = at(high('09:00'), low('09:30'));
    expect(closed({ ...pressures, ...headache }).outcome).toBe('not-met');
    expect(closed({ ...at(high('08:00'), high('09:00'), low('09:30')), ...headache }).outcome).toBe(
      'not-met',
    );
    expect(closed({ ...pressures, ...drug('09:10') }).outcome).toBe('not-met');
  });
});

describe('severe pressure is confirmed', () => {
  const limited = [...severeIds, '>= 15 min'];

  it('by a second severe reading from the interval on', () => {
    const found = { outcome: 'met', cited: [sentHigh, sentHigh], limits: limited };
    expect(confirmed(at(high('09:00'), high('09:15')))).toEqual(found);
    expect(confirmed(at(high('09:00'), high('09:14')))).toEqual({ ...found, outcome: 'cannot-tell' });
  });

  it('by a danger symptom, or by a drug before any other reading', () => {
    expect(confirmed({ ...at(high('09:00')), ...headache })).toEqual({
      outcome: 'met',
      cited: [sentHigh, 'present'],
      limits: limited,
    });
    expect(confirmed({ ...at(high('09:00')), ...drug('09:05') })).toEqual({
      outcome: 'met',
      cited: [sentHigh, 'labetalol'],
      limits: limited,
    });
    expect(confirmed({ ...at(high('09:00'), low('09:20')), ...drug('09:25') }).outcome).toBe('cannot-tell');
  });

  it('beside a danger symptom in its own part of the pregnancy, whatever came in the part before', () => {
    const over20 = at(high('2024-12-29T23:50:00Z'), high('2024-12-30T00:10:00Z'));
    expect(confirmed(over20, 'from-20-weeks').outcome).toBe('cannot-tell');
    expect(confirmed({ ...over20, ...headache }, 'from-20-weeks').outcome).toBe('met');
    expect(confirmed(over20, 'before-20-weeks').outcome).toBe('met');
  });

  it('says why', () => {
    const because = (facts: Partial<Timeline>) =>
      ask({ check: 'severe-pressure-confirmed', ...rule, period: 'any' }, facts).because;
    expect(because(at(high('09:00'), high('09:15')))).toContain('seen again as 170/112 mm[Hg]');
    expect(because({ ...at(high('09:00')), ...headache })).toContain('a danger symptom is present');
  });

  it('in the part of the pregnancy that is asked about', () => {
    const early = at(high('2024-12-29T09:00:00Z'), high('2024-12-29T09:20:00Z'), high('09:00'));
    expect(confirmed(early, 'before-20-weeks').outcome).toBe('met');
    expect(confirmed(early, 'from-20-weeks').outcome).toBe('cannot-tell');
    expect(confirmed(early, 'from-20-weeks').cited).toEqual([sentHigh]);
    expect(confirmed(early, 'any').outcome).toBe('met');
    expect(confirmed(at(high('09:00')), 'before-20-weeks').outcome).toBe('not-met');
  });
});

describe('severe pressure is current', () => {
  const pair = [high('2025-03-08T09:00:00Z'), high('2025-03-08T09:20:00Z')];

  it('until a reading below the limits a day after the last severe one', () => {
    expect(current(at(...pair)).outcome).toBe('met');
    expect(current(at(...pair, low('2025-03-09T09:19:00Z'))).outcome).toBe('met');
    expect(current(at(...pair, reading('2025-03-09T09:20:00Z', 130, undefined))).outcome).toBe('met');
    expect(current(at(...pair, low('2025-03-09T09:20:00Z')))).toEqual({
      outcome: 'not-met',
      cited: [sentHigh, sentLow],
      limits: [...severeIds, '>= 1 d'],
    });
  });

  it('counts from the last of several severe readings', () => {
    const third = high('2025-03-09T08:00:00Z');
    expect(current(at(...pair, third, low('2025-03-10T07:59:00Z'))).outcome).toBe('met');
    expect(current(at(...pair, third, low('2025-03-10T08:00:00Z'))).outcome).toBe('not-met');
  });

  it('is open while it is not confirmed', () => {
    expect(current(at(high('09:00'))).outcome).toBe('cannot-tell');
    expect(current(at(high('2025-03-08T09:00:00Z'), low('2025-03-09T10:00:00Z'))).outcome).toBe(
      'cannot-tell',
    );
  });
});

describe('control is lost', () => {
  const rise = [high('08:00'), high('09:00')];
  const named = [...severeIds, '>= 2 d'];

  it('when a reading below the range lies long enough before the first severe one', () => {
    expect(lost(at(low('2025-03-08T08:00:00Z'), ...rise))).toEqual({
      outcome: 'met',
      cited: [sentLow, sentHigh, sentHigh],
      limits: named,
    });
    expect(lost(at(low('2025-03-08T08:01:00Z'), ...rise))).toEqual({
      outcome: 'cannot-tell',
      cited: [],
      limits: named,
    });
  });

  it('the last such reading is cited, and one without its diastolic shows nothing', () => {
    const before = [reading('2025-03-01T08:00:00Z', 118, 70), low('2025-03-05T08:00:00Z')];
    expect(lost(at(...before, ...rise)).cited[0]).toBe(sentLow);
    expect(lost(at(reading('2025-03-05T08:00:00Z', 118, undefined), ...rise)).outcome).toBe('cannot-tell');
  });

  it('a severe reading of before 20 weeks is not where it was lost', () => {
    const early = high('2024-12-29T09:00:00Z');
    expect(lost(at(early, low('2025-03-01T08:00:00Z'), ...rise)).cited).toEqual([
      sentLow,
      sentHigh,
      sentHigh,
    ]);
    expect(lost(at(high('08:00'))).outcome).toBe('cannot-tell');
    expect(lost(at(...rise), 100).outcome).toBe('not-met');
  });
});

describe('a danger symptom', () => {
  it('that is old confirms all the same', () => {
    const old = { ...symptom('headache'), at: moment('2025-02-01T09:00:00Z') };
    expect(confirmed({ ...at(high('09:00')), symptoms: [old] }).outcome).toBe('met');
  });
});

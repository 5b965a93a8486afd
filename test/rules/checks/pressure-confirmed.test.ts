// Pairs that confirm, by what, and what is said of those that do not: the question by itself. Clinical rules 2.3.
import { describe, expect, it } from 'vitest';
import type { Confirmation } from '../../../src/guidelines/guideline.ts';
import { pairsIn, repeatTime } from '../../../src/rules/checks/pressure-confirmed.ts';
import type { Timeline } from '../../../src/timeline/timeline.ts';
import { applied, medicine, moment, reading, symptom } from '../facts.ts';
import {
  ask,
  fourHours,
  limit,
  raisedIds,
  raisedLimits as limits,
  severeConfirmation,
  severeIds,
  severeLimits as severe,
  told,
  viewOf,
} from './ask.ts';

const { minimumInterval: _none, ...noInterval } = fourHours;
const raised = (when: string, arm?: 'left' | 'right') =>
  reading(when, 150, 96, arm === undefined ? {} : { arm });
const normal = (when: string) => reading(when, 120, 76);
const sent = '150/96 mm[Hg]';
const named = [...raisedIds, '>= 4 h'];

const question = {
  check: 'pressure-confirmed',
  limits,
  severe,
  period: 'from-20-weeks',
  severeConfirmation,
  dangerSymptoms: ['headache'],
} as const;
const answer = (facts: Partial<Timeline>, confirmation: Confirmation = fourHours, days?: number) =>
  ask({ ...question, confirmation }, facts, days);
const source = { reference: 'Observation/birth', preliminary: false };
const longBorn = { remarks: [], birth: { at: moment('2024-12-01'), asSent: 'born', source } };
const confirmed = (pressures: Timeline['pressures'], more: Partial<Timeline> = {}) =>
  told(answer({ pressures, ...more }));

describe('two raised contacts', () => {
  it('confirm from the interval on, the newest such pair being cited', () => {
    const pair = { outcome: 'met', cited: [sent, sent], limits: named };
    expect(confirmed([raised('05:00'), raised('09:00')])).toEqual(pair);
    expect(confirmed([raised('05:00'), raised('08:59')])).toEqual({ ...pair, outcome: 'cannot-tell' });
    const three = [reading('01:00', 144, 92), raised('05:00'), raised('09:00')];
    expect(confirmed(three)).toEqual(pair);
  });

  it('of which one is below the limits do not', () => {
    expect(confirmed([raised('05:00'), normal('09:00')])).toEqual({
      outcome: 'cannot-tell',
      cited: [sent],
      limits: named,
    });
  });

  it('need no interval where the publication names none', () => {
    const pair = told(answer({ pressures: [raised('05:00'), raised('05:45')] }, noInterval));
    expect(pair).toEqual({ outcome: 'met', cited: [sent, sent], limits: raisedIds });
  });

  it('by date alone confirm only when the dates cannot be closer than the interval', () => {
    expect(confirmed([raised('2025-03-08'), raised('2025-03-10')]).outcome).toBe('met');
    expect(confirmed([raised('2025-03-09'), raised('2025-03-10')]).outcome).toBe('cannot-tell');
  });

  it('in another part of the pregnancy, or more than six weeks after a birth, say nothing here', () => {
    const early = { pressures: [raised('05:00'), raised('09:00')] };
    expect(answer(early, fourHours, 100).outcome).toBe('not-applicable');
    expect(answer({}).outcome).toBe('not-applicable');
    const undated = { ...question, confirmation: fourHours, period: 'unknown' } as const;
    expect(ask(undated, { ...early, pregnancy: { remarks: [] } }).outcome).toBe('met');
    expect(ask(undated, { ...early, pregnancy: longBorn }).outcome).toBe('not-applicable');
  });

  it('none of them raised: not met, with the newest contact', () => {
    expect(confirmed([reading('05:00', 118, 72), normal('09:00')])).toEqual({
      outcome: 'not-met',
      cited: ['120/76 mm[Hg]'],
      limits: named,
    });
  });
});

describe('pairs', () => {
  const pairs = (confirmation: Confirmation, ...pressures: Timeline['pressures']) =>
    pairsIn(viewOf({ pressures }).occasions, limits, confirmation).map(({ first, second }) => [
      first.at.text.slice(11, 16),
      second.at.text.slice(11, 16),
    ]);

  it('are all pairs far enough apart, the older contact first', () => {
    expect(pairs(fourHours, raised('01:00'), raised('03:00'), raised('05:00'), raised('07:00'))).toEqual([
      ['01:00', '05:00'],
      ['01:00', '07:00'],
      ['03:00', '07:00'],
    ]);
  });

  it('of readings lie inside a visit too, where the publication pairs readings', () => {
    const visit = [raised('09:00'), reading('09:05', 120, 70), raised('09:10')];
    const ofReadings = { ...noInterval, between: 'readings' } as const;
    expect(pairs(ofReadings, ...visit)).toEqual([['09:00', '09:10']]);
    expect(pairs(noInterval, ...visit)).toEqual([]);
  });

  it('are of one arm, where that is asked; an arm not recorded may be either', () => {
    const sameArm = { ...fourHours, sameArm: true };
    const both = [['05:00', '09:00']];
    expect(pairs(sameArm, raised('05:00', 'left'), raised('09:00', 'right'))).toEqual([]);
    expect(pairs(sameArm, raised('05:00', 'left'), raised('09:00', 'left'))).toEqual(both);
    expect(pairs(sameArm, raised('05:00'), raised('09:00', 'right'))).toEqual(both);
    expect(pairs(sameArm, raised('05:00', 'left'), raised('09:00'))).toEqual(both);
    expect(pairs(fourHours, raised('05:00', 'left'), raised('09:00', 'right'))).toEqual(both);
  });
});

describe('severe pressure', () => {
  const high = (when: string) => reading(when, 170, 112);
  const how = { limits: [...severeIds, '>= 15 min'] };

  it('seen again, or beside a danger symptom, confirms before the interval is over', () => {
    const again = confirmed([high('09:00'), high('09:15')]);
    expect(again).toEqual({ outcome: 'met', cited: ['170/112 mm[Hg]', '170/112 mm[Hg]'], ...how });
    const headache = { symptoms: [symptom('headache')] };
    expect(confirmed([high('09:00')], headache)).toEqual({
      outcome: 'met',
      cited: ['170/112 mm[Hg]', 'present'],
      ...how,
    });
    expect(confirmed([high('09:00')]).outcome).toBe('cannot-tell');
  });

  it('of before 20 weeks confirms nothing from 20 weeks on', () => {
    const before = '2024-12-29T09:00:00Z';
    const pressures = [high(before), high('2024-12-29T09:20:00Z'), raised('09:00')];
    expect(confirmed(pressures).outcome).toBe('cannot-tell');
  });
});

describe('a drug for pressure after a raised contact', () => {
  const drug = (start: string) => ({ medicines: [medicine('labetalol', 'given', start)] });

  it('confirms when it came before the very next contact, raised or not', () => {
    const met = { outcome: 'met', cited: [sent, 'labetalol', '120/76 mm[Hg]'], limits: named };
    expect(confirmed([raised('06:00'), normal('08:00')], drug('07:00'))).toEqual(met);
    expect(confirmed([normal('05:00'), raised('06:00'), normal('08:00')], drug('07:00'))).toEqual(met);
  });

  it('known by its date alone does not: it may have come before the reading of that day', () => {
    const dated = [raised('2025-03-09'), normal('09:00')];
    expect(confirmed(dated, drug('2025-03-09')).outcome).toBe('cannot-tell');
  });

  it('does not when the contact before it was normal, or none followed', () => {
    expect(confirmed([normal('06:00'), raised('08:00')], drug('07:00')).outcome).toBe('cannot-tell');
    expect(confirmed([raised('06:00')], drug('07:00')).outcome).toBe('cannot-tell');
    expect(confirmed([raised('06:00'), normal('08:00'), normal('10:00')], drug('09:00')).outcome).toBe(
      'cannot-tell',
    );
  });
});

describe('what is said of a pair that does not confirm', () => {
  const said = (...pressures: Timeline['pressures']) => answer({ pressures }).because;

  it('names the minutes that are short between the first and the last raised contact', () => {
    expect(said(raised('05:00'), raised('08:59'))).toContain('are 1 minute short of the interval');
    expect(said(raised('05:00'), raised('06:00'), raised('08:30'))).toContain('are 30 minutes short');
  });

  it('names the arms where the interval is there and they differ', () => {
    const sameArm = { ...fourHours, sameArm: true };
    for (const clock of ['09:00', '10:00'])
      expect(
        answer({ pressures: [raised('05:00', 'left'), raised(clock, 'right')] }, sameArm).because,
      ).toMatch(/: the arms differ\.$/);
  });

  it('names none where the publication has no interval', () => {
    const { because } = answer({ pressures: [raised('2025-03-10'), raised('09:00')] }, noInterval);
    expect(because).toContain('the times do not show the interval');
  });

  it('names no minutes where a time is only a date', () => {
    for (const pair of [
      [raised('2025-03-10'), raised('23:00')],
      [raised('2025-03-09T22:00:00Z'), raised('2025-03-10')],
    ])
      expect(said(...pair)).toContain('the times do not show the interval');
  });
});

describe('the time of the repeat', () => {
  it('lies the interval after the first reading, in its own zone', () => {
    expect(repeatTime(moment('2025-03-10T09:00:00+05:30'), fourHours)).toBe('2025-03-10T13:00:00+05:30');
    expect(repeatTime(moment('2025-03-10'), fourHours)).toBeUndefined();
    expect(repeatTime(moment('09:00'), noInterval)).toBeUndefined();
  });

  it('is part of what is missing', () => {
    expect(answer({ pressures: [raised('09:00')] }).missing?.at).toBe('2025-03-10T13:00:00Z');
    expect(answer({ pressures: [raised('2025-03-10')] }).missing).toStrictEqual({});
  });
});

describe('a stale pair', () => {
  const question = {
    check: 'pressure-pair-stale',
    limits,
    confirmation: fourHours,
    freshWithin: limit('<=', 7, 'd'),
  } as const;
  const stale = (...pressures: Timeline['pressures']) => told(ask(question, { pressures }));
  const width = { cited: [sent, sent], limits: ['<= 7 d'] };

  it('lies further apart than the limit', () => {
    expect(stale(raised('2025-03-03T09:00:00Z'), raised('09:00'))).toEqual({ outcome: 'not-met', ...width });
    expect(stale(raised('2025-03-03T08:59:00Z'), raised('09:00'))).toEqual({ outcome: 'met', ...width });
  });

  it('is not stale beside a fresh one, and does not apply without a pair', () => {
    const beside = stale(raised('2025-02-01T09:00:00Z'), raised('05:00'), raised('09:00'));
    expect(beside).toEqual({ outcome: 'not-met', ...width });
    expect(stale(raised('09:00')).outcome).toBe('not-applicable');
  });

  it('of which both lie more than six weeks after a birth is none', () => {
    const pressures = [raised('2025-03-01T09:00:00Z'), raised('09:00')];
    const { outcome } = ask(question, { pressures, pregnancy: longBorn });
    expect(outcome).toBe('not-applicable');
  });

  it('does not reach over the boundary of 20 weeks', () => {
    expect(stale(raised('2024-12-29T09:00:00Z'), raised('09:00')).outcome).toBe('not-applicable');
  });
});

it('the class follows: chronic hypertension needs its pair before 20 weeks', () => {
  const pressures = [raised('2025-03-10T02:00:00Z'), raised('09:00')];
  expect(applied({ pressures }, 100).assessment.classification[0]).toBe('chronic-hypertension');
  expect(applied({ pressures: pressures.slice(1) }, 100).assessment.classification).not.toContain(
    'chronic-hypertension',
  );
});

// Where the pressure stands, each question by itself: once, now, open, transient, settled. Clinical rules 2.3, 2.8.
import { describe, expect, it } from 'vitest';
import type { Timeline } from '../../../src/timeline/timeline.ts';
import { reading } from '../facts.ts';
import { ask, fourHours, limit, raisedIds, raisedLimits as limits, told } from './ask.ts';

const day = limit('<=', 1, 'd');
const hours = limit('>=', 4, 'h');
const at = (...pressures: Timeline['pressures']): Partial<Timeline> => ({ pressures });
const raised = (when: string) => reading(when, 150, 96);
const normal = (when: string) => reading(when, 120, 76);
const sentRaised = '150/96 mm[Hg]';
const sentNormal = '120/76 mm[Hg]';

describe('raised once', () => {
  const once = (facts: Partial<Timeline>) =>
    told(ask({ check: 'pressure-raised-once', limits, freshWithin: day }, facts));

  it('cannot be told without a reading, or with an old one alone', () => {
    expect(once({})).toEqual({ outcome: 'cannot-tell', cited: [], limits: [] });
    expect(once(at(raised('2025-03-09T11:59:00Z')))).toEqual({
      outcome: 'cannot-tell',
      cited: [],
      limits: raisedIds,
    });
  });

  it('is met by a reading just fresh, in the clinic or at home, a normal one after it', () => {
    const met = { outcome: 'met', cited: [sentRaised], limits: raisedIds };
    expect(once(at(raised('2025-03-09T12:00:00Z'), normal('09:00')))).toEqual(met);
    expect(once({ homePressures: [raised('08:00')], pressures: [normal('09:00')] })).toEqual(met);
  });

  it('cites the newest of several raised ones', () => {
    expect(once(at(reading('08:00', 170, 96), raised('09:00'))).cited).toEqual([sentRaised]);
  });

  it('is not met when the newest is below the limits, and open when a half of it is missing', () => {
    const lower = reading('08:00', 110, 70);
    expect(once(at(lower, normal('09:00')))).toEqual({
      outcome: 'not-met',
      cited: [sentNormal],
      limits: raisedIds,
    });
    expect(once(at(lower, reading('09:00', 120, undefined)))).toEqual({
      outcome: 'cannot-tell',
      cited: [],
      limits: raisedIds,
    });
  });
});

describe('raised now', () => {
  const now = (facts: Partial<Timeline>, period?: 'from-20-weeks' | 'after-birth') =>
    told(ask({ check: 'pressure-raised-now', limits, ...(period === undefined ? {} : { period }) }, facts));

  it('is told from the newest contact alone', () => {
    expect(now({}).outcome).toBe('cannot-tell');
    expect(now(at(raised('08:00'), normal('09:00')))).toEqual({
      outcome: 'not-met',
      cited: [sentNormal],
      limits: raisedIds,
    });
    expect(now(at(normal('08:00'), raised('09:00')))).toEqual({
      outcome: 'met',
      cited: [sentRaised],
      limits: raisedIds,
    });
    expect(now(at(reading('09:00', 120, undefined)))).toEqual({
      outcome: 'cannot-tell',
      cited: ['120/- mm[Hg]'],
      limits: raisedIds,
    });
  });

  it('does not apply when the newest contact is of another part of the pregnancy', () => {
    expect(now(at(raised('09:00')), 'from-20-weeks').outcome).toBe('met');
    expect(now(at(raised('09:00')), 'after-birth').outcome).toBe('not-applicable');
  });
});

describe('raised and open, raised and settled', () => {
  const question = { limits, confirmation: fourHours };
  const { minimumInterval: _none, ...noInterval } = fourHours;
  const open = (facts: Partial<Timeline>, confirmation = question.confirmation) =>
    told(ask({ check: 'pressure-raised-open', limits, confirmation }, facts));
  const transient = (facts: Partial<Timeline>, confirmation = question.confirmation) =>
    told(ask({ check: 'pressure-transient', limits, confirmation }, facts));
  const named = [...raisedIds, '>= 4 h'];

  it('cannot be told without a contact, and is not met where none was raised', () => {
    for (const asked of [open, transient]) {
      expect(asked({})).toEqual({ outcome: 'cannot-tell', cited: [], limits: [] });
      expect(asked(at(normal('09:00')))).toEqual({ outcome: 'not-met', cited: [], limits: named });
    }
  });

  it('a raised contact is open until one below the limits follows after the interval', () => {
    const waiting = { outcome: 'met', cited: [sentRaised], limits: named };
    expect(open(at(raised('06:00')))).toEqual(waiting);
    expect(open(at(raised('06:00'), normal('09:59')))).toEqual(waiting);
    expect(open(at(raised('06:00'), reading('10:00', 120, undefined)))).toEqual(waiting);
    expect(open(at(raised('06:00'), normal('10:00')))).toEqual({
      outcome: 'not-met',
      cited: [sentRaised, sentNormal],
      limits: named,
    });
  });

  it('the last raised contact is the one that waits', () => {
    expect(open(at(reading('02:00', 144, 92), normal('06:00'), raised('07:00'))).cited).toEqual([sentRaised]);
  });

  it('it is transient once it was answered, and open before', () => {
    expect(transient(at(raised('06:00'), normal('10:00')))).toEqual({
      outcome: 'met',
      cited: [sentRaised, sentNormal],
      limits: named,
    });
    expect(transient(at(raised('06:00'), normal('09:59')))).toEqual({
      outcome: 'cannot-tell',
      cited: [sentRaised],
      limits: named,
    });
  });

  it('a confirmed one is not transient, whatever followed', () => {
    const confirmed = at(raised('01:00'), raised('05:00'), normal('11:00'));
    expect(transient(confirmed)).toEqual({ outcome: 'not-met', cited: [], limits: named });
  });

  it('without an interval the next contact answers, and no interval is named', () => {
    const soon = at(raised('06:00'), normal('06:45'));
    expect(open(soon, noInterval)).toEqual({
      outcome: 'not-met',
      cited: [sentRaised, sentNormal],
      limits: raisedIds,
    });
    expect(transient(soon, noInterval).limits).toEqual(raisedIds);
  });
});

describe('settled', () => {
  const settled = (facts: Partial<Timeline>) =>
    told(ask({ check: 'pressure-settled', limits, confirmation: fourHours, after: hours }, facts));
  const named = [...raisedIds, '>= 4 h'];

  it('is met when nothing was raised, and cannot be told without a contact', () => {
    expect(settled({}).outcome).toBe('cannot-tell');
    expect(settled(at(normal('09:00')))).toEqual({ outcome: 'met', cited: [sentNormal], limits: named });
  });

  it('needs the newest contact below the limits and long enough after the last raised one', () => {
    const raisedBefore = { outcome: 'not-met', cited: [sentRaised], limits: named };
    expect(settled(at(raised('06:00'), normal('10:00')))).toEqual({
      outcome: 'met',
      cited: [sentNormal],
      limits: named,
    });
    expect(settled(at(raised('06:00'), normal('09:59')))).toEqual(raisedBefore);
    expect(settled(at(raised('06:00'), reading('10:00', 120, undefined)))).toEqual(raisedBefore);
    expect(settled(at(reading('02:00', 144, 92), raised('06:00'), normal('09:00')))).toEqual(raisedBefore);
  });

  it('a contact raised by its cautious value alone is raised', () => {
    const visit = [reading('05:00', 160, 70), reading('05:02', 138, 70), reading('05:04', 138, 70)];
    expect(settled(at(...visit, normal('08:00'))).outcome).toBe('not-met');
  });
});

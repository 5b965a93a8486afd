// The trace of questions about raised pressure, whole: outcome, reason, the facts cited as they were sent, the limits named.
import { describe, expect, it } from 'vitest';
import * as build from '../support/resources.ts';
import { at, pressure, trace } from './trace.ts';

const raisedLimits = ['>= 140', '>= 90'];
const noReading = 'No usable blood pressure was received for this pregnancy.';

describe('raised once', () => {
  it('cites the newest raised reading of the week', () => {
    const given = [pressure('09:00', 150, 96, '08'), pressure('09:00', 146, 92), pressure('13:00', 118, 74)];
    expect(trace('raised-once', given)).toEqual({
      outcome: 'met',
      because: 'Blood pressure 146/92 mm[Hg] at 2025-03-10T09:00:00Z.',
      cited: ['146/92 mm[Hg]'],
      limits: raisedLimits,
    });
  });

  it('cites the newest reading where none was raised', () => {
    expect(trace('raised-once', [pressure('09:00', 120, 76), pressure('13:00', 118, 74)])).toEqual({
      outcome: 'not-met',
      because: 'No recent reading reached the limits.',
      cited: ['118/74 mm[Hg]'],
      limits: raisedLimits,
    });
  });

  it('cannot tell from no reading, an old one, or a half', () => {
    expect(trace('raised-once', [])).toEqual({ outcome: 'cannot-tell', because: noReading });
    expect(trace('raised-once', [build.pressure('2025-02-20T09:00:00Z', 150, 96)])).toEqual({
      outcome: 'cannot-tell',
      because: 'The newest blood pressure is too old to speak for today.',
      limits: raisedLimits,
    });
    expect(trace('raised-once', [build.systolicOnly(at('09:00'), 120)])).toEqual({
      outcome: 'cannot-tell',
      because: 'Newest reading 120/- mm[Hg]: one half is missing.',
      limits: raisedLimits,
    });
  });
});

describe('raised now', () => {
  it('is another question after birth', () => {
    expect(trace('after-birth-treatment', [pressure('09:00', 160, 100)])).toEqual({
      outcome: 'not-applicable',
      because: 'The newest reading belongs to another part of the pregnancy.',
    });
  });

  it('with one half below cannot tell', () => {
    expect(trace('raised-now', [build.systolicOnly(at('09:00'), 120)])).toMatchObject({
      outcome: 'cannot-tell',
      because: 'Newest contact: 120/- mm[Hg] at 2025-03-10T09:00:00Z; one half is missing.',
      limits: raisedLimits,
    });
    expect(trace('raised-now', [])).toEqual({ outcome: 'cannot-tell', because: noReading });
  });
});

describe('normal now', () => {
  it('says what is known of a contact with one half', () => {
    expect(trace('normal-now', [build.systolicOnly(at('09:00'), 120)])).toMatchObject({
      outcome: 'cannot-tell',
      because: 'Newest contact 120/- mm[Hg]: one half is missing.',
      limits: raisedLimits,
    });
  });

  it('is taken away by a newer reading that cannot be used, one without a unit among them', () => {
    const good = pressure('09:00', 118, 74);
    const without = build.withoutUnit(pressure('10:00', 116, 72));
    expect(trace('normal-now', [good, without])).toEqual({
      outcome: 'cannot-tell',
      because: 'A newer blood pressure was received that cannot be used.',
      cited: ['118/74 mm[Hg]'],
      limits: raisedLimits,
    });
  });
});

describe('raised and open, transient, settled', () => {
  const raised = pressure('09:00', 146, 92);
  const low = pressure('13:30', 118, 74);
  const interval = [...raisedLimits, '>= 4'];

  it('an answered contact cites both', () => {
    expect(trace('raised-open', [raised, low])).toEqual({
      outcome: 'not-met',
      because: '146/92 mm[Hg] at 2025-03-10T09:00:00Z was followed by 118/74 mm[Hg] at 2025-03-10T13:30:00Z.',
      cited: ['146/92 mm[Hg]', '118/74 mm[Hg]'],
      limits: interval,
    });
    expect(trace('transient', [raised, low])).toEqual({
      outcome: 'met',
      because: '146/92 mm[Hg] at 2025-03-10T09:00:00Z settled to 118/74 mm[Hg] at 2025-03-10T13:30:00Z.',
      cited: ['146/92 mm[Hg]', '118/74 mm[Hg]'],
      limits: interval,
    });
  });

  it('an open one cites itself', () => {
    expect(trace('raised-open', [raised])).toEqual({
      outcome: 'met',
      because: '146/92 mm[Hg] at 2025-03-10T09:00:00Z, not yet answered by a repeat.',
      cited: ['146/92 mm[Hg]'],
      limits: interval,
    });
    expect(trace('transient', [raised])).toEqual({
      outcome: 'cannot-tell',
      because: 'The raised pressure has no repeat yet.',
      cited: ['146/92 mm[Hg]'],
      limits: interval,
    });
  });

  it('nothing raised, and a confirmed one, are neither', () => {
    expect(trace('raised-open', [low])).toEqual({
      outcome: 'not-met',
      because: 'No contact of this pregnancy reached the limits.',
      limits: interval,
    });
    expect(trace('transient', [raised, pressure('13:30', 148, 94)])).toEqual({
      outcome: 'not-met',
      because: 'The raised pressure was confirmed.',
      limits: interval,
    });
  });

  it('NICE names no interval', () => {
    expect(trace('raised-open', [raised], 'nice-2023').limits).toEqual(raisedLimits);
    expect(trace('confirmed-from-20-weeks', [raised], 'nice-2023').limits).toEqual(raisedLimits);
  });

  it('settled cites the newest contact, not settled the last raised one', () => {
    const settled = [...raisedLimits, '>= 24'];
    expect(trace('settled', [low])).toEqual({
      outcome: 'met',
      because: 'No contact reached the limits.',
      cited: ['118/74 mm[Hg]'],
      limits: settled,
    });
    expect(trace('settled', [pressure('09:00', 146, 92, '08'), low])).toEqual({
      outcome: 'met',
      because: 'Below the limits at 2025-03-10T13:30:00Z.',
      cited: ['118/74 mm[Hg]'],
      limits: settled,
    });
    expect(trace('settled', [pressure('09:00', 150, 96, '08'), raised, low])).toEqual({
      outcome: 'not-met',
      because: 'Raised at 2025-03-10T09:00:00Z, not settled since.',
      cited: ['146/92 mm[Hg]'],
      limits: settled,
    });
  });
});

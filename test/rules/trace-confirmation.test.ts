// The trace of questions about confirmed and severe pressure, whole.
import { describe, expect, it } from 'vitest';
import * as build from '../support/resources.ts';
import { at, pressure, trace } from './trace.ts';

const raisedLimits = ['>= 140', '>= 90'];
const severeLimits = ['>= 160', '>= 110'];
const noReading = 'No usable blood pressure was received for this pregnancy.';

describe('confirmed', () => {
  const interval = [...raisedLimits, '>= 4'];

  it('cites the newest pair', () => {
    const given = [pressure('09:00', 150, 96, '08'), pressure('09:00', 146, 92), pressure('13:30', 148, 94)];
    expect(trace('confirmed-from-20-weeks', given)).toMatchObject({
      outcome: 'met',
      cited: ['146/92 mm[Hg]', '148/94 mm[Hg]'],
      limits: interval,
    });
  });

  it('by severe pressure names the limits of severe pressure', () => {
    expect(
      trace('confirmed-from-20-weeks', [pressure('09:00', 172, 114), pressure('09:20', 170, 112)]),
    ).toEqual({
      outcome: 'met',
      because:
        'Severe pressure 172/114 mm[Hg] at 2025-03-10T09:00:00Z: seen again as 170/112 mm[Hg] at 2025-03-10T09:20:00Z.',
      cited: ['172/114 mm[Hg]', '170/112 mm[Hg]'],
      limits: [...severeLimits, '>= 5'],
    });
  });

  it('by a drug cites it between the two contacts', () => {
    const given = [
      pressure('09:00', 146, 92),
      build.given('labetalol', at('10:00')),
      pressure('13:30', 118, 74),
    ];
    expect(trace('confirmed-from-20-weeks', given)).toEqual({
      outcome: 'met',
      because:
        '146/92 mm[Hg] at 2025-03-10T09:00:00Z, then a drug for pressure was given before the next reading.',
      cited: ['146/92 mm[Hg]', 'labetalol', '118/74 mm[Hg]'],
      limits: interval,
    });
  });

  it('is no question where no reading belongs to that time', () => {
    const because = 'No blood pressure belongs to this part of the pregnancy.';
    expect(trace('confirmed-after-birth', [pressure('09:00', 146, 92)])).toEqual({
      outcome: 'not-applicable',
      because,
    });
    expect(trace('confirmed-from-20-weeks', [])).toEqual({ outcome: 'not-applicable', because });
  });

  it('that never was cites the newest contact', () => {
    expect(
      trace('confirmed-from-20-weeks', [pressure('09:00', 120, 76), pressure('13:30', 118, 74)]),
    ).toEqual({
      outcome: 'not-met',
      because: 'No contact reached the limits.',
      cited: ['118/74 mm[Hg]'],
      limits: interval,
    });
  });

  it('with times that do not show the interval says so', () => {
    const given = [build.pressure('2025-03-09', 146, 92), build.pressure('2025-03-10', 148, 94)];
    expect(trace('confirmed-from-20-weeks', given)).toMatchObject({
      outcome: 'cannot-tell',
      because:
        '146/92 mm[Hg] at 2025-03-09 and 148/94 mm[Hg] at 2025-03-10: the times do not show the interval.',
    });
  });

  it('a date and a clock time of that day do not show the interval either', () => {
    const given = [build.pressure('2025-03-10', 146, 92), pressure('01:00', 148, 94)];
    expect(trace('confirmed-from-20-weeks', given).because).toMatch(/the times do not show the interval\.$/);
  });

  it('stale: cites the pair, and the fresh one where there is one', () => {
    const old = [build.pressure('2025-02-20T09:00:00Z', 150, 96), pressure('09:00', 148, 94, '05')];
    expect(trace('pair-stale', old)).toMatchObject({
      outcome: 'met',
      cited: ['150/96 mm[Hg]', '148/94 mm[Hg]'],
      limits: ['<= 168'],
    });
    expect(trace('pair-stale', [...old, pressure('09:00', 146, 92)])).toMatchObject({
      outcome: 'not-met',
      cited: ['148/94 mm[Hg]', '146/92 mm[Hg]'],
      limits: ['<= 168'],
    });
    expect(trace('pair-stale', [pressure('09:00', 146, 92)])).toEqual({
      outcome: 'not-applicable',
      because: 'There is no confirming pair.',
    });
  });
});

describe('severe', () => {
  const first = pressure('09:00', 172, 114);
  const again = pressure('09:20', 170, 112);
  const lower = pressure('09:30', 150, 96);

  it('none: says so, or that nothing was received', () => {
    for (const question of ['severe-open', 'severe-closed', 'severe-confirmed', 'severe-current']) {
      expect(trace(question, [lower])).toEqual({
        outcome: 'not-met',
        because: 'No reading is in the severe range.',
        limits: severeLimits,
      });
      expect(trace(question, [])).toEqual({
        outcome: 'cannot-tell',
        because: noReading,
        limits: severeLimits,
      });
    }
  });

  it('open: cites the last of them', () => {
    expect(trace('severe-open', [first, pressure('09:03', 166, 104)])).toEqual({
      outcome: 'met',
      because: '166/104 mm[Hg] at 2025-03-10T09:03:00Z is severe and not yet repeated.',
      cited: ['166/104 mm[Hg]'],
      limits: [...severeLimits, '<= 15'],
    });
    expect(trace('severe-open', [first, again])).toEqual({
      outcome: 'not-met',
      because: 'Every severe reading was confirmed or followed by a lower one.',
      limits: [...severeLimits, '<= 15'],
    });
  });

  it('closed: cites the newest that was, and what closed it', () => {
    const given = [pressure('09:00', 166, 104, '08'), pressure('09:10', 150, 96, '08'), lower];
    expect(trace('severe-closed', given)).toEqual({
      outcome: 'met',
      because:
        '166/104 mm[Hg] at 2025-03-08T09:00:00Z was followed by 150/96 mm[Hg] at 2025-03-08T09:10:00Z.',
      cited: ['166/104 mm[Hg]', '150/96 mm[Hg]'],
      limits: [...severeLimits, '>= 5'],
    });
    expect(trace('severe-closed', [first, again, lower])).toMatchObject({
      outcome: 'met',
      because:
        '170/112 mm[Hg] at 2025-03-10T09:20:00Z was followed by 150/96 mm[Hg] at 2025-03-10T09:30:00Z.',
    });
    expect(trace('severe-closed', [first, again])).toEqual({
      outcome: 'not-met',
      because: 'No severe reading was closed by a lower one.',
      limits: [...severeLimits, '>= 5'],
    });
  });

  it('confirmed: cites what confirms; unconfirmed: cites what stands alone', () => {
    expect(trace('severe-confirmed', [first])).toEqual({
      outcome: 'cannot-tell',
      because: 'A severe reading has no confirmation.',
      cited: ['172/114 mm[Hg]'],
      limits: [...severeLimits, '>= 5'],
    });
    const headache = { ...build.symptom(at('09:05'), 'headache', true), valueBoolean: true };
    expect(trace('severe-confirmed', [first, headache])).toMatchObject({
      outcome: 'met',
      because: '172/114 mm[Hg] at 2025-03-10T09:00:00Z: a danger symptom is present.',
      limits: [...severeLimits, '>= 5'],
    });
    expect(trace('severe-confirmed', [first, build.given('labetalol', at('09:05')), lower])).toMatchObject({
      outcome: 'met',
      because:
        '172/114 mm[Hg] at 2025-03-10T09:00:00Z: a drug for pressure followed before any other reading.',
      cited: ['172/114 mm[Hg]', 'labetalol'],
    });
    expect(
      trace('severe-confirmed', [first, pressure('09:10', 158, 108), build.given('labetalol', at('09:12'))]),
    ).toMatchObject({
      outcome: 'cannot-tell',
    });
  });

  it('settled: cites the last severe reading and the one that shows it', () => {
    const given = [
      pressure('09:00', 172, 114, '08'),
      pressure('09:20', 170, 112, '08'),
      pressure('09:00', 128, 78),
      pressure('13:00', 126, 76),
    ];
    expect(trace('severe-current', given)).toEqual({
      outcome: 'not-met',
      because: 'Severe pressure was confirmed and had settled by 2025-03-10T09:00:00Z.',
      cited: ['170/112 mm[Hg]', '128/78 mm[Hg]'],
      limits: [...severeLimits, '>= 24'],
    });
  });

  it('loss of control cites how it was, and what confirms', () => {
    const before = [
      pressure('09:00', 166, 90, '05'),
      pressure('09:00', 132, 84, '06'),
      pressure('09:00', 138, 86, '07'),
    ];
    expect(trace('control-lost', [...before.slice(1), first, again])).toEqual({
      outcome: 'met',
      because: '138/86 mm[Hg] at 2025-03-07T09:00:00Z rose to 172/114 mm[Hg] at 2025-03-10T09:00:00Z.',
      cited: ['138/86 mm[Hg]', '172/114 mm[Hg]', '170/112 mm[Hg]'],
      limits: [...severeLimits, '>= 24'],
    });
    const half = build.systolicOnly(at('09:00', '08'), 130);
    expect(trace('control-lost', [...before.slice(1), half, first, again]).because).toMatch(/^138\/86 /);
    expect(trace('control-lost', [first, again])).toEqual({
      outcome: 'cannot-tell',
      because: 'Severe pressure is confirmed; no earlier reading shows how it was before.',
      limits: [...severeLimits, '>= 24'],
    });
  });
});

// The value of one contact: averages, the third reading, the arm with the higher pressure (clinical rules 2.3 rules 16 to 19).
import { describe, expect, it } from 'vitest';
import { guidelineOf, timelineValues } from '../../src/guidelines/registry.ts';
import { prepareView } from '../../src/rules/view.ts';
import { differTooMuch, visitValue } from '../../src/rules/visit-value.ts';
import { reading, timeline } from './facts.ts';

const frontline = guidelineOf('frontline');
if (frontline === undefined) throw new Error('no frontline');
const { visit } = frontline;

const valueOf = (...pairs: readonly (readonly [number, number])[]) =>
  visitValue(
    pairs.map(([systolic, diastolic], index) => reading(`09:0${String(index)}`, systolic, diastolic)),
    visit,
  );

describe('readings of one arm', () => {
  it('are averaged, each half by itself', () => {
    expect(valueOf([142, 88], [144, 90]).value).toEqual({ systolicMmHg: 143, diastolicMmHg: 89 });
  });

  it('that differ by exactly 10 are all averaged', () => {
    expect(valueOf([150, 90], [140, 90], [130, 90]).value).toEqual({ systolicMmHg: 140, diastolicMmHg: 90 });
  });

  it('that differ by more than 10 leave the first out', () => {
    const { value, cautiousValue } = valueOf([151, 90], [140, 90], [130, 90]);
    expect(value).toEqual({ systolicMmHg: 135, diastolicMmHg: 90 });
    expect(cautiousValue.systolicMmHg).toBeCloseTo((151 + 140 + 130) / 3, 9);
  });

  it('that differ by more than 10 in the diastolic leave the first out too', () => {
    expect(valueOf([140, 101], [140, 90], [140, 86]).value).toEqual({ systolicMmHg: 140, diastolicMmHg: 88 });
  });

  it('differ by more than 10 whichever is the higher', () => {
    const [low, high] = [
      { systolicMmHg: 130, diastolicMmHg: 80 },
      { systolicMmHg: 141, diastolicMmHg: 80 },
    ];
    expect([differTooMuch(low, high, visit), differTooMuch(high, low, visit)]).toEqual([true, true]);
    expect(differTooMuch({ systolicMmHg: 130 }, { diastolicMmHg: 80 }, visit)).toBe(false);
    expect(differTooMuch({ systolicMmHg: 130 }, { systolicMmHg: 141 }, visit)).toBe(true);
  });

  it('two of them that differ are averaged until a third is taken', () => {
    expect(valueOf([150, 90], [130, 80]).value).toEqual({ systolicMmHg: 140, diastolicMmHg: 85 });
  });

  it('a half that only some have is the average of those', () => {
    const readings = [reading('09:00', 142, undefined), reading('09:02', 144, 90)];
    expect(visitValue(readings, visit).value).toEqual({ systolicMmHg: 143, diastolicMmHg: 90 });
    expect(visitValue([reading('09:00', 142, undefined)], visit).value).toEqual({ systolicMmHg: 142 });
    expect(
      visitValue([reading('09:00', undefined, 90), reading('09:02', undefined, 92)], visit).value,
    ).toEqual({
      diastolicMmHg: 91,
    });
  });
});

describe('two arms', () => {
  it('give the higher average, half by half (X9)', () => {
    const readings = [
      reading('09:00', 142, 80, { arm: 'right' }),
      reading('09:01', 128, 84, { arm: 'left' }),
      reading('09:02', 144, 82, { arm: 'right' }),
    ];
    expect(visitValue(readings, visit)).toEqual({
      value: { systolicMmHg: 143, diastolicMmHg: 84 },
      cautiousValue: { systolicMmHg: 143, diastolicMmHg: 84 },
    });
  });
});

describe('contacts', () => {
  const occasionsOf = (...times: readonly string[]) =>
    prepareView(
      timeline({ pressures: times.map((at) => reading(at, 140, 90)) }),
      timelineValues,
      visit,
    ).occasions.map(({ at, readings }) => [at.text.slice(11, 16) || at.text, readings.length]);

  it('begin with a reading and take in those less than 30 minutes after it (decision 10)', () => {
    expect(occasionsOf('09:00', '09:29')).toEqual([['09:00', 2]]);
    expect(occasionsOf('09:00', '09:30')).toEqual([
      ['09:00', 1],
      ['09:30', 1],
    ]);
  });

  it('are cut by the time of their first reading, not of their last (decision 10)', () => {
    expect(occasionsOf('09:00', '09:20', '09:40')).toEqual([
      ['09:00', 2],
      ['09:40', 1],
    ]);
  });

  it('are in order of time whatever the order of the record', () => {
    expect(occasionsOf('10:00', '08:00', '09:00')).toEqual([
      ['08:00', 1],
      ['09:00', 1],
      ['10:00', 1],
    ]);
  });

  it('of readings with a date alone are one for each date', () => {
    expect(occasionsOf('2025-03-08', '2025-03-08', '2025-03-09')).toEqual([
      ['2025-03-08', 2],
      ['2025-03-09', 1],
    ]);
  });
});

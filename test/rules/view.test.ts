// What the checks look at: readings placed and in order, gathered into contacts, and the moment of the answer.
import { describe, expect, it } from 'vitest';
import { timelineValues } from '../../src/guidelines/registry.ts';
import { gestationalAgeOf } from '../../src/rules/gestational-age-now.ts';
import { isAtLeastAfter, momentOf, prepareView } from '../../src/rules/view.ts';
import { leftOpenBy, visitValue } from '../../src/rules/visit-value.ts';
import type { MeanPressure, PressureReading, Timeline } from '../../src/timeline/timeline.ts';
import { guideline } from '../support/assess.ts';
import { viewOf } from './checks/ask.ts';
import { asOf, moment, reading, timeline } from './facts.ts';

const { visit } = guideline();
const sent = (readings: readonly { readonly reading: PressureReading }[]) =>
  readings.map(({ reading: one }) => one.asSent);
const mean = (setting: MeanPressure['setting'], more: Partial<MeanPressure> = {}): MeanPressure => ({
  from: moment('09:00'),
  to: moment('09:30'),
  systolicMmHg: 133,
  diastolicMmHg: 77,
  setting,
  asSent: `average ${setting}`,
  sources: [{ reference: 'Observation/mean', preliminary: false }],
  ...more,
});

describe('readings', () => {
  it('are in order of their earliest moment, and of two the exact one is first', () => {
    const midnight = '2025-03-10T00:00:00Z';
    const given = [reading('2025-03-10', 121, 71), reading(midnight, 122, 72), reading('08:00', 123, 73)];
    expect(sent(viewOf({ pressures: given }).readings)).toEqual([
      '122/72 mm[Hg]',
      '121/71 mm[Hg]',
      '123/73 mm[Hg]',
    ]);
    const late = [reading('09:00', 121, 71), reading('08:00', 122, 72)];
    expect(sent(viewOf({ pressures: late }).readings)).toEqual(['122/72 mm[Hg]', '121/71 mm[Hg]']);
  });

  it('of an earlier pregnancy are left out', () => {
    expect(viewOf({ pressures: [reading('2024-01-01T09:00:00Z', 150, 90)] }).readings).toEqual([]);
  });

  it('hold clinic averages; those of home and of no setting are none', () => {
    const meanPressures = [mean('clinic'), mean('home'), mean('unknown')];
    const [only, ...more] = viewOf({ meanPressures }).readings;
    expect(more).toEqual([]);
    expect(only?.reading).toMatchObject({
      at: moment('09:00'),
      systolicMmHg: 133,
      diastolicMmHg: 77,
      setting: 'clinic',
      remarks: ['average of several readings'],
    });
    expect(only?.reading).not.toHaveProperty('lowerBounds');
  });

  it('an average with one half, or that may be higher, stays so', () => {
    const { systolicMmHg: _systolic, ...diastolicOnly } = mean('clinic');
    const { diastolicMmHg: _diastolic, ...systolicOnly } = mean('clinic', { lowerBounds: { systolic: '>' } });
    const [first, second] = viewOf({ meanPressures: [diastolicOnly, systolicOnly] }).readings;
    expect(first?.reading).not.toHaveProperty('systolicMmHg');
    expect(second?.reading).not.toHaveProperty('diastolicMmHg');
    expect(second?.reading.lowerBounds).toEqual({ systolic: '>' });
  });

  it('taken at home stand among every reading, in order, and in no contact', () => {
    const facts: Partial<Timeline> = {
      pressures: [reading('09:00', 121, 71)],
      homePressures: [reading('08:00', 131, 81), reading('2024-01-01T09:00:00Z', 150, 90)],
      meanPressures: [mean('clinic', { from: moment('10:00') })],
    };
    const view = viewOf(facts);
    expect(sent(view.everyReading)).toEqual(['131/81 mm[Hg]', '121/71 mm[Hg]', 'average clinic']);
    expect(sent(view.readings)).toEqual(['121/71 mm[Hg]', 'average clinic']);
    expect(view.occasions).toHaveLength(2);
  });
});

describe('contacts', () => {
  const sizes = (...pressures: Timeline['pressures']) =>
    viewOf({ pressures }).occasions.map(({ readings }) => readings.length);

  it('never hold two parts of the pregnancy', () => {
    // 20+0 weeks begin on 30 December 2024.
    const [before, after] = ['2024-12-29T23:50:00Z', '2024-12-30T00:05:00Z'];
    expect(sizes(reading(before, 150, 90), reading(after, 150, 90))).toEqual([1, 1]);
    expect(sizes(reading('2025-01-05T23:50:00Z', 150, 90), reading('2025-01-06T00:05:00Z', 150, 90))).toEqual(
      [2],
    );
  });

  it('of a date alone hold no reading with a time, though it be that of midnight', () => {
    expect(sizes(reading('2025-03-10T00:00:00Z', 150, 90), reading('2025-03-10', 150, 90))).toEqual([1, 1]);
  });

  it('are placed and timed by their first reading', () => {
    const [only] = viewOf({ pressures: [reading('09:00', 150, 90), reading('09:20', 140, 80)] }).occasions;
    expect([only?.at.text, only?.place.gestationalAgeDays]).toEqual(['2025-03-10T09:00:00Z', 210]);
  });
});

describe('the moment of the answer', () => {
  it('lies on the calendar day of the zone of the newest reading', () => {
    expect(momentOf(asOf)).toEqual({
      earliest: asOf,
      latest: asOf,
      localDay: moment('2025-03-10').localDay,
      precision: 'minute',
      text: '2025-03-10T12:00:00.000Z',
      offsetMinutes: 0,
    });
    const far = moment('2025-03-10T09:00:00+13:00');
    expect(momentOf(asOf, far)).toMatchObject({
      localDay: moment('2025-03-11').localDay,
      offsetMinutes: 780,
    });
    expect(momentOf(asOf, moment('2025-03-09'))).toMatchObject({ offsetMinutes: 0 });
    const zones = [
      reading('2025-03-09T09:00:00-05:00', 120, 70),
      reading('2025-03-10T09:00:00+13:00', 120, 70),
    ];
    expect(viewOf({ pressures: zones }).now.gestationalAgeDays).toBe(211);
    expect(viewOf({ pressures: zones.slice(0, 1) }).now.gestationalAgeDays).toBe(210);
  });
});

describe('long enough after', () => {
  const after = (earlier: string, later: string) =>
    isAtLeastAfter(moment(earlier), moment(later), 4 * 3_600_000);

  it('is certain, certainly not, or left open by a date', () => {
    expect(after('05:00', '09:00')).toBe(true);
    expect(after('05:00', '08:59')).toBe(false);
    expect(after('2025-03-08', '2025-03-10')).toBe(true);
    expect(after('2025-03-09', '2025-03-10')).toBeUndefined();
    expect(after('2025-03-10', '03:00')).toBe(false);
    expect(after('2025-03-10', '04:00')).toBeUndefined();
  });
});

describe('how far the pregnancy is', () => {
  const ageOf = (pregnancy: Timeline['pregnancy']) =>
    gestationalAgeOf(prepareView({ ...timeline(), pregnancy }, timelineValues, visit));
  const dating = timeline().pregnancy.dating;
  const birth = {
    at: moment('2025-03-06'),
    asSent: 'born',
    source: { reference: 'Observation/birth', preliminary: false },
  };
  if (dating === undefined) throw new Error('no dating');

  it('is told in days and in weeks, with the due date and what it rests on', () => {
    expect(ageOf({ remarks: ['one'], dating: { ...dating, remarks: ['two'] } })).toStrictEqual({
      days: 210,
      text: '30+0',
      period: 'from-20-weeks',
      method: 'ultrasound',
      dueDate: '2025-05-19',
      evidence: [dating.source.reference],
      remarks: ['one', 'two'],
    });
  });

  it('after birth in days since it, without a due date', () => {
    expect(ageOf({ remarks: [], dating, birth })).toStrictEqual({
      period: 'after-birth',
      daysAfterBirth: 4,
      method: 'ultrasound',
      evidence: [dating.source.reference, 'Observation/birth'],
      remarks: [],
    });
  });

  it('undated is told as nothing but that', () => {
    expect(ageOf({ remarks: [] })).toStrictEqual({ period: 'unknown', evidence: [], remarks: [] });
  });
});

describe('the value of a contact', () => {
  it('is open where one of its readings may be higher, or no diastolic was heard', () => {
    const bound = { ...reading('09:00', 150, 80), lowerBounds: { systolic: '>' as const } };
    const other = { ...reading('09:02', 152, 82), lowerBounds: { diastolic: '>=' as const } };
    expect(leftOpenBy([bound, other])).toEqual({ lowerBounds: { systolic: '>', diastolic: '>=' } });
    const felt = { ...reading('09:04', 150, 80), isDiastolicUnheard: true as const };
    const noDiastolic = reading('09:06', 150, undefined);
    expect(leftOpenBy([felt, noDiastolic])).toEqual({ isDiastolicUnheard: true });
    expect(leftOpenBy([felt, reading('09:08', 150, 80)])).toEqual({});
    expect(leftOpenBy([noDiastolic])).toEqual({});
    expect(visitValue([reading('09:00', undefined, undefined)], visit).value).toStrictEqual({});
    expect(visitValue([noDiastolic], visit).value).toStrictEqual({ systolicMmHg: 150 });
    expect(visitValue([bound], visit).value).toEqual({
      systolicMmHg: 150,
      diastolicMmHg: 80,
      lowerBounds: { systolic: '>' },
    });
    expect(visitValue([bound, reading('09:02', 140, 70)], visit)).toEqual({
      value: { systolicMmHg: 145, diastolicMmHg: 75, lowerBounds: { systolic: '>' } },
      cautiousValue: { systolicMmHg: 145, diastolicMmHg: 75, lowerBounds: { systolic: '>' } },
    });
  });

  it('of three readings far apart leaves the first out; a fourth is not among them', () => {
    const four = [160, 140, 138, 120].map((systolic, index) => reading(`09:0${String(index)}`, systolic, 80));
    expect(visitValue(four, visit).value.systolicMmHg).toBe(139);
    expect(visitValue(four, visit).cautiousValue.systolicMmHg).toBe(139.5);
    expect(visitValue(four.slice(1), visit).value.systolicMmHg).toBeCloseTo(398 / 3, 9);
  });
});

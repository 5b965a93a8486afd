// Reasons for prevention that rest on a number: fetuses, age, body mass, years since a birth. Clinical rules 2.10.
import { describe, expect, it } from 'vitest';
import type { PreventionFactor } from '../../src/guidelines/guideline.ts';
import type { LaboratoryResult, Timeline, Woman } from '../../src/timeline/timeline.ts';
import { limit } from './checks/ask.ts';
import { lab, moment } from './facts.ts';
import { births, count, judged, said, undated, woman } from './prevention-parts.ts';

describe('the number of fetuses', () => {
  it('is compared as recorded', () => {
    const of = (fetuses?: number) =>
      said(
        { fetuses: limit('>=', 2, '1') },
        { pregnancy: { remarks: [], ...(fetuses === undefined ? {} : { fetuses: count(fetuses) }) } },
      );
    expect([of(2), of(1), of()]).toEqual(['found: 2', 'absent: 1', 'never-asked']);
    expect(said({}, { pregnancy: { remarks: [], fetuses: count(2) } })).toBe('never-asked');
  });
});

describe('her age', () => {
  // At 30+0 weeks on 10 March 2025 she is due on 19 May.
  const age = (born: string, facts: Partial<Timeline> = {}) =>
    judged(
      { ageAtDueDate: limit('>=', 40, 'a') },
      { ...woman({ birthDay: moment(born).localDay }), ...facts },
    );

  it('is that on the due date, or today when that is not known', () => {
    expect(age('1985-05-19').verdict).toBe('found');
    expect(age('1985-05-20').verdict).toBe('absent');
    expect(age('1985-03-10', undated).verdict).toBe('found');
    expect(age('1985-03-11', undated).verdict).toBe('absent');
    expect(judged({ ageAtDueDate: limit('>=', 40, 'a') }, woman({})).verdict).toBe('never-asked');
    expect(judged({}, woman({ birthDay: 0 })).verdict).toBe('never-asked');
  });

  it('is told with the day of her birth', () => {
    expect(age('1985-05-20').evidence).toEqual([
      {
        reference: 'Patient',
        what: 'age on the due date',
        asSent: 'born 1985-05-20',
        asCompared: '39 years',
      },
    ]);
  });
});

describe('the body mass index', () => {
  const plausibleBodyMassIndex = { low: limit('>=', 12, 'kg/m2'), high: limit('<=', 80, 'kg/m2') };
  const factor = { bodyMassIndex: limit('>=', 35, 'kg/m2'), plausibleBodyMassIndex };
  const mass = (value: number, at = '2024-09-01T09:00:00Z', unit = 'kg/m2') =>
    lab(at, 'body-mass-index', value, unit);
  const of = (...laboratory: readonly LaboratoryResult[]) => said(factor, { laboratory });

  it('is the earliest of this pregnancy, within what is plausible', () => {
    expect(of(mass(35), mass(30, '09:00'))).toBe('found: 35 kg/m2');
    expect(of(mass(34.9), mass(36, '09:00'))).toBe('absent: 34.9 kg/m2');
    expect(of(mass(81), mass(36, '09:00'))).toBe('found: 36 kg/m2');
    expect(of(mass(11), mass(36, '09:00'))).toBe('found: 36 kg/m2');
    expect([of(mass(80)), of(mass(12))]).toEqual(['found: 80 kg/m2', 'absent: 12 kg/m2']);
    expect(of(mass(81))).toBe('never-asked');
    expect(said({ bodyMassIndex: factor.bodyMassIndex }, { laboratory: [mass(147)] })).toBe(
      'found: 147 kg/m2',
    );
  });

  it('is else the newest of before it', () => {
    const before = [mass(36, '2023-01-01T09:00:00Z'), mass(30, '2024-01-01T09:00:00Z')];
    expect(of(...before)).toBe('absent: 30 kg/m2');
    expect(of(...before, mass(37))).toBe('found: 37 kg/m2');
    expect(of(lab('2024-01-01T09:00:00Z', 'urate', 36, 'kg/m2'))).toBe('never-asked');
  });

  it('says nothing in another unit, or where a bound leaves it open', () => {
    expect(of(mass(36, '09:00', 'lb/in2'))).toBe('never-asked');
    expect(of({ ...mass(36), measured: { value: 36, comparator: '<' } })).toBe('never-asked');
    expect(of({ ...mass(30), measured: { value: 30, comparator: '<' } })).toBe('absent: 30 kg/m2');
  });
});

describe('the years since the last birth', () => {
  const since = (born: string, more: Partial<Woman> = {}, facts: Partial<Timeline> = {}) =>
    said(
      { sinceLastBirth: limit('>', 10, 'a') },
      { ...woman({ ...births('2005-01-01', born), ...more }), ...facts },
    );

  it('are counted up to the due date; a day more than so many whole years is more', () => {
    expect(since('2015-05-18')).toBe('found: 2015-05-18');
    expect(since('2015-05-19')).toBe('absent: 2015-05-19');
    expect(since('2014-05-19')).toBe('found: 2014-05-19');
    expect(since('2015-03-09', {}, undated)).toBe('found: 2015-03-09');
    expect(since('2015-03-10', {}, undated)).toBe('absent: 2015-03-10');
    expect(since('2024-01-01')).toBe('absent: 2024-01-01');
  });

  it('are absent in her who never gave birth, and never asked where births are not told', () => {
    const factor = { sinceLastBirth: limit('>', 10, 'a') };
    expect(judged(factor, woman({ parity: count(0) }))).toMatchObject({ verdict: 'absent', evidence: [] });
    expect(said(factor, woman({ parity: count(1) }))).toBe('never-asked');
    expect(said(factor, woman({}))).toBe('never-asked');
    expect(said({}, woman(births('2005-01-01')))).toBe('never-asked');
  });
});

describe('another publication', () => {
  const sentence = 'Others count it otherwise.';
  const elsewhere = (more: Partial<PreventionFactor>, value: number) =>
    judged(
      { bodyMassIndex: limit('>=', 35, 'kg/m2'), ...more },
      { laboratory: [lab('09:00', 'body-mass-index', value, 'kg/m2')] },
    ).elsewhere;
  const lower = { elsewhere: { sentence, limit: limit('>', 30, 'kg/m2') } };

  it('is named where the two limits part, and only there', () => {
    expect(elsewhere(lower, 34)).toBe(sentence);
    expect(elsewhere(lower, 35)).toBeUndefined();
    expect(elsewhere(lower, 30)).toBeUndefined();
    expect(elsewhere({}, 34)).toBeUndefined();
    expect(judged({})).not.toHaveProperty('elsewhere');
  });

  it('is not named where a bound leaves it open here', () => {
    const bound = {
      ...lab('09:00', 'body-mass-index', 31, 'kg/m2'),
      measured: { value: 31, comparator: '>' as const },
    };
    const factor = { bodyMassIndex: limit('>=', 35, 'kg/m2'), ...lower };
    expect(judged(factor, { laboratory: [bound] })).toEqual({
      factor: { id: 'factor', factor: 'factor', level: 'high', ...factor },
      verdict: 'never-asked',
      evidence: [],
    });
  });

  it('without a limit is named where the factor is found', () => {
    expect(elsewhere({ elsewhere: { sentence } }, 35)).toBe(sentence);
    expect(elsewhere({ elsewhere: { sentence } }, 34)).toBeUndefined();
    expect(judged({ elsewhere: { sentence }, conditions: ['diabetes'] }).elsewhere).toBeUndefined();
    expect(judged({ ...lower, bodyMassIndex: limit('>=', 35, 'kg/m2') }).elsewhere).toBeUndefined();
  });
});

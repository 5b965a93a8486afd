// ICD-10-CM Z3A.nn: weeks of gestation as a code. Z3A.20 = 20 weeks: terminology.md; the range is from memory.
import type { Condition } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { lastPeriod, woman } from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { ageNow, date, pregnancyOf } from './dating-support.ts';

const weeks = (code: string, fields: Partial<Condition> = { recordedDate: date(-10) }): Condition => ({
  resourceType: 'Condition',
  subject: { reference: woman },
  code: { coding: [{ system: 'http://hl7.org/fhir/sid/icd-10-cm', code }] },
  ...fields,
});

describe('a code for the weeks of gestation', () => {
  it.each(['Z3A.20', 'Z3A20'])('%s is an age in whole weeks on the day it was recorded', (code) => {
    expect(ageNow([weeks(code)])).toBe('21+3');
    expect(pregnancyOf([weeks(code)]).dating).toMatchObject({
      method: 'stated-age',
      asSent: `${code} on ${date(-10)}`,
      source: { reference: 'Condition/r0' },
    });
    expect(pregnancyOf([weeks(code)]).dating?.remarks).toContain(
      'the weeks are from a code: whole weeks, their days unknown',
    );
  });

  it.each(['Z3A', 'Z3A.00', 'Z3A.01', 'Z3A.49'])('%s names no single week and dates nothing', (code) => {
    expect(pregnancyOf([weeks(code)]).dating).toBeUndefined();
  });

  it.each([
    ['no recorded date', {}],
    ['only the month of recording', { recordedDate: date(-10).slice(0, 7) }],
    [
      'an error in its status',
      {
        recordedDate: date(-10),
        verificationStatus: { coding: [{ code: 'refuted' }] },
      },
    ],
  ])('with %s dates nothing', (_, fields) => {
    expect(pregnancyOf([weeks('Z3A.20', fields)]).dating).toBeUndefined();
  });

  it('may be recorded with the time of day', () => {
    expect(ageNow([weeks('Z3A.20', { recordedDate: `${date(-10)}T09:00:00Z` })])).toBe('21+3');
  });

  it('recorded after the time of the evaluation is not known yet', () => {
    const result = built([weeks('Z3A.20', { recordedDate: date(10) })]);
    expect(result.timeline.pregnancy.dating).toBeUndefined();
    expect(codesOf(result)).toEqual(['time-in-future']);
  });

  it('gives way to a last period that agrees with it', () => {
    expect(pregnancyOf([weeks('Z3A.20'), lastPeriod(date(-9), date(-152))]).dating).toMatchObject({
      method: 'last-period',
      others: [{ method: 'stated-age' }],
      conflict: false,
    });
  });

  it('of an earlier pregnancy stays a condition on record', () => {
    const earlier = weeks('Z3A.20', {
      recordedDate: date(-700),
      clinicalStatus: { coding: [{ code: 'resolved' }] },
    });
    const result = built([earlier, lastPeriod(date(-9), date(-152))]);
    expect(result.timeline.pregnancy.dating).toMatchObject({ method: 'last-period', others: [] });
    expect(result.timeline.conditions).toMatchObject([{ condition: 'pregnant' }]);
    expect(codesOf(result)).toEqual([]);
  });
});

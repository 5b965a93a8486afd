// Decision 24: the growth-factor ratio counts only in isshp-2021, and not in multiple pregnancy; 85 before 34+0, 110 from it.
import { describe, expect, it } from 'vitest';
import { timelineValues } from '../../src/guidelines/registry.ts';
import {
  bundleOf,
  condition,
  gestationalAge,
  loinc,
  noDangerSymptoms,
  observation,
  pressure,
  quantity,
} from '../support/resources.ts';
import { evaluateSoundly } from '../support/engine.ts';

const day = '2026-02-01';
const given = (weeks: number, ratio: number) => [
  gestationalAge(`${day}T08:00:00Z`, weeks * 7),
  pressure(`${day}T08:00:00Z`, 146, 94),
  pressure(`${day}T13:00:00Z`, 148, 96),
  ...noDangerSymptoms(`${day}T13:00:00Z`),
  observation(loinc('74757-6'), `${day}T09:00:00Z`, { valueQuantity: quantity(ratio, '1') }),
];
const fetuses = (at: string) => observation(loinc('55281-0'), at, { valueInteger: 2 });
const classesOf = (resources: ReturnType<typeof given>, guideline = 'isshp-2021') =>
  evaluateSoundly(bundleOf(resources), { asOf: `${day}T18:00:00Z`, guideline }).assessment.classification;

describe('a raised growth-factor ratio beside confirmed hypertension', () => {
  it.each([
    [30, 90, true],
    [30, 84, false],
    [35, 90, false],
    [35, 110, true],
  ])('at %i weeks a ratio of %i makes pre-eclampsia under isshp-2021: %s', (weeks, ratio, isPreEclampsia) => {
    expect(classesOf(given(weeks, ratio)).includes('pre-eclampsia')).toBe(isPreEclampsia);
  });

  it('makes none with two fetuses counted in this pregnancy', () => {
    const resources = [...given(30, 90), fetuses('2026-01-10')];
    const { timeline } = evaluateSoundly(bundleOf(resources), {
      asOf: `${day}T18:00:00Z`,
      guideline: 'isshp-2021',
    });
    expect(timeline.pregnancy.fetuses).toMatchObject({ count: 2 });
    expect(classesOf(resources)).not.toContain('pre-eclampsia');
  });

  it('makes none with twins on the list of conditions', () => {
    const twins = condition('multiple-pregnancy', '2025-10-01');
    expect(
      evaluateSoundly(bundleOf([...given(30, 90), twins]), {
        asOf: `${day}T18:00:00Z`,
        guideline: 'isshp-2021',
      }).assessment.classification,
    ).not.toContain('pre-eclampsia');
  });

  it('makes it with the twins of an earlier pregnancy', () => {
    expect(classesOf([...given(30, 90), fetuses('2024-01-10')])).toContain('pre-eclampsia');
  });

  it('makes none under frontline', () => {
    expect(classesOf(given(30, 90), 'frontline')).not.toContain('pre-eclampsia');
  });
});

describe('a dating without a scan before 22+0 (ACOG Committee Opinion 700, abstract)', () => {
  it('is said to be suboptimal', () => {
    expect(timelineValues.confirmingScanBefore).toMatchObject({ comparator: '<', value: 154, unit: 'd' });
    const { timeline } = evaluateSoundly(bundleOf(given(30, 10)), { asOf: `${day}T18:00:00Z` });
    expect(timeline.pregnancy.dating?.remarks).toEqual([
      'No scan before 22+0 was sent to confirm it: suboptimally dated.',
    ]);
  });
});

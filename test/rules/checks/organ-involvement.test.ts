// Signs of an organ, criterion by criterion, with limits of its own. Clinical rules 1.3; notes of the check.
import { describe, expect, it } from 'vitest';
import type { OrganCriterion } from '../../../src/guidelines/guideline.ts';
import type { Timeline } from '../../../src/timeline/timeline.ts';
import { condition, lab, moment, symptom } from '../facts.ts';
import { ask, limit, told } from './ask.ts';

type More = Partial<Extract<Parameters<typeof ask>[0], { check: 'organ-involvement' }>>;
const answer = (
  criteria: readonly OrganCriterion[],
  facts: Partial<Timeline>,
  more: More = {},
  days?: number,
) =>
  ask(
    {
      check: 'organ-involvement',
      criteria,
      periods: ['from-20-weeks'],
      newOnset: false,
      symptomsFreshWithin: limit('<=', 1, 'd'),
      ...more,
    },
    facts,
    days,
  );

const few: OrganCriterion = {
  id: 'few-platelets',
  kind: 'laboratory',
  organ: 'blood',
  analytes: ['platelets'],
  limit: limit('<', 150, '10*9/L'),
};
const liver: OrganCriterion = { ...few, id: 'liver', analytes: ['alt', 'ast'], limit: limit('>', 40, 'U/L') };
const platelets = (when: string, value: number) => lab(when, 'platelets', value, '10*9/L');
const alt = (value: number, when = '09:00') => lab(when, 'alt', value, 'U/L');
const ast = (value: number) => lab('09:00', 'ast', value, 'U/L');
const of = (criterion: OrganCriterion | readonly OrganCriterion[], ...laboratory: Timeline['laboratory']) =>
  told(answer([criterion].flat(), { laboratory }));

describe('a limit', () => {
  it('is judged by the newest result of the periods asked', () => {
    const both = [platelets('2024-10-01T09:00:00Z', 100), platelets('09:00', 200)];
    expect(of(few, platelets('08:00', 200), platelets('09:00', 149))).toEqual({
      outcome: 'met',
      cited: ['149 10*9/L'],
      limits: ['< 150 10*9/L'],
    });
    expect(of(few, ...both)).toEqual({
      outcome: 'not-met',
      cited: ['200 10*9/L'],
      limits: ['< 150 10*9/L'],
    });
    expect(of(few, ...both.slice(0, 1)).outcome).toBe('cannot-tell');
  });

  it('of several tests one beyond it is enough, and one within it answers for the others', () => {
    expect(of(liver, alt(20), ast(60)).outcome).toBe('met');
    expect(of(liver, alt(60), ast(20)).cited).toEqual(['60 U/L', '20 U/L']);
    expect(of(liver, ast(20)).outcome).toBe('not-met');
    expect(answer([liver, few], {}).missing?.what).toBe('ALT, platelets');
    expect(answer([liver, few], { laboratory: [ast(20)] }).because).toBe('Not measured: platelets.');
  });

  it('in a unit that cannot be compared is still to be measured', () => {
    expect(of(few, lab('09:00', 'platelets', 100, 'other')).outcome).toBe('cannot-tell');
    const adjunct = { ...few, isAdjunct: true };
    expect(of(adjunct, lab('09:00', 'platelets', 100, 'other')).outcome).toBe('not-met');
    expect(of(adjunct).outcome).toBe('not-met');
    expect(of({ ...few, isAdjunct: false }).outcome).toBe('cannot-tell');
  });

  it('is not for her when what explains it is on record and active', () => {
    const unless = { ...few, unlessRecorded: ['multiple-pregnancy', 'chronic-kidney-disease'] } as const;
    const beside = (facts: Partial<Timeline>) =>
      answer([unless], { laboratory: [platelets('09:00', 100)], ...facts }).outcome;
    const kidney = condition('chronic-kidney-disease');
    expect(beside({})).toBe('met');
    expect(beside({ conditions: [kidney] })).toBe('not-met');
    expect(beside({ conditions: [{ ...kidney, state: 'inactive' }] })).toBe('met');
    expect(beside({ conditions: [condition('asthma')] })).toBe('met');
  });

  it.each([
    [1, 'met'],
    [2, 'not-met'],
  ])('that twins explain, with %i fetuses: %s', (count, outcome) => {
    const fetuses = { count, source: { reference: 'Observation/fetuses', preliminary: false } };
    const dating = { startDay: moment('2024-08-12').localDay, others: [], remarks: [], conflict: false };
    const pregnancy = {
      remarks: [],
      fetuses,
      dating: { ...dating, method: 'ultrasound', asSent: 'dated', source: fetuses.source },
    } as const;
    const facts = { laboratory: [platelets('09:00', 100)], pregnancy };
    expect(answer([{ ...few, unlessRecorded: ['multiple-pregnancy'] }], facts).outcome).toBe(outcome);
    expect(answer([{ ...few, unlessRecorded: ['diabetes'] }], facts).outcome).toBe('met');
  });

  it.each([
    [209, 'not-met'],
    [210, 'met'],
    [219, 'met'],
    [220, 'not-met'],
  ])('tied to an age from day 210 to before day 220, at day %i: %s', (days, outcome) => {
    const tied = { ...few, fromAge: limit('>=', 210, 'd'), beforeAge: limit('<', 220, 'd') };
    expect(answer([tied], { laboratory: [platelets('09:00', 100)] }, {}, days).outcome).toBe(outcome);
  });

  it('tied to an age at one end, or to none', () => {
    const facts = { laboratory: [platelets('09:00', 100)] };
    expect(answer([{ ...few, fromAge: limit('>=', 211, 'd') }], facts).outcome).toBe('not-met');
    expect(answer([{ ...few, fromAge: limit('>=', 200, 'd') }], facts).outcome).toBe('met');
    expect(answer([{ ...few, beforeAge: limit('<', 210, 'd') }], facts).outcome).toBe('not-met');
    expect(answer([{ ...few, beforeAge: limit('<', 250, 'd') }], facts).outcome).toBe('met');
  });

  it('tied to an age says nothing of a result of unknown age; tied to none it does', () => {
    const facts = { laboratory: [platelets('09:00', 100)], pregnancy: { remarks: [] } };
    const periods = { periods: ['unknown'] } as const;
    expect(answer([{ ...few, fromAge: limit('>=', 0, 'd') }], facts, periods).outcome).toBe('not-met');
    expect(answer([few], facts, periods).outcome).toBe('met');
  });
});

describe('the age of a result', () => {
  const spans = { freshWithin: limit('<=', 7, 'd'), negativeFreshWithin: limit('<=', 1, 'd') };
  const at = (when: string, value: number) => answer([few], { laboratory: [platelets(when, value)] }, spans);

  it('beyond which it says nothing at all', () => {
    expect(at('2025-03-03T12:00:00Z', 100).outcome).toBe('met');
    expect(told(at('2025-03-03T11:59:00Z', 100))).toEqual({ outcome: 'cannot-tell', cited: [], limits: [] });
  });

  it('beyond which one within the limit has to be measured again, and is cited', () => {
    expect(at('2025-03-09T12:00:00Z', 200).outcome).toBe('not-met');
    expect(told(at('2025-03-09T11:59:00Z', 200))).toEqual({
      outcome: 'cannot-tell',
      cited: ['200 10*9/L'],
      limits: [],
    });
  });
});

describe('new onset', () => {
  const before = (value: number, unit = '10*9/L') => lab('2024-10-01T09:00:00Z', 'platelets', value, unit);
  const onset = (newOnset: boolean, ...laboratory: Timeline['laboratory']) =>
    told(answer([few], { laboratory: [...laboratory, platelets('09:00', 100)] }, { newOnset }));

  it('a value beyond the limit before 20 weeks is not new, where that is asked', () => {
    expect(onset(true, before(140))).toEqual({
      outcome: 'not-met',
      cited: ['100 10*9/L', '140 10*9/L'],
      limits: ['< 150 10*9/L'],
    });
    expect(onset(false, before(140)).outcome).toBe('met');
    expect(onset(true, before(200)).outcome).toBe('met');
    expect(onset(true).outcome).toBe('met');
    expect(onset(true, before(140, 'other')).outcome).toBe('met');
  });

  it('one of an earlier pregnancy is compared as well', () => {
    expect(onset(true, platelets('2023-01-01T09:00:00Z', 140)).outcome).toBe('not-met');
  });
});

describe('a symptom and a condition', () => {
  const citation = limit('<', 1, '1').citation;
  const head: OrganCriterion = {
    id: 'brain',
    kind: 'symptom',
    organ: 'brain',
    symptoms: ['headache'],
    citation,
  };
  const lung: OrganCriterion = {
    id: 'placental-abruption',
    kind: 'condition',
    organ: 'placenta',
    conditions: ['placental-abruption'],
    citation,
  };

  it('is a sign when it is there, and of this pregnancy', () => {
    expect(told(answer([head], { symptoms: [symptom('headache')] }))).toEqual({
      outcome: 'met',
      cited: ['present'],
      limits: [],
    });
    expect(answer([head], {}).outcome).toBe('not-met');
    const old = { ...symptom('headache'), at: moment('2025-03-09T11:59:00Z') };
    expect(answer([head], { symptoms: [old] }).outcome).toBe('not-met');
    const abruption = condition('placental-abruption');
    expect(answer([lung], { conditions: [abruption] }).because).toBe('Placental abruption.');
    expect(answer([lung], { conditions: [condition('asthma')] }).outcome).toBe('not-met');
    const earlier = { ...abruption, onset: moment('2023-01-01') };
    expect(answer([lung], { conditions: [earlier] }).outcome).toBe('not-met');
  });

  it('all that are met are told, each fact once', () => {
    const lower = { ...few, id: 'very-few', limit: limit('<', 100, '10*9/L') };
    const facts = { laboratory: [platelets('09:00', 90)], symptoms: [symptom('headache')] };
    expect(told(answer([few, lower, head], facts))).toEqual({
      outcome: 'met',
      cited: ['90 10*9/L', 'present'],
      limits: ['< 150 10*9/L', '< 100 10*9/L'],
    });
    expect(told(answer([few, lower], { laboratory: [platelets('09:00', 200)] })).cited).toEqual([
      '200 10*9/L',
    ]);
  });

  it('does not apply where a publication has no criteria', () => {
    expect(answer([], {}).outcome).toBe('not-applicable');
  });
});

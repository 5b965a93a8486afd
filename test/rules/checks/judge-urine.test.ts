// What one urine result says against the accepted measures: each kind with its own limit. Clinical rules 1.2.
import { describe, expect, it } from 'vitest';
import { judgeUrine } from '../../../src/rules/checks/judge-urine.ts';
import { strip } from '../facts.ts';
import { ask, told } from './ask.ts';
import { atLeast, criteria, quantity, question, sent } from './urine-question.ts';

describe('one result', () => {
  const asks = { ...criteria, stripAsksForRatio: atLeast(0.5, '{grade}') };
  const { strip: _strip, ...noStrip } = criteria;

  it.each([
    [1, criteria, 'significant'],
    [0.5, criteria, 'not-significant'],
    [0.5, asks, 'open'],
    [0, asks, 'not-significant'],
    [4, noStrip, 'not-used'],
    ['positive-ungraded', criteria, 'open'],
    ['positive-ungraded', { ...criteria, ungradedPositive: 'counts' }, 'significant'],
  ] as const)('a strip of %s', (grade, given, verdict) => {
    const judged = judgeUrine(strip('09:00', grade), given);
    expect([judged.verdict, judged.threshold?.id]).toEqual([
      verdict,
      verdict === 'not-used' ? undefined : '>= 1 {grade}',
    ]);
  });

  it.each([
    ['protein-creatinine-ratio', 30, 'mg/mmol'],
    ['albumin-creatinine-ratio', 8, 'mg/mmol'],
    ['excretion-24h', 300, 'mg/(24.h)'],
  ] as const)('%s is compared with its own limit, %i %s', (kind, value, unit) => {
    const at = (number: number) => judgeUrine(quantity(kind, '09:00', number), criteria);
    expect(at(value)).toMatchObject({ verdict: 'significant', compared: `${String(value)} ${unit}` });
    expect(at(value - 1)).toMatchObject({ verdict: 'not-significant', threshold: { value } });
  });

  it('one limit met is enough, one left open by a bound keeps it open, a foreign unit is not used', () => {
    const two = { ...criteria, proteinCreatinineRatio: [atLeast(30, 'mg/mmol'), atLeast(0.3, 'mg/mg')] };
    const both = (value: number, comparator?: '<' | '>', given = two) => {
      const result = quantity('protein-creatinine-ratio', '09:00', value);
      const measured = comparator === undefined ? { value } : { value, comparator };
      const byUnit = { sentUnit: 'mg/mmol', values: { 'mg/mmol': value, 'mg/mg': value / 113 } };
      return judgeUrine({ ...result, measured, byUnit }, given);
    };
    expect(both(32)).toMatchObject({ verdict: 'significant', threshold: { unit: 'mg/mmol' } });
    expect(both(20)).toMatchObject({ verdict: 'not-significant', threshold: { unit: 'mg/mmol' } });
    const second = { ...two, proteinCreatinineRatio: [atLeast(50, 'mg/mmol'), atLeast(0.3, 'mg/mg')] };
    expect(both(40, undefined, second)).toMatchObject({
      verdict: 'significant',
      threshold: { unit: 'mg/mg' },
    });
    expect(both(40, '<', second)).toMatchObject({ verdict: 'open', threshold: { unit: 'mg/mg' } });
    expect([both(32, '<').verdict, both(30, '<').verdict]).toEqual(['open', 'not-significant']);
    expect(judgeUrine(sent('09:00', 1, 'other'), two).verdict).toBe('not-used');
  });

  it('of a kind without a limit is not used', () => {
    const concentration = quantity('concentration', '09:00', 3);
    expect(judgeUrine(concentration, criteria)).toEqual({ result: concentration, verdict: 'not-used' });
  });

  it('that is open asks for a ratio', () => {
    const open = ask(question, { urineProteins: [strip('09:00', 'positive-ungraded')] });
    expect(told(open)).toEqual({
      outcome: 'cannot-tell',
      cited: ['positive-ungraded'],
      limits: ['>= 1 {grade}'],
    });
    expect(open.missing?.what).toBe('urine protein/creatinine ratio');
  });
});

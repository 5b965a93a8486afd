// Which gaps are worth naming, with rules of their own: what an open class waits for, and how soon.
import { describe, expect, it } from 'vitest';
import type { Finding, Outcome } from '../../src/findings/finding.ts';
import type { Classification, ClassRule, Guideline, Need, Urgency } from '../../src/guidelines/guideline.ts';
import { listMissing } from '../../src/rules/list-missing.ts';
import { guideline } from '../support/assess.ts';
import { classRule, finding } from './rule-parts.ts';

describe('what is missing', () => {
  const gap = (id: string, by: Urgency = 'same-day') => ({ id, what: id, how: id, by });
  const wanting = (question: string, id: string, by?: Urgency): Finding =>
    finding(question, { outcome: 'cannot-tell', missing: gap(id, by) });
  const withClasses = (...classRules: readonly ClassRule[]): Guideline => ({ ...guideline(), classRules });
  function listed(
    urgency: Urgency,
    findings: readonly Finding[],
    rules: readonly (readonly [ClassRule, Outcome])[],
  ) {
    const outcomes = new Map<string, Outcome>([
      ...findings.map((one) => [one.question, one.outcome] as const),
      ...rules.map(([rule, is]) => [`class:${rule.id}`, is] as const),
    ]);
    return listMissing(withClasses(...rules.map(([rule]) => rule)), findings, outcomes, urgency).map(
      ({ id, by, couldChange }) => [id, by, ...couldChange],
    );
  }
  const open = (id: string, name: Classification, when: Need) =>
    [classRule(id, name, when), 'cannot-tell'] as const;

  it('is what keeps a class open, with the classes it could change', () => {
    const findings = [wanting('one', 'urine'), wanting('two', 'blood')];
    expect(
      listed('same-day', findings, [open('a', 'pre-eclampsia', 'one'), open('b', 'hellp', { any: ['one'] })]),
    ).toEqual([['urine', 'same-day', 'pre-eclampsia', 'hellp']]);
    expect(listed('same-day', findings, [[classRule('a', 'hellp', { all: ['one'] }), 'not-met']])).toEqual(
      [],
    );
    expect(listed('same-day', [finding('met')], [open('a', 'hellp', 'met')])).toEqual([]);
  });

  it('one gap of several questions is told once, with the classes of all', () => {
    const findings = [wanting('one', 'urine'), wanting('two', 'urine', 'emergency')];
    expect(
      listed('same-day', findings, [
        open('a', 'pre-eclampsia', 'one'),
        open('b', 'hellp', 'two'),
        open('c', 'eclampsia', { any: ['one', 'two'] }),
      ]),
    ).toEqual([['urine', 'same-day', 'pre-eclampsia', 'eclampsia', 'hellp']]);
  });

  it('comes most urgent first, and what can wait is not asked for in an emergency', () => {
    const findings = [
      wanting('one', 'later', 'routine'),
      wanting('two', 'soon'),
      wanting('three', 'now', 'emergency'),
    ];
    const rules = [open('a', 'hellp', { all: ['one', 'two', 'three'] })];
    expect(listed('same-day', findings, rules).map(([id]) => id)).toEqual(['now', 'soon', 'later']);
    expect(listed('emergency', findings, rules).map(([id]) => id)).toEqual(['now', 'soon']);
  });

  it('can wait when nothing hurries and only quiet classes are open', () => {
    const quiet = open('a', 'isolated-proteinuria', 'one');
    const loud = open('b', 'hellp', 'one');
    const by = (urgency: Urgency, ...rules: readonly (readonly [ClassRule, Outcome])[]) =>
      listed(urgency, [wanting('one', 'urine')], rules)[0]?.[1];
    expect([
      by('routine', quiet),
      by('within-7-days', quiet),
      by('routine', loud),
      by('routine', quiet, loud),
    ]).toEqual(['routine', 'same-day', 'same-day', 'same-day']);
    expect(by('routine', open('w', 'white-coat-hypertension', 'one'))).toBe('routine');
    expect(by('routine', open('m', 'masked-hypertension', 'one'))).toBe('routine');
  });

  it('is the dating too, though its question is met and its class holds; it waits when nothing hurries', () => {
    const undated = finding('undated', { outcome: 'met', missing: gap('dating') });
    const held = [classRule('a', 'hypertension-timing-unknown', 'other'), 'met'] as const;
    expect(listed('same-day', [undated, finding('other')], [held])).toEqual([
      ['dating', 'same-day', 'hypertension-timing-unknown'],
    ]);
    expect(listed('routine', [undated, finding('other')], [held])).toEqual([
      ['dating', 'routine', 'hypertension-timing-unknown'],
    ]);
    expect(listed('same-day', [undated], [open('b', 'hellp', { any: ['undated'] })])).toEqual([]);
  });
});

// One reason for prevention: found, absent, or never asked, by each place in the record. Clinical rules 2.10; notes of the factor.
import { describe, expect, it } from 'vitest';
import type { PreventionFactor } from '../../src/guidelines/guideline.ts';
import type { KnownCondition, Timeline, Woman } from '../../src/timeline/timeline.ts';
import { limit } from './checks/ask.ts';
import { condition, moment } from './facts.ts';
import { births, count, judged, said, woman } from './prevention-parts.ts';

describe('a condition', () => {
  const of = (item: KnownCondition, more: Partial<PreventionFactor> = {}) =>
    said({ conditions: [item.condition], ...more }, { conditions: [item] });
  const over = (name: KnownCondition['condition']): KnownCondition => ({
    ...condition(name),
    state: 'inactive',
  });

  it('is found while active, absent once resolved, never asked when not on record', () => {
    expect(of(condition('diabetes'))).toBe('found: diabetes');
    expect(of(over('diabetes'))).toBe('absent: diabetes');
    expect(said({ conditions: ['diabetes'] }, { conditions: [condition('asthma')] })).toBe('never-asked');
  });

  it('that makes a history stays', () => {
    expect(of(over('history-of-pre-eclampsia'), { ever: true })).toBe('found: history-of-pre-eclampsia');
    expect(of(over('diabetes'), { ever: false })).toBe('absent: diabetes');
  });

  it('active and resolved is found, by what is active', () => {
    const both = { conditions: [over('diabetes'), { ...condition('diabetes'), asSent: 'active one' }] };
    expect(said({ conditions: ['diabetes'] }, both)).toBe('found: active one');
  });

  it.each(['multiple-pregnancy', 'assisted-conception'] as const)('%s is of this pregnancy alone', (name) => {
    const earlier = { ...condition(name), onset: moment('2023-01-01') };
    expect(of(condition(name))).toBe(`found: ${name}`);
    expect(of(earlier)).toBe(`absent: ${name}`);
    expect(of({ ...condition('diabetes'), onset: moment('2010-01-01') })).toBe('found: diabetes');
  });

  describe('of before this pregnancy', () => {
    const before = (more: Partial<KnownCondition>, factor: Partial<PreventionFactor> = {}) =>
      said(
        { beforeThisPregnancy: ['pre-eclampsia'], ...factor },
        { conditions: [{ ...condition('pre-eclampsia'), state: 'inactive', ...more }] },
      );

    it('is found when it is dated there, by its onset or its record', () => {
      expect(before({ onset: moment('2022-01-01') })).toBe('found: pre-eclampsia');
      expect(before({ recorded: moment('2022-01-01') })).toBe('found: pre-eclampsia');
    });

    it('is not when it is undated or of this pregnancy, or another disease', () => {
      expect(before({})).toBe('never-asked');
      expect(before({ onset: moment('2025-01-01') })).toBe('never-asked');
      expect(before({ onset: moment('2022-01-01') }, { beforeThisPregnancy: ['eclampsia'] })).toBe(
        'never-asked',
      );
    });

    it('is absent in her who never gave birth', () => {
      const factor = { beforeThisPregnancy: ['pre-eclampsia'] } as const;
      expect(said(factor, woman({ parity: count(0) }))).toBe('absent: 0');
      expect(said(factor, woman({ parity: count(1) }))).toBe('never-asked');
      expect(said(factor, woman({ parity: count(0), ...births('2022-05-01') }))).toBe('never-asked');
      expect(said(factor, woman({}))).toBe('never-asked');
      expect(said({ conditions: ['diabetes'] }, woman({ parity: count(0) }))).toBe('never-asked');
    });
  });

  it('cites its onset, or its record', () => {
    const times = (more: Partial<KnownCondition>) =>
      judged(
        { conditions: ['diabetes'] },
        { conditions: [{ ...condition('diabetes'), ...more }] },
      ).evidence.map(({ at }) => at);
    expect(times({ onset: moment('2010-01-01'), recorded: moment('2011-01-01') })).toEqual(['2010-01-01']);
    expect(times({ recorded: moment('2011-01-01') })).toEqual(['2011-01-01']);
  });
});

describe('a state', () => {
  const when = { all: ['raised-early'] };
  it('is found when it is met, and absent when its question says so', () => {
    expect(said({ when, deniedBy: 'asked' }, {}, { 'raised-early': 'met', asked: 'not-met' })).toBe('found');
    expect(said({ when, deniedBy: 'asked' }, {}, { 'raised-early': 'not-met', asked: 'not-met' })).toBe(
      'absent',
    );
    expect(said({ when, deniedBy: 'asked' }, {}, { 'raised-early': 'not-met', asked: 'met' })).toBe(
      'never-asked',
    );
    expect(said({ when }, {}, { 'raised-early': 'not-met' })).toBe('never-asked');
    expect(said({ deniedBy: 'asked' }, {}, { asked: 'not-met' })).toBe('never-asked');
  });
});

describe('a first birth to come', () => {
  const first = (more: Partial<Woman>) => said({ firstBirth: true }, woman(more));
  it('is told from births, parity, and a first pregnancy', () => {
    expect(first(births('2020-01-01', '2022-05-01'))).toBe('absent: 2022-05-01');
    expect(first({ parity: count(0) })).toBe('found: 0');
    expect(first({ parity: count(2) })).toBe('absent: 2');
    expect(first({ gravidity: count(1) })).toBe('found: 1');
    expect(first({ gravidity: count(2) })).toBe('never-asked');
    expect(first({ parity: count(1), gravidity: count(1) })).toBe('absent: 1');
    expect(first({})).toBe('never-asked');
    expect(said({ firstBirth: false }, woman({ parity: count(0) }))).toBe('never-asked');
  });
});

describe('several places', () => {
  const factor = { conditions: ['multiple-pregnancy'], fetuses: limit('>=', 2, '1') } as const;
  const facts = (state: 'active' | 'inactive', fetuses: number): Partial<Timeline> => ({
    conditions: [{ ...condition('multiple-pregnancy'), state }],
    pregnancy: { remarks: [], fetuses: count(fetuses) },
  });

  it('one that shows it is enough, and is alone cited', () => {
    expect(said(factor, facts('active', 1))).toBe('found: multiple-pregnancy');
    expect(said(factor, facts('inactive', 2))).toBe('found: 2');
    expect(said(factor, facts('active', 2))).toBe('found: multiple-pregnancy, 2');
    expect(said(factor, facts('inactive', 1))).toBe('absent: multiple-pregnancy, 1');
  });
});

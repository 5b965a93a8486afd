// One reason for prevention: found, absent, or never asked, by each place in the record. Clinical rules 2.10; notes of the factor.
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/findings/finding.ts';
import type { PreventionFactor } from '../../src/guidelines/guideline.ts';
import { judgeFactor } from '../../src/rules/prevention-factors.ts';
import type { KnownCondition, LaboratoryResult, Timeline, Woman } from '../../src/timeline/timeline.ts';
import { limit, viewOf } from './checks/ask.ts';
import { condition, lab, moment } from './facts.ts';

const source = { reference: 'Observation/one', preliminary: false };
const judged = (
  factor: Partial<PreventionFactor>,
  facts: Partial<Timeline> = {},
  outcomes: Readonly<Record<string, Outcome>> = {},
  days?: number,
) =>
  judgeFactor(
    viewOf(facts, days),
    { id: 'factor', factor: 'factor', level: 'high', ...factor },
    new Map(Object.entries(outcomes)),
  );
/** "found: as sent, as sent". */
function said(...given: Parameters<typeof judged>): string {
  const { verdict, evidence } = judged(...given);
  return [verdict, ...(evidence.length === 0 ? [] : [evidence.map(({ asSent }) => asSent).join(', ')])].join(
    ': ',
  );
}
const woman = (more: Partial<Woman>): Partial<Timeline> => ({ woman: { previousBirths: [], ...more } });
const count = (number: number) => ({ count: number, source });
const births = (...days: readonly string[]) => ({
  previousBirths: days.map((day) => ({ at: moment(day), source })),
});
const undated = { pregnancy: { remarks: [] } };

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

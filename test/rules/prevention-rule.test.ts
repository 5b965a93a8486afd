// One rule of prevention, with factors of its own: enough or not, its window, what is taken, what speaks against it. Clinical rules 2.10.
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/findings/finding.ts';
import type { PreventionFactor, PreventionRule } from '../../src/guidelines/guideline.ts';
import { advisePrevention } from '../../src/rules/prevention.ts';
import type { Timeline } from '../../src/timeline/timeline.ts';
import { guideline } from '../support/assess.ts';
import { limit, viewOf } from './checks/ask.ts';
import { condition, medicine, moment } from './facts.ts';

const factor = (
  id: 'diabetes' | 'asthma' | 'stroke',
  level: PreventionFactor['level'],
): PreventionFactor => ({
  id,
  factor: id,
  level,
  conditions: [id],
});
const { citation } = limit('>=', 1, '1');
const rule: PreventionRule = {
  id: 'aspirin',
  medicines: ['aspirin'],
  factors: [factor('diabetes', 'high'), factor('asthma', 'moderate'), factor('stroke', 'moderate')],
  enough: { high: limit('>=', 1, '1'), moderate: limit('>=', 2, '1') },
  dose: 'so much a day',
  window: {
    from: limit('>=', 84, 'd'),
    until: limit('<', 112, 'd'),
    stop: limit('>=', 252, 'd'),
    sentence: 'from 12 to 16 weeks',
  },
  contraindications: ['peptic-ulcer'],
  tooLateWhen: 'class:pre-eclampsia',
  figures: [],
  citation,
};

function advise(
  more: Partial<PreventionRule>,
  facts: Partial<Timeline> = {},
  days = 90,
  state: Outcome = 'not-met',
) {
  const outcomes = new Map<string, Outcome>([['class:pre-eclampsia', state]]);
  const [advice] = advisePrevention(
    viewOf(facts, days),
    { ...guideline(), preventionRules: [{ ...rule, ...more }] },
    outcomes,
  );
  if (advice === undefined) throw new Error('no advice');
  return { ...advice, due: outcomes.get('prevention:aspirin-due'), kept: outcomes.get('prevention:aspirin') };
}
const having = (...names: readonly ('diabetes' | 'asthma' | 'stroke' | 'peptic-ulcer')[]) => ({
  conditions: names.map(condition),
});
const without = (...names: readonly ('diabetes' | 'asthma' | 'stroke')[]) =>
  names.map((name) => ({ ...condition(name), state: 'inactive' as const }));

describe('the factors', () => {
  it.each([
    ['one high', having('diabetes'), 'met'],
    ['two moderate', having('asthma', 'stroke'), 'met'],
    ['one moderate, the rest never asked', having('asthma'), 'cannot-tell'],
    [
      'one moderate, the rest absent',
      { conditions: [condition('asthma'), ...without('diabetes', 'stroke')] },
      'not-met',
    ],
    ['none, one moderate never asked', { conditions: without('diabetes', 'stroke') }, 'not-met'],
    ['none, the high one never asked', { conditions: without('asthma', 'stroke') }, 'cannot-tell'],
    ['none asked', {}, 'cannot-tell'],
  ] as const)('%s: %s', (_, facts, outcome) => {
    const found = advise({}, facts);
    expect([found.outcome, found.kept]).toEqual([outcome, outcome]);
  });

  it('of a level that is not enough by itself are never enough', () => {
    expect(advise({ enough: { high: limit('>=', 1, '1') } }, having('asthma', 'stroke')).outcome).toBe(
      'cannot-tell',
    );
    const asked = { conditions: [...having('asthma', 'stroke').conditions, ...without('diabetes')] };
    expect(advise({ enough: { high: limit('>=', 1, '1') } }, asked).outcome).toBe('not-met');
  });

  it('that no record holds are asked, and could be enough among the moderate ones', () => {
    const absent = { conditions: [condition('asthma'), ...without('diabetes', 'stroke')] };
    expect(advise({}, absent).outcome).toBe('not-met');
    const open = advise({ toAsk: ['the diet'] }, absent);
    expect([open.outcome, open.neverAsked]).toEqual(['cannot-tell', ['the diet']]);
    expect(
      advise({ toAsk: ['the diet'] }, { conditions: without('diabetes', 'asthma', 'stroke') }).outcome,
    ).toBe('not-met');
    const highOnly = { toAsk: ['the diet'], enough: { high: limit('>=', 1, '1') } };
    expect(advise(highOnly, absent).outcome).toBe('not-met');
  });

  it('are listed as found, absent and never asked', () => {
    const given = { conditions: [condition('diabetes'), ...without('asthma')] };
    const { found, absent, neverAsked } = advise({}, given);
    expect(found.map((one) => [one.factor, one.level, one.evidence.length])).toEqual([
      ['diabetes', 'high', 1],
    ]);
    expect([absent, neverAsked]).toEqual([['asthma'], ['stroke']]);
  });
});

describe('the window', () => {
  it.each([
    [83, 'not-met', 'Its window has not opened yet.', true],
    [84, 'met', 'Its window is open.', true],
    [111, 'met', 'Its window is open.', true],
    [112, 'not-met', 'Its window to begin is over: ask a specialist.', false],
    [251, 'not-met', 'Its window to begin is over: ask a specialist.', false],
    [252, 'not-met', 'Its window to begin is over: ask a specialist.', false],
  ])('at day %i: due %s, %s', (days, due, words, hasDose) => {
    const found = advise({}, having('diabetes'), days);
    expect(found.sentence).toBe(`Indicated by the factors found. ${words}`);
    expect([found.outcome, found.due, found.dose]).toEqual([
      'met',
      due,
      hasDose ? 'so much a day' : undefined,
    ]);
    expect(found.window).toBe('from 12 to 16 weeks');
  });

  it('is not known of an undated pregnancy', () => {
    const found = advise({}, { ...having('diabetes'), pregnancy: { remarks: [] } });
    expect([found.outcome, found.due, found.dose]).toEqual(['met', 'cannot-tell', 'so much a day']);
    expect(found.sentence).toContain('the pregnancy is not dated');
  });

  it('may be none: said nowhere, and never due', () => {
    const { window: _window, ...rest } = rule;
    const outcomes = new Map<string, Outcome>([['class:pre-eclampsia', 'not-met']]);
    const [found] = advisePrevention(
      viewOf(having('diabetes'), 90),
      { ...guideline(), preventionRules: [rest] },
      outcomes,
    );
    expect(found?.sentence).toBe('Indicated by the factors found.');
    expect(found).not.toHaveProperty('window');
    expect(outcomes.get('prevention:aspirin-due')).toBe('not-met');
  });
});

describe('what is on record', () => {
  const taking = (
    status: 'active' | 'ordered' | 'given' | 'stopped',
    name: 'aspirin' | 'statin' = 'aspirin',
  ) => ({
    ...having('diabetes'),
    medicines: [medicine(name, status)],
  });

  it.each(['active', 'ordered'] as const)('as %s is not due, and goes on', (status) => {
    const found = advise({}, taking(status));
    expect([found.outcome, found.due]).toEqual(['met', 'not-met']);
    expect(found.sentence).toBe(
      'Indicated by the factors found. On record as taken or ordered: aspirin. Go on as printed.',
    );
  });

  it('as stopped or given once, or as another medicine, is not taken', () => {
    for (const facts of [taking('stopped'), taking('given'), taking('active', 'statin')])
      expect(advise({}, facts)).toMatchObject({
        due: 'met',
        sentence: 'Indicated by the factors found. Its window is open.',
      });
  });

  it('is due no more often than indicated, though taken and undated', () => {
    const found = advise({}, { ...taking('active'), pregnancy: { remarks: [] } });
    expect(found.due).toBe('not-met');
    expect(advise({}, {}, 90).due).toBe('cannot-tell');
  });

  it('against it: it is not indicated, and that is said', () => {
    const found = advise({}, having('diabetes', 'peptic-ulcer'));
    expect([found.outcome, found.due, found.dose]).toEqual(['not-met', 'not-met', undefined]);
    expect(found.sentence).toBe(
      'The factors are there, and the record speaks against it. On record: peptic-ulcer.',
    );
    const over = {
      conditions: [condition('diabetes'), { ...condition('peptic-ulcer'), state: 'inactive' as const }],
    };
    expect(advise({}, over).outcome).toBe('met');
    expect(advise({}, having('peptic-ulcer'))).toMatchObject({
      outcome: 'cannot-tell',
      sentence:
        'Not indicated by what is on record; factors never asked could change that. On record: peptic-ulcer.',
    });
  });

  it('is named once, however often it is recorded', () => {
    const twice = {
      ...having('diabetes'),
      medicines: [medicine('aspirin', 'active'), medicine('aspirin', 'ordered')],
    };
    expect(advise({}, twice).sentence).toContain('taken or ordered: aspirin. Go on');
  });
});

it('a publication without such rules says nothing', () => {
  const { preventionRules: _none, ...bare } = guideline();
  expect(advisePrevention(viewOf({}), bare, new Map())).toEqual([]);
});

describe('where it is not asked', () => {
  const born = (at: string) => ({
    ...having('diabetes'),
    pregnancy: {
      remarks: [],
      birth: { at: moment(at), asSent: at, source: { reference: 'Observation/birth', preliminary: false } },
    },
  });

  it('after birth, and long after, it does not apply; nothing is listed', () => {
    for (const at of ['2025-03-01', '2024-06-01'])
      expect(advise({}, born(at))).toMatchObject({
        outcome: 'not-applicable',
        due: 'not-applicable',
        sentence: 'It is given in pregnancy.',
        found: [],
        absent: [],
        neverAsked: [],
      });
  });

  it('once the disease is there it comes too late', () => {
    const late = advise({}, having('diabetes'), 90, 'met');
    expect(late.outcome).toBe('not-applicable');
    expect(late.sentence).toContain('no longer prevents it');
    expect(advise({}, having('diabetes'), 90, 'cannot-tell').outcome).toBe('met');
  });

  it('a publication may advise it for nobody, or leave it open', () => {
    expect(advise({ notAdvised: 'For nobody.' }, having('diabetes'))).toMatchObject({
      outcome: 'not-met',
      sentence: 'For nobody.',
    });
    expect(advise({ advice: 'Ask about the diet.' }, having('diabetes'))).toMatchObject({
      outcome: 'cannot-tell',
      sentence: 'Ask about the diet.',
    });
  });
});

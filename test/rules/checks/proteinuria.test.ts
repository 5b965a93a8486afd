// Significant protein, with limits of its own: which results are looked at, what corrects a strip, what is new. Clinical rules 1.2, 2.4.
import { describe, expect, it } from 'vitest';
import type { Timeline, UrineProtein } from '../../../src/timeline/timeline.ts';
import { condition, ratio, reading, strip } from '../facts.ts';
import { ask, told } from './ask.ts';
import { atLeast, criteria, early, quantity, question, sent, type More } from './urine-question.ts';

const answer = (urineProteins: Timeline['urineProteins'], more: More = {}, facts: Partial<Timeline> = {}) =>
  ask({ ...question, ...more }, { urineProteins, ...facts });
const outcome = (...given: Parameters<typeof answer>) => answer(...given).outcome;
const cited = (...given: Parameters<typeof answer>) => told(answer(...given)).cited;
const raised = (when: string) => reading(when, 150, 96);
const since = { span: 'since-raised' } as const;

describe('the newest result', () => {
  it('decides, with the limit it was compared with', () => {
    expect(told(answer([strip('08:00', 0), ratio('09:00', 30)]))).toEqual({
      outcome: 'met',
      cited: ['30 mg/mmol'],
      limits: ['>= 30 mg/mmol'],
    });
    expect(told(answer([ratio('2025-03-08T09:00:00Z', 50), ratio('09:00', 29)]))).toEqual({
      outcome: 'not-met',
      cited: ['29 mg/mmol'],
      limits: ['>= 30 mg/mmol'],
    });
  });

  it('of its day decides with the others of that day', () => {
    expect(cited([ratio('08:00', 50), ratio('09:00', 29)])).toEqual(['50 mg/mmol']);
    expect(cited([ratio('2025-03-09T08:00:00Z', 50), ratio('09:00', 40)])).toEqual(['40 mg/mmol']);
  });

  it('of a kind that decides nothing is passed over, and said so when it is alone', () => {
    const concentration: UrineProtein = quantity('concentration', '09:00', 3);
    expect(outcome([ratio('08:00', 50), concentration])).toBe('met');
    const alone = answer([concentration]);
    expect(told(alone)).toEqual({ outcome: 'cannot-tell', cited: ['3 g/L'], limits: [] });
    expect(alone.because).toContain('of a kind that decides nothing here');
    expect(told(answer([]))).toEqual({ outcome: 'cannot-tell', cited: [], limits: [] });
    expect(answer([]).because).toContain('No urine protein result was received');
  });

  it('without enough protein is an answer up to the look-back before the last raised contact, or before now', () => {
    const tested = [strip('2025-03-07T12:00:00Z', 0)];
    expect(told(answer(tested))).toEqual({ outcome: 'not-met', cited: ['0'], limits: ['>= 1 {grade}'] });
    expect(told(answer([strip('2025-03-07T11:59:00Z', 0)]))).toEqual({
      outcome: 'cannot-tell',
      cited: ['0'],
      limits: ['>= 1 {grade}'],
    });
    const before = { pressures: [raised('2025-03-05T12:00:00Z'), reading('09:00', 120, 70)] };
    expect(outcome([strip('2025-03-02T12:00:00Z', 0)], {}, before)).toBe('not-met');
    expect(outcome([strip('2025-03-02T11:59:00Z', 0)], {}, before)).toBe('cannot-tell');
    const again = { pressures: [raised('2025-03-01T12:00:00Z'), raised('2025-03-08T12:00:00Z')] };
    expect(outcome([strip('2025-03-03T12:00:00Z', 0)], {}, again)).toBe('cannot-tell');
  });
});

describe('the remark of a publication', () => {
  const remark = { criteria: { ...criteria, remark: 'Others ask for 2+.' } };
  it('stands beside a strip, and beside nothing else', () => {
    expect(answer([strip('09:00', 1)], remark).because).toContain('Others ask for 2+.');
    expect(answer([ratio('09:00', 50)], remark).because).not.toContain('Others');
    expect(answer([strip('09:00', 1)]).because).toBe('urine protein, strip: 1 at 2025-03-10T09:00:00Z.');
  });
});

describe('a strip beside a quantity', () => {
  it.each([
    ['on the same day, before it', '08:00', '20:00', 'not-met'],
    ['on the same day, after it', '20:00', '08:00', 'not-met'],
    ['up to a day before it', '2025-03-09T10:00:00Z', '2025-03-10T10:00:00Z', 'not-met'],
    ['longer before it', '2025-03-08T09:59:00Z', '2025-03-09T10:00:00Z', 'met'],
    ['on the day after it', '2025-03-10T01:00:00Z', '2025-03-09T23:00:00Z', 'met'],
  ])('%s: %s and %s', (_, strips, quantities, expected) => {
    const both = [strip(strips, 2), ratio(quantities, 5)].sort((a, b) => a.at.earliest - b.at.earliest);
    expect(outcome(both, since)).toBe(expected);
  });

  it('gives way only to one that decides', () => {
    const bound: UrineProtein = quantity('protein-creatinine-ratio', '09:00', 20);
    const open = { ...bound, measured: { value: 20, comparator: '>' as const } };
    expect(outcome([strip('08:00', 2), open], since)).toBe('met');
    expect(outcome([strip('08:00', 2), bound], since)).toBe('not-met');
    expect(cited([strip('08:00', 2), ratio('09:00', 50)], since)).toEqual(['50 mg/mmol']);
  });
});

describe('since the pressure rose', () => {
  const rose = { pressures: [reading('2025-03-01T09:00:00Z', 120, 70), raised('2025-03-05T12:00:00Z')] };

  it('every positive counts from the look-back before the first raised contact', () => {
    const positive = (when: string) => outcome([strip(when, 2), strip('09:00', 0)], since, rose);
    expect(positive('2025-03-02T12:00:00Z')).toBe('met');
    expect(positive('2025-03-02T11:59:00Z')).toBe('not-met');
    expect(outcome([strip('2025-03-02T12:00:00Z', 2), strip('09:00', 0)], {}, rose)).toBe('not-met');
    const twice = { pressures: [...rose.pressures, raised('2025-03-09T12:00:00Z')] };
    expect(outcome([strip('2025-03-02T12:00:00Z', 2), strip('09:00', 0)], since, twice)).toBe('met');
  });

  it('a pressure raised in another part of the pregnancy is not that first contact', () => {
    const before = { pressures: [raised(early), raised('2025-03-05T12:00:00Z')] };
    expect(outcome([strip('2025-02-01T09:00:00Z', 2)], since, before)).toBe('cannot-tell');
  });

  it('never risen, all results of the periods count', () => {
    const calm = { pressures: [reading('09:00', 120, 70)] };
    expect(outcome([strip('2025-01-10T09:00:00Z', 2), strip('09:00', 0)], since, calm)).toBe('met');
  });

  it('does not apply where neither a contact nor a result belongs to the periods', () => {
    const other = { pressures: [raised(early)] };
    expect(outcome([strip(early, 2)], since, other)).toBe('not-applicable');
    expect(outcome([strip(early, 2)], {}, other)).toBe('cannot-tell');
    expect(outcome([], since, { pressures: [raised('09:00')] })).toBe('cannot-tell');
    expect(outcome([strip('09:00', 0)], since)).toBe('not-met');
  });

  it('a result of an earlier pregnancy counts in no period', () => {
    const periods = { periods: ['unknown', 'from-20-weeks'] } as const;
    expect(cited([strip('2023-01-01T09:00:00Z', 2)], periods)).toEqual([]);
  });
});

describe('new against what was there before 20 weeks', () => {
  const inEither = [atLeast(30, 'mg/mmol'), atLeast(0.3, 'mg/mg')];
  const against = { newAgainstBaseline: atLeast(2, '1') };
  const kidney = condition('chronic-kidney-disease');
  const now = ratio('09:00', 80);
  const facts = (more: Partial<Timeline> = {}) => ({ conditions: [kidney], ...more });

  it('is asked only where the guideline asks, and when something was there', () => {
    expect(outcome([ratio(early, 60), now])).toBe('met');
    expect(outcome([ratio(early, 5), now], against)).toBe('met');
    expect(outcome([strip(early, 0), now], against)).toBe('met');
    expect(outcome([ratio('2023-01-01T09:00:00Z', 60), now], against)).toBe('met');
    expect(outcome([now], against, { conditions: [{ ...kidney, state: 'inactive' }] })).toBe('met');
    expect(outcome([now], against, { conditions: [condition('asthma')] })).toBe('met');
  });

  it('is a multiple of the newest of them', () => {
    const limits = ['>= 30 mg/mmol', '>= 2 1'];
    expect(told(answer([ratio(early, 40), now], against))).toEqual({
      outcome: 'met',
      cited: ['40 mg/mmol', '80 mg/mmol'],
      limits,
    });
    expect(told(answer([ratio(early, 41), now], against))).toEqual({
      outcome: 'not-met',
      cited: ['41 mg/mmol', '80 mg/mmol'],
      limits,
    });
    expect(outcome([ratio(early, 60), ratio('2024-10-02T09:00:00Z', 40), now], against)).toBe('met');
    const twoToday = [ratio(early, 40), ratio('08:00', 60), ratio('09:00', 80)];
    expect(outcome(twoToday, against)).toBe('met');
  });

  it.each([
    ['a strip before', [strip(early, 2), now]],
    ['a strip now', [ratio(early, 40), strip('09:00', 2)]],
    ['two strips', [strip(early, 2), strip('09:00', 3)]],
    ['another kind', [quantity('excretion-24h', early, 400), now]],
    ['another ratio', [quantity('albumin-creatinine-ratio', early, 40), now]],
    ['another unit', [ratio(early, 40), sent('09:00', 1, 'mg/mg')]],
  ] as const)('cannot be told of %s, and may be taken for new', (_, results) => {
    const both = { ...against, criteria: { ...criteria, proteinCreatinineRatio: inEither } };
    expect(outcome(results, both)).toBe('cannot-tell');
    expect(outcome(results, { ...both, whenNotCompared: 'counts' })).toBe('met');
  });

  it('cannot be told of a kidney disease on record alone', () => {
    const known = answer([now], against, facts());
    expect(told(known)).toEqual({
      outcome: 'cannot-tell',
      cited: ['chronic-kidney-disease', '80 mg/mmol'],
      limits: ['>= 30 mg/mmol', '>= 2 1'],
    });
    expect(outcome([now], { ...against, whenNotCompared: 'counts' }, facts())).toBe('met');
  });

  it('cannot be told of a baseline of zero', () => {
    const any = { criteria: { ...criteria, proteinCreatinineRatio: [atLeast(0, 'mg/mmol')] } };
    expect(outcome([ratio(early, 0), now], { ...against, ...any })).toBe('cannot-tell');
  });
});

it('whether the urine was tested is told from the newest result, up to the limit', () => {
  const tested = (...urineProteins: Timeline['urineProteins']) =>
    told(ask({ check: 'urine-tested', freshWithin: atLeast(1, 'd') }, { urineProteins }));
  const limits = ['>= 1 d'];
  expect(tested()).toEqual({ outcome: 'not-met', cited: [], limits });
  expect(tested(strip('2025-03-09T12:00:00Z', 1))).toEqual({ outcome: 'met', cited: ['1'], limits });
  expect(tested(strip('2025-03-09T11:59:00Z', 1)).outcome).toBe('not-met');
  expect(tested(ratio('2025-03-08T09:00:00Z', 5), strip('09:00', 0)).cited).toEqual(['0']);
});

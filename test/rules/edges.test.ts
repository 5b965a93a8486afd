// Where a rule ends: facts of an earlier pregnancy, too old, of another part of the pregnancy, or told by one place alone.
import { describe, expect, it } from 'vitest';
import { guidelineOf } from '../../src/guidelines/registry.ts';
import { factsJudged } from '../../src/rules/quality/facts-judged.ts';
import { liftToFloor } from '../../src/rules/urgency-floor.ts';
import { assess } from '../support/assess.ts';
import * as story from '../support/plain-stories.ts';
import * as build from '../support/resources.ts';
import type { PlainTimeline } from '../support/timeline-builder.ts';
import { applied, lab, reading, sign, timeline, unusable } from './facts.ts';
import { pressure, trace } from './trace.ts';

describe('a diagnosis on record', () => {
  it.each([
    ['of this pregnancy counts', '2025-02-01', 'met'],
    ['of an earlier pregnancy does not', '2022-04-01', 'not-met'],
  ])('%s', (_, onset, outcome) => {
    expect(trace('recorded-pre-eclampsia', [build.condition('pre-eclampsia', onset)]).outcome).toBe(outcome);
  });

  it.each([
    ['pre-eclampsia', 'recorded-pre-eclampsia'],
    ['chronic-kidney-disease', 'recorded-kidney-disease'],
  ] as const)('%s that is over does not count', (name, question) => {
    const found = build.condition(name, '2025-02-01');
    const coding = [{ ...found.clinicalStatus?.coding?.[0], code: 'resolved' }];
    expect(trace(question, [found]).outcome).toBe('met');
    expect(trace(question, [{ ...found, clinicalStatus: { coding } }]).outcome).toBe('not-met');
  });

  it('of the kidneys counts though it is older than this pregnancy', () => {
    const kidneys = build.condition('chronic-kidney-disease', '2020-01-01');
    expect(trace('recorded-kidney-disease', [kidneys]).outcome).toBe('met');
  });
});

describe('a medicine for pressure', () => {
  // 30+4 weeks on 10 March 2025: begun on 8 August 2024, 20+0 weeks on 26 December.
  it.each([
    ['before this pregnancy', '2023-01-01', 'met', 'not-met'],
    ['before 20 weeks', '2024-12-25', 'met', 'not-met'],
    ['from 20 weeks on', '2024-12-26', 'not-met', 'met'],
  ])('begun %s', (_, start, before, from) => {
    const taken = [build.takes('labetalol', start)];
    expect(trace('treated-before-20-weeks', taken).outcome).toBe(before);
    expect(trace('treated-from-20-weeks', taken).outcome).toBe(from);
  });
});

describe('a wide pair of raised readings', () => {
  it.each([
    ['within six weeks of the birth is stale', '2025-01-27', 'met'],
    ['one of them later than that is no pair', '2025-01-26', 'not-applicable'],
  ])('%s', (_, born, outcome) => {
    const pair = [pressure('09:00', 150, 96, '01'), pressure('09:00', 150, 96)];
    expect(trace('pair-stale', pair, 'frontline', [build.birth(born)]).outcome).toBe(outcome);
  });
});

describe('numbers without a unit', () => {
  it.each([
    [96, 150, 'emergency'],
    [96, 108, 'same-day'],
    [150, 96, 'same-day'],
  ])('%i/%i are judged as they were sent, not as a swapped pair: %s', (systolic, diastolic, urgency) => {
    const sent = { ...unusable('unit-missing', '09:00'), systolic, diastolic };
    expect(applied({ unusablePressures: [sent] }).assessment.urgency).toBe(urgency);
  });

  it('with the diastolic not below the systolic, in a known unit, are judged as swapped', () => {
    const sent = { ...unusable('diastolic-not-below-systolic', '09:00'), systolic: 96, diastolic: 150 };
    expect(applied({ unusablePressures: [sent] }).assessment.urgency).toBe('same-day');
  });
});

describe('a contact', () => {
  const contacts = (...times: readonly string[]) =>
    applied({ pressures: times.map((time) => reading(time, 146, 92)) }).view.occasions.length;

  it.each([
    ['a date alone and a clock time just after midnight of it', ['2025-03-10', '00:05'], 2],
    ['a date alone, twice', ['2025-03-10', '2025-03-10'], 1],
    ['two clock times close together', ['09:00', '09:05'], 1],
  ])('%s: %j', (_, times, count) => {
    expect(contacts(...times)).toBe(count);
  });
});

describe('reasons for prevention', () => {
  const early: PlainTimeline = { asOf: story.asOf, gestation: '13+0' };
  const adviceOf = (plain: Partial<PlainTimeline>) => {
    const found = assess({ ...early, ...plain }, 'nice-2023').prevention.find(({ id }) => id === 'aspirin');
    if (found === undefined) throw new Error('no advice');
    return { ...found, found: found.found.map(({ factor }) => factor) };
  };
  const mass = (at: string, value: number) => ({
    at,
    analyte: 'body-mass-index' as const,
    value,
    unit: 'kg/m2',
  });

  it('one earlier birth, without the number of births, is no first birth to come', () => {
    expect(adviceOf({ previousBirths: ['2022-05-01'] }).absent).toContain('first birth to come');
    expect(adviceOf({ previousBirths: ['2022-05-01'], gravidity: 1 }).absent).toContain(
      'first birth to come',
    );
    expect(adviceOf({}).neverAsked).toContain('first birth to come');
  });

  it.each([
    ['of before this pregnancy counts where there is none of it', [mass('2025-10-01T09:00:00Z', 36)], true],
    [
      'of before this pregnancy: the newest counts',
      [mass('2025-08-01T09:00:00Z', 36), mass('2025-10-01T09:00:00Z', 30)],
      false,
    ],
    [
      'of before this pregnancy gives way to one of this pregnancy',
      [mass('2025-10-01T09:00:00Z', 36), mass('2026-02-01T09:00:00Z', 30)],
      false,
    ],
    [
      'of this pregnancy: the earliest counts',
      [mass('2026-01-10T09:00:00Z', 36), mass('2026-02-20T09:00:00Z', 30)],
      true,
    ],
    [
      'that is an error of entry gives way to the next',
      [mass('2026-01-10T09:00:00Z', 147.8), mass('2026-02-20T09:00:00Z', 36)],
      true,
    ],
    [
      'of before this pregnancy that is an error of entry gives way to an older one',
      [mass('2025-08-01T09:00:00Z', 36), mass('2025-10-01T09:00:00Z', 147.8)],
      true,
    ],
  ] as const)('a body mass index %s', (_, labs, isFound) => {
    const { found, absent } = adviceOf({ labs });
    expect(found.some((factor) => factor.includes('body mass'))).toBe(isFound);
    expect(absent.some((factor) => factor.includes('body mass'))).toBe(!isFound);
  });

  it('a weight of before this pregnancy is no body mass index', () => {
    const labs = [{ at: '2025-10-01T09:00:00Z', analyte: 'urate' as const, value: 36, unit: 'kg/m2' }];
    expect(adviceOf({ labs }).neverAsked.some((factor) => factor.includes('body mass'))).toBe(true);
  });
});

describe('which rule of measuring is named for a fact', () => {
  const rules = guidelineOf('frontline')?.qualityRules ?? [];
  const ph = lab('09:00', 'urine-ph', 6, '[pH]');
  const gravity = lab('09:00', 'urine-specific-gravity', 1.02, '1');
  const platelets = lab('09:00', 'platelets', 200, '10*9/L');
  const nitrite = sign('09:00', 'nitrite', false);
  const woman = timeline({ laboratory: [ph, gravity, platelets], urineSigns: [nitrite] });
  const named = (given: typeof rules, tellings: Parameters<typeof factsJudged>[2] = []) =>
    Object.fromEntries(factsJudged(woman, given, tellings));

  it('that of a doubtful strip for a sign, a pH and a specific gravity, and none for a count of platelets', () => {
    expect(named(rules)).toEqual({
      [nitrite.source.reference]: ['strip-may-be-false-positive'],
      [ph.source.reference]: ['strip-may-be-false-positive'],
      [gravity.source.reference]: ['strip-may-be-false-positive'],
    });
  });

  it('none where a guideline has no such rule', () => {
    expect(named([])).toEqual({});
    expect(named(rules.filter(({ check }) => check !== 'strip-doubtful'))).toEqual({});
  });

  it('and each notice that cites it, once', () => {
    const telling = (by: string) => ({
      by,
      evidence: [{ reference: ph.source.reference, what: 'pH', asSent: '6 [pH]' }],
    });
    const both = named(rules, [telling('a'), telling('b'), telling('a')]);
    expect(both[ph.source.reference]).toEqual(['strip-may-be-false-positive', 'a', 'b']);
    expect(named([], [telling('a')])).toEqual({ [ph.source.reference]: ['a'] });
  });
});

describe('an answer lifted to the floor in which both name one drug', () => {
  const atTheLimit: PlainTimeline = {
    asOf: '2025-03-10T09:30:00Z',
    gestation: '34+0',
    pressures: [
      { at: '2025-03-10T09:00:00Z', systolic: 160, diastolic: 110 },
      { at: '2025-03-10T09:16:00Z', systolic: 160, diastolic: 110 },
    ],
  };

  it('keeps its own and adds only what it lacks', () => {
    const [nice, floor] = [assess(atTheLimit, 'nice-2023'), assess(atTheLimit)];
    const [shared, ...others] = floor.treatment;
    if (shared === undefined) throw new Error('the floor treats');
    const own = { ...shared, sentence: 'as NICE says it' };
    const lifted = liftToFloor({ ...nice, treatment: [own] }, floor);
    expect(others.length).toBeGreaterThan(0);
    expect(lifted.treatment).toEqual([own, ...others]);
  });
});

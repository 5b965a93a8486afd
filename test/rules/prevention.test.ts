// Expectations: clinical-rules.md 2.10, case X40, decision 8.
import { describe, expect, it } from 'vitest';
import type { PreventionAdvice } from '../../src/findings/finding.ts';
import { assess } from '../support/assess.ts';
import * as story from '../support/plain-stories.ts';
import type { PlainTimeline } from '../support/timeline-builder.ts';

const advice = (
  plain: PlainTimeline,
  id?: string,
  which: 'aspirin' | 'calcium' = 'aspirin',
): PreventionAdvice => {
  const found = assess(plain, id).prevention.find((one) => one.id === which);
  if (found === undefined) throw new Error('no advice');
  return found;
};
const outcome = (plain: PlainTimeline, id?: string): string => advice(plain, id).outcome;

const pressures = [{ at: '2026-03-10T09:00:00Z', systolic: 112, diastolic: 70 }];
const early: PlainTimeline = { asOf: story.asOf, gestation: '13+0', pressures };
const having = (...conditions: NonNullable<PlainTimeline['conditions']>): PlainTimeline => ({
  ...early,
  conditions,
});
const withMass = (value: number, rest: Partial<PlainTimeline> = {}): PlainTimeline => ({
  ...early,
  labs: [{ at: '2026-03-10T09:00:00Z', analyte: 'body-mass-index', value, unit: 'kg/m2' }],
  ...rest,
});
/** Every factor of NICE answered: a first birth to come, one fetus, young, lean, normal early pressure, conditions resolved. */
const allAbsent: PlainTimeline = {
  ...withMass(22, { parity: 0, fetuses: 1, born: '1998-05-01' }),
  conditions: (
    [
      'diabetes',
      'chronic-kidney-disease',
      'systemic-lupus-erythematosus',
      'family-history-of-pre-eclampsia',
    ] as const
  ).map((condition) => ({ condition, state: 'inactive' as const })),
};

describe('one high factor is enough', () => {
  it.each([
    ['history-of-pre-eclampsia'],
    ['history-of-eclampsia'],
    ['diabetes'],
    ['chronic-kidney-disease'],
    ['systemic-lupus-erythematosus'],
    ['antiphospholipid-syndrome'],
    ['chronic-hypertension'],
  ] as const)('%s', (condition) => {
    for (const id of ['frontline', 'nice-2023', 'acog-2020', 'isshp-2021', 'sogc-2022', 'who-2020'])
      expect(outcome(having({ condition }), id)).toBe('met');
  });

  it('pre-eclampsia on record from before this pregnancy', () => {
    expect(outcome(having({ condition: 'pre-eclampsia', state: 'inactive', at: '2022-04-01' }))).toBe('met');
  });

  it('hypertension found before 20 weeks', () => {
    expect(outcome(story.chronic)).toBe('met');
  });

  it('gestational hypertension in an earlier pregnancy counts for NICE, not for ACOG', () => {
    const plain = having({ condition: 'gestational-hypertension', state: 'inactive', at: '2022-04-01' });
    expect(outcome(plain, 'nice-2023')).toBe('met');
    expect(outcome(plain, 'acog-2020')).not.toBe('met');
  });
});

describe('moderate factors', () => {
  it('one is not enough, two are', () => {
    expect(outcome({ ...early, parity: 0 }, 'nice-2023')).toBe('cannot-tell');
    expect(
      outcome(
        { ...early, parity: 0, conditions: [{ condition: 'family-history-of-pre-eclampsia' }] },
        'nice-2023',
      ),
    ).toBe('met');
  });

  it('WHO counts none of them', () => {
    expect(outcome({ ...early, parity: 0, born: '1980-01-01' }, 'who-2020')).not.toBe('met');
  });

  it.each([
    ['nice-2023', '1986-09-15', 'met'],
    ['nice-2023', '1986-09-16', 'cannot-tell'],
    ['acog-2020', '1991-09-15', 'met'],
    ['acog-2020', '1991-09-16', 'cannot-tell'],
  ])('%s: born %s, due 2026-09-15, with a first birth', (id, born, expected) => {
    expect(outcome({ ...early, parity: 0, born }, id)).toBe(expected);
  });

  it.each([
    ['nice-2023', 34.9, 'cannot-tell'],
    ['nice-2023', 35, 'met'],
    ['acog-2020', 30, 'cannot-tell'],
    ['acog-2020', 30.1, 'met'],
  ])('%s: body mass index %d, with a first birth (case X40)', (id, value, expected) => {
    expect(outcome(withMass(value, { parity: 0 }), id)).toBe(expected);
  });

  it.each([11.9, 80.1, 147.8])('a body mass index of %d is an error of entry and says nothing', (value) => {
    const given = advice(withMass(value, { parity: 0 }));
    expect(given.neverAsked).toContain('body mass index');
    expect(given.found.map(({ factor }) => factor)).toEqual(['first birth to come']);
  });

  it('publications that part on body mass index are named', () => {
    expect(advice(withMass(34.9, { parity: 0 }), 'nice-2023').sentence).toContain(
      'USPSTF and ACOG have a lower limit',
    );
    expect(advice(withMass(36, { parity: 0 }), 'nice-2023').sentence).not.toContain('lower limit');
  });

  it.each([
    ['2016-09-15', 'cannot-tell'],
    ['2016-09-14', 'met'],
  ])('last birth %s, due 2026-09-15: more than ten years', (birth, expected) => {
    const plain: PlainTimeline = {
      ...early,
      previousBirths: [birth],
      conditions: [{ condition: 'family-history-of-pre-eclampsia' }],
    };
    expect(outcome(plain, 'nice-2023')).toBe(expected);
  });
});

describe('more than one fetus', () => {
  const twins: PlainTimeline = { ...early, fetuses: 2 };
  it('is high for ACOG, moderate for NICE, and each says so of the other', () => {
    expect(advice(twins, 'acog-2020')).toMatchObject({ outcome: 'met', found: [{ level: 'high' }] });
    expect(advice(twins, 'nice-2023')).toMatchObject({
      outcome: 'cannot-tell',
      found: [{ level: 'moderate' }],
    });
    expect(advice(twins, 'acog-2020').sentence).toContain('NICE');
    expect(advice(twins, 'nice-2023').sentence).toContain('ACOG');
  });

  it('of an earlier pregnancy does not count', () => {
    expect(outcome(having({ condition: 'multiple-pregnancy', at: '2022-04-01' }))).not.toBe('met');
  });
});

describe('what was never asked', () => {
  it('is listed, and keeps the answer open', () => {
    const { outcome: open, neverAsked, absent } = advice({ ...early, parity: 2 });
    expect(open).toBe('cannot-tell');
    expect(absent).toContain('first birth to come');
    expect(neverAsked).toContain('diabetes known before pregnancy');
  });

  it('is nothing when every factor was answered: not indicated', () => {
    const { outcome: closed, found, neverAsked } = advice(allAbsent, 'nice-2023');
    expect(closed).toBe('not-met');
    expect(found.map(({ factor }) => factor)).toEqual(['first birth to come']);
    expect(neverAsked).toEqual([]);
  });

  it('is silent for a woman with normal pressure: routine', () => {
    const { urgency, actions } = assess(early);
    expect(urgency).toBe('routine');
    expect(actions.filter(({ kind }) => kind === 'prevention')).toEqual([]);
  });
});

describe('aspirin is due', () => {
  const diabetes = { condition: 'diabetes' } as const;
  const at = (gestation: string): PlainTimeline => ({ ...having(diabetes), gestation });
  const isDue = (plain: PlainTimeline, id?: string): boolean =>
    assess(plain, id).urgencyBecause.some(({ rule }) => rule === 'aspirin-due');

  it.each([
    ['frontline', '11+6', false],
    ['frontline', '12+0', true],
    ['frontline', '27+6', true],
    ['frontline', '28+0', false],
    ['acog-2020', '27+6', true],
    ['acog-2020', '28+0', false],
    ['nice-2023', '36+0', true],
    ['who-2020', '19+6', true],
    ['who-2020', '20+0', false],
    ['isshp-2021', '15+6', true],
    ['isshp-2021', '16+0', false],
  ])('%s at %s: %s', (id, gestation, expected) => {
    expect(isDue(at(gestation), id)).toBe(expected);
  });

  it('within seven days, with an action, and no more than that (decision 8)', () => {
    const { urgency, actions } = assess(at('13+0'));
    expect(urgency).toBe('within-7-days');
    expect(actions.map(({ id }) => id)).toContain('aspirin-due');
    expect(assess(at('29+0')).urgency).toBe('routine');
  });

  it('not when it is taken or ordered, and that is said', () => {
    for (const status of ['active', 'ordered'] as const) {
      const plain: PlainTimeline = { ...at('13+0'), medicines: [{ medicine: 'aspirin', status }] };
      expect(isDue(plain)).toBe(false);
      expect(advice(plain).sentence).toContain('On record as taken or ordered: aspirin.');
    }
  });

  it('when it was stopped', () => {
    expect(isDue({ ...at('13+0'), medicines: [{ medicine: 'aspirin', status: 'stopped' }] })).toBe(true);
  });

  it.each(['aspirin-allergy', 'active-bleeding', 'peptic-ulcer'] as const)('not with %s', (condition) => {
    const plain = having(diabetes, { condition });
    expect(isDue(plain)).toBe(false);
    expect(advice(plain)).toMatchObject({ outcome: 'not-met' });
    expect(advice(plain).dose).toBeUndefined();
  });

  it('not while the pregnancy is not dated', () => {
    const undated: PlainTimeline = { asOf: story.asOf, pressures, conditions: [diabetes] };
    expect(isDue(undated)).toBe(false);
    expect(advice(undated).sentence).toContain('not dated');
  });

  it('not after birth, and not once pre-eclampsia is there: not applicable', () => {
    expect(outcome({ ...story.afterBirth, conditions: [diabetes] })).toBe('not-applicable');
    expect(outcome({ ...story.preEclampsia, conditions: [diabetes] }, 'nice-2023')).toBe('not-applicable');
  });
});

describe('the dose, indicated by a publication', () => {
  it.each([
    ['nice-2023', '75 to 150 mg a day, indicated by NICE'],
    ['acog-2020', '81 mg a day, indicated by ACOG'],
    ['isshp-2021', '100 to 162 mg a day, indicated by ISSHP'],
    ['sogc-2022', '81 to 162 mg a day, indicated by SOGC'],
    ['who-2020', '75 mg a day, indicated by WHO'],
  ])('%s: %s', (id, dose) => {
    expect(advice(having({ condition: 'diabetes' }), id).dose).toBe(dose);
  });

  it('is not given past the window, nor before it is indicated', () => {
    expect(advice({ ...having({ condition: 'diabetes' }), gestation: '30+0' }).dose).toBeUndefined();
    expect(advice(early).dose).toBeUndefined();
  });
});

describe('calcium', () => {
  it('depends on the diet, which no record holds', () => {
    expect(advice(early, 'who-2020', 'calcium')).toMatchObject({
      outcome: 'cannot-tell',
      neverAsked: ['calcium in the diet'],
    });
    expect(advice(early, 'who-2020', 'calcium').sentence).toContain('1.5 to 2 g of elemental calcium a day');
  });

  it.each(['nice-2023', 'acog-2020'])('is not advised by %s', (id) => {
    expect(advice(early, id, 'calcium').outcome).toBe('not-met');
  });

  it('does not apply after birth', () => {
    expect(advice(story.afterBirth, 'who-2020', 'calcium').outcome).toBe('not-applicable');
  });
});

describe('for her who takes aspirin already (2.10)', () => {
  const takingAt = (gestation: string): PlainTimeline => ({
    ...having({ condition: 'chronic-hypertension', state: 'active' }),
    gestation,
    medicines: [{ medicine: 'aspirin', status: 'active' }],
  });

  it.each([
    ['frontline', '20+0', 'Go on as printed.'],
    ['frontline', '28+0', 'Go on as printed: the window is for beginning.'],
    ['who-2020', '20+0', 'Go on as printed: the window is for beginning.'],
    ['isshp-2021', '16+0', 'Go on as printed: the window is for beginning.'],
    ['isshp-2021', '35+6', 'Go on as printed: the window is for beginning.'],
    ['isshp-2021', '36+0', 'This publication stops it at this week'],
    ['sogc-2022', '36+0', 'This publication stops it at this week'],
    ['nice-2023', '38+0', 'Go on as printed.'],
  ])('%s at %s', (id, gestation, expected) => {
    expect(advice(takingAt(gestation), id).sentence).toContain(expected);
    expect(advice(takingAt(gestation), id).sentence).not.toContain('ask a specialist');
  });
});

it('a first pregnancy is a first birth to come; a second says nothing without the number of births', () => {
  expect(advice({ ...early, gravidity: 1 }).found.map(({ factor }) => factor)).toContain(
    'first birth to come',
  );
  expect(advice({ ...early, gravidity: 2 }).neverAsked).toContain('first birth to come');
});

// Measurement rules Q1 to Q18 of the clinical rules, section 3: what triggers each, and what just does not.
import { describe, expect, it } from 'vitest';
import { guidelineIds, guidelineOf } from '../../src/guidelines/registry.ts';
import { siteQualityRules } from '../../src/guidelines/quality-rules.ts';
import { cuffFit } from '../../src/rules/quality/cuff-size.ts';
import type { Technique, Timeline } from '../../src/timeline/timeline.ts';
import { applied, condition, reading, strip, unusable } from './facts.ts';

const noticesOf = (facts: Partial<Timeline>) => applied(facts).assessment.quality;
const rulesOf = (facts: Partial<Timeline>): readonly string[] => noticesOf(facts).map(({ rule }) => rule);
const withTechnique = (technique: Technique): Partial<Timeline> => ({
  pressures: [reading('09:00', 124, 78, { technique })],
});
const noticeOf = (rule: string, facts: Partial<Timeline>) =>
  noticesOf(facts).find((notice) => notice.rule === rule);

it('an ordinary reading raises no doubt', () => {
  expect(noticesOf({ pressures: [reading('09:00', 124, 78)] })).toEqual([]);
});

it('no doubt changes class or urgency', () => {
  const plain = applied({ pressures: [reading('09:00', 124, 78)] }).assessment;
  const doubtful = applied(withTechnique({ position: 'supine', restMinutes: 1 })).assessment;
  expect(doubtful.quality.length).toBe(2);
  expect([doubtful.classification, doubtful.urgency]).toEqual([plain.classification, plain.urgency]);
});

describe('Q1 and Q2: values that cannot be used', () => {
  it('Q1 a diastolic not below the systolic blocks', () => {
    const notice = noticeOf('diastolic-not-below-systolic', {
      unusablePressures: [unusable('diastolic-not-below-systolic', '09:00')],
    });
    expect(notice?.grade).toBe('block');
    expect(notice?.evidence).toHaveLength(1);
  });

  it.each(['above-plausible-range', 'below-plausible-range'] as const)('Q2 a value %s blocks', (why) => {
    const facts = { unusablePressures: [unusable(why)] };
    expect(noticeOf('pressure-outside-plausible-range', facts)?.grade).toBe('block');
  });

  it('an old unusable value is not told again', () => {
    expect(
      rulesOf({ unusablePressures: [unusable('above-plausible-range', '2025-02-01T09:00:00Z')] }),
    ).toEqual([]);
  });
});

describe('Q3: the gap between systolic and diastolic', () => {
  it.each([
    [104, 90, true],
    [105, 90, false],
    [180, 80, false],
    [181, 80, true],
  ])('%i/%i raises a doubt: %s', (systolic, diastolic, isDoubtful) => {
    const rules = rulesOf({ pressures: [reading('09:00', systolic, diastolic)] });
    expect(rules.includes('unusual-pulse-pressure')).toBe(isDoubtful);
  });

  it('half a reading has no gap', () => {
    expect(rulesOf({ pressures: [reading('09:00', 181, undefined)] })).toEqual([]);
  });
});

describe('Q4: cuff against arm (AHA 2005: 22 to 26, 27 to 34, 35 to 44, 45 to 52 cm)', () => {
  const facts = (armCircumferenceCm: number, cuff: string) => withTechnique({ armCircumferenceCm, cuff });
  it.each([
    [21, 'Paediatric'],
    [22, 'Small adult'],
    [26, 'Small adult'],
    [27, 'Adult cuff'],
    [34, 'Standard'],
    [35, 'Large adult'],
    [44, 'Large'],
    [45, 'Thigh'],
    [52, 'Adult thigh cuff'],
  ])('an arm of %i cm and the cuff "%s" fit', (arm, cuff) => {
    expect(rulesOf(facts(arm, cuff))).toEqual([]);
  });

  it.each([
    [30, 'Pediatric size', 'too small, which reads high'],
    [21, 'Small adult', 'too large, which reads low'],
    [27, 'Small adult', 'too small, which reads high'],
    [26, 'Adult', 'too large, which reads low'],
    [35, 'Adult', 'too small, which reads high'],
    [34, 'Large adult', 'too large, which reads low'],
    [45, 'Large adult', 'too small, which reads high'],
    [44, 'Thigh', 'too large, which reads low'],
    [53, 'Thigh', 'too small, which reads high'],
  ])('an arm of %i cm and the cuff "%s" do not: %s', (arm, cuff, fault) => {
    expect(noticeOf('cuff-does-not-fit', facts(arm, cuff))?.sentence).toContain(fault);
  });

  it('names the right size, and an older table that accepts the cuff (up to 33 cm standard)', () => {
    const sentence = noticeOf('cuff-does-not-fit', facts(26, 'Adult'))?.sentence;
    expect(sentence).toContain('Use the size "small adult".');
    expect(sentence).toContain('older table');
    expect(noticeOf('cuff-does-not-fit', facts(38, 'Adult'))?.sentence).not.toContain('older table');
  });

  it('is silent when the arm, the cuff or its name is not known', () => {
    expect(rulesOf(withTechnique({ cuff: 'Adult' }))).toEqual([]);
    expect(rulesOf(withTechnique({ armCircumferenceCm: 40 }))).toEqual([]);
    expect(cuffFit(40, 'the blue one', [])).toBeUndefined();
  });
});

describe('Q5: rest', () => {
  it.each([
    [4.9, true],
    [5, false],
    [10, false],
  ])('%d minutes of rest raise a doubt: %s', (restMinutes, isDoubtful) => {
    expect(rulesOf(withTechnique({ restMinutes })).includes('rest-too-short')).toBe(isDoubtful);
  });

  it('so does caffeine, however long the rest', () => {
    const rules = rulesOf(withTechnique({ restMinutes: 10, disturbances: ['caffeine'] }));
    expect(rules).toEqual(['rest-too-short']);
  });
});

describe('Q6: position', () => {
  it.each(['supine', 'left-lateral', 'recumbent', 'standing'] as const)(
    '%s is not comparable',
    (position) => {
      expect(rulesOf(withTechnique({ position }))).toEqual(['position-not-comparable']);
    },
  );
  it('sitting is', () => {
    expect(rulesOf(withTechnique({ position: 'sitting' }))).toEqual([]);
  });
});

describe('Q7: an automated device near a limit when pre-eclampsia is in question', () => {
  const facts = (systolic: number, diastolic: number, more: Partial<Timeline>): Partial<Timeline> => ({
    pressures: [reading('09:00', systolic, diastolic, { technique: { method: 'oscillometry' } })],
    ...more,
  });
  const protein = { urineProteins: [strip('09:00', 1)] };
  it.each([
    [134, 84, false],
    [135, 84, true],
    [145, 84, true],
    [134, 85, true],
    [146, 84, false],
    [155, 104, true],
  ])('%i/%i with protein raises a doubt: %s', (systolic, diastolic, isDoubtful) => {
    expect(rulesOf(facts(systolic, diastolic, protein)).includes('automated-near-limit')).toBe(isDoubtful);
  });
  it('a recorded pre-eclampsia is enough', () => {
    const more = { conditions: [condition('pre-eclampsia')] };
    expect(rulesOf(facts(138, 80, more))).toEqual(['automated-near-limit']);
  });
  it('without either there is no doubt, nor when measured by hand', () => {
    expect(rulesOf(facts(138, 80, {}))).toEqual([]);
    const byHand = reading('09:00', 138, 80, { technique: { method: 'auscultation' } });
    expect(rulesOf({ pressures: [byHand], ...protein })).toEqual([]);
  });
});

describe('Q8: systolic by palpation only', () => {
  it('is judged in part, and asks for auscultation', () => {
    const felt = reading('09:00', 124, undefined, { technique: { method: 'palpation' } });
    const notice = noticeOf('systolic-palpated-only', { pressures: [felt] });
    expect(notice?.grade).toBe('partial');
    expect(notice?.sentence).toContain('stethoscope');
  });
  it('says nothing of a heard pair', () => {
    const heard = reading('09:00', 124, 78, { technique: { method: 'auscultation' } });
    expect(rulesOf({ pressures: [heard] })).toEqual([]);
  });
});

describe('Q11: the same value to the digit', () => {
  const on = (day: string, systolic = 124, diastolic = 78) =>
    reading(`${day}T09:00:00Z`, systolic, diastolic);
  it('at three visits is told, at two it is not', () => {
    const three = [on('2025-01-10'), on('2025-02-10'), on('2025-03-10')];
    const notice = noticeOf('same-value-at-several-visits', { pressures: three });
    expect(notice?.grade).toBe('info');
    expect(notice?.evidence).toHaveLength(3);
    expect(rulesOf({ pressures: three.slice(1) })).toEqual([]);
  });
  it('one mmHg apart is not the same', () => {
    expect(rulesOf({ pressures: [on('2025-01-10'), on('2025-02-10'), on('2025-03-10', 124, 79)] })).toEqual(
      [],
    );
  });
});

describe('Q12: two readings of one visit', () => {
  it.each([
    [134, 78, false],
    [135, 78, true],
    [124, 88, false],
    [124, 89, true],
  ])('124/78 then %i/%i asks for a third: %s', (systolic, diastolic, asks) => {
    const pressures = [reading('09:00', 124, 78), reading('09:02', systolic, diastolic)];
    expect(rulesOf({ pressures }).includes('readings-of-one-visit-differ')).toBe(asks);
  });
  it('a third reading answers it', () => {
    const pressures = [reading('09:00', 124, 78), reading('09:02', 136, 78), reading('09:04', 130, 78)];
    expect(rulesOf({ pressures })).toEqual([]);
  });
});

describe('Q13: the time', () => {
  it('a reading with only its date cannot be used for intervals', () => {
    const notice = noticeOf('time-not-exact', { pressures: [reading('2025-03-10', 124, 78)] });
    expect(notice?.grade).toBe('block');
  });
  it('a reading with its minute can', () => {
    expect(rulesOf({ pressures: [reading('09:00', 124, 78)] })).toEqual([]);
  });
});

describe('Q14: arms', () => {
  const pair = (systolic: number): Partial<Timeline> => ({
    pressures: [reading('09:00', 124, 78, { arm: 'right' }), reading('09:00', systolic, 78, { arm: 'left' })],
  });
  it.each([
    [134, []],
    [135, ['arms-differ']],
    [144, ['arms-differ']],
    [145, ['arms-differ-much']],
  ])('right 124, left %i: %j', (systolic, rules) => {
    expect(rulesOf(pair(systolic))).toEqual(rules);
  });
  it('visits on different arms are told, on the same arm or an unknown one they are not', () => {
    const visits = (first?: 'left' | 'right', second?: 'left' | 'right') => ({
      pressures: [
        reading('08:00', 124, 78, first === undefined ? {} : { arm: first }),
        reading('11:00', 126, 78, second === undefined ? {} : { arm: second }),
      ],
    });
    expect(rulesOf(visits('left', 'right'))).toEqual(['arm-changed']);
    expect(rulesOf(visits('left', 'left'))).toEqual([]);
    expect(rulesOf(visits('left'))).toEqual([]);
  });
});

it('X33 a preliminary value is used and flagged', () => {
  const pressures = [reading('09:00', 124, 78, { preliminary: true })];
  expect(rulesOf({ pressures })).toEqual(['preliminary-value']);
});

describe('the rules as data', () => {
  it.each(guidelineIds)('%s has every number from Q1 to Q18 but those about sites', (id) => {
    const numbers = new Set(guidelineOf(id)?.qualityRules?.map(({ number }) => number));
    const wanted = Array.from({ length: 18 }, (_, index) => `Q${String(index + 1)}`);
    expect(wanted.filter((number) => !numbers.has(number))).toEqual(['Q9', 'Q10']);
    expect([siteQualityRules.terminalZero.number, siteQualityRules.avoidance.number]).toEqual(['Q9', 'Q10']);
  });
  it('names each rule once', () => {
    const ids = guidelineOf('frontline')?.qualityRules?.map(({ id }) => id) ?? [];
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('the measuring checklist', () => {
  const checklistOf = (facts: Partial<Timeline>) =>
    applied(facts)
      .assessment.actions.filter(({ kind }) => kind === 'measurement-quality')
      .map(({ id }) => id);
  it('is said when a repeat is asked for', () => {
    expect(checklistOf({ pressures: [reading('11:00', 144, 92)] })).toEqual([
      'rest-before-measuring',
      'place-the-cuff',
      'inflate-beyond-the-pulse',
      'pressure-at-every-visit',
    ]);
  });
  it('adds the urine at once when a reading is severe, and is silent when none is asked for', () => {
    expect(checklistOf({ pressures: [reading('11:00', 150, 112)] })).toContain('urine-at-once-when-severe');
    expect(checklistOf({ pressures: [reading('11:00', 120, 70)] })).toEqual([]);
  });
});

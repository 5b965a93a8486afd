// Measurement rules Q1 to Q18 of the clinical rules, section 3: what triggers each, and what just does not.
import { describe, expect, it } from 'vitest';
import { guidelineIds, guidelineOf } from '../../src/guidelines/registry.ts';
import { siteQualityRules } from '../../src/guidelines/quality-rules.ts';
import { cuffFit } from '../../src/rules/quality/cuff-size.ts';
import {
  chiSquare,
  copyForwardReport,
  repeatedValue,
  terminalZeroReport,
  terminalZeros,
  thresholdAvoidance,
} from '../../src/rules/quality/digit-preference.ts';
import type { Technique, Timeline } from '../../src/timeline/timeline.ts';
import { applied, condition, lab, ratio, reading, sign, strip, unusable } from './facts.ts';

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

const manual = (value: number) => ({ systolicMmHg: value, technique: {} });
const automated = (value: number) => ({
  systolicMmHg: value,
  technique: { method: 'oscillometry' as const },
});
const mixed = (zeros: number, others: number): number[] => [
  ...Array.from({ length: zeros }, () => 120),
  ...Array.from({ length: others }, () => 124),
];

describe('Q9: share of terminal zeros (expected 10 % automated, 20 % by hand; alert from 25 % and 40 %)', () => {
  const { terminalZero, minimumReadings } = siteQualityRules;
  it.each([
    [11, 19, 'not-met'],
    [12, 18, 'met'],
    [12, 17, 'cannot-tell'],
  ] as const)('by hand %i zeros and %i others: %s', (zeros, others, outcome) => {
    expect(terminalZeros(mixed(zeros, others), terminalZero.manual, minimumReadings).outcome).toBe(outcome);
  });
  it.each([
    [9, 31, 'not-met'],
    [10, 30, 'met'],
  ] as const)('automated %i zeros and %i others: %s', (zeros, others, outcome) => {
    expect(terminalZeros(mixed(zeros, others), terminalZero.automated, minimumReadings).outcome).toBe(
      outcome,
    );
  });
  it('gives chi-square: 12 zeros of 30 against 6 expected is 36/6 + 36/24 = 7.5', () => {
    const found = terminalZeros(mixed(12, 18), terminalZero.manual, minimumReadings);
    expect(found.chiSquare).toBeCloseTo(7.5, 12);
    expect(found).toMatchObject({ readings: 30, zeros: 12, share: 0.4 });
  });
  it('leaves fractions out, and tells methods and halves apart', () => {
    expect(terminalZeros([120.5, 120], terminalZero.manual, minimumReadings).readings).toBe(1);
    const report = terminalZeroReport(
      [...mixed(12, 18).map(manual), ...mixed(0, 30).map(automated)],
      siteQualityRules,
    );
    expect(report.map(({ method, half, digits }) => [method, half, digits.outcome])).toEqual([
      ['automated', 'systolic', 'not-met'],
      ['automated', 'diastolic', 'cannot-tell'],
      ['manual', 'systolic', 'met'],
      ['manual', 'diastolic', 'cannot-tell'],
    ]);
  });
  it('is nought without readings', () => {
    expect(terminalZeros([], terminalZero.manual, minimumReadings)).toMatchObject({ share: 0, chiSquare: 0 });
    expect(chiSquare([[0, 0]])).toBe(0);
  });
});

describe('Q10: readings piled up just below the limit', () => {
  const limits = guidelineOf('frontline')?.chartLimits.hypertension;
  const outcomeOf = (below: number, at: number, elsewhere: number) => {
    if (limits === undefined) throw new Error('no limits');
    const values = [
      ...Array.from({ length: below }, (_, index) => 138 + (index % 2)),
      ...Array.from({ length: at }, (_, index) => 140 + (index % 2)),
      ...Array.from({ length: elsewhere }, () => 120),
    ];
    return thresholdAvoidance(
      values.map((systolicMmHg) => ({ systolicMmHg })),
      limits,
      siteQualityRules,
    )[0];
  };
  it('nine at 138 or 139 against three at 140 or 141: no alert, chi-square 3', () => {
    expect(outcomeOf(9, 3, 30)).toMatchObject({ outcome: 'not-met', chiSquare: 3 });
  });
  it('twelve against four: alert, chi-square 4', () => {
    expect(outcomeOf(12, 4, 30)).toMatchObject({
      outcome: 'met',
      chiSquare: 4,
      justBelow: 12,
      justAtOrAbove: 4,
    });
  });
  it('twelve against five: no alert, the ratio is too small', () => {
    expect(outcomeOf(12, 5, 30)?.outcome).toBe('not-met');
  });
  it('cannot tell from fewer than thirty', () => {
    expect(outcomeOf(12, 4, 13)?.outcome).toBe('cannot-tell');
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
  it('three times on one day is one visit', () => {
    const visits = siteQualityRules.copyForward.visits;
    const day = { systolicMmHg: 124, diastolicMmHg: 78, day: 1 };
    expect(repeatedValue([day, day, day], visits)).toBeUndefined();
    expect(repeatedValue([day, { ...day, day: 2 }, { ...day, day: 3 }], visits)?.visits).toBe(3);
  });
  it('is counted over the women of a site', () => {
    const visit = (day: number, systolicMmHg: number) => ({ systolicMmHg, diastolicMmHg: 78, day });
    const women = [
      [visit(1, 124), visit(2, 124), visit(3, 124)],
      [visit(1, 124), visit(2, 126), visit(3, 124)],
      [visit(1, 124), visit(2, 124)],
    ];
    expect(copyForwardReport(women, siteQualityRules)).toEqual({ women: 2, withRepeatedValue: 1 });
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

describe('Q15: a strip that may be falsely positive', () => {
  const positive = { urineProteins: [strip('09:00', 2)] };
  it.each(['nitrite', 'leucocytes', 'blood'] as const)('beside %s', (name) => {
    const notice = noticeOf('strip-may-be-false-positive', {
      ...positive,
      urineSigns: [sign('09:00', name)],
    });
    expect(notice?.sentence).toContain(name);
    expect(notice?.evidence).toHaveLength(2);
  });
  it.each([
    ['urine-ph', 8, '[pH]', false],
    ['urine-ph', 8.5, '[pH]', true],
    ['urine-specific-gravity', 1.029, '1', false],
    ['urine-specific-gravity', 1.03, '1', true],
  ] as const)('beside %s %d%s: %s', (analyte, value, unit, isDoubtful) => {
    const facts = { ...positive, laboratory: [lab('09:00', analyte, value, unit)] };
    expect(rulesOf(facts).includes('strip-may-be-false-positive')).toBe(isDoubtful);
  });
  it.each([{ isContaminated: true }, { hasAntiseptic: true }] as const)('of a sample %j', (sample) => {
    expect(rulesOf({ urineProteins: [strip('09:00', 1, sample)] })).toEqual(['strip-may-be-false-positive']);
  });
  it('not beside a sign that is absent, or of another day, or without protein', () => {
    expect(rulesOf({ ...positive, urineSigns: [sign('09:00', 'nitrite', false)] })).toEqual([]);
    expect(rulesOf({ ...positive, urineSigns: [sign('2025-03-08T09:00:00Z', 'nitrite')] })).toEqual([]);
    expect(rulesOf({ urineProteins: [strip('09:00', 0)], urineSigns: [sign('09:00', 'nitrite')] })).toEqual(
      [],
    );
  });
  it('never cancels hypertension with protein (X11)', () => {
    const raised = { pressures: [reading('07:00', 150, 96), reading('11:30', 150, 96)], ...positive };
    const plain = applied(raised).assessment;
    const infected = applied({ ...raised, urineSigns: [sign('09:00', 'nitrite')] }).assessment;
    expect(infected.classification).toEqual(plain.classification);
    expect(infected.urgency).toBe(plain.urgency);
  });
});

describe('Q16: a negative strip in dilute urine', () => {
  it.each([
    [1.009, 0, true],
    [1.01, 0, false],
    [1.009, 1, false],
  ] as const)('specific gravity %d, strip %d: %s', (gravity, grade, isDoubtful) => {
    const rules = rulesOf({
      urineProteins: [strip('09:00', grade)],
      laboratory: [lab('09:00', 'urine-specific-gravity', gravity, '1')],
    });
    expect(rules.includes('strip-may-be-false-negative')).toBe(isDoubtful);
  });
});

describe('Q17 and Q18: who read the strip, and when the sample was passed', () => {
  it.each([
    [{ isFromHospital: true, readBy: 'eye' }, ['strip-read-by-eye']],
    [{ isFromHospital: true, readBy: 'analyser' }, []],
    [{ readBy: 'eye' }, []],
  ] as const)('Q17 a strip %j: %j', (sample, rules) => {
    expect(rulesOf({ urineProteins: [strip('09:00', 0, sample)] })).toEqual(rules);
  });
  it('Q18 a ratio of the first morning sample is told; another sample, or a strip, is not', () => {
    expect(rulesOf({ urineProteins: [ratio('07:00', 12, { isFirstMorning: true })] })).toEqual([
      'first-morning-sample',
    ]);
    expect(rulesOf({ urineProteins: [ratio('07:00', 12)] })).toEqual([]);
    expect(rulesOf({ urineProteins: [strip('07:00', 0, { isFirstMorning: true })] })).toEqual([]);
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

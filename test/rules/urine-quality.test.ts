// Doubts about urine results: Q15 to Q18 of the clinical rules, section 3.
import { describe, expect, it } from 'vitest';
import type { Timeline } from '../../src/timeline/timeline.ts';
import { applied, lab, ratio, reading, sign, strip } from './facts.ts';

const noticesOf = (facts: Partial<Timeline>) => applied(facts).assessment.quality;
const rulesOf = (facts: Partial<Timeline>): readonly string[] => noticesOf(facts).map(({ rule }) => rule);
const noticeOf = (rule: string, facts: Partial<Timeline>) =>
  noticesOf(facts).find((notice) => notice.rule === rule);

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

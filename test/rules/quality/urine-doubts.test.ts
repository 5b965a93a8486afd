// Doubts about urine results, with limits of their own: Q15 to Q18 of the clinical rules, section 3.
import { describe, expect, it } from 'vitest';
import type { Timeline } from '../../../src/timeline/timeline.ts';
import { limit } from '../checks/ask.ts';
import { lab, ratio, sign, strip } from '../facts.ts';
import { said } from './one-rule.ts';

const tooOld = '2025-03-09T11:59:00Z';

describe('a strip', () => {
  const within = limit('<=', 2, 'h');
  const doubtful = {
    check: 'strip-doubtful',
    within,
    alkaline: limit('>=', 8.5, '[pH]'),
    concentrated: limit('>=', 1.03, '1'),
  } as const;
  const dilute = { check: 'strip-dilute', within, dilute: limit('<', 1.01, '1') } as const;
  const positive = [strip('09:00', 2)];
  const gravity = (at: string, value: number) => lab(at, 'urine-specific-gravity', value, '1');

  it('beside what makes protein appear: each cause is named once, each fact cited', () => {
    const beside = (more: Partial<Timeline>) => said(doubtful, { urineProteins: positive, ...more });
    expect(
      beside({ urineSigns: [sign('09:00', 'nitrite'), sign('09:00', 'blood'), sign('10:00', 'nitrite')] }),
    ).toBe('Doubtful. Found: nitrite, blood. | 2 | positive | positive | positive');
    expect(beside({ laboratory: [lab('09:00', 'urine-ph', 8.5, '[pH]'), gravity('09:00', 1.03)] })).toBe(
      'Doubtful. Found: alkaline urine, concentrated urine. | 2 | 8.5 [pH] | 1.03 1',
    );
    expect(beside({})).toBe('nothing');
    expect(beside({ laboratory: [lab('09:00', 'urine-ph', 9, 'other')] })).toBe('nothing');
    expect(beside({ laboratory: [lab('09:00', 'sflt1-plgf-ratio', 38, '1')] })).toBe('nothing');
    expect(beside({ urineSigns: [sign('09:00', 'nitrite', false)] })).toBe('nothing');
  });

  it.each([
    ['11:00', true],
    ['11:01', false],
    ['07:00', true],
    ['06:59', false],
    ['2025-03-10', true],
  ])('a sign at %s belongs to it: %j', (at, belongs) => {
    const found = said(doubtful, { urineProteins: positive, urineSigns: [sign(at, 'nitrite')] });
    expect(found !== 'nothing').toBe(belongs);
  });

  it('only the doubtful one of several is cited', () => {
    const two = { urineProteins: [strip('03:00', 3), ...positive], urineSigns: [sign('09:00', 'nitrite')] };
    expect(said(doubtful, two)).toBe('Doubtful. Found: nitrite. | 2 | positive');
    const sample = said(doubtful, {
      urineProteins: [strip('09:00', 1, { isContaminated: true, hasAntiseptic: true })],
    });
    expect(sample).toBe('Doubtful. Found: contaminated sample, antiseptic. | 1');
    expect(said(doubtful, { urineProteins: [ratio('09:00', 50)], urineSigns: two.urineSigns })).toBe(
      'nothing',
    );
    expect(said(doubtful, { urineProteins: [strip(tooOld, 1, { isContaminated: true })] })).toBe('nothing');
  });

  it('without protein, in dilute urine', () => {
    const of = (grade: 0 | 1, value: number, at = '09:00') =>
      said(dilute, { urineProteins: [strip('09:00', grade)], laboratory: [gravity(at, value)] });
    expect([of(0, 1.009), of(0, 1.01), of(1, 1.009), of(0, 1.009, '06:00')]).toEqual([
      'Doubtful. | 0 | 1.009 1',
      'nothing',
      'nothing',
      'nothing',
    ]);
  });

  it('read by eye in a hospital', () => {
    const of = (sample: Parameters<typeof strip>[2]) =>
      said({ check: 'strip-read-by-eye' }, { urineProteins: [strip('09:00', 1, sample)] });
    expect(of({ isFromHospital: true, readBy: 'eye' })).toBe('Doubtful. | 1');
    expect([of({ readBy: 'eye' }), of({ isFromHospital: true }), of(undefined)]).toEqual([
      'nothing',
      'nothing',
      'nothing',
    ]);
  });

  it('a ratio of the first urine of the morning', () => {
    const of = (...urineProteins: Timeline['urineProteins']) =>
      said({ check: 'first-morning-ratio' }, { urineProteins });
    expect(of(ratio('07:00', 12, { isFirstMorning: true }))).toBe('Doubtful. | 12 mg/mmol');
    expect(
      of({
        ...ratio('07:00', 12, { isFirstMorning: true }),
        kind: 'albumin-creatinine-ratio',
        measured: { value: 12 },
        byUnit: { sentUnit: 'mg/mmol', values: {} },
      }),
    ).toBe('Doubtful. | 12 mg/mmol');
    expect([
      of(ratio(tooOld, 12, { isFirstMorning: true })),
      of(ratio('07:00', 12)),
      of(strip('07:00', 1, { isFirstMorning: true })),
    ]).toEqual(['nothing', 'nothing', 'nothing']);
  });
});

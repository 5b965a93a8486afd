// One input of a risk equation: its value with its evidence, or what is missing. Clinical rules 2.14; notes of the function.
import { idWords } from '../../src/id-words.ts';
import { describe, expect, it } from 'vitest';
import type { RiskInput } from '../../src/guidelines/risk-model.ts';
import { findInput } from '../../src/rules/risk-inputs.ts';
import type { Analyte } from '../../src/guidelines/guideline.ts';
import type { Timeline, Woman } from '../../src/timeline/timeline.ts';
import { limit, viewOf } from './checks/ask.ts';
import { lab, moment, ratio, reading, strip, symptom } from './facts.ts';

/** "1: as sent, as sent", or "missing: what". */
function said(input: RiskInput, facts: Partial<Timeline>, days?: number): string {
  const found = findInput(viewOf(facts, days), input, limit('<=', 2, 'd'));
  if ('missing' in found) return `missing: ${found.missing}`;
  return `${String(found.value)}: ${found.evidence.map(({ asSent }) => asSent).join(', ')}`;
}
const [justIn, tooOld] = ['2025-03-08T12:00:00Z', '2025-03-08T11:59:00Z'];
const source = { reference: 'Observation/one', preliminary: false };
const woman = (more: Partial<Woman>): Partial<Timeline> => ({ woman: { previousBirths: [], ...more } });
const count = (number: number) => ({ count: number, source });

it('gestational age is in weeks with fractions, and missing when undated', () => {
  expect(said('gestational-age', {}, 217)).toBe('31: dated');
  expect(said('gestational-age', {}, 218)).toMatch(/^31\.14/);
  expect(said('gestational-age', { pregnancy: { remarks: [] } })).toBe('missing: gestational age');
});

describe('the systolic pressure', () => {
  const of = (...pressures: Timeline['pressures']) => said('systolic', { pressures });
  const missing = 'missing: recent systolic pressure';

  it('is the highest of the newest contact, while it is fresh', () => {
    expect(
      of(
        reading('08:00', 170, 90),
        reading('09:00', 140, 90),
        reading('09:02', 150, 92),
        reading('09:04', 145, 90),
      ),
    ).toBe('150: 150/92 mm[Hg]');
    expect(of(reading(justIn, 150, 90))).toBe('150: 150/90 mm[Hg]');
    expect(of(reading(tooOld, 150, 90))).toBe(missing);
  });

  it('is missing without a reading, or without a systolic', () => {
    expect(of()).toBe(missing);
    expect(of(reading('09:00', undefined, 90))).toBe(missing);
    expect(of(reading('09:00', undefined, 90), reading('09:02', 142, 90))).toBe('142: 142/90 mm[Hg]');
  });
});

describe('a laboratory value', () => {
  it.each<[RiskInput & Analyte, string, string]>([
    ['creatinine', 'umol/L', 'mg/dL'],
    ['platelets', '10*9/L', '/uL'],
    ['ast', 'U/L', 'ukat/L'],
    ['oxygen-saturation', '%', '1'],
  ])('%s counts in %s, not in %s, and while it is fresh', (input, unit, other) => {
    const of = (when: string, sentUnit = unit, comparator?: '<') =>
      said(input, { laboratory: [lab(when, input, 50, sentUnit, comparator)] });
    const missing = `missing: recent ${idWords(input)}`;
    expect(of(justIn)).toBe(`50: 50 ${unit}`);
    expect([of(tooOld), of('09:00', other), of('09:00', unit, '<')]).toEqual([missing, missing, missing]);
    expect(said(input, {})).toBe(missing);
  });
});

describe('a second child', () => {
  it('is told by parity, else by a birth, else by a first pregnancy', () => {
    const births = {
      previousBirths: [
        { at: moment('2020-01-01'), source },
        { at: moment('2022-05-01'), source },
      ],
    };
    expect(said('multiparous', woman({ parity: count(0) }))).toBe('0: 0');
    expect(said('multiparous', woman({ parity: count(1) }))).toBe('1: 1');
    expect(said('multiparous', woman({ parity: count(0), ...births }))).toBe('0: 0');
    expect(said('multiparous', woman(births))).toBe('1: 2022-05-01');
    expect(said('multiparous', woman({ gravidity: count(1) }))).toBe('0: 1');
    expect(said('multiparous', woman({ gravidity: count(2) }))).toBe('missing: parity');
    expect(said('multiparous', woman({}))).toBe('missing: parity');
  });
});

describe('the strip', () => {
  const of = (input: RiskInput, ...urineProteins: Timeline['urineProteins']) =>
    said(input, { urineProteins });
  const missing = 'missing: recent urine strip with its grade';

  it.each([2, 3, 4] as const)('of %i+ is that grade and no other', (grade) => {
    const input = `strip-${grade}` as const;
    expect([of(input, strip('09:00', grade)), of(input, strip('09:00', 1))]).toEqual([
      `1: ${String(grade)}`,
      '0: 1',
    ]);
  });

  it('is the newest, while it is fresh, of this pregnancy, with its grade', () => {
    expect(of('strip-2', strip('08:00', 3), strip('09:00', 2), ratio('10:00', 90))).toBe('1: 2');
    expect(of('strip-2', strip(justIn, 2))).toBe('1: 2');
    expect(of('strip-2', strip(tooOld, 2))).toBe(missing);
    expect(of('strip-2', strip('09:00', 'positive-ungraded'))).toBe(missing);
    expect(of('strip-2')).toBe(missing);
    expect(said('strip-2', { urineProteins: [strip('2025-03-09T09:00:00Z', 2)] }, 0)).toBe(missing);
  });
});

describe('two symptoms', () => {
  const of = (input: RiskInput, ...symptoms: Timeline['symptoms']) => said(input, { symptoms });
  const is = (name: Parameters<typeof symptom>[0], presence: 'present' | 'absent') => ({
    ...symptom(name, presence),
    asSent: `${name} ${presence}`,
  });

  it('of which one is enough: the one present is cited, or both absent', () => {
    const input = 'headache-or-visual-disturbance';
    expect(of(input, is('headache', 'present'), is('visual-disturbance', 'absent'))).toBe(
      '1: headache present',
    );
    expect(of(input, is('visual-disturbance', 'present'))).toBe('1: visual-disturbance present');
    expect(of(input, is('headache', 'absent'), is('visual-disturbance', 'absent'))).toBe(
      '0: headache absent, visual-disturbance absent',
    );
    expect(of(input, is('headache', 'absent'))).toBe('missing: visual disturbance');
    expect(of(input)).toBe('missing: headache, visual disturbance');
  });

  it('of which both are needed: the one absent is cited, or both present', () => {
    const input = 'bleeding-with-abdominal-pain';
    const [bleeding, pain] = ['vaginal-bleeding', 'abdominal-pain'] as const;
    expect(of(input, is(bleeding, 'present'), is(pain, 'present'))).toBe(
      '1: vaginal-bleeding present, abdominal-pain present',
    );
    expect(of(input, is(bleeding, 'absent'), is(pain, 'present'))).toBe('0: vaginal-bleeding absent');
    expect(of(input, is(pain, 'absent'))).toBe('0: abdominal-pain absent');
    expect(of(input, is(pain, 'present'))).toBe('missing: vaginal bleeding');
  });
});

// A risk equation with terms of its own: a figure, or why there is none. Clinical rules 2.14; notes of the function.
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import type { Classification } from '../../src/guidelines/guideline.ts';
import type { RiskModel } from '../../src/guidelines/risk-model.ts';
import { estimateRisks, probabilityOf } from '../../src/rules/risk-models.ts';
import type { Timeline } from '../../src/timeline/timeline.ts';
import { limit, viewOf } from './checks/ask.ts';
import { lab, moment, reading, strip } from './facts.ts';
import { citation, finding } from './rule-parts.ts';

const model: RiskModel = {
  id: 'model',
  title: 'A model',
  predicts: 'an outcome',
  population: 'some women',
  appliesTo: ['pre-eclampsia', 'hellp'],
  intercept: -3,
  terms: [
    { coefficient: 0.02, of: ['systolic'] },
    { coefficient: -0.001, of: ['platelets', 'systolic'] },
    { coefficient: 2, of: ['platelets'], logarithm: true },
  ],
  ranges: [
    { input: 'systolic', low: limit('>=', 100, 'mm[Hg]'), high: limit('<=', 200, 'mm[Hg]') },
    { input: 'creatinine', low: limit('>=', 20, 'umol/L'), high: limit('<=', 200, 'umol/L') },
  ],
  high: limit('>=', 50, '%'),
  freshWithin: limit('<=', 2, 'd'),
  neverReassuresWith: { classes: ['hellp'], questions: ['met'] },
  remarks: ['A remark.'],
  citation,
  verified: false,
};
const facts = (systolic: number, platelets = 100): Partial<Timeline> => ({
  pressures: [reading('09:00', systolic, 90)],
  laboratory: [lab('09:00', 'platelets', platelets, '10*9/L')],
});
function estimate(
  given: Partial<Timeline>,
  more: Partial<RiskModel> = {},
  classification: readonly Classification[] = ['pre-eclampsia'],
  findings = [finding('not')],
) {
  const [found] = estimateRisks(viewOf(given), [{ ...model, ...more }], { classification, findings });
  if (found === undefined) throw new Error('no estimate');
  return found;
}

describe('a figure', () => {
  // -3 + 0.02 x 150 - 0.001 x 100 x 150 + 2 ln 100 = -5.79 and 2 ln 100 = 9.21.
  const logit = -3 + 3 - 15 + 2 * Math.log(100);
  const percent = Math.round((1 / (1 + Math.exp(-logit))) * 1000) / 10;

  it('is the logistic of the terms: products, and the logarithm where it says so', () => {
    expect(probabilityOf(model, { systolic: 150, platelets: 100 })).toBeCloseTo(
      1 / (1 + Math.exp(-logit)),
      12,
    );
    expect(() => probabilityOf(model, { systolic: 150 })).toThrow('platelets');
    expect(estimate(facts(150))).toMatchObject({ outcome: 'not-met', percent, missing: [], verified: false });
  });

  it('is met from the high figure on', () => {
    const at = (high: number) => estimate(facts(150), { high: limit('>=', high, '%') }).outcome;
    expect([at(percent), at(percent + 0.1)]).toEqual(['met', 'not-met']);
  });

  it('cites each fact once, in the order of the terms', () => {
    expect(estimate(facts(150)).evidence.map(({ asSent }) => asSent)).toEqual([
      '150/90 mm[Hg]',
      '100 10*9/L',
    ]);
    const twice = { terms: [{ coefficient: 1, of: ['strip-2', 'strip-3'] as const }] };
    const { pressures = [] } = facts(150);
    const strips = { pressures, urineProteins: [strip('09:00', 2)] };
    expect(estimate(strips, twice).evidence).toHaveLength(1);
  });

  it('is told with what it describes, what it is not, and what is known of the equation', () => {
    const words = (
      more: Partial<RiskModel> = {},
      classes?: readonly Classification[],
      findings?: Finding[],
    ) => estimate(facts(150), more, classes, findings).sentence;
    const calm = `A model: ${percent.toFixed(1)} % (an outcome). It describes groups of women, not this one. A low figure is no reassurance.`;
    const memory = 'The equation is from memory and was not compared with the printed one.';
    expect(words()).toBe(`${calm} ${memory} A remark.`);
    expect(words({ verified: true })).toBe(`${calm} A remark.`);
    expect(words({}, ['pre-eclampsia', 'hellp'])).toContain('must not reassure');
    expect(words({}, ['pre-eclampsia'], [finding('not'), finding('met')])).toContain('must not reassure');
    expect(words({}, ['pre-eclampsia'], [finding('met', { outcome: 'cannot-tell' })])).toContain(
      'no reassurance',
    );
  });
});

describe('no figure', () => {
  it('is given after birth, or of a woman the equation was not made for; nothing is asked then', () => {
    const none = {
      model: 'model',
      predicts: 'an outcome',
      source: citation,
      verified: false,
      outcome: 'not-applicable',
      sentence: 'A model: made for some women; not used here.',
      evidence: [],
      missing: [],
    };
    expect(estimate(facts(150), {}, ['normotensive'])).toEqual(none);
    const source = { reference: 'Observation/birth', preliminary: false };
    const birth = { at: moment('2025-03-06'), asSent: 'born', source };
    expect(estimate({ ...facts(150), pregnancy: { remarks: [], birth } })).toEqual(none);
  });

  it('where something is missing: it is named once, and the rest is cited', () => {
    const { pressures = [] } = facts(150);
    const found = estimate({ pressures });
    expect(found).toMatchObject({ outcome: 'cannot-tell', missing: ['recent platelets'] });
    expect(found.sentence).toBe('A model: no figure; missing: recent platelets.');
    expect(found.evidence.map(({ asSent }) => asSent)).toEqual(['150/90 mm[Hg]']);
    expect(found).not.toHaveProperty('percent');
    const strips = { terms: [{ coefficient: 1, of: ['strip-2', 'strip-3'] as const }] };
    expect(estimate({ pressures }, strips).missing).toHaveLength(1);
  });

  it.each([
    [99, true],
    [100, false],
    [200, false],
    [201, true],
  ])('where a value lies outside its range: %i', (systolic, isOutside) => {
    const found = estimate(facts(systolic));
    expect(found.outcome === 'cannot-tell').toBe(isOutside);
    if (isOutside)
      expect(found).toMatchObject({
        sentence: `A model: no figure; systolic ${String(systolic)} lies outside 100 to 200 mm[Hg].`,
        missing: [],
        evidence: [{ asSent: `${String(systolic)}/90 mm[Hg]` }, {}],
      });
  });
});

// The two risk equations: worked values and quirks of the clinical rules, section 2.14, and check case A40.
import { describe, expect, it } from 'vitest';
import { guidelineOf } from '../../src/guidelines/registry.ts';
import type { RiskInput } from '../../src/guidelines/risk-model.ts';
import { riskModels } from '../../src/guidelines/risk-models.ts';
import { estimateRisks, probabilityOf } from '../../src/rules/risk-models.ts';
import type { Symptom, Timeline } from '../../src/timeline/timeline.ts';
import { applied, lab, moment, reading, strip, symptom } from './facts.ts';

const modelOf = (id: string) => {
  const model = riskModels.find((each) => each.id === id);
  if (model === undefined) throw new Error(`no model ${id}`);
  return model;
};
const community = modelOf('community-model-2014');
const full = modelOf('full-model-2011');
type Inputs = Partial<Record<RiskInput, number>>;
const percentOf = (model: typeof full, inputs: Inputs): number =>
  Math.round(probabilityOf(model, inputs) * 1000) / 10;

const noSigns: Inputs = {
  multiparous: 0,
  'strip-2': 0,
  'strip-3': 0,
  'strip-4': 0,
  'bleeding-with-abdominal-pain': 0,
  'headache-or-visual-disturbance': 0,
  'chest-pain-or-dyspnoea': 0,
};

describe('community model, worked values of section 2.14', () => {
  it.each<[string, Inputs, number]>([
    ['first child, 32 weeks, 150, strip 1+', { 'gestational-age': 32, systolic: 150 }, 5.9],
    [
      'first child, 32 weeks, 170, strip 3+, headache',
      { 'gestational-age': 32, systolic: 170, 'strip-3': 1, 'headache-or-visual-disturbance': 1 },
      14.8,
    ],
    [
      'first child, 28 weeks, 180, strip 4+, headache, chest pain',
      {
        'gestational-age': 28,
        systolic: 180,
        'strip-4': 1,
        'headache-or-visual-disturbance': 1,
        'chest-pain-or-dyspnoea': 1,
      },
      35.5,
    ],
    [
      'A40: not the first child, 38 weeks, 145',
      { 'gestational-age': 38, systolic: 145, multiparous: 1 },
      3.6,
    ],
  ])('%s', (_name, inputs, percent) => {
    expect(percentOf(community, { ...noSigns, ...inputs })).toBe(percent);
  });

  it('2+ lowers the figure relative to 1+ or none, and says so', () => {
    const inputs = { ...noSigns, 'gestational-age': 32, systolic: 150 };
    expect(percentOf(community, { ...inputs, 'strip-2': 1 })).toBeLessThan(percentOf(community, inputs));
    expect(community.remarks.join(' ')).toContain('2+');
  });
});

const fullInputs = (creatinine: number, platelets: number, ast: number, saturation: number): Inputs => ({
  'gestational-age': 32,
  'chest-pain-or-dyspnoea': 0,
  creatinine,
  platelets,
  ast,
  'oxygen-saturation': saturation,
});

describe('full model, worked values of section 2.14', () => {
  it.each([
    [60, 200, 25, 98, 0.7],
    [90, 90, 120, 96, 9.8],
    [60, 50, 100, 97, 22.0],
  ])('creatinine %i, platelets %i, AST %i, SpO2 %i', (creatinine, platelets, ast, saturation, percent) => {
    expect(percentOf(full, fullInputs(creatinine, platelets, ast, saturation))).toBe(percent);
  });

  it('more creatinine lowers the figure below 108 platelets and raises it above 109', () => {
    const rise = (platelets: number) =>
      probabilityOf(full, fullInputs(120, platelets, 40, 97)) -
      probabilityOf(full, fullInputs(60, platelets, 40, 97));
    expect(rise(108)).toBeLessThan(0);
    expect(rise(109)).toBeGreaterThan(0);
  });

  it('throws when an input is not given', () => {
    expect(() => probabilityOf(full, {})).toThrow('lacks');
  });
});

it('every figure is marked as not verified', () => {
  expect(riskModels.map(({ verified, citation }) => [verified, citation.known])).toEqual([
    [false, 'from-memory'],
    [false, 'from-memory'],
  ]);
});

it('the questions that forbid reassurance are asked', () => {
  const asked = new Set(guidelineOf('frontline')?.questions.map(({ id }) => id));
  expect(
    riskModels.flatMap((model) => model.neverReassuresWith.questions).filter((id) => !asked.has(id)),
  ).toEqual([]);
});

const absent = (
  ['headache', 'visual-disturbance', 'chest-pain', 'dyspnoea', 'vaginal-bleeding', 'abdominal-pain'] as const
).map((name) => symptom(name, 'absent'));
const parity = (number: number): Pick<Timeline, 'woman'> => ({
  woman: {
    reference: 'Patient/woman',
    parity: { count: number, source: { reference: 'Observation/parity', preliminary: false } },
    previousBirths: [],
  },
});
/** Pre-eclampsia without severe features. */
const facts = (more: Partial<Timeline> = {}): Partial<Timeline> => ({
  ...parity(1),
  pressures: [reading('2025-03-09T20:00:00Z', 146, 94), reading('09:00', 145, 92)],
  urineProteins: [strip('09:00', 2)],
  symptoms: absent,
  laboratory: [
    lab('09:00', 'platelets', 200, '10*9/L'),
    lab('09:00', 'creatinine', 60, 'umol/L'),
    lab('09:00', 'ast', 25, 'U/L'),
    lab('09:00', 'oxygen-saturation', 98, '%'),
  ],
  ...more,
});
const estimatesOf = (given: Partial<Timeline>, days = 224) => {
  const { view, assessment } = applied(given, days);
  return estimateRisks(view, riskModels, assessment);
};
const withLab = (...changed: readonly ReturnType<typeof lab>[]) =>
  facts({
    laboratory: [
      ...(facts().laboratory ?? []).filter(
        ({ analyte }) => !changed.some((each) => each.analyte === analyte),
      ),
      ...changed,
    ],
  });
const withSymptom = (name: Symptom['symptom']) =>
  facts({ symptoms: [...absent.filter((each) => each.symptom !== name), symptom(name)] });

describe('estimates from the record', () => {
  it('give the worked value: 32 weeks, creatinine 60, platelets 200, AST 25, SpO2 98 is 0.7 %', () => {
    expect(estimatesOf(facts())[1]).toMatchObject({ outcome: 'not-met', percent: 0.7, verified: false });
  });

  it('give A40: 38+0 weeks, not the first child, 145, strip negative is 3.6 %', () => {
    const given = facts({ urineProteins: [strip('09:00', 0)] });
    expect(estimatesOf(given, 266)[0]).toMatchObject({ outcome: 'not-met', percent: 3.6 });
  });

  it('call a figure high from 25 %: 28 weeks, first child, 180, 4+, headache, chest pain', () => {
    const given = facts({
      ...parity(0),
      pressures: [reading('09:00', 180, 112), reading('09:20', 176, 110)],
      urineProteins: [strip('09:00', 4)],
      symptoms: [
        ...absent.filter(({ symptom: name }) => name !== 'headache' && name !== 'chest-pain'),
        symptom('headache'),
        symptom('chest-pain'),
      ],
    });
    expect(estimatesOf(given, 196)[0]).toMatchObject({ outcome: 'met', percent: 35.5 });
  });

  it('never reassure: a low figure says so', () => {
    for (const { sentence } of estimatesOf(facts())) {
      expect(sentence).toContain('A low figure is no reassurance.');
      expect(sentence).toContain('from memory');
    }
  });

  it.each<[string, Partial<Timeline>]>([
    ['a danger symptom', withSymptom('headache')],
    ['breathlessness', withSymptom('dyspnoea')],
    [
      'a severe reading',
      facts({ pressures: [reading('2025-03-09T20:00:00Z', 150, 96), reading('09:00', 162, 96)] }),
    ],
    ['few platelets', withLab(lab('09:00', 'platelets', 90, '10*9/L'))],
    [
      'HELLP',
      withLab(
        lab('09:00', 'platelets', 90, '10*9/L'),
        lab('09:00', 'ast', 100, 'U/L'),
        lab('09:00', 'ldh', 700, 'U/L'),
      ),
    ],
  ])('with %s the figure must not reassure', (_name, given) => {
    for (const { sentence } of estimatesOf(given)) expect(sentence).toContain('must not reassure');
  });

  it.each([
    ['oxygen-saturation', 89, '%'],
    ['platelets', 29, '10*9/L'],
    ['platelets', 601, '10*9/L'],
  ] as const)('%s of %d %s is out of range: no figure', (analyte, value, unit) => {
    const estimate = estimatesOf(withLab(lab('09:00', analyte, value, unit)))[1];
    expect(estimate?.outcome).toBe('cannot-tell');
    expect(estimate?.percent).toBeUndefined();
    expect(estimate?.sentence).toContain('outside');
  });

  it.each([
    ['oxygen-saturation', 90, '%'],
    ['oxygen-saturation', 100, '%'],
    ['platelets', 30, '10*9/L'],
    ['platelets', 600, '10*9/L'],
  ] as const)('%s of %d %s is in range', (analyte, value, unit) => {
    expect(estimatesOf(withLab(lab('09:00', analyte, value, unit)))[1]?.percent).toBeDefined();
  });

  it('42+0 weeks is in range and 42+1 is not', () => {
    expect(estimatesOf(facts(), 294).map(({ percent }) => percent === undefined)).toEqual([false, false]);
    expect(estimatesOf(facts(), 295).map(({ outcome }) => outcome)).toEqual(['cannot-tell', 'cannot-tell']);
  });

  it('20+0 weeks is in range; hypertension before that gets no figure', () => {
    const earlier = estimatesOf(facts({ urineProteins: [strip('09:00', 0)] }), 141);
    expect(earlier[0]?.percent).toBeDefined();
    expect(estimatesOf(facts({ urineProteins: [strip('09:00', 0)] }), 139)[0]?.percent).toBeUndefined();
  });

  it('name what is missing', () => {
    const [first, second] = estimatesOf(
      facts({ woman: { previousBirths: [] }, symptoms: absent.slice(0, 3), laboratory: [] }),
    );
    expect(first?.missing).toEqual(['parity', 'vaginal bleeding, abdominal pain', 'dyspnoea']);
    expect(second?.missing).toEqual([
      'dyspnoea',
      'recent creatinine',
      'recent platelets',
      'recent AST',
      'recent oxygen saturation',
    ]);
  });

  it('one of two signs absent settles "bleeding with pain"; one present settles "headache or sight"', () => {
    const without = (name: Symptom['symptom']) => absent.filter((each) => each.symptom !== name);
    expect(estimatesOf(facts({ symptoms: without('abdominal-pain') }))[0]?.missing).toEqual([]);
    const headache = [...without('headache').filter((each) => each.symptom !== 'visual-disturbance')];
    expect(estimatesOf(facts({ symptoms: headache }))[0]?.missing).toEqual(['headache, visual disturbance']);
    expect(estimatesOf(facts({ symptoms: [...headache, symptom('headache')] }))[0]?.missing).toEqual([]);
  });

  it('a bound, an old value, and a strip without grade are missing', () => {
    expect(estimatesOf(withLab(lab('09:00', 'ast', 10, 'U/L', '<')))[1]?.missing).toEqual(['recent AST']);
    expect(estimatesOf(withLab(lab('2025-03-08T11:00:00Z', 'ast', 25, 'U/L')))[1]?.missing).toEqual([
      'recent AST',
    ]);
    expect(estimatesOf(withLab(lab('2025-03-08T12:00:00Z', 'ast', 25, 'U/L')))[1]?.missing).toEqual([]);
    const ungraded = facts({ urineProteins: [strip('09:00', 'positive-ungraded')] });
    expect(estimatesOf(ungraded)[0]?.missing).toEqual(['recent urine strip with its grade']);
  });

  it('parity may follow from an earlier birth or a first pregnancy', () => {
    const source = { reference: 'Observation/o', preliminary: false };
    const born = { previousBirths: [{ at: moment('2022-05-01'), source }] };
    const first = { gravidity: { count: 1, source }, previousBirths: [] };
    const second = { gravidity: { count: 2, source }, previousBirths: [] };
    const percentWith = (woman: Timeline['woman']) => estimatesOf(facts({ woman }))[0]?.percent;
    expect(percentWith(born)).toBe(estimatesOf(facts(parity(1)))[0]?.percent);
    expect(percentWith(first)).toBe(estimatesOf(facts(parity(0)))[0]?.percent);
    expect(percentWith(second)).toBeUndefined();
  });

  it('are not for a woman without hypertension, and the full model not without pre-eclampsia', () => {
    const normal = facts({ pressures: [reading('09:00', 120, 70)], urineProteins: [strip('09:00', 0)] });
    expect(estimatesOf(normal).map(({ outcome }) => outcome)).toEqual(['not-applicable', 'not-applicable']);
    const gestational = facts({ urineProteins: [strip('09:00', 0)] });
    expect(estimatesOf(gestational).map(({ outcome }) => outcome)).toEqual(['not-met', 'not-applicable']);
  });
});

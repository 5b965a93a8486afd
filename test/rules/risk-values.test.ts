// Which values of the record enter a risk equation, which are missing, and when a figure must not reassure.
import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/findings/finding.ts';
import type { RiskInput } from '../../src/guidelines/risk-model.ts';
import { riskModels } from '../../src/guidelines/risk-models.ts';
import { estimateRisks, probabilityOf } from '../../src/rules/risk-models.ts';
import type { Symptom, Timeline } from '../../src/timeline/timeline.ts';
import { applied, lab, ratio, reading, strip, symptom } from './facts.ts';

const community = riskModels[0];
if (community === undefined) throw new Error('no community model');

const asked = [
  'headache',
  'visual-disturbance',
  'chest-pain',
  'dyspnoea',
  'vaginal-bleeding',
  'abdominal-pain',
] as const;
/** Each symptom absent, but those named present, and those named unasked not there. */
const symptoms = (present: readonly Symptom['symptom'][] = [], unasked: readonly Symptom['symptom'][] = []) =>
  asked
    .filter((name) => !unasked.includes(name))
    .map((name) => symptom(name, present.includes(name) ? 'present' : 'absent'));

/** A second child, 32+0 weeks, pre-eclampsia without severe features. */
const facts = (more: Partial<Timeline> = {}): Partial<Timeline> => ({
  woman: {
    reference: 'Patient/woman',
    parity: { count: 1, source: { reference: 'Observation/parity', preliminary: false } },
    previousBirths: [],
  },
  pressures: [reading('2025-03-09T20:00:00Z', 146, 94), reading('09:00', 145, 92)],
  urineProteins: [strip('09:00', 2)],
  symptoms: symptoms(),
  ...more,
});
const estimateOf = (given: Partial<Timeline>) => {
  const { view, assessment } = applied(given, 224);
  return estimateRisks(view, riskModels, assessment)[0];
};
const figure = (inputs: Partial<Record<RiskInput, number>>): number =>
  Math.round(
    probabilityOf(community, {
      'gestational-age': 32,
      systolic: 145,
      multiparous: 1,
      'strip-2': 0,
      'strip-3': 0,
      'strip-4': 0,
      'bleeding-with-abdominal-pain': 0,
      'headache-or-visual-disturbance': 0,
      'chest-pain-or-dyspnoea': 0,
      ...inputs,
    }) * 1000,
  ) / 10;

describe('the strip', () => {
  it.each<[1 | 2 | 3 | 4, Partial<Record<RiskInput, number>>]>([
    [1, {}],
    [2, { 'strip-2': 1 }],
    [3, { 'strip-3': 1 }],
    [4, { 'strip-4': 1 }],
  ])('of %i+ enters as that grade and no other', (grade, inputs) => {
    expect(estimateOf(facts({ urineProteins: [strip('09:00', grade)] }))?.percent).toBe(figure(inputs));
  });

  it('is the newest one, and a ratio beside it is none', () => {
    const two = [strip('08:00', 4), strip('09:00', 2)];
    expect(estimateOf(facts({ urineProteins: two }))?.percent).toBe(figure({ 'strip-2': 1 }));
    const beside = [strip('08:00', 3), ratio('09:00', 60)];
    expect(estimateOf(facts({ urineProteins: beside }))?.percent).toBe(figure({ 'strip-3': 1 }));
  });

  it.each([
    ['without a grade', strip('09:00', 'positive-ungraded')],
    ['older than 48 hours', strip('2025-03-08T11:59:00Z', 2)],
  ])('%s is missing', (_, sent) => {
    const given = facts({ urineProteins: [sent, ratio('07:00', 60)] });
    expect(estimateOf(given)).toMatchObject({ missing: ['recent urine strip with its grade'] });
  });
});

describe('the systolic pressure', () => {
  it('is the highest of the newest contact, not of an earlier one', () => {
    const pressures = [
      reading('2025-03-09T20:00:00Z', 158, 94),
      reading('09:00', 150, 92),
      reading('09:05', 154, 92),
      reading('09:10', 152, 92),
    ];
    expect(estimateOf(facts({ pressures }))?.percent).toBe(figure({ systolic: 154, 'strip-2': 1 }));
  });

  it.each([
    ['2025-03-08T12:00:00Z', []],
    ['2025-03-08T11:59:00Z', ['recent systolic pressure']],
  ])('of %s: missing %j, from 48 hours on', (time, missing) => {
    const pressures = [reading('2025-03-07T20:00:00Z', 146, 94), reading(time, 145, 92)];
    expect(estimateOf(facts({ pressures }))?.missing).toEqual(missing);
  });

  it('is missing where only the diastolic was sent', () => {
    const pressures = [reading('2025-03-09T20:00:00Z', 146, 94), reading('09:00', undefined, 92)];
    expect(estimateOf(facts({ pressures }))?.missing).toEqual(['recent systolic pressure']);
  });

  it('cites the reading it comes from, in the estimate', () => {
    const found = estimateOf(facts());
    expect(found?.evidence.map(({ asSent }) => asSent)).toContain('145/92 mm[Hg]');
    expect(found?.evidence.map(({ asSent }) => asSent)).not.toContain('146/94 mm[Hg]');
  });
});

describe('two symptoms that enter together', () => {
  it.each<[string, readonly Symptom['symptom'][], Partial<Record<RiskInput, number>>]>([
    [
      'bleeding with pain: both',
      ['vaginal-bleeding', 'abdominal-pain'],
      { 'bleeding-with-abdominal-pain': 1 },
    ],
    ['bleeding alone', ['vaginal-bleeding'], {}],
    ['pain alone', ['abdominal-pain'], {}],
    ['headache alone', ['headache'], { 'headache-or-visual-disturbance': 1 }],
    ['disturbed sight alone', ['visual-disturbance'], { 'headache-or-visual-disturbance': 1 }],
    ['chest pain alone', ['chest-pain'], { 'chest-pain-or-dyspnoea': 1 }],
    ['breathlessness alone', ['dyspnoea'], { 'chest-pain-or-dyspnoea': 1 }],
  ])('%s', (_, present, inputs) => {
    expect(estimateOf(facts({ symptoms: symptoms(present) }))?.percent).toBe(
      figure({ 'strip-2': 1, ...inputs }),
    );
  });

  it.each<[string, readonly Symptom['symptom'][], readonly Symptom['symptom'][], readonly string[]]>([
    ['bleeding, pain not asked', ['vaginal-bleeding'], ['abdominal-pain'], ['abdominal pain']],
    ['pain, bleeding not asked', ['abdominal-pain'], ['vaginal-bleeding'], ['vaginal bleeding']],
    ['no bleeding, pain not asked', [], ['abdominal-pain'], []],
    ['no pain, bleeding not asked', [], ['vaginal-bleeding'], []],
    ['no chest pain, breath not asked', [], ['dyspnoea'], ['dyspnoea']],
    ['no breathlessness, chest pain not asked', [], ['chest-pain'], ['chest pain']],
    ['chest pain, breath not asked', ['chest-pain'], ['dyspnoea'], []],
    ['breathlessness, chest pain not asked', ['dyspnoea'], ['chest-pain'], []],
  ])('%s: missing %j', (_, present, unasked, missing) => {
    expect(estimateOf(facts({ symptoms: symptoms(present, unasked) }))?.missing).toEqual(missing);
  });
});

describe('a figure', () => {
  const sentenceFor = (changed: Partial<Pick<Assessment, 'classification' | 'findings'>>) => {
    const { view, assessment } = applied(facts(), 224);
    const calm = assessment.findings.map((finding) => ({ ...finding, outcome: 'not-met' as const }));
    const [estimate] = estimateRisks(view, riskModels, {
      ...assessment,
      classification: ['pre-eclampsia'],
      findings: calm,
      ...changed,
    });
    return estimate?.sentence;
  };
  const withMet = (...questions: readonly string[]) =>
    sentenceFor({
      findings: applied(facts(), 224).assessment.findings.map((finding) => ({
        ...finding,
        outcome: questions.includes(finding.question) ? ('met' as const) : ('not-met' as const),
      })),
    });

  it.each(['chest-pain', 'lung-oedema', 'danger-symptom', 'severe-organ', 'severe-current'])(
    'must not reassure with the question "%s" alone',
    (question) => {
      expect(withMet(question)).toContain('must not reassure');
    },
  );

  it.each(['hellp', 'eclampsia', 'pre-eclampsia-severe-features'] as const)(
    'must not reassure with the class %s alone',
    (name) => {
      expect(sentenceFor({ classification: ['pre-eclampsia', name] })).toContain('must not reassure');
    },
  );

  it('is only no reassurance where neither is there', () => {
    expect(sentenceFor({})).toContain('A low figure is no reassurance.');
    expect(withMet('raised-now', 'confirmed-from-20-weeks')).toContain('A low figure is no reassurance.');
  });
});

describe('a laboratory value', () => {
  it('in another unit than the equation asks for is missing', () => {
    const { view, assessment } = applied(
      facts({ laboratory: [lab('09:00', 'creatinine', 0.7, 'mg/dL')] }),
      224,
    );
    expect(estimateRisks(view, riskModels, assessment)[1]?.missing).toContain('recent creatinine');
  });
});

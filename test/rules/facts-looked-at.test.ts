// Which question looks at a fact that none cites, kind by kind: the first of those that ask for it, and no other.
import { describe, expect, it } from 'vitest';
import type { Question } from '../../src/guidelines/guideline.ts';
import { applyRules } from '../../src/rules/apply-rules.ts';
import { timelineValues } from '../../src/guidelines/registry.ts';
import { factsUsed } from '../../src/rules/facts-used.ts';
import type { MeanPressure, Timeline } from '../../src/timeline/timeline.ts';
import { guideline } from '../support/assess.ts';
import { limit } from './checks/ask.ts';
import { condition, lab, medicine, moment, reading, strip, symptom, timeline } from './facts.ts';

const all = guideline().questions;
const named = (...ids: readonly string[]): readonly Question[] =>
  ids.map((id) => {
    const found = all.find((question) => question.id === id);
    if (found === undefined) throw new Error(`no question ${id}`);
    return found;
  });
/** By the reference of each fact, the question that looked at it, of those named. */
function looked(questions: readonly Question[], facts: Partial<Timeline>): readonly string[] {
  const { pregnancy: _dated, ...rest } = timeline();
  const woman: Timeline = { ...rest, pregnancy: { remarks: [] }, ...facts };
  return [...factsUsed(woman, { ...guideline(), questions }, []).values()].flat();
}
const mean = (setting: MeanPressure['setting']): MeanPressure => ({
  from: moment('08:00'),
  to: moment('09:00'),
  systolicMmHg: 130,
  setting,
  asSent: 'average',
  sources: [{ reference: 'Observation/mean', preliminary: false }],
});

describe('a pressure', () => {
  const both = named('home-severe', 'raised-open');
  it('is looked at by the question about raised contacts, at home by that about home', () => {
    expect(looked(both, { pressures: [reading('09:00', 120, 70)] })).toEqual(['raised-open']);
    expect(looked(both, { homePressures: [reading('09:00', 120, 70)] })).toEqual(['home-severe']);
    expect(looked(both, { meanPressures: [mean('clinic')] })).toEqual(['raised-open']);
    expect(looked(both, { meanPressures: [mean('home')] })).toEqual(['home-severe']);
    expect(looked(both, { meanPressures: [mean('unknown')] })).toEqual(['home-severe']);
    expect(looked(named('home-severe'), { meanPressures: [mean('clinic')] })).toEqual(['home-severe']);
    expect(looked([], { pressures: [reading('09:00', 120, 70)] })).toEqual([]);
  });
});

describe('a result', () => {
  const citation = limit('>=', 1, '1').citation;
  const reaches: Question = {
    id: 'reaches',
    asks: '',
    citation,
    check: 'laboratory-reaches',
    analyte: 'urate',
    limit: limit('>=', 1, '1'),
    freshWithin: limit('<=', 1, 'd'),
  };
  const onMedicine: Question = {
    id: 'on-medicine',
    asks: '',
    citation,
    check: 'laboratory-on-medicine',
    analyte: 'magnesium',
    limit: limit('>=', 1, '1'),
    medicines: ['magnesium-sulfate'],
    within: limit('<=', 1, 'd'),
  };
  const of = (analyte: Parameters<typeof lab>[1], ...questions: readonly Question[]) =>
    looked(questions, { laboratory: [lab('09:00', analyte, 1, '1')] });

  it('is looked at by the question about its analyte', () => {
    expect([of('urate', onMedicine, reaches), of('magnesium', onMedicine, reaches)]).toEqual([
      ['reaches'],
      ['on-medicine'],
    ]);
    expect(of('haemoglobin', onMedicine, reaches)).toEqual([]);
    const [hellp, organ] = [named('hellp-criteria'), named('organ-from-20-weeks')];
    expect([
      of('ldh', ...hellp),
      of('bilirubin', ...hellp),
      of('ast', ...hellp),
      of('creatinine', ...hellp),
    ]).toEqual([['hellp-criteria'], ['hellp-criteria'], ['hellp-criteria'], []]);
    expect([of('creatinine', ...organ), of('haemoglobin', ...organ)]).toEqual([['organ-from-20-weeks'], []]);
  });

  it('of urine is looked at by the question about protein', () => {
    const urineProteins = [strip('09:00', 1)];
    expect([
      looked(named('raised-open', 'protein-now'), { urineProteins }),
      looked(named('raised-open'), { urineProteins }),
    ]).toEqual([['protein-now'], []]);
  });
});

describe('a symptom, a condition and a medicine', () => {
  const organ = named('organ-from-20-weeks');
  const inOrgan = organ.flatMap((question) =>
    question.check === 'organ-involvement'
      ? question.criteria.flatMap((criterion) => (criterion.kind === 'symptom' ? criterion.symptoms : []))
      : [],
  )[0];

  it('is looked at by the question that names it', () => {
    const chest = { symptoms: [symptom('chest-pain')] };
    expect([
      looked(named('raised-open', 'chest-pain'), chest),
      looked(named('vaginal-bleeding'), chest),
      looked(organ, chest),
    ]).toEqual([['chest-pain'], [], []]);
    if (inOrgan === undefined) throw new Error('no symptom of an organ');
    expect(looked(organ, { symptoms: [symptom(inOrgan)] })).toEqual(['organ-from-20-weeks']);
    const epilepsy = { conditions: [condition('epilepsy')] };
    expect([
      looked(named('recorded-multiple', 'recorded-epilepsy'), epilepsy),
      looked(named('recorded-multiple'), epilepsy),
    ]).toEqual([['recorded-epilepsy'], []]);
    const taken = { medicines: [medicine('labetalol', 'active')] };
    expect([
      looked(named('raised-open', 'magnesium-given', 'treated'), taken),
      looked(named('magnesium-given'), taken),
    ]).toEqual([['treated'], []]);
  });
});

describe('a question about several', () => {
  const { citation } = limit('>=', 1, '1');
  const shared = { id: 'several', asks: '', citation } as const;
  const organ: Question = {
    ...shared,
    check: 'organ-involvement',
    criteria: [
      {
        id: 'liver',
        kind: 'laboratory',
        organ: 'liver',
        analytes: ['alt', 'ast'],
        limit: limit('>', 40, 'U/L'),
      },
      {
        id: 'brain',
        kind: 'symptom',
        organ: 'brain',
        symptoms: ['headache', 'visual-disturbance'],
        citation,
      },
    ],
    periods: ['from-20-weeks'],
    newOnset: false,
    symptomsFreshWithin: limit('<=', 1, 'd'),
  };
  const present: Question = {
    ...shared,
    check: 'symptom-present',
    symptoms: ['headache', 'dyspnoea'],
    freshWithin: limit('<=', 1, 'd'),
  };

  it('looks at each of them, and at nothing else', () => {
    const at = (question: Question, facts: Partial<Timeline>) => looked([question], facts).length;
    const results = (['alt', 'ast', 'ldh'] as const).map((name) => ({
      laboratory: [lab('09:00', name, 1, 'U/L')],
    }));
    expect(results.map((facts) => at(organ, facts))).toEqual([1, 1, 0]);
    const symptoms = (['headache', 'visual-disturbance', 'dyspnoea'] as const).map((name) => ({
      symptoms: [symptom(name)],
    }));
    expect(symptoms.map((facts) => at(organ, facts))).toEqual([1, 1, 0]);
    expect(symptoms.map((facts) => at(present, facts))).toEqual([1, 0, 1]);
  });
});

describe('the dating and the birth', () => {
  const source = (reference: string) => ({ reference, preliminary: false });
  const pregnancy = {
    remarks: [],
    dating: {
      startDay: 0,
      method: 'ultrasound' as const,
      asSent: 'scan',
      source: source('Observation/scan'),
      others: [
        {
          method: 'last-period' as const,
          startDay: 0,
          asSent: 'period',
          source: source('Observation/period'),
        },
      ],
      remarks: [],
      conflict: false,
    },
    birth: { at: moment('2025-03-01'), asSent: 'born', source: source('Observation/birth') },
    assumedFrom20Weeks: { asSent: '28 cm', source: source('Observation/height') },
  };

  it('are looked at by the question about the part of the pregnancy', () => {
    const used = factsUsed(
      { ...timeline(), pregnancy },
      { ...guideline(), questions: named('raised-open', 'now-from-20-weeks') },
      [],
    );
    expect([...used]).toEqual(
      ['scan', 'period', 'birth', 'height'].map((name) => [`Observation/${name}`, ['now-from-20-weeks']]),
    );
    expect(looked(named('raised-open'), { pregnancy })).toEqual([]);
  });
});

describe('the answer of a guideline', () => {
  const finding = (id: string, facts: Partial<Timeline>) =>
    applyRules(timeline(facts), guideline(), timelineValues).assessment.findings.find(
      ({ question }) => question === id,
    );

  it('tells what is missing where a question cannot tell, as far as the check knows it', () => {
    expect(finding('danger-symptom', {})?.missing).toMatchObject({ id: 'danger-symptoms' });
    const asked = finding('danger-symptom', { symptoms: [symptom('headache', 'absent')] });
    expect(asked?.missing?.what).not.toContain('headache');
    expect(finding('danger-symptom', { symptoms: [symptom('headache')] })).not.toHaveProperty('missing');
    expect(finding('now-unknown', { pregnancy: { remarks: [] } })?.missing).toMatchObject({
      id: 'gestational-age',
    });
    expect(finding('now-unknown', {})).not.toHaveProperty('missing');
  });

  it('tells nothing missing of a question that asks for nothing', () => {
    const { findings } = applyRules(timeline(), guideline(), timelineValues).assessment;
    const asking = new Set(
      guideline()
        .questions.filter(({ whenCannotTell }) => whenCannotTell)
        .map(({ id }) => id),
    );
    const open = findings.filter(
      ({ outcome, question }) => outcome === 'cannot-tell' && !question.startsWith('class:'),
    );
    const wanting = open.filter((one) => 'missing' in one).map(({ question }) => question);
    expect(open.length).toBeGreaterThan(wanting.length);
    expect(wanting).toEqual(open.map(({ question }) => question).filter((id) => asking.has(id)));
  });

  it('has a referral where one holds, and none where none does', () => {
    const of = (systolic: number) =>
      applyRules(timeline({ pressures: [reading('11:00', systolic, 70)] }), guideline(), timelineValues)
        .assessment;
    expect(of(172).referral?.urgency).toBe('emergency');
    const { qualityRules: _none, ...bare } = guideline();
    const calm = applyRules(
      timeline({ pressures: [reading('2025-03-10', 112, 70)] }),
      { ...bare, referralRules: [] },
      timelineValues,
    );
    expect(calm.assessment).not.toHaveProperty('referral');
    expect(calm.assessment.quality).toEqual([]);
  });
});

// Which question is named for a fact: those that cite it; where none does, the first that looks for facts of its kind.
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { factsUsed } from '../../src/rules/facts-used.ts';
import { assess, guideline } from '../support/assess.ts';
import { evaluate, prepare } from '../../src/evaluate.ts';
import * as build from '../support/resources.ts';
import { timeline, type PlainTimeline } from '../support/timeline-builder.ts';

const asOf = '2025-03-10T15:00:00Z';
const at = '2025-03-10T09:00:00Z';
const uncited = (plain: Partial<PlainTimeline>, id?: string): Record<string, readonly string[]> =>
  Object.fromEntries(factsUsed(timeline({ asOf, ...plain }), guideline(id), []));
const lab = (analyte: NonNullable<PlainTimeline['labs']>[number]['analyte']) => ({
  labs: [{ at, analyte, value: 1, unit: '1' }],
});

describe('a fact that no answer cites', () => {
  it('is looked at by the first question about facts of its kind', () => {
    expect(uncited({ pressures: [{ at, systolic: 118, diastolic: 74 }] })).toEqual({
      'Observation/pressure-0': ['raised-open'],
    });
    expect(uncited({ strips: [{ at, grade: 0 }] })).toEqual({ 'Observation/strip-0': ['protein-now'] });
    expect(uncited({ gestation: '30+0' })).toEqual({ 'Observation/dating': ['now-before-20-weeks'] });
    expect(uncited({ birth: '2025-03-01' })).toEqual({ 'Observation/birth': ['now-before-20-weeks'] });
  });

  it.each([
    ['platelets', 'frontline', ['organ-before-20-weeks']],
    ['creatinine', 'frontline', ['organ-before-20-weeks']],
    ['platelets', 'india-mohfw', ['severe-result']],
    ['ldh', 'frontline', ['hellp-criteria']],
    ['bilirubin', 'frontline', ['hellp-criteria']],
    ['oxygen-saturation', 'frontline', ['severe-organ']],
    ['oxygen-saturation', 'nice-2023', ['oxygen-below-90']],
    ['creatinine', 'india-mohfw', ['severe-result']],
    ['urate', 'frontline', undefined],
    ['haemoglobin', 'frontline', undefined],
  ] as const)('%s under %s: %j', (analyte, id, questions) => {
    expect(uncited(lab(analyte), id)['Observation/lab-0']).toEqual(questions);
  });

  it.each([
    ['headache', 'frontline', ['organ-from-20-weeks']],
    ['headache', 'who-2020', ['severe-organ']],
    ['vaginal-bleeding', 'frontline', ['vaginal-bleeding']],
    ['chest-pain', 'frontline', ['chest-pain']],
    ['nausea', 'frontline', undefined],
    ['vomiting', 'frontline', undefined],
  ] as const)('%s under %s: %j', (symptom, id, questions) => {
    expect(uncited({ symptoms: [{ symptom, at }] }, id)['Observation/symptom-0']).toEqual(questions);
  });

  it('conditions and medicines by name; those of no question are not needed', () => {
    expect(uncited({ conditions: [{ condition: 'epilepsy' }, { condition: 'asthma' }] })).toEqual({
      'Condition/0': ['recorded-epilepsy'],
    });
    expect(uncited({ medicines: [{ medicine: 'magnesium-sulfate' }, { medicine: 'nsaid' }] })).toEqual({
      'MedicationStatement/0': ['magnesium-given'],
    });
  });

  it('averages by where they were measured', () => {
    const mean = build.homeMean({
      from: '2025-03-01T08:00:00Z',
      to: '2025-03-08T08:00:00Z',
      systolicMmHg: 120,
      diastolicMmHg: 75,
      readings: 12,
    });
    const { method: _atHome, ...clinicMean } = mean;
    const usedBy = (sent: Parameters<typeof build.bundleOf>[0]) => {
      const { timeline: read } = prepare(build.bundleOf(sent), { asOf }).built;
      return factsUsed(read, guideline(), []).get('Observation/r0');
    };
    expect(usedBy([mean])).toEqual(['home-severe']);
    expect(usedBy([clinicMean])).toEqual(['home-severe']);
    expect(usedBy([build.pressure(at, 120, 75, { setting: 'home' })])).toEqual(['home-severe']);
  });
});

describe('a fact that answers cite', () => {
  const cite = (question: string, reference: string): Finding => ({
    question,
    asks: '',
    outcome: 'met',
    because: '',
    evidence: [{ reference, what: 'blood pressure', asSent: '146/92' }],
    thresholds: [],
    source: guideline().questions[0]?.citation ?? { publication: '', section: '', year: 0, known: 'ours' },
  });

  it('is named with each of them once, and with no other', () => {
    const woman = timeline({ asOf, pressures: [{ at, systolic: 146, diastolic: 92 }] });
    const { findings } = assess({ asOf, pressures: [{ at, systolic: 146, diastolic: 92 }] });
    const citing = findings
      .filter(({ evidence }) => evidence.some(({ reference }) => reference === 'Observation/pressure-0'))
      .map(({ question }) => question);
    expect(citing.length).toBeGreaterThan(3);
    expect(factsUsed(woman, guideline(), findings).get('Observation/pressure-0')).toEqual(citing);
  });

  it('is named once where one answer cites it twice', () => {
    const twice = [
      cite('raised-now', 'Observation/x'),
      cite('raised-now', 'Observation/x'),
      cite('settled', 'Observation/x'),
    ];
    expect(factsUsed(timeline({ asOf }), guideline(), twice).get('Observation/x')).toEqual([
      'raised-now',
      'settled',
    ]);
  });
});

describe('a fact that only measuring looks at', () => {
  it('is named with the rule of measuring', () => {
    const { account } = evaluate(
      build.bundleOf([build.strip(at, '2+'), build.stripSign(at, 'nitrite', 'positive')]),
      { asOf },
    );
    const sign = account.entries.find(({ reference }) => reference === 'Observation/r1');
    expect(sign).toMatchObject({ outcome: 'used' });
    expect(sign !== undefined && 'by' in sign ? sign.by : []).not.toEqual([]);
  });
});

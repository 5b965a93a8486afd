// Conditions that are symptoms, as they stand on a timeline: from when to when, how severe, and over or refuted.
import type { Condition } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { readSymptomsOfCondition } from '../../src/timeline/symptoms.ts';
import { snomed, woman } from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { contextWith, received } from './received.ts';

const headache = snomed('25064002');
const mild = snomed('255604002');

describe('a condition that is a symptom, on a timeline', () => {
  const sent = (fields: Partial<Condition>): Condition => ({
    resourceType: 'Condition',
    subject: { reference: woman },
    code: headache,
    clinicalStatus: { coding: [{ code: 'active' }] },
    ...fields,
  });
  const symptomsIn = (fields: Partial<Condition>) =>
    built([sent(fields)]).timeline.symptoms.map(({ presence, at: time, relieved }) => [
      presence,
      time?.text,
      relieved,
    ]);
  const resolved = { clinicalStatus: { coding: [{ code: 'resolved' }] } };

  it.each<[string, Partial<Condition>, unknown]>([
    ['active, from its onset', { onsetDateTime: '2026-01-30' }, [['present', '2026-01-30', false]]],
    ['active, from its recording', { recordedDate: '2026-01-31' }, [['present', '2026-01-31', false]]],
    [
      'active, noted to be relieved',
      { onsetDateTime: '2026-01-30', note: [{ text: 'relieved' }] },
      [['present', '2026-01-30', true]],
    ],
    [
      'over, with its end as a period',
      { ...resolved, onsetDateTime: '2026-01-30', abatementPeriod: { end: '2026-01-31' } },
      [
        ['present', '2026-01-30', true],
        ['absent', '2026-01-31', true],
      ],
    ],
    [
      'said to be over, with an end to come: only what was',
      { ...resolved, onsetDateTime: '2026-01-30', abatementDateTime: '2026-02-20' },
      [['present', '2026-01-30', true]],
    ],
  ])('%s', (_, fields, expected) => {
    expect(symptomsIn(fields)).toEqual(expected);
  });

  it('refuted is absent and not relieved, for it never was', () => {
    const refuted = sent({
      verificationStatus: { coding: [{ code: 'refuted' }] },
      recordedDate: '2025-03-01',
    });
    expect(readSymptomsOfCondition(received(refuted), contextWith())).toMatchObject([
      { presence: 'absent', relieved: false, at: { text: '2025-03-01' } },
    ]);
  });

  it('that begins after the evaluation is set aside', () => {
    expect(codesOf(built([sent({ onsetDateTime: '2026-02-20' })]))).toEqual(['time-in-future']);
  });

  it('takes its severity from its element, else from its words', () => {
    const severityOf = (fields: Partial<Condition>) =>
      built([sent({ onsetDateTime: '2026-01-30', ...fields })]).timeline.symptoms[0];
    expect(severityOf({ severity: mild, code: { ...headache, text: 'severe' } })).toMatchObject({
      severity: 'mild',
      asSent: 'severe',
    });
    expect(severityOf({ code: { ...headache, text: 'Severe headache' } })).toMatchObject({
      severity: 'severe',
    });
    expect(severityOf({})).toMatchObject({ asSent: 'condition' });
    expect(severityOf({})).not.toHaveProperty('severity');
  });

  it('and a diagnosis as well counts as both', () => {
    const eclampsia = sent({
      code: { coding: [...(headache.coding ?? []), ...(snomed('15938005').coding ?? [])] },
    });
    const { timeline } = built([{ ...eclampsia, onsetDateTime: '2026-01-30' }]);
    expect(timeline.symptoms.map(({ symptom }) => symptom)).toContain('headache');
    expect(timeline.conditions.map(({ condition }) => condition)).toContain('eclampsia');
  });
});

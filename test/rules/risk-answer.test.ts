// The risk equations in the answer: only when asked for, as JSON and as RiskAssessment.
import { describe, expect, it } from 'vitest';
import { assessText } from '../../src/cli/assess.ts';
import { evaluate } from '../../src/evaluate.ts';
import { toAnswer } from '../../src/presenters/answer.ts';
import { toFhirBundle } from '../../src/presenters/fhir-result.ts';
import { client, operationPath } from '../http/client.ts';
import { resourceFaults } from '../support/fhir-schema.ts';
import {
  bundleOf,
  count,
  gestationalAge,
  pressure,
  strip as stripResource,
  symptom as symptomResource,
} from '../support/resources.ts';
import { asOf } from './facts.ts';

describe('in the answer', () => {
  const at = '2025-03-10T09:00:00Z';
  const resources = [
    gestationalAge(at, 266),
    pressure('2025-03-09T20:00:00Z', 146, 92),
    pressure(at, 145, 92),
    stripResource(at, 'negative'),
    count(at, 'parity', 1),
    symptomResource(at, 'headache', false),
    symptomResource(at, 'visual-disturbance', false),
    symptomResource(at, 'chest-pain', false),
    symptomResource(at, 'dyspnoea', false),
    symptomResource(at, 'vaginal-bleeding', false),
  ];
  const input = bundleOf(resources);
  const options = { asOf: new Date(asOf).toISOString() };

  it('nothing is said of risk unless asked for', () => {
    const evaluation = evaluate(input, options);
    expect(evaluation.riskEstimates).toBeUndefined();
    expect(JSON.stringify(toAnswer(evaluation))).not.toContain('riskEstimates');
    expect(JSON.stringify(toFhirBundle(evaluation))).not.toContain('RiskAssessment');
  });

  it('the command line and the FHIR operation add them when asked, and refuse a switch that is no switch', async () => {
    const text = JSON.stringify(input);
    const said = (riskModels: boolean) =>
      assessText(text, { ...options, format: 'text', riskModels }, 0).output;
    expect(said(true)).toContain('3.6');
    expect(said(true)).toContain('not verified');
    expect(said(false)).not.toContain('3.6');
    const posted = (riskModels: string) =>
      client()
        .post(operationPath)
        .query({ ...options, riskModels })
        .set('Content-Type', 'application/fhir+json')
        .send(text);
    expect((await posted('true')).text).toContain('"resourceType":"RiskAssessment"');
    expect((await posted('false')).text).not.toContain('RiskAssessment');
    expect((await posted('yes')).status).toBe(400);
  });

  it('class, urgency and actions are the same with and without', () => {
    const { assessment } = evaluate(input, { ...options, riskModels: true });
    expect(assessment).toEqual(evaluate(input, options).assessment);
  });

  it('A40 stands in the JSON answer and as a valid, preliminary RiskAssessment in percent', () => {
    const evaluation = evaluate(input, { ...options, riskModels: true });
    expect(toAnswer(evaluation).riskEstimates?.[0]).toMatchObject({ percent: 3.6, verified: false });
    const bundle = toFhirBundle(evaluation);
    expect(resourceFaults(bundle)).toEqual([]);
    const found = bundle.entry?.flatMap(({ resource }) =>
      resource?.resourceType === 'RiskAssessment' ? [resource] : [],
    );
    expect(found).toHaveLength(1);
    expect(found?.[0]).toMatchObject({
      status: 'preliminary',
      subject: { reference: 'Patient/woman' },
      prediction: [{ probabilityDecimal: 3.6 }],
    });
    expect(found?.[0]?.basis).toContainEqual({ reference: 'Observation/r2' });
    expect(found?.[0]?.note?.[0]?.text).toContain('no reassurance');
  });
});

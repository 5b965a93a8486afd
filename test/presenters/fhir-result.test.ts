// The result Bundle of $assess-hypertension.
import type { GuidanceResponse, OperationOutcome, Parameters, Resource } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { toFhirBundle, toFhirBundleOfMany } from '../../src/presenters/fhir-result.ts';
import { toOperationOutcome } from '../../src/presenters/operation-outcome.ts';
import { assessment, evaluationOf, normalEvaluation } from './evaluation-builder.ts';
import { resourceFaults } from '../support/fhir-schema.ts';
import { emptyValues, textsOf, throughJson } from './walk.ts';

const bundle = toFhirBundle(evaluationOf());
const resources = (bundle.entry ?? []).flatMap((entry) => entry.resource ?? []);

function guidanceOf(result: typeof bundle): GuidanceResponse | undefined {
  return (result.entry ?? [])
    .flatMap((entry) => entry.resource ?? [])
    .find((each) => each.resourceType === 'GuidanceResponse');
}

function isParameters(resource: Resource): resource is Parameters {
  return resource.resourceType === 'Parameters';
}

function outputOf(result: typeof bundle): Parameters | undefined {
  return (guidanceOf(result)?.contained ?? []).find(isParameters);
}

describe('the result Bundle', () => {
  it('F-O01: is valid R4, with all it holds, for an emergency, a normal answer, several women, and no named woman', () => {
    const results = [
      bundle,
      toFhirBundle(normalEvaluation()),
      toFhirBundle(evaluationOf({ subject: undefined })),
      toFhirBundleOfMany([evaluationOf(), normalEvaluation({ subject: 'Patient/other' })]),
    ];
    expect(results.flatMap((result) => resourceFaults(throughJson(result)))).toEqual([]);
    expect(results.flatMap((result) => emptyValues(throughJson(result)))).toEqual([]);
  });

  it('F-C03: holds one GuidanceResponse, the Conditions, the referral, one OperationOutcome and Provenance', () => {
    expect(resources.map((resource) => resource.resourceType)).toEqual([
      'GuidanceResponse',
      'Condition',
      'ServiceRequest',
      'OperationOutcome',
      'Provenance',
    ]);
  });

  it('F-O02: has a urn:uuid fullUrl on every entry, each once, and every reference resolves inside or in the input', () => {
    const urls = (bundle.entry ?? []).map((entry) => entry.fullUrl ?? '');
    for (const url of urls) expect(url).toMatch(/^urn:uuid:[0-9a-f-]{36}$/);
    expect(new Set(urls).size).toBe(urls.length);
    const known = [...urls, '#output', 'Patient/asha', 'Observation/bp-1', 'Observation/headache'];
    const links = ['evaluationMessage', 'outputParameters', 'reasonReference', 'supportingInfo', 'subject'];
    const references = resources.flatMap((resource) =>
      Object.entries(throughJson(resource) as object)
        .filter(([name]) => links.includes(name))
        .flatMap(([, value]) => textsOf(value, 'reference')),
    );
    expect(references.length).toBeGreaterThan(5);
    expect(references.filter((reference) => !known.includes(reference))).toEqual([]);
  });

  it('has one result set for each woman when there are several', () => {
    const many = toFhirBundleOfMany([evaluationOf(), evaluationOf({ subject: 'Patient/other' })]);
    const types = (many.entry ?? []).map((entry) => entry.resource?.resourceType);
    expect(types.filter((type) => type === 'GuidanceResponse')).toHaveLength(2);
    expect(new Set((many.entry ?? []).map((entry) => entry.fullUrl)).size).toBe(types.length);
  });

  it('R-13: is the same bytes for the same evaluation', () => {
    expect(JSON.stringify(toFhirBundle(evaluationOf()))).toBe(JSON.stringify(bundle));
  });
});

describe('the GuidanceResponse', () => {
  it('names module, woman, time, message and output', () => {
    expect(guidanceOf(bundle)).toMatchObject({
      moduleCanonical: 'https://pregnancy-htn.example/fhir/PlanDefinition/book-2020|1.2.3',
      subject: { reference: 'Patient/asha' },
      occurrenceDateTime: '2026-11-24T04:00:00Z',
      outputParameters: { reference: '#output' },
    });
  });

  it('says success, data-requested when more would help, data-required when no class can be given', () => {
    const open = { ...assessment, classification: ['cannot-classify'] } as const;
    const status = [normalEvaluation(), evaluationOf(), evaluationOf({ assessment: open })].map(
      (evaluation) => guidanceOf(toFhirBundle(evaluation))?.status,
    );
    expect(status).toEqual(['success', 'data-requested', 'data-required']);
  });

  it('asks for each missing datum by our id and by LOINC', () => {
    const [requirement] = guidanceOf(bundle)?.dataRequirement ?? [];
    const codes = requirement?.codeFilter?.[0]?.code ?? [];
    expect(codes[0]).toMatchObject({ code: 'platelets' });
    // 777-3 platelets, terminology.csv.
    expect(codes.some((coding) => coding.system === 'http://loinc.org' && coding.code === '777-3')).toBe(
      true,
    );
  });
});

describe('the output Parameters', () => {
  const parameters = outputOf(bundle)?.parameter ?? [];

  it('carry the members of the JSON answer under the same names', () => {
    const names = new Set(parameters.map((parameter) => parameter.name));
    for (const name of [
      'classification',
      'urgency',
      'gestationalAge',
      'findings',
      'missing',
      'actions',
      'guideline',
      'asOf',
      'account',
    ]) {
      expect(names).toContain(name);
    }
  });

  it('repeat classification as valueCode, leading first, and give urgency as valueCode', () => {
    const two = outputOf(
      toFhirBundle(
        evaluationOf({
          assessment: { ...assessment, classification: ['eclampsia', 'superimposed-pre-eclampsia'] },
        }),
      ),
    );
    const codes = (two?.parameter ?? [])
      .filter((each) => each.name === 'classification')
      .map((each) => each.valueCode);
    expect(codes).toEqual(['eclampsia', 'superimposed-pre-eclampsia']);
    expect(parameters.find((each) => each.name === 'urgency')?.valueCode).toBe('emergency');
  });
});

describe('the OperationOutcome', () => {
  const outcome = resources.find(
    (resource): resource is OperationOutcome => resource.resourceType === 'OperationOutcome',
  );

  it('F-E01: has one issue for each entry received', () => {
    expect(outcome?.issue.map((issue) => [issue.severity, issue.code])).toEqual([
      ['information', 'informational'],
      ['information', 'informational'],
      ['information', 'informational'],
      ['warning', 'value'],
    ]);
  });

  it('F-E02: names the place, our code and a sentence', () => {
    expect(outcome?.issue[3]).toMatchObject({
      details: { coding: [{ code: 'unit-unknown' }], text: 'The unit is not known: send UCUM.' },
      expression: ['Bundle.entry[3].resource.valueQuantity'],
    });
  });

  it('F-E01: says "all fine" when there is no issue, and names ours as fatal', () => {
    expect(toOperationOutcome([]).issue).toHaveLength(1);
    const issue = {
      severity: 'error',
      code: 'internal',
      type: 'exception',
      expression: '',
      message: 'Failed.',
    } as const;
    const [fatal] = toOperationOutcome([issue]).issue;
    expect([fatal?.severity, fatal?.code, fatal?.expression]).toEqual(['fatal', 'exception', undefined]);
  });

  it('F-E03: falls back to processing for an issue type FHIR does not know', () => {
    const issue = {
      severity: 'warning',
      code: 'x',
      type: 'no-such-type',
      expression: 'Bundle',
      message: 'm',
    } as const;
    expect(toOperationOutcome([issue]).issue[0]?.code).toBe('processing');
  });
});

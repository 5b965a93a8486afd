// Everything we emit obeys the schema and the invariants of R4 (checklist F-O01, F-O02, F-J02).
import { describe, expect, it } from 'vitest';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { evaluateEach } from '../src/evaluate-each.ts';
import { guidelineIds } from '../src/guidelines/registry.ts';
import { toFhirBundleOfMany } from '../src/presenters/fhir-result.ts';
import { toPlanBundle } from '../src/presenters/plan-result.ts';
import { toSuggestions } from '../src/presenters/suggestions.ts';
import { readInputs } from './support/data-files.ts';
import { brokenRules } from './support/fhir-rules.ts';
import { resourceFaults } from './support/fhir-schema.ts';

const data = readInputs('test/data').filter(({ name }) => !name.includes('cms22') || name.endsWith('0'));
const stories = readdirSync('examples')
  .filter((name) => existsSync(`examples/${name}/request.json`))
  .map((name) => {
    const input: unknown = JSON.parse(readFileSync(`examples/${name}/request.json`, 'utf8'));
    return { name, input, asOf: '2025-03-14T15:10:00Z' };
  })
  .filter(({ input }) => typeof input === 'object' && input !== null && !('hook' in input));

const faultsOf = (resource: object): readonly string[] => [
  ...resourceFaults(resource),
  ...brokenRules(resource),
];

describe('emitted resources', () => {
  it('F-J02: the check itself sees what the schema cannot', () => {
    expect(brokenRules({ resourceType: 'GuidanceResponse' })).toEqual([
      'GuidanceResponse min module',
      'GuidanceResponse min status',
    ]);
    // con-5: no clinicalStatus when entered in error.
    const condition = {
      resourceType: 'Condition',
      subject: { reference: 'Patient/1' },
      clinicalStatus: {
        coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-clinical', code: 'active' }],
      },
      verificationStatus: {
        coding: [
          { system: 'http://terminology.hl7.org/CodeSystem/condition-ver-status', code: 'entered-in-error' },
        ],
      },
    };
    expect(brokenRules(condition)).toContain('Condition con-5');
  });

  it.each(guidelineIds)('F-O01: obey schema and invariants under %s, for the stories', (guideline) => {
    for (const { name, input, asOf } of stories) {
      const evaluations = evaluateEach(input, { asOf, guideline });
      expect(faultsInBundle(toFhirBundleOfMany(evaluations)), name).toEqual([]);
      for (const evaluation of evaluations) {
        expect(faultsInBundle(toPlanBundle(evaluation)), name).toEqual([]);
        const { conditions, referral } = toSuggestions(evaluation);
        const suggested = [
          ...conditions.map(({ resource }) => resource),
          ...(referral === undefined ? [] : [referral]),
        ];
        expect(suggested.flatMap(faultsOf), name).toEqual([]);
      }
    }
  });

  it('F-O01: obey schema and invariants for the collected data', { timeout: 60_000 }, () => {
    for (const { name, input, asOf, subjects } of data) {
      const subject = subjects[0];
      const evaluations = evaluateEach(input, { asOf, ...(subject === undefined ? {} : { subject }) });
      expect(faultsInBundle(toFhirBundleOfMany(evaluations)), name).toEqual([]);
    }
  });
});

interface AnyBundle {
  readonly resourceType: 'Bundle';
  readonly entry?:
    readonly { readonly fullUrl?: string | undefined; readonly resource?: object | undefined }[] | undefined;
}

function faultsInBundle(bundle: AnyBundle): readonly string[] {
  const entries = bundle.entry ?? [];
  const missingUrl = entries.filter(({ fullUrl }) => !/^urn:uuid:/.test(fullUrl ?? ''));
  const untraceable = entries.filter(
    ({ resource }) =>
      !/"source":"[^"]+\/PlanDefinition\/[\w-]+\|[\d.]+#[0-9a-f]{64}"/.test(JSON.stringify(resource)),
  );
  return [
    ...brokenRules(bundle),
    ...entries.flatMap(({ resource }) => (resource === undefined ? [] : faultsOf(resource))),
    ...missingUrl.map(() => 'an entry without urn:uuid'),
    ...untraceable.map(() => 'an entry without its rule set'),
  ];
}

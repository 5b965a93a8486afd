// Each invariant of ours against its FHIRPath, expression by expression. Expressions: R4 4.0.1 StructureDefinitions.
import fc from 'fast-check';
import fhirpath from 'fhirpath';
import r4 from 'fhirpath/fhir-context/r4/index.js';
import { describe, expect, it } from 'vitest';
import { faultsOfResource } from '../../../src/bundle/strict/validate-strict.ts';

type Json = Record<string, unknown>;

const clinical = 'http://terminology.hl7.org/CodeSystem/condition-clinical';
const verification = 'http://terminology.hl7.org/CodeSystem/condition-ver-status';

/** Key, where it is evaluated from, and the published expression. */
const published: readonly (readonly [key: string, type: string, expression: string])[] = [
  ['obs-3', 'Observation', 'Observation.referenceRange.all(low.exists() or high.exists() or text.exists())'],
  ['obs-6', 'Observation', 'Observation.all(dataAbsentReason.empty() or value.empty())'],
  [
    'obs-7',
    'Observation',
    'Observation.all(value.empty() or component.code.where(coding.intersect(%resource.code.coding).exists()).empty())',
  ],
  ['con-1', 'Condition', 'Condition.stage.all(summary.exists() or assessment.exists())'],
  ['con-2', 'Condition', 'Condition.evidence.all(code.exists() or detail.exists())'],
  [
    'con-4',
    'Condition',
    `Condition.all(abatement.empty() or clinicalStatus.coding.where(system='${clinical}' and (code='resolved' or code='remission' or code='inactive')).exists())`,
  ],
  [
    'con-5',
    'Condition',
    `Condition.all(verificationStatus.coding.where(system='${verification}' and code='entered-in-error').empty() or clinicalStatus.empty())`,
  ],
  [
    'pat-1',
    'Patient',
    'Patient.contact.all(name.exists() or telecom.exists() or address.exists() or organization.exists())',
  ],
  ['prr-1', 'ServiceRequest', 'ServiceRequest.all(orderDetail.empty() or code.exists())'],
  ['qty-3', 'Observation', 'Observation.value.all(code.empty() or system.exists())'],
  [
    'per-1',
    'Observation',
    'Observation.effective.all(start.hasValue().not() or end.hasValue().not() or (start <= end))',
  ],
  ['dom-2', 'Observation', 'Observation.all(contained.contained.empty())'],
  ['bdl-1', 'Bundle', "Bundle.all(total.empty() or (type = 'searchset') or (type = 'history'))"],
  ['bdl-2', 'Bundle', "Bundle.all(entry.search.empty() or (type = 'searchset'))"],
  [
    'bdl-3',
    'Bundle',
    "Bundle.all(entry.all(request.exists() = (%resource.type = 'batch' or %resource.type = 'transaction' or %resource.type = 'history')))",
  ],
  [
    'bdl-4',
    'Bundle',
    "Bundle.all(entry.all(response.exists() = (%resource.type = 'batch-response' or %resource.type = 'transaction-response' or %resource.type = 'history')))",
  ],
  ['bdl-5', 'Bundle', 'Bundle.entry.all(resource.exists() or request.exists() or response.exists())'],
  [
    'bdl-7',
    'Bundle',
    "Bundle.all((type = 'history') or entry.where(fullUrl.exists()).select(fullUrl&resource.meta.versionId).isDistinct())",
  ],
  ['bdl-8', 'Bundle', "Bundle.entry.where(fullUrl.exists()).all(fullUrl.contains('/_history/').not())"],
  [
    'bdl-9',
    'Bundle',
    "Bundle.all(type = 'document' implies (identifier.system.exists() and identifier.value.exists()))",
  ],
  ['bdl-10', 'Bundle', "Bundle.all(type = 'document' implies (timestamp.hasValue()))"],
  ['bdl-11', 'Bundle', "Bundle.all(type = 'document' implies entry.first().resource.is(Composition))"],
  ['bdl-12', 'Bundle', "Bundle.all(type = 'message' implies entry.first().resource.is(MessageHeader))"],
  [
    'inv-1',
    'Parameters',
    'Parameters.parameter.all((part.exists() and value.empty() and resource.empty()) or (part.empty() and (value.exists() xor resource.exists())))',
  ],
];

const model = r4 as Parameters<typeof fhirpath.compile>[1];
const compiled = new Map(published.map(([key, , expression]) => [key, fhirpath.compile(expression, model)]));

function holdsByPath(key: string, resource: Json): boolean {
  const answer = compiled.get(key)?.(resource, { resource, rootResource: resource });
  const list: readonly unknown[] = Array.isArray(answer) ? answer : [];
  return list.length === 0 || list[0] === true;
}

const holdsByOurs = (key: string, resource: Json): boolean =>
  !faultsOfResource(resource).some(({ code }) => code === key);

const maybe = (name: string, ...values: unknown[]) =>
  fc
    .constantFrom(...[undefined, ...values])
    .map((value): Json => (value === undefined ? {} : { [name]: value }));

/** Without a type no invariant of a Bundle can be read: that is a fault of its own. */
const always = (name: string, ...values: unknown[]) =>
  fc.constantFrom(...values).map((value): Json => ({ [name]: value }));

const merged = (type: string, ...parts: fc.Arbitrary<Json>[]): fc.Arbitrary<Json> =>
  fc
    .tuple(...parts)
    .map((each) => each.reduce<Json>((all, one) => ({ ...all, ...one }), { resourceType: type }));

const coding = (code: string, system = 'http://loinc.org'): Json => ({ coding: [{ system, code }] });
const arbitraries: Readonly<Record<string, fc.Arbitrary<Json>>> = {
  Observation: merged(
    'Observation',
    maybe('status', 'final'),
    maybe('code', coding('8480-6'), coding('85354-9')),
    maybe('dataAbsentReason', coding('unknown', 'urn:x')),
    maybe(
      'valueQuantity',
      { value: 1 },
      { value: 1, code: 'mm[Hg]' },
      { value: 1, code: 'x', system: 'urn:x' },
    ),
    maybe(
      'component',
      [{ code: coding('8480-6') }],
      [{ code: coding('8480-6') }, { code: coding('85354-9') }],
      [{ code: { coding: [{ code: '8480-6', system: 'http://loinc.org' }] } }],
    ),
    maybe('referenceRange', [{ text: 'x' }], [{ low: { value: 1 } }, { age: { low: { value: 1 } } }]),
    maybe(
      'effectivePeriod',
      { start: '2026-01-01T10:00:00Z', end: '2026-01-01T09:00:00Z' },
      { start: '2026-01-01', end: '2026-01-02' },
      { start: '2026-01-03', end: '2026-01-02' },
      { start: '2026-01-03' },
    ),
    maybe('contained', [
      { resourceType: 'Device', id: 'd', contained: [{ resourceType: 'Device', id: 'e' }] },
    ]),
  ),
  Condition: merged(
    'Condition',
    maybe('clinicalStatus', coding('active', clinical), coding('resolved', clinical), coding('resolved')),
    maybe('verificationStatus', coding('entered-in-error', verification), coding('confirmed', verification)),
    maybe('abatementDateTime', '2026-01-01'),
    maybe('abatementString', 'x'),
    maybe('stage', [{ summary: { text: 'x' } }], [{ type: { text: 'x' } }]),
    maybe('evidence', [{ code: [{ text: 'x' }] }], [{ id: 'x' }]),
  ),
  Patient: merged('Patient', maybe('contact', [{ name: { text: 'x' } }], [{ gender: 'female' }])),
  ServiceRequest: merged(
    'ServiceRequest',
    maybe('orderDetail', [{ text: 'x' }]),
    maybe('code', { text: 'x' }),
  ),
  Bundle: merged(
    'Bundle',
    always(
      'type',
      'searchset',
      'collection',
      'history',
      'batch',
      'transaction',
      'batch-response',
      'document',
      'message',
    ),
    maybe('total', 1),
    maybe('identifier', { system: 'urn:x', value: '1' }, { value: '1' }),
    maybe('timestamp', '2026-01-01T00:00:00Z'),
    maybe(
      'entry',
      [{ fullUrl: 'urn:a', resource: { resourceType: 'Composition' } }],
      [{ resource: { resourceType: 'MessageHeader' }, search: { mode: 'match' } }],
      [
        { request: { method: 'GET', url: 'x' } },
        { request: { method: 'GET', url: 'y' }, response: { status: '200' } },
      ],
      [
        { fullUrl: 'urn:a', response: { status: '200' } },
        { fullUrl: 'urn:a', response: { status: '200' } },
      ],
      [{ fullUrl: 'http://x/Patient/1/_history/2', resource: { resourceType: 'Patient', id: '1' } }],
      [{ fullUrl: 'urn:a' }],
    ),
  ),
  Parameters: merged(
    'Parameters',
    maybe(
      'parameter',
      [{ name: 'a', valueString: 'x' }],
      [{ name: 'a' }],
      [{ name: 'a', valueString: 'x', resource: { resourceType: 'Patient' } }],
      [{ name: 'a', part: [{ name: 'b', valueString: 'x' }] }],
      [{ name: 'a', part: [{ name: 'b', valueString: 'x' }], valueString: 'x' }],
    ),
  ),
};

describe('strict invariants', () => {
  it.each(published)('%s says of a %s what its published FHIRPath says', (key, type) => {
    const seen = new Set<boolean>();
    fc.assert(
      fc.property(arbitraries[type] ?? fc.constant({}), (resource) => {
        const holds = holdsByPath(key, resource);
        seen.add(holds);
        expect([key, resource, holdsByOurs(key, resource)]).toEqual([key, resource, holds]);
      }),
      { seed: 4, numRuns: 300 },
    );
    expect([...seen].sort()).toEqual([false, true]);
  });
});

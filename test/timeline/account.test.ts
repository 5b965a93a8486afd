// What became of each resource: every kind goes to its reader, and each ends once, with the reason of its own.
import type { FhirResource, Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { readBundle } from '../../src/bundle/read-bundle.ts';
import type { BuiltTimeline } from '../../src/timeline/build-timeline.ts';
import { buildTimeline } from '../../src/timeline/build-timeline.ts';
import {
  allergy,
  birth,
  bundleOf,
  condition,
  lab,
  loinc,
  observation,
  ordered,
  patient,
  pressure,
  quantity,
  snomed,
  woman,
} from '../support/resources.ts';
import { built, codesOf, defaultAsOf } from './build.ts';
import { values as timelineValues } from './values.ts';

const at = '2026-02-01T10:00:00Z';
const later = '2026-02-20';
const subject = { reference: woman };
const request = (fields: object): FhirResource => ({
  resourceType: 'ServiceRequest',
  status: 'active',
  intent: 'order',
  subject,
  code: snomed('183548008'),
  ...fields,
});
const relative = (fields: object): FhirResource => ({
  resourceType: 'FamilyMemberHistory',
  status: 'completed',
  patient: subject,
  relationship: { text: 'Mother' },
  condition: [{ code: snomed('398254007') }],
  ...fields,
});
const whysOf = ({ notNeeded }: BuiltTimeline) => notNeeded.map(({ why }) => why);

describe('each kind of resource', () => {
  it('a service request is a request on the chart', () => {
    const { timeline } = built([request({ authoredOn: '2026-01-31' })]);
    expect(timeline.requests).toMatchObject([{ status: 'active', at: { text: '2026-01-31' } }]);
    expect(built([request({})]).timeline.requests[0]).not.toHaveProperty('at');
    expect(whysOf(built([request({ code: { text: 'referral' } })]))).toEqual([
      'The request has no code to compare a suggestion with.',
    ]);
  });

  it.each([
    ['when it was written', { authoredOn: '2026-01-30', occurrenceDateTime: '2026-01-31' }, '2026-01-30'],
    ['else when it is to be', { occurrenceDateTime: '2026-01-31' }, '2026-01-31'],
    ['else from when it is to be', { occurrencePeriod: { start: '2026-01-29' } }, '2026-01-29'],
  ])('a request is dated by %s', (_, fields, text) => {
    expect(built([request(fields)]).timeline.requests[0]?.at?.text).toBe(text);
  });

  it('a request without status or intent has them as unknown', () => {
    expect(built([request({ intent: undefined })]).timeline.requests[0]?.intent).toBe('unknown');
  });

  it('an allergy is a condition, with the medicines it is to; one to aspirin is its own', () => {
    expect(built([allergy('labetalol')]).timeline.conditions).toMatchObject([
      { condition: 'medicine-allergy', allergicTo: ['labetalol'] },
    ]);
    expect(built([allergy('aspirin')]).timeline.conditions).toMatchObject([
      { condition: 'aspirin-allergy', allergicTo: ['aspirin'] },
    ]);
    const coded = { ...condition('epilepsy', '2026-01-01'), code: snomed('293586001') };
    expect(built([coded]).timeline.conditions).toMatchObject([
      { condition: 'aspirin-allergy', allergicTo: ['aspirin'] },
    ]);
    expect(built([condition('epilepsy', '2026-01-01')]).timeline.conditions[0]).not.toHaveProperty(
      'allergicTo',
    );
  });

  it('a family history is a condition, in the words of the relative and the disease', () => {
    expect(built([relative({})]).timeline.conditions).toMatchObject([
      { condition: 'family-history-of-pre-eclampsia', asSent: 'Mother: http://snomed.info/sct|398254007' },
    ]);
    const worded = relative({ condition: [{ code: snomed('398254007', 'Pre-eclampsia') }] });
    expect(built([worded]).timeline.conditions[0]?.asSent).toBe('Mother: Pre-eclampsia');
    const second = relative({
      relationship: {
        coding: [{ system: 'http://terminology.hl7.org/CodeSystem/v3-RoleCode', code: 'MTH' }],
      },
      condition: [{ code: snomed('84757009') }, { code: snomed('15938005', 'Eclampsia') }],
    });
    expect(built([second]).timeline.conditions[0]?.asSent).toBe('relative: Eclampsia');
  });

  it.each([
    ['another relative', { relationship: { text: 'Father' } }, /Only the history of mother and sisters/],
    ['no relative', { relationship: undefined }, /Only the history of mother and sisters/],
    ['another disease', { condition: [{ code: snomed('84757009') }] }, /No rule asks/],
    ['no disease', { condition: undefined }, /No rule asks/],
  ])('a family history of %s is not needed', (_, fields, why) => {
    expect(whysOf(built([relative(fields)]))[0]).toMatch(why);
  });

  it.each<[string, FhirResource, string]>([
    [
      'an encounter',
      { resourceType: 'Encounter', status: 'finished', class: { code: 'AMB' }, subject },
      'read for the time and setting of observations',
    ],
    ['a specimen', { resourceType: 'Specimen', subject }, 'read for the state of a sample'],
    [
      'another observation',
      observation(loinc('8302-2'), at, { valueQuantity: quantity(160, 'cm') }),
      'no rule asks for this observation',
    ],
    [
      'another procedure',
      { resourceType: 'Procedure', status: 'completed', subject, code: snomed('80146002') },
      'no rule asks for this Procedure',
    ],
  ])('%s is not needed, and why is said', (_, sent, why) => {
    expect(whysOf(built([sent]))).toEqual([why]);
  });

  it('a helper without a woman of its own is not needed either', () => {
    const medication: FhirResource = { resourceType: 'Medication', id: 'm', code: { text: 'x' } };
    const device: FhirResource = { resourceType: 'Device', id: 'd', patient: subject };
    expect(whysOf(built([medication, device]))).toEqual([
      'read for the name of a medicine',
      'read for how a pressure was taken',
    ]);
  });
});

describe('a record without a time', () => {
  it('of a symptom counts, undated; of a finding in the code is dated by its own', () => {
    const { timeline, setAside } = built([
      observation(snomed('25064002'), undefined, { valueBoolean: true }),
    ]);
    expect(timeline.symptoms).toMatchObject([{ symptom: 'headache' }]);
    expect(timeline.symptoms[0]).not.toHaveProperty('at');
    expect(setAside).toEqual([]);
    const growth = built([observation(snomed('22033007'), at, { valueBoolean: true })]).timeline;
    expect(growth.conditions[0]?.onset?.text).toBe(at);
  });

  it('of no woman, or of a woman without a date of birth, is read all the same', () => {
    const values = { asOf: Date.parse(defaultAsOf), values: timelineValues };
    const alone = readBundle({
      resourceType: 'Bundle',
      type: 'collection',
      entry: [{ resource: pressure(at, 150, 95) }],
    });
    expect(buildTimeline(alone, values).timeline.woman).not.toHaveProperty('birthDay');
    expect(buildTimeline(alone, values).timeline.pressures).toHaveLength(1);
    const { birthDate: _, ...rest } = patient();
    const ageless = buildTimeline(readBundle(bundleOf([], rest)), values);
    expect(ageless.timeline.woman).not.toHaveProperty('birthDay');
    expect(ageless.issues).toEqual([]);
  });
});

describe('facts dated after the evaluation', () => {
  it('an order may begin later', () => {
    const { timeline, setAside } = built([{ ...ordered('labetalol', later), status: 'draft' }]);
    expect(timeline.medicines).toMatchObject([{ status: 'ordered', start: { text: later } }]);
    expect(setAside).toEqual([]);
  });

  it.each<[string, FhirResource]>([
    ['an order in force', ordered('labetalol', later)],
    ['a request', request({ authoredOn: later })],
    ['a condition recorded later', { ...condition('epilepsy', '2026-01-01'), recordedDate: later }],
    [
      'a status of pregnancy',
      observation(loinc('82810-3'), later, { valueCodeableConcept: snomed('77386006') }),
    ],
    ['a count', observation(loinc('11977-6'), later, { valueInteger: 1 })],
  ])('%s is set aside', (_, sent) => {
    expect(codesOf(built([sent]))).toEqual(['time-in-future']);
  });
});

describe('states of pregnancy', () => {
  const status = (code: string, offset: string): Observation =>
    observation(loinc('82810-3'), offset, { valueCodeableConcept: snomed(code) });
  const remarksOf = (...sent: readonly FhirResource[]) => built(sent).timeline.pregnancy.remarks;

  it('the newest counts, whatever the order received', () => {
    const [no, yes] = [status('60001007', '2026-01-10'), status('77386006', '2026-01-20')];
    expect([remarksOf(no, yes), remarksOf(yes, no)]).toEqual([[], []]);
    const [newNo, oldYes] = [status('60001007', '2026-01-20'), status('77386006', '2026-01-10')];
    const remark = ['Recorded as not pregnant on 2026-01-20.'];
    expect([remarksOf(newNo, oldYes), remarksOf(oldYes, newNo)]).toEqual([remark, remark]);
  });

  it('one that says neither is no sign of a new pregnancy', () => {
    const { pregnancy } = built([birth('2025-10-01'), status('152231000119106', '2026-01-20')]).timeline;
    expect(pregnancy.birth).toBeDefined();
    expect(pregnancy.remarks).toEqual([]);
  });
});

describe('counts of one moment', () => {
  it('that agree are told by the same one, whatever the order received', () => {
    const coded = [loinc('11977-6'), snomed('364325004')].map((code, index) => ({
      ...observation(code, at, { valueInteger: 2 }),
      id: `c${String(index)}`,
    }));
    const [one, other] = [built(coded), built([...coded].reverse())];
    expect(one.timeline.woman.parity?.count).toBe(2);
    expect(one.timeline.woman).toEqual(other.timeline.woman);
    expect([one.notNeeded.length, other.notNeeded.length]).toEqual([1, 1]);
  });
});

describe('a size of the uterus', () => {
  it.each<[string, Partial<Observation>, boolean]>([
    ['of 20 cm or more', { valueQuantity: { ...quantity(20, 'cm'), comparator: '>=' } }, true],
    ['of at most 24 cm', { valueQuantity: { ...quantity(24, 'cm'), comparator: '<=' } }, false],
    ['of 200 mm', { valueQuantity: quantity(200, 'mm') }, true],
    ['of 199 mm', { valueQuantity: quantity(199, 'mm') }, false],
  ])('%s puts her past 20 weeks: %j %s', (_, fields, isPast) => {
    const { pregnancy } = built([observation(loinc('11881-0'), at, fields)]).timeline;
    expect(pregnancy.assumedFrom20Weeks !== undefined).toBe(isPast);
  });

  it('no other result of such a number does', () => {
    expect(built([lab(at, 'heart-rate', 80, '/min')]).timeline.pregnancy).not.toHaveProperty(
      'assumedFrom20Weeks',
    );
  });

  it('is not used after a birth', () => {
    const { pregnancy } = built([birth('2026-01-25'), lab(at, 'fundal-height', 24, 'cm')]).timeline;
    expect(pregnancy.birth).toBeDefined();
    expect(pregnancy).not.toHaveProperty('assumedFrom20Weeks');
  });
});

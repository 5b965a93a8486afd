// Section 4.1 of the FHIR checklist (status) and rows F-M01, F-M02, F-M09, F-M10, F-M03, F-M04.
import { describe, expect, it } from 'vitest';
import { bundle, half, issueCodes, patient, pressure, read, setAsideOf, usableOf } from './make.ts';
import type { Json } from './make.ts';
import { readBundle } from '../../src/bundle/read-bundle.ts';

function about(resourceType: string, more: Json): Json {
  const key =
    resourceType === 'AllergyIntolerance' || resourceType === 'FamilyMemberHistory' ? 'patient' : 'subject';
  return { resourceType, id: 'x', [key]: { reference: 'Patient/1' }, ...more };
}

describe('4.1 status of an Observation', () => {
  it.each(['final', 'amended', 'corrected'])('%s is used', (status) => {
    expect(read(pressure('a', { status })).usable).toMatchObject([{ preliminary: false }]);
  });

  it('preliminary is used, and said', () => {
    expect(read(pressure('a', { status: 'preliminary' })).usable).toMatchObject([{ preliminary: true }]);
  });

  it.each([
    ['entered-in-error', 'entered-in-error'],
    ['cancelled', 'cancelled'],
    ['registered', 'status-not-usable'],
    ['unknown', 'status-not-usable'],
    ['done', 'status-not-usable'],
    [7, 'status-not-usable'],
    [undefined, 'status-missing'],
    [null, 'status-missing'],
  ])('%s is set aside as %s', (status, code) => {
    const result = read(patient(), pressure('a', { status }));
    expect(result.setAside).toMatchObject([{ code, expression: 'Bundle.entry[1].resource.status' }]);
    expect(usableOf(result)).toEqual(['Patient/1']);
  });

  it('cancelled with a reason for the absent value is cancelled', () => {
    const dataAbsentReason = { coding: [{ code: 'not-performed' }] };
    expect(setAsideOf(read(pressure('a', { status: 'cancelled', dataAbsentReason })))).toEqual([
      'Observation/a cancelled',
    ]);
  });

  it('what was derived only from results in error falls with them, however long the chain and whatever the order', () => {
    const mean = (id: string, ...from: readonly string[]): Json =>
      pressure(id, {
        effectiveDateTime: `2026-03-0${id.length}`,
        derivedFrom: from.map((reference) => ({ reference: `Observation/${reference}` })),
      });
    const resources = [mean('ccc', 'bb'), mean('bb', 'a'), pressure('a', { status: 'entered-in-error' })];
    for (const order of [resources, [...resources].reverse()]) {
      const codes = new Set(read(...order).setAside.map((item) => item.code));
      expect([...codes]).toEqual(['entered-in-error']);
      expect(read(...order).usable).toEqual([]);
    }
    const partly = read(
      mean('dddd', 'a', 'sound'),
      pressure('a', { status: 'entered-in-error' }),
      pressure('sound'),
    );
    expect(usableOf(partly)).toEqual(['Observation/dddd', 'Observation/sound']);
    expect(issueCodes(partly)).toEqual(['derived-from-error']);
  });

  it('the members of a panel in error stay', () => {
    const panel = pressure('panel', {
      status: 'entered-in-error',
      hasMember: [{ reference: 'Observation/a' }],
    });
    expect(usableOf(read(panel, pressure('a')))).toEqual(['Observation/a']);
  });
});

describe('status of other resources', () => {
  const verification = (code: string): Json => ({ verificationStatus: { coding: [{ code }] } });
  it.each<[string, string, Json, string]>([
    ['F-M09', 'Condition', verification('refuted'), 'status-not-usable'],
    ['F-M09', 'Condition', verification('entered-in-error'), 'entered-in-error'],
    ['F-M02', 'AllergyIntolerance', verification('refuted'), 'status-not-usable'],
    ['F-M02', 'MedicationStatement', { status: 'entered-in-error' }, 'entered-in-error'],
    ['F-M02', 'MedicationStatement', { status: 'not-taken' }, 'status-not-usable'],
    ['F-M02', 'MedicationAdministration', { status: 'not-done' }, 'status-not-usable'],
    ['F-M02', 'MedicationRequest', { status: 'active', doNotPerform: true }, 'status-not-usable'],
    ['F-M02', 'MedicationRequest', { status: 'cancelled' }, 'cancelled'],
    ['F-M02', 'ServiceRequest', { status: 'entered-in-error' }, 'entered-in-error'],
    ['F-M02', 'ServiceRequest', { status: 'active', doNotPerform: true }, 'status-not-usable'],
    ['F-M02', 'Procedure', { status: 'not-done' }, 'status-not-usable'],
    ['F-M02', 'Procedure', { status: 'preparation' }, 'status-not-usable'],
    ['F-M10', 'Encounter', { status: 'cancelled' }, 'cancelled'],
    ['F-M10', 'Encounter', { status: 'entered-in-error' }, 'entered-in-error'],
  ])('%s a %s with %j is set aside as %s', (_row, type, more, code) => {
    expect(setAsideOf(read(about(type, more)))).toEqual([`${type}/x ${code}`]);
  });

  it.each<[string, Json]>([
    ['Condition', verification('provisional')],
    ['Condition', {}],
    ['MedicationStatement', { status: 'stopped' }],
    ['MedicationRequest', { status: 'completed' }],
    ['ServiceRequest', { status: 'revoked' }],
    ['Procedure', { status: 'completed' }],
    ['Encounter', { status: 'finished' }],
    ['FamilyMemberHistory', { status: 'completed' }],
  ])('F-M02, F-M09 a %s with %j is handed on', (type, more) => {
    expect(usableOf(read(about(type, more)))).toEqual([`${type}/x`]);
  });

  it('F-M03, F-M04 a replaced Patient and a part of a resource are said', () => {
    const result = read(
      patient('1', { link: [{ type: 'replaced-by', other: { reference: 'Patient/2' } }] }),
      pressure('a', { meta: { tag: [{ code: 'SUBSETTED' }] } }),
    );
    expect(issueCodes(result)).toEqual(['patient-replaced', 'partial-resource']);
    expect(result.usable).toHaveLength(2);
  });
});

describe('F-M01 unknown modifiers', () => {
  const modifierExtension = [{ url: 'https://example.org/not', valueBoolean: true }];
  it.each<[string, Json]>([
    ['modifierExtension', { modifierExtension }],
    [
      'component[1].modifierExtension',
      { component: [half('8480-6', 1), { ...half('8462-4', 1), modifierExtension }] },
    ],
    [
      'component[0].referenceRange[0].modifierExtension',
      { component: [{ referenceRange: [{ modifierExtension }] }] },
    ],
    ['referenceRange[0].modifierExtension', { referenceRange: [{ modifierExtension }] }],
    ['effectiveTiming.modifierExtension', { effectiveTiming: { modifierExtension } }],
    ['implicitRules', { implicitRules: 'https://example.org/rules' }],
  ])('%s excludes the Observation, and names the element', (element, more) => {
    const result = readBundle(bundle([pressure('a', more)]), {});
    expect(result.setAside).toMatchObject([
      { code: 'modifier-not-understood', expression: `Bundle.entry[0].resource.${element}` },
    ]);
  });

  it('in a dosage it excludes the medication; an empty list and an ordinary extension exclude nothing', () => {
    const medication = about('MedicationRequest', {
      status: 'active',
      dosageInstruction: [{ modifierExtension }],
    });
    expect(setAsideOf(read(medication))).toEqual(['MedicationRequest/x modifier-not-understood']);
    const plain = pressure('a', { modifierExtension: [], extension: [{ url: 'https://example.org/note' }] });
    expect(usableOf(read(plain))).toEqual(['Observation/a']);
  });
});

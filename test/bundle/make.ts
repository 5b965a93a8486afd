// Small resources and bundles for the tests of the reading.
import { readBundle } from '../../src/bundle/read-bundle.ts';
import type { ReadBundle } from '../../src/bundle/read-bundle-types.ts';

export type Json = Record<string, unknown>;

const BP = { coding: [{ system: 'http://loinc.org', code: '85354-9' }] };

export function patient(id = '1', more: Json = {}): Json {
  return { resourceType: 'Patient', id, ...more };
}

/** A blood pressure of Patient/1. */
export function pressure(id: string, more: Json = {}): Json {
  return {
    resourceType: 'Observation',
    id,
    status: 'final',
    code: BP,
    subject: { reference: 'Patient/1' },
    effectiveDateTime: `2026-02-01T10:00:00Z`,
    component: [half('8480-6', 152), half('8462-4', 98)],
    ...more,
  };
}

export function half(code: string, value: number): Json {
  return {
    code: { coding: [{ system: 'http://loinc.org', code }] },
    valueQuantity: { value, unit: 'mmHg', system: 'http://unitsofmeasure.org', code: 'mm[Hg]' },
  };
}

export function laboratory(id: string, code: string, more: Json = {}): Json {
  return pressure(id, {
    code: { coding: [{ system: 'http://loinc.org', code }] },
    component: undefined,
    valueQuantity: { value: 240, unit: '10*3/uL', system: 'http://unitsofmeasure.org', code: '10*3/uL' },
    ...more,
  });
}

export function bundle(resources: readonly unknown[], more: Json = {}): Json {
  return {
    resourceType: 'Bundle',
    type: 'collection',
    entry: resources.map((resource) => ({ resource })),
    ...more,
  };
}

export function entries(...list: readonly Json[]): Json {
  return { resourceType: 'Bundle', type: 'collection', entry: list };
}

export function usableOf(read: ReadBundle): readonly string[] {
  return read.usable.map((received) => received.reference);
}

/** `Observation/1 entered-in-error`, one line per resource set aside. */
export function setAsideOf(read: ReadBundle): readonly string[] {
  return read.setAside.map((item) => `${item.reference} ${item.code}`);
}

export function issueCodes(read: ReadBundle): readonly string[] {
  return read.issues.map((issue) => issue.code);
}

export function read(...resources: readonly unknown[]): ReadBundle {
  return readBundle(bundle(resources), {});
}

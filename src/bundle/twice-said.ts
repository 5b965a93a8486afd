// Does an observation say the same thing twice, so that nobody can tell which is meant?
import type { ResourceJson } from './json.ts';
import type { Reason } from './ledger.ts';

const isUpper = (code: number): boolean => code >= 65 && code <= 90;

/**
 * Two values, two effective times, or a value beside the reason why there is none.
 *
 * Given    resource  of any type; only an Observation is looked at
 * Returns  undefined when each is said once; else the reason, naming the second member
 * Throws   never
 * Source   FHIR R4 4.0.1 choice of data types, obs-6; F-V01, F-V02
 */
export function saidTwice(resource: ResourceJson): Reason | undefined {
  if (resource.resourceType !== 'Observation') return undefined;
  let value: string | undefined;
  let effective: string | undefined;
  for (const name in resource) {
    if (name.startsWith('value') && isUpper(name.charCodeAt(5))) {
      if (value !== undefined) return ambiguous('value-ambiguous', name, value);
      value = name;
    } else if (name.startsWith('effective') && isUpper(name.charCodeAt(9))) {
      if (effective !== undefined) return ambiguous('time-invalid', name, effective);
      effective = name;
    }
  }
  if (value === undefined || resource.dataAbsentReason === undefined) return undefined;
  const message = 'A value and a reason for its absence contradict each other: send one of them.';
  return { code: 'value-ambiguous', element: 'dataAbsentReason', message };
}

function ambiguous(code: Reason['code'], element: string, first: string): Reason {
  return {
    code,
    element,
    message: `Only one of ${first} and ${element} may be sent: keep the one that is meant.`,
  };
}

// One defect of a resource, as the strict checks name it. Types and the path arithmetic they share.
import type { JsonObject } from '../json.ts';

export interface Fault {
  /** Relative to the resource: `component[0].valueQuantity.value`; empty: the resource itself. */
  readonly element: string;
  readonly severity: 'error' | 'warning';
  /** Our code, or the key of the invariant: `obs-6`. */
  readonly code: string;
  /** FHIR issue-type code. */
  readonly type: string;
  /** What is wrong and how to mend it. Holds no value of the resource. */
  readonly message: string;
}

/** A check of one resource; `bundle` and the like are checks of their own. */
export type Check = (resource: JsonObject) => readonly Fault[];

export function fault(code: string, type: string, element: string, message: string): Fault {
  return { severity: 'error', code, type, element, message };
}

export function doubt(code: string, type: string, element: string, message: string): Fault {
  return { severity: 'warning', code, type, element, message };
}

/** `a.b`, `a[0]`, or the second alone when there is no first. */
export function within(element: string, next: string | number): string {
  if (typeof next === 'number') return `${element}[${next}]`;
  return element === '' ? next : `${element}.${next}`;
}

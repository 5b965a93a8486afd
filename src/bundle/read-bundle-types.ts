// What reading a bundle hands on: resources we can use, and a reason for each one we cannot. Types only.
import type { Resource, Patient } from 'fhir/r4.js';
import type { Issue, SetAsideCode } from '../errors.ts';

/** One resource as received. `index` counts received resources from 0 and is unique in a request. */
export interface Received<R extends Resource = Resource> {
  readonly index: number;
  /** FHIRPath of the resource in what was submitted: `Bundle.entry[3].resource`, `Bundle.entry[0].resource.entry[2].resource`. */
  readonly path: string;
  /** `Type/id` when it has an id, else its fullUrl, else `path`. Used as evidence reference. */
  readonly reference: string;
  readonly resource: R;
  /** Status is preliminary (or the like): used, and said. */
  readonly preliminary: boolean;
}

export interface SetAside {
  readonly index: number;
  readonly path: string;
  readonly reference: string;
  readonly resourceType: string;
  readonly code: SetAsideCode;
  /** Element that is the cause: `Bundle.entry[3].resource.valueQuantity`. */
  readonly expression: string;
  /** What is wrong and how to mend it, without clinical values. */
  readonly message: string;
  /** What was lost, when it was a pressure or a urine result. */
  readonly about?: 'blood-pressure' | 'urine';
}

/** Received, understood, and no rule asks for it. */
export interface NotNeeded {
  readonly index: number;
  readonly path: string;
  readonly reference: string;
  readonly resourceType: string;
  readonly why: string;
}

/** An observation of the woman that was set aside for its form: nothing rests on it, and it may still be an alarm. */
export interface Faulty {
  readonly received: Received;
  /** Element that is the cause, relative to the resource. */
  readonly element: string;
  readonly message: string;
}

/** A bundle after reading: nothing is lost; usable + setAside + notNeeded = everything received. */
export interface ReadBundle {
  readonly received: number;
  /** The woman: `Patient/1`, or undefined when the input names none. */
  readonly subject: string | undefined;
  readonly patient: Received<Patient> | undefined;
  /** Resources of the woman, of a type we read, with a usable status, one version each. */
  readonly usable: readonly Received[];
  readonly setAside: readonly SetAside[];
  /** Those of `setAside` that are observations of the woman with a fault of form. */
  readonly faulty: readonly Faulty[];
  readonly notNeeded: readonly NotNeeded[];
  /** Issues that are not the loss of a resource: odd fullUrl, missing type, next page not followed. */
  readonly issues: readonly Issue[];
  /** Literal, absolute, urn, contained (`#id`) and logical references, seen from the resource that holds them. */
  readonly resolve: (reference: unknown, from: Received) => Received | undefined;
}

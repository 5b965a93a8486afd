// Every issue and failure we can name: code, severity, FHIR issue type, HTTP status. Data and one class; imports nothing.

/** Why a resource was received and not used. */
export type SetAsideCode =
  | 'entered-in-error'
  | 'cancelled'
  | 'status-not-usable'
  | 'status-missing'
  | 'other-subject'
  | 'subject-missing'
  | 'older-version'
  | 'duplicate'
  | 'deleted'
  | 'time-missing'
  | 'time-invalid'
  | 'time-in-future'
  | 'value-missing'
  | 'value-absent-with-reason'
  | 'value-not-readable'
  | 'value-type-not-usable'
  | 'value-ambiguous'
  | 'value-out-of-range'
  | 'unit-missing'
  | 'unit-unknown'
  | 'diastolic-not-below-systolic'
  | 'modifier-not-understood'
  | 'code-missing'
  | 'code-unknown'
  | 'not-the-mother'
  | 'method-not-usable'
  | 'previous-pregnancy'
  | 'reference-unresolved'
  | 'malformed'
  | 'not-a-resource';

/** One issue about one place in the input. */
export interface Issue {
  readonly severity: 'error' | 'warning' | 'information';
  /** Our own stable code. */
  readonly code: SetAsideCode | string;
  /** FHIR issue-type code. */
  readonly type: string;
  /** Simple FHIRPath from the root of what was submitted: `Bundle.entry[3].resource.valueQuantity`. */
  readonly expression: string;
  /** What is wrong and how to mend it. Holds no clinical value. */
  readonly message: string;
  /** For the developer: byte position, parameter or prefetch key. Holds no clinical value. */
  readonly diagnostics?: string;
}

/**
 * The request as a whole cannot be answered.
 *
 * Notes    1. Thrown only by the reading of the request; a bad entry is an `Issue`, never this.
 */
export class RequestError extends Error {
  readonly status: number;
  readonly issues: readonly Issue[];
  constructor(status: number, issues: readonly Issue[]) {
    super(issues[0]?.message ?? 'The request cannot be answered.');
    this.name = 'RequestError';
    this.status = status;
    this.issues = issues;
  }
}

// What the readers of a timeline share: the bundle, the values, and one place to say why something was not used.
import type { Issue, SetAsideCode } from '../errors.ts';
import type { ReadBundle, Received } from '../bundle/read-bundle-types.ts';
import type { FacilityOffset } from './moment.ts';
import type { TimelineValues } from './timeline.ts';

/** A value that cannot be used, with the element that is the cause (`valueQuantity.unit`, relative to the resource). */
export interface Unusable {
  readonly kind: 'unusable';
  readonly code: SetAsideCode;
  readonly element: string;
  readonly message: string;
}

export interface TimelineContext {
  readonly bundle: ReadBundle;
  /** Milliseconds since 1970-01-01T00:00Z. */
  readonly asOf: number;
  /** `asOf` is now by the clock: what is dated after it has a wrong time. */
  readonly asOfIsNow?: true;
  readonly values: TimelineValues;
  /** Offset in minutes taken for a time sent without a zone; absent: UTC, with a remark. */
  readonly facilityOffsetMinutes?: FacilityOffset;
  /** Unit a site declares for pressures sent without one. Absent: such a pressure is never classified. */
  readonly defaultPressureUnit?: 'mm[Hg]' | 'kPa';
  /** The whole resource could not be used. */
  readonly setAside: (received: Received, why: Unusable) => void;
  /** Part of a resource was odd; the rest was used. `element` is relative to the resource. */
  readonly issue: (
    received: Received,
    issue: Omit<Issue, 'expression'> & { readonly element: string },
  ) => void;
  /** Understood, and nothing asks for it. */
  readonly notNeeded: (received: Received, why: string) => void;
}

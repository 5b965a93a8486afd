// CDS Hooks 2.0.1 response, as far as we use it. Types only.
import type { Condition, ServiceRequest } from 'fhir/r4.js';

export type Indicator = 'critical' | 'warning' | 'info';

export interface HooksCoding {
  readonly code: string;
  readonly system: string;
  readonly display: string;
}

export interface CardSource {
  readonly label: string;
  readonly url?: string | undefined;
  readonly topic: HooksCoding;
}

export interface CardAction {
  readonly type: 'create';
  readonly description: string;
  readonly resource: Condition | ServiceRequest;
}

export interface CardSuggestion {
  readonly label: string;
  readonly uuid: string;
  readonly isRecommended?: true | undefined;
  readonly actions: readonly CardAction[];
}

export interface CardLink {
  readonly label: string;
  readonly url: string;
  readonly type: 'smart' | 'absolute';
}

export interface Card {
  readonly uuid: string;
  /** Fewer than 140 characters. */
  readonly summary: string;
  /** GitHub Flavored Markdown without HTML. */
  readonly detail: string;
  readonly indicator: Indicator;
  readonly source: CardSource;
  readonly suggestions?: readonly CardSuggestion[] | undefined;
  /** Present exactly when there are suggestions. */
  readonly selectionBehavior?: 'at-most-one' | undefined;
  readonly links?: readonly CardLink[] | undefined;
  readonly overrideReasons?: readonly HooksCoding[] | undefined;
  readonly extension?: Readonly<Record<string, unknown>> | undefined;
}

export interface CardsResponse {
  readonly cards: readonly Card[];
}

/** Why data could not be read, or not to the end, from the client's FHIR server. */
export type FetchFailure =
  | 'not-allowed'
  | 'not-permitted'
  | 'not-in-scope'
  | 'token-expired'
  | 'too-slow'
  | 'server-busy'
  | 'server-failed'
  | 'redirected'
  | 'other-origin'
  | 'other-patients'
  | 'too-large'
  | 'too-many-pages'
  | 'endless';

/** Data a client could not give: a prefetch key without an answer, or only the first pages of one. */
export interface ChartGap {
  readonly key: string;
  readonly what: string;
  readonly why: 'not-sent' | 'failed' | 'first-page-only' | FetchFailure;
  /** Some was read, and older entries may be missing. */
  readonly isPartial?: true;
}

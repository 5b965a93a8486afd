// What a route sees of a request.
import type { ChartSettings } from './fetch/complete-chart.ts';
import type { Metrics } from './metrics.ts';
import type { FeedbackItem } from './read-feedback.ts';
import type { Reply } from './reply.ts';
import type { SmartSettings } from './settings.ts';
import type { ServedSite } from './site-folder.ts';

/** A request, reduced to what a route may use. */
export interface Call {
  /** Milliseconds since 1970-01-01T00:00Z, read once for this request. */
  readonly now: number;
  readonly accept: string | undefined;
  /** The Prefer header. */
  readonly prefer?: string | undefined;
  /** The site this service is set up for. */
  readonly site?: ServedSite | undefined;
  readonly acceptLanguage: string | undefined;
  readonly acceptEncoding?: string | undefined;
  /** What the page is told of the set-up. */
  readonly smart?: SmartSettings | undefined;
  readonly body: () => Promise<unknown>;
  /** What was odd about the body and was let pass; complete once the body was read. */
  readonly warnings: readonly string[];
  readonly metrics: Metrics;
  readonly takeFeedback: (items: readonly FeedbackItem[]) => void;
  /** A query parameter; undefined when absent or empty. */
  readonly query: (name: string) => string | undefined;
  readonly parameter: (name: string) => string | undefined;
  /** What may be fetched for this client. */
  readonly fetching: ChartSettings;
}

/** The `asOf` of the query. An offset whose plus sign was not escaped arrives as a blank and is mended. */
export function queriedInstant(call: Call): string | undefined {
  return call.query('asOf')?.replace(/ (\d{2}:\d{2})$/, '+$1');
}

export type Answer = (call: Call) => Reply | Promise<Reply>;

// The fastest filter this machine has.
import { openLineFilter, type LineFilter } from './line-filter.ts';

export function openFastFilter(localCodes: readonly string[] = []): LineFilter {
  return openLineFilter(localCodes);
}

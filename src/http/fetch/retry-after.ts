// When a busy server may be asked again.

/**
 * Given    value   of a Retry-After header: seconds, or an HTTP date
 *          now     milliseconds since 1970-01-01T00:00Z
 * Returns  milliseconds to wait, not negative; undefined when the value is neither
 * Source   RFC 9110, section 10.2.3
 */
export function retryDelayMs(value: string, now: number): number | undefined {
  if (/^\d{1,9}$/.test(value.trim())) return Number(value) * 1000;
  const date = Date.parse(value);
  return Number.isNaN(date) ? undefined : Math.max(0, date - now);
}

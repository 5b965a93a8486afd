// A proportion with its confidence interval.

export interface Proportion {
  readonly of: number;
  readonly count: number;
  /** 0 to 1; absent without anything to count. */
  readonly share?: number;
  readonly low?: number;
  readonly high?: number;
}

/** Two-sided 95 % of the normal distribution. */
const z = 1.959963984540054;

/**
 * A share with its 95 % Wilson score interval.
 *
 * Given    count, of  whole numbers, count at most `of`
 * Returns  no share and no interval when `of` is 0
 * Source   Wilson 1927, formula from memory
 */
export function wilson(count: number, of: number): Proportion {
  if (of === 0) return { count, of };
  const share = count / of;
  const spread = z * Math.sqrt((share * (1 - share)) / of + (z * z) / (4 * of * of));
  const centre = share + (z * z) / (2 * of);
  const scale = 1 + (z * z) / of;
  return {
    count,
    of,
    share,
    low: Math.max(0, (centre - spread) / scale),
    high: Math.min(1, (centre + spread) / scale),
  };
}

/** "58.1 %"; a dash where there is nothing. */
export const percent = (share: number | undefined): string =>
  share === undefined ? '-' : `${(share * 100).toFixed(1)} %`;

/** A share as a number of a hundred; absent where there is nothing to count. */
export const hundredfold = (share: number | undefined): number | undefined =>
  share === undefined ? undefined : share * 100;

/** "58.1 % (52.0 to 63.9; 140 of 241)" */
export function proportionText({ share, low, high, count, of }: Proportion): string {
  if (share === undefined || low === undefined || high === undefined) return '- (0 of 0)';
  return `${percent(share)} (${(low * 100).toFixed(1)} to ${(high * 100).toFixed(1)}; ${count} of ${of})`;
}

// Counts under names of several parts. Addition is all there is to it, so that parts can be summed in any order.

/** Name parts joined by a tab, to a count. */
export type Tally = Readonly<Record<string, number>>;

export interface Counter {
  readonly add: (parts: readonly (string | number)[], by?: number) => void;
  /** The counts, sorted by name. */
  readonly tally: () => Tally;
}

const separator = '\t';

export function openCounter(): Counter {
  const counts = new Map<string, number>();
  return {
    add: (parts, by = 1) => {
      if (by === 0) return;
      const name = parts.map((part) => String(part).replaceAll(separator, ' ')).join(separator);
      counts.set(name, (counts.get(name) ?? 0) + by);
    },
    tally: () => sorted(counts),
  };
}

const sorted = (counts: ReadonlyMap<string, number>): Tally =>
  Object.fromEntries([...counts].sort(([a], [b]) => (a < b ? -1 : 1)));

/**
 * The sum of several parts of a report.
 *
 * Given    parts  tallies of disjoint groups of women
 * Returns  the tally of them all; the order and the grouping of the parts change nothing
 * Throws   never
 */
export function mergeReports(parts: readonly Tally[]): Tally {
  const sum = new Map<string, number>();
  for (const part of parts)
    for (const [name, count] of Object.entries(part))
      if (count !== 0) sum.set(name, (sum.get(name) ?? 0) + count);
  return sorted(sum);
}

/** The count under a name; 0 where there is none. */
export const countOf = (tally: Tally, ...parts: readonly string[]): number =>
  tally[parts.join(separator)] ?? 0;

/** What stands directly below a name: the next part to the sum of everything under it, in the order of names. */
export function below(tally: Tally, ...parts: readonly string[]): ReadonlyMap<string, number> {
  const prefix = parts.map((part) => part + separator).join('');
  const found = new Map<string, number>();
  for (const [name, count] of Object.entries(tally)) {
    if (!name.startsWith(prefix)) continue;
    const next = name.slice(prefix.length).split(separator)[0] ?? '';
    found.set(next, (found.get(next) ?? 0) + count);
  }
  return found;
}

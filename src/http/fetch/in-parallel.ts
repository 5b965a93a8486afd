// Several deeds at a time, bounded.

/**
 * Given    items   in any number
 *          most    deeds under way at a time, at least 1
 * Returns  the results in the order of the items
 * Throws   what the first failing deed throws
 */
export async function inParallel<T, R>(
  items: readonly T[],
  most: number,
  deed: (item: T) => Promise<R>,
): Promise<readonly R[]> {
  const results = new Map<number, R>();
  const waiting = items.entries();
  const worker = async (): Promise<void> => {
    for (const [index, item] of waiting) results.set(index, await deed(item));
  };
  await Promise.all(Array.from({ length: Math.min(most, items.length) }, worker));
  return [...results].sort(([a], [b]) => a - b).map(([, result]) => result);
}

// Members that would be empty are left out: JSON answers hold no null, no "", no [] and no {}.

/** The mapped list, or nothing when it is empty. */
export function someMapped<T, U>(list: readonly T[] | undefined, map: (item: T) => U): U[] | undefined {
  return list === undefined || list.length === 0 ? undefined : list.map(map);
}

/** A copy of the list, or nothing when it is empty. */
export function someOf<T>(list: readonly T[] | undefined): T[] | undefined {
  return someMapped(list, (item) => item);
}

/** The text, or nothing when it is blank. */
export function someText(text: string | undefined): string | undefined {
  return text === undefined || text.trim() === '' ? undefined : text;
}

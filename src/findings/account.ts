// The account: every resource received ends in exactly one of used, not needed, set aside.
import type { Account, AccountEntry } from '../evaluation.ts';
import type { Issue, SetAsideCode } from '../errors.ts';

interface Place {
  readonly index: number;
  readonly path: string;
  readonly reference: string;
  readonly resourceType: string;
}
export interface AccountInput {
  readonly received: number;
  readonly usable: readonly Place[];
  readonly setAside: readonly (Place & {
    readonly code: SetAsideCode;
    readonly expression: string;
    readonly message: string;
    readonly about?: 'blood-pressure' | 'urine';
  })[];
  readonly notNeeded: readonly (Place & { readonly why: string })[];
  readonly issues: readonly Issue[];
  /** For each reference that became a fact, the questions that looked at it. */
  readonly usedBy: ReadonlyMap<string, readonly string[]>;
}

/**
 * Accounts for everything received.
 *
 * Given    input  what the stages reported; a usable resource that no stage set aside is used or not needed
 * Returns  entries in the order received; the three counts add up to `received`
 * Throws   never
 * Notes    1. A fact that no question of the guideline looks at is "not needed", not "used".
 */
export function account(input: AccountInput): Account {
  const aside = new Map(input.setAside.map((item) => [item.index, item]));
  const unneeded = new Map(input.notNeeded.map((item) => [item.index, item]));
  const places = new Map<number, Place>();
  for (const item of [...input.usable, ...input.notNeeded, ...input.setAside]) places.set(item.index, item);
  const entries = [...places.values()]
    .sort((a, b) => a.index - b.index)
    .map((place): AccountEntry => {
      const base = { path: place.path, reference: place.reference, resourceType: place.resourceType };
      const set = aside.get(place.index);
      if (set !== undefined)
        return {
          ...base,
          outcome: 'set-aside',
          code: set.code,
          expression: set.expression,
          message: set.message,
          ...(set.about === undefined ? {} : { about: set.about }),
        };
      const by = input.usedBy.get(place.reference);
      if (by !== undefined && by.length > 0) return { ...base, outcome: 'used', by };
      const why = unneeded.get(place.index)?.why ?? 'no question of this guideline asks for it';
      return { ...base, outcome: 'not-needed', why };
    });
  const count = (outcome: AccountEntry['outcome']): number =>
    entries.filter((entry) => entry.outcome === outcome).length;
  return {
    received: input.received,
    used: count('used'),
    notNeeded: count('not-needed'),
    setAside: count('set-aside'),
    entries,
    issues: input.issues,
  };
}

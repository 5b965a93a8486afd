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
  const byIndex: (AccountEntry | undefined)[] = [];
  const counts = { used: 0, 'not-needed': 0, 'set-aside': 0 };
  const nobodyAsks = 'no question of this guideline asks for it';
  for (const place of input.usable) byIndex[place.index] = usedOrNot(place, nobodyAsks, input.usedBy);
  for (const place of input.notNeeded) byIndex[place.index] = usedOrNot(place, place.why, input.usedBy);
  for (const place of input.setAside) byIndex[place.index] = setAside(place);
  const entries = byIndex.filter((entry) => entry !== undefined);
  for (const { outcome } of entries) counts[outcome] += 1;
  return {
    received: input.received,
    used: counts.used,
    notNeeded: counts['not-needed'],
    setAside: counts['set-aside'],
    entries,
    issues: input.issues,
  };
}

function usedOrNot(
  { path, reference, resourceType }: Place,
  why: string,
  usedBy: AccountInput['usedBy'],
): AccountEntry {
  const by = usedBy.get(reference);
  return by !== undefined && by.length > 0
    ? { path, reference, resourceType, outcome: 'used', by }
    : { path, reference, resourceType, outcome: 'not-needed', why };
}

function setAside(place: AccountInput['setAside'][number]): AccountEntry {
  const { path, reference, resourceType, code, expression, message, about } = place;
  const entry = { path, reference, resourceType, outcome: 'set-aside', code, expression, message } as const;
  return about === undefined ? entry : { ...entry, about };
}

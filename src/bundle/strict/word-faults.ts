// Words for what was set aside: the resource is put through the strict checks and each fault named at its element.
import type { Issue, SetAsideCode } from '../../errors.ts';
import { isObject, isResource, memberOf } from '../json.ts';
import { within } from './fault.ts';
import { faultsOfResource } from './validate-strict.ts';

/** Codes that say that something is out of form; the others say what the data mean and need no second look. */
const outOfForm: ReadonlySet<SetAsideCode> = new Set<SetAsideCode>([
  'malformed',
  'status-missing',
  'code-missing',
  'time-invalid',
  'value-not-readable',
  'value-type-not-usable',
  'value-ambiguous',
]);
/** More would repeat themselves: the fault is in the sender, not in the resource. */
const mostEntries = 50;

export interface SetAsideEntry {
  readonly path: string;
  readonly code: SetAsideCode;
}

/**
 * The faults of entries that were set aside as out of form.
 *
 * Given    input    as submitted
 *          entries  what was set aside, with its path in the input
 * Returns  warnings, at most those of fifty entries; empty when no entry is out of form
 * Throws   never
 */
export function wordFaults(input: unknown, entries: readonly SetAsideEntry[]): readonly Issue[] {
  return entries
    .filter(({ code }) => outOfForm.has(code))
    .slice(0, mostEntries)
    .flatMap(({ path }) => {
      const resource = resourceAt(input, path);
      if (!isResource(resource)) return [];
      return faultsOfResource(resource).map(({ element, ...rest }): Issue => {
        const expression = element === '' ? path : within(path, element);
        return { ...rest, severity: 'warning', expression };
      });
    });
}

/** What stands at `Bundle.entry[3].resource` or `[2].entry[0].resource`; the name before the first dot is the root. */
function resourceAt(input: unknown, path: string): unknown {
  const steps = path.replace(/^[A-Za-z]+/, '').match(/[A-Za-z]+|\d+/g) ?? [];
  let value = input;
  for (const step of steps) {
    if (Array.isArray(value)) value = value[Number(step)];
    else if (isObject(value)) value = memberOf(value, step);
    else return undefined;
  }
  return value;
}

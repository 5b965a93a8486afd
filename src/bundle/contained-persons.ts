// Patients contained in the resources that are about them.
import { canonicalText, identifierKey, listOf, memberOf } from './json.ts';
import type { Slot } from './slot.ts';

export interface ContainedPerson {
  /** `Observation/1#p`: the smallest place among those that hold the same content. */
  readonly key: string;
  /** `system|value` of each identifier. */
  readonly identifiers: readonly string[];
}

const NOT_COMPARED: ReadonlySet<string> = new Set(['id', 'meta', 'text']);

/** From the id inside a container and the container: the person; undefined when it contains no such Patient. */
export function containedPersons(
  slots: readonly Slot[],
): (id: string, from: Slot) => ContainedPerson | undefined {
  let keys: ReadonlyMap<string, string> | undefined;
  return (id, from) => {
    const person = patientsIn(from).find((item) => memberOf(item, 'id') === id);
    if (person === undefined) return undefined;
    keys ??= smallestPlaces(slots);
    const identifiers = listOf(memberOf(person, 'identifier')).map(identifierKey);
    return {
      key: keys.get(contentOf(person)) ?? `${from.reference}#${id}`,
      identifiers: identifiers.filter((key) => key !== undefined),
    };
  };
}

function patientsIn(slot: Slot): readonly unknown[] {
  return listOf(slot.resource?.contained).filter((item) => memberOf(item, 'resourceType') === 'Patient');
}

function contentOf(person: unknown): string {
  return canonicalText(person, NOT_COMPARED);
}

function smallestPlaces(slots: readonly Slot[]): ReadonlyMap<string, string> {
  const places = new Map<string, string>();
  for (const slot of slots) {
    for (const person of patientsIn(slot)) {
      const content = contentOf(person);
      const place = `${slot.reference}#${String(memberOf(person, 'id'))}`;
      const smallest = places.get(content);
      if (smallest === undefined || place < smallest) places.set(content, place);
    }
  }
  return places;
}

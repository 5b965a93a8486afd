// What is wrong anywhere in a resource, whatever its type: empty elements, days that do not exist, quantities,
// periods, extensions, references to what is not contained, contained resources that contain.
import { isObject, listOf, textOf } from '../json.ts';
import type { JsonObject } from '../json.ts';
import { fault, within } from './fault.ts';
import type { Check, Fault } from './fault.ts';

/** Deeper than any resource of R4 has reason to nest. */
const deepest = 32;
/** A resource with more faults than this is not worth reading on. */
const mostFaults = 50;

interface Walk {
  readonly faults: Fault[];
  readonly containedIds: ReadonlySet<string>;
}

/** Faults at any depth; stops at a depth of 32 and at fifty faults. */
export const treeFaults: Check = (resource) => {
  const contained = listOf(resource.contained).flatMap((each) =>
    isObject(each) ? (textOf(each.id) ?? []) : [],
  );
  const walk: Walk = { faults: [], containedIds: new Set(contained) };
  for (const [name, value] of Object.entries(resource)) visit(walk, value, name, { name, depth: 1 });
  nestedContained(walk, resource);
  return walk.faults;
};

interface Spot {
  readonly name: string;
  readonly depth: number;
}

function visit(walk: Walk, value: unknown, element: string, spot: Spot): void {
  if (walk.faults.length >= mostFaults) return;
  if (spot.depth > deepest) {
    walk.faults.push(
      fault('too-deep', 'too-costly', element, 'Nested too deep to be read: send fewer levels.'),
    );
    return;
  }
  if (Array.isArray(value)) visitList(walk, value, element, spot);
  else if (isObject(value)) visitObject(walk, value, element, spot);
  else if (typeof value === 'string') visitText(walk, value, element, spot.name);
}

function visitList(walk: Walk, list: readonly unknown[], element: string, spot: Spot): void {
  if (list.length === 0) walk.faults.push(empty(element, 'list'));
  list.forEach((item, at) => {
    visit(walk, item, within(element, at), { ...spot, depth: spot.depth + 1 });
  });
}

function visitObject(walk: Walk, value: JsonObject, element: string, spot: Spot): void {
  if (Object.keys(value).length === 0) walk.faults.push(empty(element, 'object'));
  walk.faults.push(...objectFaults(walk, value, element));
  for (const [name, member] of Object.entries(value))
    visit(walk, member, within(element, name), { name, depth: spot.depth + 1 });
}

function empty(element: string, what: string): Fault {
  return fault('empty', 'structure', element, `An empty ${what} says nothing: leave it out or fill it.`);
}

function objectFaults(walk: Walk, value: JsonObject, element: string): readonly Fault[] {
  const found: Fault[] = [];
  if (isQuantity(value) && value.code !== undefined && value.system === undefined)
    found.push(
      fault('qty-3', 'invariant', element, 'A unit code needs its system: add http://unitsofmeasure.org.'),
    );
  if (startsAfterEnd(value.start, value.end))
    found.push(fault('per-1', 'invariant', element, 'The period ends before it starts: mend start or end.'));
  const reference = value.reference;
  if (
    typeof reference === 'string' &&
    reference.startsWith('#') &&
    reference !== '#' &&
    !walk.containedIds.has(reference.slice(1))
  )
    found.push(
      fault(
        'ref-1',
        'invariant',
        within(element, 'reference'),
        'Nothing of this id is contained: contain it, or mend the reference.',
      ),
    );
  return found;
}

/** Quantity and its kin, told from a Coding by a value or a unit. */
function isQuantity(value: JsonObject): boolean {
  return (
    (value.value !== undefined && typeof value.value !== 'string' && !isObject(value.value)) ||
    value.unit !== undefined
  );
}

/** Compared to the precision both have; of different precisions only what is certain. */
function startsAfterEnd(start: unknown, end: unknown): boolean {
  if (typeof start !== 'string' || typeof end !== 'string') return false;
  if (start.length <= 10 || end.length <= 10) {
    const length = Math.min(start.length, end.length, 10);
    return /^\d{4}/.test(start) && /^\d{4}/.test(end) && start.slice(0, length) > end.slice(0, length);
  }
  const [from, to] = [Date.parse(start), Date.parse(end)];
  return Number.isFinite(from) && Number.isFinite(to) && from > to;
}

/** Texts that may hold anything that looks like a day. */
const freeTexts: ReadonlySet<string> = new Set([
  'div',
  'text',
  'display',
  'valueString',
  'valueMarkdown',
  'value',
  'id',
  'data',
]);

function visitText(walk: Walk, text: string, element: string, name: string): void {
  if (text.trim() === '') walk.faults.push(empty(element, 'text'));
  if (!freeTexts.has(name) && isNoDay(text))
    walk.faults.push(fault('no-such-day', 'value', element, 'The calendar has no such day: mend the date.'));
}

/** Is it a date by its form, of a day the calendar has not? */
function isNoDay(text: string): boolean {
  const form = /^(\d{4})-(\d{2})-(\d{2})(?:$|T\d)/.exec(text);
  if (form === null) return false;
  const [year, month, day] = [Number(form[1]), Number(form[2]), Number(form[3])];
  const date = new Date(Date.UTC(year, month - 1, day));
  date.setUTCFullYear(year);
  return date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day;
}

function nestedContained(walk: Walk, resource: JsonObject): void {
  listOf(resource.contained).forEach((each, at) => {
    if (!isObject(each) || each.contained === undefined) return;
    const element = `${within('contained', at)}.contained`;
    const message = 'A contained resource may not contain another: contain both in the outer one.';
    walk.faults.push(fault('dom-2', 'invariant', element, message));
  });
}

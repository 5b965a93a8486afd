// What the schema cannot see in one resource: mandatory primitives, choices, required codes, whom it is about.
import { isObject, listOf, memberOf, textOf } from '../json.ts';
import type { JsonObject } from '../json.ts';
import { fault, within } from './fault.ts';
import type { Check, Fault } from './fault.ts';
import { choices, mandatoryElements, requiredBindings, subjectTypes } from './mandatory.ts';

interface Held {
  readonly element: string;
  readonly value: JsonObject;
}

/** The objects at a path of member names, each member being one object or a list of them. */
function objectsAt(from: Held, names: readonly string[]): readonly Held[] {
  const [name, ...rest] = names;
  if (name === undefined) return [from];
  const value = from.value[name];
  const element = within(from.element, name);
  const found = Array.isArray(value)
    ? listOf(value).flatMap((item, at) =>
        isObject(item) ? [{ element: within(element, at), value: item }] : [],
      )
    : isObject(value)
      ? [{ element, value }]
      : [];
  return found.flatMap((held) => objectsAt(held, rest));
}

function typeOf(resource: JsonObject): string {
  return textOf(resource.resourceType) ?? '';
}

/** Mandatory primitives and choices; a primitive with only extensions (`_status`) is there. */
export const mandatoryFaults: Check = (resource) =>
  (mandatoryElements[typeOf(resource)] ?? []).flatMap(({ within: names, anyOf }) =>
    objectsAt({ element: '', value: resource }, names)
      .filter(
        ({ value }) => !anyOf.some((name) => value[name] !== undefined || value[`_${name}`] !== undefined),
      )
      .map(({ element }) => {
        const missing = within(element, anyOf.length === 1 ? String(anyOf[0]) : choiceName(anyOf));
        return fault('required', 'required', missing, `${missing} is missing: it is mandatory, fill it.`);
      }),
  );

function choiceName(names: readonly string[]): string {
  return /^[a-z]+/.exec(names[0] ?? '')?.[0] ?? '';
}

/** Two members of one choice: nobody can tell which is meant. */
export const choiceFaults: Check = (resource) =>
  (choices[typeOf(resource)] ?? []).flatMap(([holder, name]) =>
    objectsAt({ element: '', value: resource }, holder === '' ? [] : [holder]).flatMap(
      ({ element, value }) => {
        const sent = Object.keys(value).filter((key) => isChoice(key, name));
        if (sent.length < 2) return [];
        const message = `Only one ${name}[x] may be sent: keep ${sent.join(' or ')}.`;
        return [fault('choice', 'structure', within(element, sent[1] ?? name), message)];
      },
    ),
  );

function isChoice(key: string, name: string): boolean {
  return key.startsWith(name) && /^[A-Z]/.test(key.slice(name.length));
}

/** Codes of required bindings that sit on a CodeableConcept; a text alone has no code to judge. */
export const bindingFaults: Check = (resource) =>
  (requiredBindings[typeOf(resource)] ?? []).flatMap(({ element, system, codes }) => {
    const codings = listOf(memberOf(resource[element], 'coding'));
    if (codings.length === 0) return [];
    const isBound = codings.some(
      (coding) => memberOf(coding, 'system') === system && codes.includes(String(memberOf(coding, 'code'))),
    );
    const message = `${element} has no code of the value set R4 requires: use one of ${codes.join(', ')} of ${system}.`;
    return isBound ? [] : [fault('code-invalid', 'code-invalid', element, message)];
  });

const typeInReference = /^(?:https?:\/\/.*\/)?([A-Z][A-Za-z]+)\/[A-Za-z0-9\-._]+(?:\/_history\/.*)?$/;

/** Is a resource about something that has no blood pressure, such as a Medication? */
export const subjectFaults: Check = (resource) => {
  const types = subjectTypes[typeOf(resource)];
  if (types === undefined) return [];
  return ['subject', 'patient'].flatMap((element): readonly Fault[] => {
    const type = typeInReference.exec(textOf(memberOf(resource[element], 'reference')) ?? '')?.[1];
    if (type === undefined || types.includes(type)) return [];
    const message = `${element} may not be a ${type}: name one of ${types.join(', ')}.`;
    return [fault('reference-type', 'value', `${element}.reference`, message)];
  });
};

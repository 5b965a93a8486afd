// Looking into received JSON without believing its shape. Hands on fields, lists, texts and codings.

/** A JSON object of which nothing is known yet. */
export type Fields = Readonly<Record<string, unknown>>;

export interface Coding {
  readonly system?: string;
  readonly code?: string;
  readonly display?: string;
}

const noFields: Fields = {};
const noList: readonly Fields[] = [];

export function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The fields of an object; an empty object for anything else. */
export function fieldsOf(value: unknown): Fields {
  return isFields(value) ? value : noFields;
}

/** The objects of a list; a single object counts as a list of one; anything else is empty. */
export function listOf(value: unknown): readonly Fields[] {
  if (!Array.isArray(value)) return isFields(value) ? [value] : noList;
  const list: readonly unknown[] = value;
  // A sound list is handed on as it is: copies of every list were most of the cost of a timeline.
  return list.every(isFields) ? list : list.filter(isFields);
}

/** The text of an element; undefined when it is not a text or holds nothing but blanks. */
export function textOf(value: unknown): string | undefined {
  return typeof value === 'string' && !isBlank(value) ? value : undefined;
}

/** Nearly every text begins with a visible ASCII character, which settles it. */
function isBlank(text: string): boolean {
  const first = text.charCodeAt(0);
  return !(first > 32 && first < 127) && text.trim() === '';
}

/** The codings of a CodeableConcept, in the order sent; those without a code are kept for their display. */
export function codingsOf(concept: unknown): readonly Coding[] {
  const list = listOf(fieldsOf(concept)['coding']);
  return areCodings(list) ? list : list.map(codingOf);
}

function areCodings(list: readonly Fields[]): list is readonly (Fields & Coding)[] {
  return list.every(
    ({ system, code, display }) => isTextOrAbsent(system) && isTextOrAbsent(code) && isTextOrAbsent(display),
  );
}

function isTextOrAbsent(value: unknown): boolean {
  return value === undefined || textOf(value) !== undefined;
}

function codingOf(fields: Fields): Coding {
  const system = textOf(fields['system']);
  const code = textOf(fields['code']);
  const display = textOf(fields['display']);
  return {
    ...(system === undefined ? {} : { system }),
    ...(code === undefined ? {} : { code }),
    ...(display === undefined ? {} : { display }),
  };
}

/** What a person reads in a CodeableConcept: its text, else the first display. */
export function wordingOf(concept: unknown): string | undefined {
  return (
    textOf(fieldsOf(concept)['text']) ??
    codingsOf(concept).find((coding) => coding.display !== undefined)?.display
  );
}

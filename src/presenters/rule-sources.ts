// What a rule rests on: its questions, limits and sources, gathered from the data. Decides nothing.
import type {
  Citation,
  Figure,
  Guideline,
  Known,
  Need,
  Question,
  Threshold,
} from '../guidelines/guideline.ts';

/** Any rule with an id and a need. */
export interface RuleData {
  readonly id: string;
  readonly when: Need;
  readonly citation: Citation;
}

/** Question ids and rule references of a need, each once. */
export function namesOf(need: Need): readonly string[] {
  if (typeof need === 'string') return [need];
  const parts = 'all' in need ? need.all : 'any' in need ? need.any : need.none;
  return [...new Set(parts.flatMap(namesOf))];
}

/** Questions a need rests on directly. */
export function questionsUnder(need: Need, guideline: Guideline): readonly Question[] {
  const names = new Set(namesOf(need));
  return guideline.questions.filter(({ id }) => names.has(id));
}

/** Every threshold in a piece of data, wherever it stands, each id and value once, in reading order. */
export function thresholdsIn(data: unknown): readonly Threshold[] {
  const found = new Map<string, Threshold>();
  walk(data, (value) => {
    if (isThreshold(value)) found.set(`${value.id} ${value.comparator} ${value.value} ${value.unit}`, value);
  });
  return [...found.values()];
}

/** Every figure quoted in a piece of data, each id and value once. */
export function figuresIn(data: unknown): readonly Figure[] {
  const found = new Map<string, Figure>();
  walk(data, (value) => {
    if (isFigure(value)) found.set(`${value.id} ${value.value} ${value.to ?? ''} ${value.unit}`, value);
  });
  return [...found.values()];
}

/** Every citation in a piece of data, each once. */
export function citationsIn(data: unknown): readonly Citation[] {
  const found = new Map<string, Citation>();
  walk(data, (value) => {
    if (isCitation(value)) found.set(JSON.stringify(value), value);
  });
  return [...found.values()];
}

function walk(value: unknown, visit: (value: unknown) => void): void {
  if (typeof value !== 'object' || value === null) return;
  visit(value);
  for (const member of Object.values(value)) walk(member, visit);
}

function isThreshold(value: unknown): value is Threshold {
  return (
    typeof value === 'object' &&
    value !== null &&
    'comparator' in value &&
    'unit' in value &&
    'id' in value &&
    'citation' in value
  );
}

function isFigure(value: unknown): value is Figure {
  return (
    typeof value === 'object' &&
    value !== null &&
    !('comparator' in value) &&
    'unit' in value &&
    'id' in value &&
    'value' in value &&
    'citation' in value
  );
}

function isCitation(value: unknown): value is Citation {
  return typeof value === 'object' && value !== null && 'publication' in value && 'known' in value;
}

const knownWords: Readonly<Record<Known, string>> = {
  read: 'read',
  'from-memory': 'from memory, not verified against print',
  ours: 'ours',
  'common-practice': 'common practice',
};

/** "NICE NG133, Hypertension in pregnancy, 1.4.11, 2023 (read)" */
export function citationWords({ publication, section, year, known, note }: Citation): string {
  if (known === 'ours' || known === 'common-practice') return `${knownWords[known]}: ${note ?? section}`;
  const remark = note === undefined ? '' : `; ${note}`;
  return `${publication}, ${section}, ${year} (${knownWords[known]}${remark})`;
}

/** Short mark of how a value is known, for tables. */
export function knownMark(known: Known): string {
  switch (known) {
    case 'read':
      return '';
    case 'from-memory':
      return ' †';
    case 'ours':
      return ' (ours)';
    case 'common-practice':
      return ' (common practice)';
  }
}

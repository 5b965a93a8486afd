// Sentences made from cited figures, so that no clinical number is typed into prose.
import type { Citation, Figure } from './guideline.ts';

/** A finished sentence and the figures it quotes. */
export interface Said {
  readonly sentence: string;
  readonly figures: readonly Figure[];
}

/** A figure in one line; `to` makes it a range. */
export const figure = (id: string, value: number, unit: string, citation: Citation, to?: number): Figure =>
  to === undefined ? { id, value, unit, citation } : { id, value, to, unit, citation };

const counted: Readonly<Record<string, readonly [one: string, several: string]>> = {
  min: ['minute', 'minutes'],
  h: ['hour', 'hours'],
  d: ['day', 'days'],
  wk: ['week', 'weeks'],
  mo: ['month', 'months'],
  a: ['year', 'years'],
};

const words: Readonly<Record<string, string>> = {
  'mL/h': 'mL per hour',
  'g/h': 'g per hour',
  'mg/d': 'mg a day',
  'g/d': 'g a day',
  '/min': 'per minute',
  '/d': 'times a day',
  '/wk': 'times a week',
  'mm[Hg]': 'mmHg',
};

const daysInWeek = 7;

/** 259 days as "37+0". */
const weeksAndDays = (days: number): string =>
  `${String(Math.floor(days / daysInWeek))}+${String(days % daysInWeek)}`;

/**
 * A figure in words.
 *
 * Given    figure  value or range with its unit
 *          form    `bare`: without the unit; `weeks`: days of gestation as "37+0"; else with the unit
 * Returns  "30 to 60 minutes", "80 mL per hour", "20%", "37+0"
 * Throws   never
 */
export function figureText(figure: Figure, form?: string): string {
  const print = form === 'weeks' ? weeksAndDays : String;
  const number =
    figure.to === undefined ? print(figure.value) : `${print(figure.value)} to ${print(figure.to)}`;
  if (form !== undefined) return number;
  if (figure.unit === '%') return `${number}%`;
  const [one, several] = counted[figure.unit] ?? [];
  if (one !== undefined && several !== undefined)
    return `${number} ${figure.value === 1 && figure.to === undefined ? one : several}`;
  return `${number} ${words[figure.unit] ?? figure.unit}`;
}

const placeholder = /\{([a-zA-Z]+)(?::(bare|weeks))?\}/g;

/**
 * Fills a sentence with figures.
 *
 * Given    template  with `{name}`, `{name:bare}` or `{name:weeks}`; `{time}` is left for the clock
 *          figures   by name
 * Returns  the sentence, and the figures it quotes
 * Throws   when a name has no figure, or a figure is not quoted: a defect of the data
 */
export function say(template: string, figures: Readonly<Record<string, Figure>> = {}): Said {
  const quoted = new Set<string>();
  const sentence = template.replace(placeholder, (whole, name: string, form: string | undefined) => {
    if (name === 'time') return whole;
    const named = figures[name];
    if (named === undefined) throw new Error(`A sentence quotes a figure it does not have: ${name}`);
    quoted.add(name);
    return figureText(named, form);
  });
  const idle = Object.keys(figures).filter((name) => !quoted.has(name));
  if (idle.length > 0) throw new Error(`A sentence does not quote its figure: ${idle.join(', ')}`);
  return { sentence, figures: Object.values(figures) };
}

/** Said beside every drug. */
export const decidedByPrescriber = 'Per local protocol; the prescriber decides.';

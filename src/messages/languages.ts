// The languages there are, and which of them a reader asked for.
import { english } from './en.ts';
import { spanish } from './es.ts';
import type { Messages } from './messages.ts';

export const languages: readonly Messages[] = [english, spanish];

/**
 * The language to answer in.
 *
 * Given    accepted   an Accept-Language header; absent: no wish
 *          site       the site's own language, for readers without a wish that fits
 * Returns  the best we have by weight, then by the order written; a region falls back to its language; the site's language, else
 *          English, when none is asked for, none fits, or everything is accepted alike
 * Throws   never
 * Source   RFC 9110 section 12.5.4, from memory
 */
export function chosenLanguage(accepted: string | undefined, site?: string): Messages {
  const otherwise = languageOf(site?.toLowerCase() ?? '') ?? english;
  const wishes = (accepted ?? '')
    .split(',')
    .map(wishOf)
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight);
  for (const { range } of wishes) {
    if (range === '*') return otherwise;
    const found = languageOf(range);
    if (found !== undefined) return found;
  }
  return otherwise;
}

const languageOf = (range: string): Messages | undefined =>
  languages.find(({ language }) => range === language || range.startsWith(`${language}-`));

function wishOf(text: string): { readonly range: string; readonly weight: number } {
  const [range = '', ...parameters] = text.split(';').map((part) => part.trim().toLowerCase());
  const quality = parameters.find((part) => part.startsWith('q='))?.slice('q='.length);
  const weight = quality === undefined ? 1 : Number(quality);
  return { range, weight: range === '' || !Number.isFinite(weight) ? 0 : weight };
}

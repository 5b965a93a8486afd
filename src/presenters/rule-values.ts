// Every number of the rules in one table, with its source and how it is known. Wording only.
import type { Citation, Figure, Threshold } from '../guidelines/guideline.ts';
import { limitWords, quantityWords } from '../findings/limit-words.ts';
import { markdownTable } from './markdown-table.ts';
import { citationWords, figuresIn, thresholdsIn } from './rule-sources.ts';

/** Data with the name under which its numbers are listed: a guideline id, or "dating". */
export interface NamedData {
  readonly name: string;
  readonly data: unknown;
}

interface Row {
  readonly id: string;
  readonly words: string;
  readonly citation: Citation;
  readonly names: readonly string[];
}

/**
 * Limits, then quoted figures, each once with the guidelines that use it.
 *
 * Given    parts  guidelines and shared data
 */
export function valueLines(parts: readonly NamedData[]): readonly string[] {
  return [
    '### Limits',
    '',
    ...tableOf(parts, (data) => thresholdsIn(data).map(limitRow)),
    '### Figures quoted in sentences',
    '',
    ...tableOf(parts, (data) => figuresIn(data).map(figureRow)),
  ];
}

type Found = Omit<Row, 'names'>;

const limitRow = (limit: Threshold): Found => ({
  id: limit.id,
  words: limitWords(limit),
  citation: limit.citation,
});

const figureRow = ({ id, value, to, unit, citation }: Figure): Found => ({
  id,
  words: to === undefined ? quantityWords(value, unit) : `${value} to ${quantityWords(to, unit)}`,
  citation,
});

function tableOf(parts: readonly NamedData[], find: (data: unknown) => readonly Found[]): readonly string[] {
  const rows = new Map<string, Row>();
  for (const { name, data } of parts)
    for (const found of find(data)) {
      const key = `${found.id} ${found.words}`;
      rows.set(key, { ...found, names: [...(rows.get(key)?.names ?? []), name] });
    }
  return markdownTable(
    ['id', 'value', 'used by', 'source, and how it is known'],
    [...rows.values()].map(({ id, words, names, citation }) => [
      `\`${id}\``,
      words,
      [...new Set(names)].join(', '),
      citationWords(citation),
    ]),
  );
}

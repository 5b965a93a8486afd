// Guidelines side by side: as data, as a table for a terminal, and as one line in every answer.
import type { Comparison, Difference } from '../evaluation.ts';
import { spokenUnits, limitWords } from '../findings/limit-words.ts';
import { isVerified, toEvidence, toReferral, toThreshold } from './answer.ts';
import type { ComparisonAnswer } from './answer-types.ts';
import { someMapped, someText } from './some.ts';
import { block, bullets, wrapped } from './text-layout.ts';
import { classWords, urgencyWords } from './vocabulary.ts';

type Row = Comparison['guidelines'][number];
type PartedAnswer = Comparison['partings'][number]['answers'][number];

/**
 * "acog-2020 would say gestational hypertension: platelets 132 × 10⁹/L is not below 100 × 10⁹/L."
 *
 * Given    differs   of an evaluation
 * Returns  one line; guidelines that say the same for the same reason are named together; undefined when none differ
 */
export function differsLine(differs: readonly Difference[] | undefined): string | undefined {
  const said = new Map<string, readonly string[]>();
  for (const { id, because, classification, urgency } of differs ?? []) {
    const words = `${classification.map((item) => classWords[item]).join(', ')} (${urgency}): ${spokenUnits(because)}`;
    said.set(words, [...(said.get(words) ?? []), id]);
  }
  if (said.size === 0) return undefined;
  return `${[...said].map(([words, ids]) => `${ids.join(', ')} would say ${words}`).join('; ')}.`;
}

/** The comparison as plain data, ready for JSON; members without content are undefined. */
export function toComparisonAnswer(comparison: Comparison): ComparisonAnswer {
  return {
    guidelines: comparison.guidelines.map(({ stamp, classification, ownUrgency, urgency, referral }) => ({
      id: stamp.id,
      title: stamp.title,
      version: stamp.version,
      fingerprint: stamp.fingerprint,
      classification: [...classification],
      ownUrgency,
      urgency,
      referral: referral === undefined ? undefined : toReferral(referral),
    })),
    partings: someMapped(comparison.partings, ({ question, asks, answers }) => ({
      question,
      asks,
      answers: answers.map(({ guideline, outcome, because, thresholds, evidence }) => ({
        guideline,
        outcome,
        because: someText(because),
        thresholds: someMapped(thresholds, toThreshold),
        evidence: someMapped(evidence, toEvidence),
      })),
    })),
  };
}

/**
 * The comparison in plain words: a table of guidelines, then each question on which they part.
 *
 * Returns  lines joined by line feeds, one at the end.
 */
export function toComparisonText({ guidelines, partings }: Comparison): string {
  const lines = [
    ...block('Guidelines side by side', tableLines(guidelines)),
    ...partings.flatMap(({ asks, answers }) => [...wrapped(asks), ...bullets(answers.map(partedLine)), '']),
    ...(partings.length === 0 ? ['No question is answered differently by any of them.'] : []),
  ];
  return `${lines.join('\n').trimEnd()}\n`;
}

function tableLines(rows: readonly Row[]): readonly string[] {
  const width = Math.max(...rows.map(({ stamp }) => stamp.id.length));
  return rows.flatMap((row) => wrapped(rowWords(row), `  ${row.stamp.id.padEnd(width)}  `));
}

function rowWords({ classification, urgency, ownUrgency, referral }: Row): string {
  const classes = classification.map((item) => classWords[item]).join('; ');
  const lifted = urgency === ownUrgency ? '' : `, by itself ${urgencyWords[ownUrgency]}`;
  const place = referral === undefined ? '' : `; ${referral.level}`;
  return `${classes}: ${urgencyWords[urgency]}${lifted}${place}`;
}

const outcomeWords = {
  met: 'yes',
  'not-met': 'no',
  'cannot-tell': 'cannot tell',
  'not-applicable': 'not a question here',
} as const;

function partedLine({ guideline, outcome, thresholds, evidence }: PartedAnswer): string {
  const limits = thresholds.map((threshold) => {
    const mark = isVerified(threshold.citation.known) === false ? ' (not verified)' : '';
    return `${threshold.id} ${limitWords(threshold)}${mark}`;
  });
  const readings = evidence.map((item) => spokenUnits(`${item.what} ${item.asCompared ?? item.asSent}`));
  return [
    `${guideline}: ${outcomeWords[outcome]}`,
    [...new Set(readings)].join(', '),
    limits.length === 0 ? 'no limit on it' : limits.join('; '),
  ].join('; ');
}

// One line of results: what was said to one woman at one moment.
import type { Evaluation } from '../evaluation.ts';
import { toCards } from '../presenters/cds-cards.ts';
import type { Card, Indicator } from '../presenters/card-types.ts';
import type { Visit } from './assess-woman.ts';

export type CardCounts = Readonly<Record<Indicator, number>>;

export interface ResultLine {
  readonly woman: string;
  /** ISO 8601 instant, UTC. */
  readonly at: string;
  readonly guideline: string;
  readonly classification: readonly string[];
  readonly urgency: string;
  readonly period: string;
  readonly gestationalAgeDays?: number | undefined;
  readonly cards: CardCounts;
  /** Cards that were shown, with the same content, at an earlier contact. */
  readonly repeats: number;
  readonly missing: readonly string[];
  /** References the classes rest on. */
  readonly evidence: readonly string[];
  /** The newest pressure at that moment. */
  readonly reading?: string | undefined;
  readonly others?: readonly {
    readonly guideline: string;
    readonly classification: readonly string[];
    readonly urgency: string;
  }[];
}

/**
 * The lines for one woman.
 *
 * Given    subject  her reference
 *          visits   oldest first
 * Returns  one line per visit, members in a fixed order
 * Throws   never
 */
export function toResultLines(subject: string, visits: readonly Visit[]): readonly ResultLine[] {
  const shown = new Set<string>();
  return visits.map(({ evaluation, others }) => {
    const { cards } = toCards(evaluation);
    const repeats = cards.filter(({ uuid }) => shown.has(uuid)).length;
    for (const { uuid } of cards) shown.add(uuid);
    const { assessment, gestationalAge, stamp } = evaluation;
    return {
      woman: subject,
      at: evaluation.asOf,
      guideline: stamp.id,
      classification: assessment.classification,
      urgency: assessment.urgency,
      period: gestationalAge.period,
      gestationalAgeDays: gestationalAge.days,
      cards: countCards(cards),
      repeats,
      missing: assessment.missing.map(({ id }) => id),
      evidence: evidenceOf(evaluation),
      reading: evaluation.timeline.pressures.at(-1)?.sources[0]?.reference,
      ...(others.length === 0
        ? {}
        : {
            others: others.map((other) => ({
              guideline: other.stamp.id,
              classification: other.assessment.classification,
              urgency: other.assessment.urgency,
            })),
          }),
    };
  });
}

function countCards(cards: readonly Card[]): CardCounts {
  const count = (indicator: Indicator): number => cards.filter((card) => card.indicator === indicator).length;
  return { critical: count('critical'), warning: count('warning'), info: count('info') };
}

/** References behind everything that was found to hold, each once, sorted. */
function evidenceOf({ assessment }: Evaluation): readonly string[] {
  const references = assessment.findings
    .filter(({ outcome }) => outcome === 'met')
    .flatMap(({ evidence }) => evidence.map(({ reference }) => reference));
  return [...new Set(references)].sort();
}

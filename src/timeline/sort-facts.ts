// Time order of facts, the same whatever the order of entries.
import { compareIntervals } from './moment.ts';
import type { Moment } from './timeline.ts';

/** By time, then by what was sent, then by reference; facts without a time last. */
export function sortFacts<Fact>(
  facts: readonly Fact[],
  momentOf: (fact: Fact) => Moment | undefined,
  textOf: (fact: Fact) => string,
): readonly Fact[] {
  return [...facts].sort(
    (one, other) =>
      compareOptional(momentOf(one), momentOf(other)) || compareTexts(textOf(one), textOf(other)),
  );
}

function compareOptional(one: Moment | undefined, other: Moment | undefined): number {
  if (one === undefined || other === undefined)
    return Number(one === undefined) - Number(other === undefined);
  return compareIntervals(one, other);
}

function compareTexts(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

/** What settles the order of facts of one time. */
export function sourceText(
  fact: { readonly asSent: string } & (
    | { readonly source: { readonly reference: string } }
    | { readonly sources: readonly { readonly reference: string }[] }
  ),
): string {
  const sources = 'source' in fact ? [fact.source] : fact.sources;
  return `${fact.asSent} ${sources.map(({ reference }) => reference).join(' ')}`;
}

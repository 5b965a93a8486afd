// Cards in the order in which they are read.
import type { Card, CardsResponse, Indicator } from './card-types.ts';

const rank: Readonly<Record<Indicator, number>> = { critical: 0, warning: 1, info: 2 };

/** Those there are: critical before warning before info, else in the order given. */
export function rankedCards(cards: readonly (Card | undefined)[]): CardsResponse {
  return {
    cards: cards.filter((card) => card !== undefined).sort((a, b) => rank[a.indicator] - rank[b.indicator]),
  };
}

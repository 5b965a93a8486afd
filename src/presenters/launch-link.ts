// The way from a card to the page, opened by the record system for the same woman.
import type { CardsResponse } from './card-types.ts';

/**
 * The cards with a link to the page.
 *
 * Given    url   of the SMART launch page; absent: launch is not set up, and nothing is added
 * Source   CDS Hooks 2.0.1, link: `smart` is launched with the context of the hook
 */
export function withLaunchLink<Answer extends CardsResponse>(
  answer: Answer,
  url: string | undefined,
): Answer {
  if (url === undefined) return answer;
  const link = { label: 'Trend, reasoning and referral note', url, type: 'smart' } as const;
  return {
    ...answer,
    cards: answer.cards.map((card) => ({ ...card, links: [...(card.links ?? []), link] })),
  };
}

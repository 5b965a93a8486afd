// What a clinician may accept from a card with one touch.
import type { Evaluation } from '../evaluation.ts';
import type { CardAction, CardSuggestion } from './card-types.ts';
import { stableUuid } from './stable-uuid.ts';
import { toSuggestions, type Suggestions } from './suggestions.ts';
import { classWords, referralWords } from './vocabulary.ts';

/**
 * Suggestions of the first card, most complete first; at most one may be taken.
 *
 * Returns  both together (recommended), the diagnosis alone, the referral alone; fewer when only one is proposed;
 *          empty when the chart holds everything already.
 * Notes    1. Every reference inside a suggestion resolves inside it or in the chart, so a client may carry out
 *             any one of them as a transaction (checklist A-05).
 */
export function cardSuggestions(evaluation: Evaluation): readonly CardSuggestion[] {
  const suggestions = toSuggestions(evaluation);
  const record = recordActions(suggestions);
  const refer = referActions(suggestions);
  const recordLabel = `Record ${wordsOf(suggestions)} as a provisional diagnosis`;
  const referLabel = `Refer: ${evaluation.assessment.referral === undefined ? '' : referralWords[evaluation.assessment.referral.level]}`;
  if (record.length === 0) return refer.length === 0 ? [] : [suggestion(referLabel, refer, true)];
  if (refer.length === 0) return [suggestion(recordLabel, record, true)];
  return [
    suggestion(`${recordLabel} and refer`, [...record, ...refer], true),
    suggestion(recordLabel, record, false),
    suggestion(`${referLabel} only`, withoutNewConditions(refer, suggestions), false),
  ];
}

function suggestion(label: string, actions: readonly CardAction[], isRecommended: boolean): CardSuggestion {
  const ids = actions.map(({ resource }) => `${resource.resourceType}/${resource.id ?? ''}`);
  const uuid = stableUuid(['suggestion', ids]);
  return isRecommended ? { label, uuid, isRecommended: true, actions } : { label, uuid, actions };
}

function recordActions({ conditions }: Suggestions): readonly CardAction[] {
  return conditions.map(({ classification, resource }) => ({
    type: 'create',
    description: `Add to the problem list, provisional: ${classWords[classification]}`,
    resource,
  }));
}

function referActions({ referral }: Suggestions): readonly CardAction[] {
  if (referral === undefined) return [];
  return [
    {
      type: 'create',
      description: 'Draft a referral with the reason, the findings and the steps before transfer',
      resource: referral,
    },
  ];
}

function wordsOf({ conditions }: Suggestions): string {
  return conditions.map(({ classification }) => classWords[classification]).join(' and ');
}

/** The referral without reasons that this suggestion does not create. */
function withoutNewConditions(
  actions: readonly CardAction[],
  { conditions }: Suggestions,
): readonly CardAction[] {
  const created = new Set(conditions.map(({ resource }) => `Condition/${resource.id}`));
  return actions.map((action) => {
    if (action.resource.resourceType !== 'ServiceRequest') return action;
    const { reasonReference, ...rest } = action.resource;
    const kept = (reasonReference ?? []).filter((reason) => !created.has(reason.reference ?? ''));
    const id = stableUuid(['referral only', rest.id ?? '']);
    return {
      ...action,
      resource: kept.length === 0 ? { ...rest, id } : { ...rest, id, reasonReference: kept },
    };
  });
}

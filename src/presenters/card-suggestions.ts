// What a clinician may accept from a card with one touch.
import { fill } from '../messages/say.ts';
import type { Telling } from './card-context.ts';
import type { CardAction, CardSuggestion } from './card-types.ts';
import { markedUuid } from './card-uuid.ts';
import { stableUuid } from './stable-uuid.ts';
import { toSuggestions, type Suggestions } from './suggestions.ts';

/**
 * Suggestions of the first card, most complete first; at most one may be taken.
 *
 * Given    rule   the one the card is counted for
 * Returns  both together (recommended), the diagnosis alone, the referral alone; fewer when only one is proposed;
 *          empty when the chart holds everything already.
 * Notes    1. Every reference inside a suggestion resolves inside it or in the chart, so a client may carry out
 *             any one of them as a transaction (checklist A-05).
 *          2. Labels are in the language of the reader; resources are in English, like the record they go into.
 */
export function cardSuggestions(telling: Telling, rule: string): readonly CardSuggestion[] {
  const { evaluation, messages } = telling;
  const { phrases, referralWords } = messages;
  const suggestions = toSuggestions(evaluation);
  const record = recordActions(telling, suggestions);
  const refer = referActions(telling, suggestions);
  const { referral } = evaluation.assessment;
  const recordLabel = fill(phrases.record, { names: namesOf(telling, suggestions) });
  const place = referral === undefined ? '' : referralWords[referral.level];
  const referLabel = fill(phrases.refer, { place });
  const suggestion = suggestionOf(telling, rule);
  if (record.length === 0) return refer.length === 0 ? [] : [suggestion(referLabel, refer, true)];
  if (refer.length === 0) return [suggestion(recordLabel, record, true)];
  return [
    suggestion(fill(phrases['record-and-refer'], { record: recordLabel }), [...record, ...refer], true),
    suggestion(recordLabel, record, false),
    suggestion(
      fill(phrases['refer-only'], { refer: referLabel }),
      withoutNewConditions(refer, suggestions),
      false,
    ),
  ];
}

function suggestionOf({ evaluation: { stamp } }: Telling, rule: string) {
  return (label: string, actions: readonly CardAction[], isRecommended: boolean): CardSuggestion => {
    const ids = actions.map(({ resource }) => `${resource.resourceType}/${resource.id ?? ''}`);
    const mark = { kind: 'suggestion', rule, guideline: stamp.id, version: stamp.fingerprint } as const;
    const uuid = markedUuid(mark, [ids]);
    return isRecommended ? { label, uuid, isRecommended: true, actions } : { label, uuid, actions };
  };
}

function recordActions({ messages }: Telling, { conditions }: Suggestions): readonly CardAction[] {
  return conditions.map(({ classification, resource }) => ({
    type: 'create',
    description: fill(messages.phrases['add-problem'], { name: messages.classWords[classification] }),
    resource,
  }));
}

function referActions({ messages }: Telling, { referral }: Suggestions): readonly CardAction[] {
  if (referral === undefined) return [];
  return [{ type: 'create', description: messages.phrases['draft-referral'], resource: referral }];
}

function namesOf({ messages }: Telling, { conditions }: Suggestions): string {
  const [first = '', ...others] = conditions.map(({ classification }) => messages.classWords[classification]);
  return others.reduce((said, second) => fill(messages.phrases.and, { first: said, second }), first);
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

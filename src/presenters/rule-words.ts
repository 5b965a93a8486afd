// Conditions of a rule in words: all of, any of, none of. Wording only.
import type { Guideline, Need } from '../guidelines/guideline.ts';
import { idWords } from '../id-words.ts';
import { item, type ListItem } from './nested-list.ts';
import { questionItems } from './question-words.ts';

/**
 * The conditions of a rule as a nested list.
 *
 * Given    need       all / any / none over questions and rules
 *          guideline  whose questions give the numbers
 * Returns  one item for each line; a question is followed by what it counts
 * Throws   never
 */
export function needItems(need: Need, guideline: Guideline): readonly ListItem[] {
  return itemsOf(need, { guideline, told: new Set() });
}

/** A question that stands twice in one rule is told once. */
interface Telling {
  readonly guideline: Guideline;
  readonly told: Set<string>;
}

function itemsOf(need: Need, telling: Telling): readonly ListItem[] {
  if (typeof need === 'string') return [leafItem(need, telling)];
  if ('all' in need)
    return [
      item(
        'all of:',
        flat(need.all, 'all').flatMap((part) => itemsOf(part, telling)),
      ),
    ];
  if ('any' in need)
    return [
      item(
        'any of:',
        flat(need.any, 'any').flatMap((part) => itemsOf(part, telling)),
      ),
    ];
  return [
    item(
      'none of:',
      need.none.flatMap((part) => itemsOf(part, telling)),
    ),
  ];
}

/** "Any of" inside "any of" is one list; a list of one is its part. */
function flat(parts: readonly Need[], connective: 'all' | 'any'): readonly Need[] {
  return parts.flatMap((part): readonly Need[] => {
    if (typeof part === 'string') return [part];
    const inner = 'all' in part ? part.all : 'any' in part ? part.any : undefined;
    const isSame = connective in part || (inner !== undefined && inner.length === 1);
    return isSame && inner !== undefined ? flat(inner, connective) : [part];
  });
}

function leafItem(id: string, { guideline, told }: Telling): ListItem {
  const rule = /^(class|urgency|referral|prevention):(.+)$/.exec(id);
  if (rule !== null) return item(ruleWords(rule[1] ?? '', rule[2] ?? ''));
  const question = guideline.questions.find((each) => each.id === id);
  if (question === undefined) return item(`\`${id}\` (not asked by this publication)`);
  const line = `${question.asks} \`${id}\``;
  if (told.has(id)) return item(`${line} (as above)`);
  told.add(id);
  return item(line, questionItems(question));
}

function ruleWords(kind: string, id: string): string {
  switch (kind) {
    case 'class':
      return `the rule [${id}](#${id}) holds`;
    case 'urgency':
      return `the urgency rule [${id}](#urgency-${id}) holds`;
    case 'referral':
      return `the referral is: ${idWords(id)}`;
    default:
      return `prevention is indicated: ${idWords(id)}`;
  }
}

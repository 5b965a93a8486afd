// A need in one line, for tables. Wording only.
import type { Guideline, Need } from '../guidelines/guideline.ts';

/** "any pre-eclampsia; and (Is it before 20+0 weeks)"; a state that has a name is called by it. */
export function needLine(need: Need, guideline: Guideline): string {
  if (typeof need === 'string') {
    const question = guideline.questions.find(({ id }) => id === need);
    return question?.asks.replace(/\?$/, '') ?? need.replace(/^class:/, '').replace(/^(\w+):/, '$1: ');
  }
  return need.called ?? partsLine(need, guideline);
}

function partsLine(need: Exclude<Need, string>, guideline: Guideline): string {
  const joined = (parts: readonly Need[], word: string): string =>
    parts.map((part) => inBrackets(needLine(part, guideline), part)).join(word);
  if ('all' in need) return joined(need.all, '; and ');
  if ('any' in need) return joined(need.any, '; or ');
  return `not: ${joined(need.none, '; nor ')}`;
}

const inBrackets = (words: string, part: Need): string =>
  typeof part === 'string' || part.called !== undefined ? words : `(${words})`;

/** The states that the steps of a guideline call by a name, with what they hold; each once. */
export function namedStates(guideline: Guideline): readonly (readonly [name: string, holds: string])[] {
  const found = new Map<string, string>();
  const look = (need: Need): void => {
    if (typeof need === 'string') return;
    if (need.called !== undefined) found.set(need.called, partsLine(need, guideline));
    for (const part of 'all' in need ? need.all : 'any' in need ? need.any : need.none) look(part);
  };
  for (const { when } of guideline.actionRules) look(when);
  return [...found];
}

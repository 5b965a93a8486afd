// One step in one line.
import type { ActionKind, ActionRule, Citation, Need } from './guideline.ts';
import type { Said } from './sentences.ts';

/** A step; its sentence is plain words, or words with the figures they quote. */
export function step(
  id: string,
  kind: ActionKind,
  order: number,
  said: string | Said,
  when: Need,
  citation: Citation,
): ActionRule {
  return typeof said === 'string'
    ? { id, kind, order, sentence: said, when, citation }
    : { id, kind, order, sentence: said.sentence, figures: said.figures, when, citation };
}

/** The step needs something that not every site has. */
export const needing = (siteNeeds: string, rule: ActionRule): ActionRule => ({ ...rule, siteNeeds });

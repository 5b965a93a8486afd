// What to do and why, as plain sentences in the order in which they are read.
import type { Evaluation } from '../evaluation.ts';
import { english } from '../messages/en.ts';
import type { Messages } from '../messages/messages.ts';
import { translated } from '../messages/say.ts';
import { classFindings } from './class-findings.ts';
import { spokenValue } from './newest-data.ts';

/** The referral first, since it is set going first; then the actions in their order. */
export function stepsOf({ assessment }: Evaluation, messages: Messages = english): readonly string[] {
  const referral = assessment.referral === undefined ? [] : [assessment.referral.sentence];
  return spoken([...referral, ...assessment.actions.map((action) => action.sentence)], messages);
}

/** The reasons of the classes, leading first, then those of the urgency. */
export function reasonsOf(evaluation: Evaluation, messages: Messages = english): readonly string[] {
  const because = classFindings(evaluation).map((finding) => finding.because);
  const urgency = evaluation.assessment.urgencyBecause.map((reason) => reason.sentence);
  return spoken([...because, ...urgency], messages);
}

/** Sentences of the data as people read them, each once, in the language. */
export function spoken(sentences: readonly string[], messages: Messages): readonly string[] {
  const said = sentences.filter((sentence) => sentence !== '');
  return [...new Set(said.map((sentence) => spokenValue(translated(messages, sentence), messages.months)))];
}

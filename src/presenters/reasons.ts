// What to do and why, as plain sentences in the order in which they are read.
import type { Evaluation } from '../evaluation.ts';
import type { ActionKind } from '../guidelines/guideline.ts';
import { english } from '../messages/en.ts';
import type { Messages } from '../messages/messages.ts';
import { translated } from '../messages/say.ts';
import { classFindings } from './class-findings.ts';
import { spokenValue } from './newest-data.ts';

/** When a step belongs to: at once, to the visits that follow, or to what she is told. */
export type StepTime = 'now' | 'later' | 'tell';

const timeOf: Readonly<Record<ActionKind, StepTime>> = {
  'repeat-pressure': 'now',
  measure: 'now',
  investigate: 'now',
  refer: 'now',
  'before-transfer': 'now',
  'treatment-option': 'now',
  'medicine-safety': 'now',
  prevention: 'now',
  'measurement-quality': 'now',
  'follow-up': 'later',
  'delivery-review': 'later',
  'after-birth': 'later',
  'long-term': 'later',
  'tell-the-woman': 'tell',
};

/** The steps of one time in their order; at once, the referral is set going first. */
export function stepsOf(
  { assessment }: Evaluation,
  messages: Messages = english,
  time: StepTime = 'now',
): readonly string[] {
  const { referral } = assessment;
  const first = referral === undefined || time !== 'now' ? [] : [referral.sentence];
  const steps = assessment.actions.filter((action) => timeOf[action.kind] === time);
  return spoken([...first, ...steps.map((action) => action.sentence)], messages);
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

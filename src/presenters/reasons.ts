// What to do and why, as plain sentences in the order in which they are read.
import type { Evaluation } from '../evaluation.ts';
import { classFindings } from './class-findings.ts';
import { spokenValue } from './newest-data.ts';

/** The referral first, since it is set going first; then the actions in their order. */
export function stepsOf({ assessment }: Evaluation): readonly string[] {
  const referral = assessment.referral === undefined ? [] : [assessment.referral.sentence];
  return unique([...referral, ...assessment.actions.map((action) => action.sentence)]);
}

/** The reasons of the classes, leading first, then those of the urgency. */
export function reasonsOf(evaluation: Evaluation): readonly string[] {
  const because = classFindings(evaluation).map((finding) => finding.because);
  return unique([...because, ...evaluation.assessment.urgencyBecause.map((reason) => reason.sentence)]);
}

function unique(sentences: readonly string[]): readonly string[] {
  return [...new Set(sentences.filter((sentence) => sentence !== '').map(spokenValue))];
}

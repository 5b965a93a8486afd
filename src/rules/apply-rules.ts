// Runs the questions and rules of a guideline over a timeline. Nothing clinical inside.
import type { Assessment, Finding, Outcome } from '../findings/finding.ts';
import type { Guideline, Question, TimelineValues } from '../guidelines/guideline.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { checks } from './checks/index.ts';
import type { Answer } from './answer.ts';
import { chooseActions } from './choose-actions.ts';
import { decideClasses } from './decide-classes.ts';
import { chooseReferral, decideUrgency } from './decide-urgency.ts';
import { listMissing } from './list-missing.ts';
import { judgeQuality } from './quality/judge-quality.ts';
import { prepareView, type View } from './view.ts';

export interface Applied {
  readonly view: View;
  readonly assessment: Assessment;
}

/**
 * The answer of one guideline about one woman.
 *
 * Given    timeline   facts up to `asOf`
 *          guideline  questions and rules as data
 *          values     dating values
 * Returns  the assessment, and the view it was made from
 * Throws   only when the guideline data names a question that does not exist
 */
export function applyRules(timeline: Timeline, guideline: Guideline, values: TimelineValues): Applied {
  const view = prepareView(timeline, values, guideline.visit);
  const answers = guideline.questions.map((question) => asFinding(question, ask(view, question)));
  const outcomes = new Map<string, Outcome>(answers.map((finding) => [finding.question, finding.outcome]));
  const classes = decideClasses(guideline.classRules, answers, outcomes);
  const urgency = decideUrgency(guideline.urgencyRules, outcomes);
  const referral = chooseReferral(guideline.referralRules, outcomes, urgency.urgency);
  const actions = chooseActions(view, guideline, outcomes);
  return {
    view,
    assessment: {
      classification: classes.classification,
      urgency: urgency.urgency,
      urgencyBecause: urgency.because,
      findings: [...classes.findings, ...answers],
      missing: listMissing(guideline, answers, outcomes, urgency.urgency),
      actions,
      medicines: [],
      treatment: [],
      prevention: [],
      quality: judgeQuality(view, guideline.qualityRules ?? []),
      ...(referral === undefined ? {} : { referral }),
    },
  };
}

/** The table of checks pairs each name with its own options; the compiler proves the table, not this one call. */
function ask(view: View, question: Question): Answer {
  const check: (view: View, options: never) => Answer = checks[question.check];
  return check(view, question as never);
}

function asFinding(question: Question, answer: Answer): Finding {
  const omission = question.whenCannotTell;
  return {
    question: question.id,
    asks: question.asks,
    outcome: answer.outcome,
    because: answer.because,
    evidence: answer.evidence ?? [],
    thresholds: answer.thresholds ?? [],
    source: question.citation,
    ...(answer.outcome === 'cannot-tell' && omission !== undefined
      ? { missing: { ...omission, ...answer.missing } }
      : {}),
  };
}

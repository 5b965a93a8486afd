// Runs the questions and rules of a guideline over a timeline. Nothing clinical inside.
import type { Assessment, Finding, Outcome } from '../findings/finding.ts';
import type { ActionKind, Guideline, Question, TimelineValues } from '../guidelines/guideline.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { markedAgainst } from './against.ts';
import { answerQuestion } from './checks/index.ts';
import type { Answer } from './answer.ts';
import { chooseActions } from './choose-actions.ts';
import { decideClasses } from './decide-classes.ts';
import { chooseReferral, decideUrgency } from './decide-urgency.ts';
import { listMissing } from './list-missing.ts';
import { judgeMedicines } from './medicine-safety.ts';
import { advisePrevention } from './prevention.ts';
import { judgeQuality } from './quality/judge-quality.ts';
import { firstLevelSite, type Site } from './site.ts';
import { chooseTreatments } from './treatment-options.ts';
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
 *          site       what can be done here; default a first-level site
 * Returns  the assessment, and the view it was made from
 * Throws   only when the guideline data names a question that does not exist
 */
export function applyRules(
  timeline: Timeline,
  guideline: Guideline,
  values: TimelineValues,
  site: Site = firstLevelSite,
): Applied {
  const view = prepareView(timeline, values, guideline.visit);
  const answers = guideline.questions.map((question) => asFinding(question, answerQuestion(view, question)));
  const outcomes = new Map<string, Outcome>(answers.map((finding) => [finding.question, finding.outcome]));
  const classes = decideClasses(guideline.classRules, answers, outcomes);
  const prevention = advisePrevention(view, guideline, outcomes);
  const urgency = decideUrgency(guideline.urgencyRules, outcomes);
  const referral = chooseReferral(guideline.referralRules, outcomes, urgency.urgency);
  const actions = chooseActions(view, guideline, outcomes, site).map((action) =>
    namesDrugs.has(action.kind)
      ? { ...action, sentence: markedAgainst(view, guideline, action.sentence) }
      : action,
  );
  return {
    view,
    assessment: {
      classification: classes.classification,
      urgency: urgency.urgency,
      urgencyBecause: urgency.because,
      findings: [...classes.findings, ...answers],
      missing: listMissing(guideline, answers, outcomes, urgency.urgency),
      actions,
      medicines: judgeMedicines(view, guideline, outcomes),
      treatment: chooseTreatments(view, guideline, outcomes, site),
      prevention,
      quality: judgeQuality(view, guideline.qualityRules ?? []),
      ...(referral === undefined ? {} : { referral }),
    },
  };
}

/** Steps that offer drugs by name. */
const namesDrugs: ReadonlySet<ActionKind> = new Set<ActionKind>(['before-transfer', 'treatment-option']);

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
    ...((answer.outcome === 'cannot-tell' || answer.missing !== undefined) && omission !== undefined
      ? { missing: { ...omission, ...answer.missing } }
      : {}),
  };
}

// The public JSON answer: everything decided about one woman, with its reasons and sources, and nothing decided here.
import type { Citation, Known, Omission, Threshold } from '../guidelines/guideline.ts';
import type { Action, Evidence, Finding, Missing, Referral, RiskEstimate } from '../findings/finding.ts';
import type { Account, AccountEntry, Evaluation, GestationalAge } from '../evaluation.ts';
import type { Issue } from '../errors.ts';
import { toCare } from './answer-care.ts';
import { caution } from './caution.ts';
import { someMapped, someOf, someText } from './some.ts';
import type {
  Answer,
  AnswerAccount,
  AnswerAction,
  AnswerCitation,
  AnswerEntry,
  AnswerEvidence,
  AnswerFinding,
  AnswerGestationalAge,
  AnswerIssue,
  AnswerMissing,
  AnswerOmission,
  AnswerReferral,
  AnswerRiskEstimate,
  AnswerThreshold,
} from './answer-types.ts';

/**
 * The answer about one woman as plain data, ready for JSON.
 *
 * Given    evaluation   as `evaluate` returns it
 * Returns  members in a fixed order; those without content are undefined, so JSON leaves them out.
 * Throws   never
 * Notes    1. The same evaluation gives the same bytes.
 */
export function toAnswer(evaluation: Evaluation): Answer {
  const { assessment, stamp } = evaluation;
  return {
    classification: [...assessment.classification],
    urgency: assessment.urgency,
    gestationalAge: toGestationalAge(evaluation.gestationalAge),
    findings: someMapped(assessment.findings, toFinding),
    missing: someMapped(assessment.missing, toMissing),
    actions: someMapped(assessment.actions, toAction),
    referral: assessment.referral === undefined ? undefined : toReferral(assessment.referral),
    urgencyBecause: someMapped(assessment.urgencyBecause, (reason) => ({
      rule: reason.rule,
      urgency: reason.urgency,
      sentence: reason.sentence,
      source: toCitation(reason.source),
    })),
    ...toCare(assessment),
    guideline: { id: stamp.id, title: stamp.title, version: stamp.version, fingerprint: stamp.fingerprint },
    asOf: evaluation.asOf,
    subject: evaluation.subject,
    differs: someMapped(evaluation.differs, (difference) => ({
      ...difference,
      classification: [...difference.classification],
    })),
    riskEstimates: someMapped(evaluation.riskEstimates, toRiskEstimate),
    account: toAccount(evaluation.account),
    caution: [...caution],
  };
}

/** A source with the mark of how it is known. */
export function toCitation(citation: Citation): AnswerCitation {
  return {
    publication: citation.publication,
    section: someText(citation.section),
    year: citation.year,
    known: citation.known,
    verified: isVerified(citation.known),
    note: someText(citation.note),
  };
}

/** true: read; false: from memory; undefined: our own choice or common practice, with no print to check against. */
export function isVerified(known: Known): boolean | undefined {
  switch (known) {
    case 'read':
      return true;
    case 'from-memory':
      return false;
    case 'ours':
    case 'common-practice':
      return undefined;
  }
}

function toGestationalAge(age: GestationalAge): AnswerGestationalAge {
  return { ...age, evidence: someOf(age.evidence), remarks: someOf(age.remarks) };
}

function toFinding(finding: Finding): AnswerFinding {
  return {
    question: finding.question,
    asks: finding.asks,
    outcome: finding.outcome,
    because: someText(finding.because),
    evidence: someMapped(finding.evidence, toEvidence),
    thresholds: someMapped(finding.thresholds, toThreshold),
    source: toCitation(finding.source),
    restsOn: someOf(finding.restsOn),
    missing: finding.missing === undefined ? undefined : toOmission(finding.missing),
  };
}

export function toEvidence(evidence: Evidence): AnswerEvidence {
  return {
    reference: evidence.reference,
    what: evidence.what,
    at: someText(evidence.at),
    asSent: someText(evidence.asSent),
    asCompared: someText(evidence.asCompared),
    remark: someText(evidence.remark),
  };
}

export function toThreshold(threshold: Threshold): AnswerThreshold {
  const { id, comparator, value, unit } = threshold;
  return { id, comparator, value, unit, citation: toCitation(threshold.citation) };
}

function toOmission(omission: Omission): AnswerOmission {
  return { id: omission.id, what: omission.what, how: someText(omission.how), by: omission.by };
}

function toMissing(missing: Missing): AnswerMissing {
  return { ...toOmission(missing), at: someText(missing.at), couldChange: someOf(missing.couldChange) };
}

function toAction(action: Action): AnswerAction {
  const { id, kind, sentence } = action;
  return { id, kind, sentence, time: someText(action.time), source: toCitation(action.source) };
}

export function toReferral(referral: Referral): AnswerReferral {
  const { level, urgency, sentence } = referral;
  return { level, urgency, sentence, source: toCitation(referral.source) };
}

function toRiskEstimate(estimate: RiskEstimate): AnswerRiskEstimate {
  const { model, predicts, outcome, percent, sentence, verified } = estimate;
  return {
    model,
    predicts,
    outcome,
    percent,
    sentence,
    evidence: someMapped(estimate.evidence, toEvidence),
    missing: someOf(estimate.missing),
    source: toCitation(estimate.source),
    verified,
  };
}

function toAccount(account: Account): AnswerAccount {
  const { received, used, notNeeded, setAside } = account;
  return {
    received,
    used,
    notNeeded,
    setAside,
    entries: someMapped(account.entries, toEntry),
    issues: someMapped(account.issues, toIssue),
  };
}

function toEntry(entry: AccountEntry): AnswerEntry {
  const { path, reference, resourceType } = entry;
  const place = { path, reference, resourceType };
  switch (entry.outcome) {
    case 'used':
      return { ...place, outcome: 'used', by: someOf(entry.by) };
    case 'not-needed':
      return { ...place, outcome: 'not-needed', why: entry.why };
    case 'set-aside':
      return {
        ...place,
        outcome: 'set-aside',
        code: entry.code,
        expression: entry.expression,
        message: entry.message,
      };
  }
}

function toIssue(issue: Issue): AnswerIssue {
  const { severity, code, message } = issue;
  return { severity, code, expression: someText(issue.expression), message };
}

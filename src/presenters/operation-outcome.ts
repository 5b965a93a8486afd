// Issues and the account of entries as FHIR OperationOutcome.
import type { OperationOutcome, OperationOutcomeIssue } from 'fhir/r4.js';
import type { Issue, SetAsideCode } from '../errors.ts';
import type { Account, AccountEntry } from '../evaluation.ts';
import { codeSystems } from './vocabulary.ts';

/** FHIR issue type of each reason for which an entry is set aside. */
export const issueTypes = {
  'entered-in-error': 'suppressed',
  cancelled: 'suppressed',
  'status-not-usable': 'suppressed',
  'status-missing': 'required',
  'other-subject': 'business-rule',
  'subject-missing': 'required',
  'older-version': 'duplicate',
  duplicate: 'duplicate',
  deleted: 'deleted',
  'time-missing': 'required',
  'time-invalid': 'value',
  'time-in-future': 'value',
  'value-missing': 'required',
  'value-absent-with-reason': 'incomplete',
  'value-not-readable': 'value',
  'value-type-not-usable': 'value',
  'value-ambiguous': 'value',
  'value-out-of-range': 'value',
  'unit-missing': 'required',
  'unit-unknown': 'value',
  'diastolic-not-below-systolic': 'value',
  'modifier-not-understood': 'extension',
  'code-missing': 'required',
  'code-unknown': 'code-invalid',
  'not-the-mother': 'business-rule',
  'method-not-usable': 'business-rule',
  'previous-pregnancy': 'business-rule',
  'reference-unresolved': 'not-found',
  malformed: 'structure',
  'not-a-resource': 'structure',
} as const satisfies Record<SetAsideCode, OperationOutcomeIssue['code']>;

/**
 * Issues as an OperationOutcome.
 *
 * Given    issues   may be empty
 * Returns  one FHIR issue for each, in order; a single "all fine" issue when there is none.
 * Source   FHIR R4 OperationOutcome (at least one issue); checklist F-E01 to F-E03.
 */
export function toOperationOutcome(issues: readonly Issue[]): OperationOutcome {
  return { resourceType: 'OperationOutcome', issue: issues.length === 0 ? [allFine] : issues.map(toIssue) };
}

/**
 * The account of everything received: one issue for each entry, then those about the bundle.
 *
 * Returns  severity information for what was used or not needed, warning for what was set aside.
 */
export function toAccountOutcome(account: Account): OperationOutcome {
  const issue = [...account.entries.map(toEntryIssue), ...account.issues.map(toIssue)];
  return { resourceType: 'OperationOutcome', issue: issue.length === 0 ? [allFine] : issue };
}

const allFine: OperationOutcomeIssue = {
  severity: 'information',
  code: 'informational',
  details: { text: 'Nothing to report.' },
};

function toEntryIssue(entry: AccountEntry): OperationOutcomeIssue {
  switch (entry.outcome) {
    case 'used':
      return entryIssue('information', 'informational', 'used', entry.path, usedText(entry));
    case 'not-needed':
      return entryIssue('information', 'informational', 'not-needed', entry.path, `Not needed: ${entry.why}`);
    case 'set-aside':
      return entryIssue('warning', issueTypes[entry.code], entry.code, entry.expression, entry.message);
  }
}

function usedText(entry: { readonly by: readonly string[] }): string {
  return entry.by.length === 0 ? 'Used.' : `Used by: ${entry.by.join(', ')}.`;
}

function entryIssue(
  severity: OperationOutcomeIssue['severity'],
  code: OperationOutcomeIssue['code'],
  ours: string,
  expression: string,
  text: string,
): OperationOutcomeIssue {
  return {
    severity,
    code,
    details: { coding: [{ system: codeSystems.issue, code: ours }], text },
    expression: [expression],
  };
}

function toIssue(issue: Issue): OperationOutcomeIssue {
  return {
    severity: fatalCodes.includes(issue.code) ? 'fatal' : issue.severity,
    code: toIssueType(issue.type),
    details: { coding: [{ system: codeSystems.issue, code: issue.code }], text: issue.message },
    ...(issue.diagnostics === undefined ? {} : { diagnostics: issue.diagnostics }),
    ...(issue.expression === '' ? {} : { expression: [issue.expression] }),
  };
}

/** Nothing at all could be read, or we failed: FHIR calls these fatal. */
const fatalCodes: readonly string[] = ['not-json', 'internal'];

const knownTypes: readonly OperationOutcomeIssue['code'][] = [
  'invalid',
  'structure',
  'required',
  'value',
  'invariant',
  'security',
  'login',
  'unknown',
  'expired',
  'forbidden',
  'suppressed',
  'processing',
  'not-supported',
  'duplicate',
  'multiple-matches',
  'not-found',
  'deleted',
  'too-long',
  'code-invalid',
  'extension',
  'too-costly',
  'business-rule',
  'conflict',
  'transient',
  'lock-error',
  'no-store',
  'exception',
  'timeout',
  'incomplete',
  'throttled',
  'informational',
];

/** The FHIR issue type of that name; `processing` when it is not one (required binding). */
function toIssueType(type: string): OperationOutcomeIssue['code'] {
  return knownTypes.find((known) => known === type) ?? 'processing';
}

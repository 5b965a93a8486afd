// Reasons a clinician may give for not following a card. Data only.
import type { HooksCoding } from './card-types.ts';
import { codeSystems } from './vocabulary.ts';

const standard = 'http://terminology.hl7.org/CodeSystem/non-adherence-reason-codes';

/**
 * Standard categories first, then two of ours that the commonest free-text answers call for.
 *
 * Source   CDS Hooks 3.0.0 ballot, override reasons (codes read; displays in our words); ours: pain-points section 3
 *          ("will monitor" is the commonest reason given).
 */
export const overrideReasons: readonly HooksCoding[] = [
  { code: 'cds-not-applicable', system: standard, display: 'Does not apply to her' },
  { code: 'cds-suboptimal-context', system: standard, display: 'Not the right moment' },
  { code: 'recipient-disagrees-evidence', system: standard, display: 'I judge the evidence differently' },
  { code: 'recipient-concerns-outcomes', system: standard, display: 'Concern about the outcome' },
  { code: 'does-not-align-preferences', system: standard, display: 'She does not wish it' },
  { code: 'not-convenient-feasible', system: standard, display: 'Not possible here' },
  { code: 'already-done', system: codeSystems.overrideReason, display: 'Already done or arranged' },
  {
    code: 'reading-in-doubt',
    system: codeSystems.overrideReason,
    display: 'The reading is in doubt; it will be repeated',
  },
];

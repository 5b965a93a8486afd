// A woman recorded as deceased: the trace stays, nothing is advised.
import type { Assessment } from '../findings/finding.ts';

/** The assessment without class, urgency or advice. */
export function withoutAdvice(assessment: Assessment): Assessment {
  return {
    classification: ['cannot-classify'],
    urgency: 'routine',
    urgencyBecause: [],
    findings: assessment.findings,
    missing: [],
    actions: [],
    medicines: [],
    treatment: [],
    prevention: [],
    quality: [],
  };
}

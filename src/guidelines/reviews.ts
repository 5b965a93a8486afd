// Reviews of rules by clinicians, each against the fingerprint of the data that was read. Data only.

export interface Review {
  /** Id of the rule as RULES.md heads it: `pre-eclampsia`, `urgency:seizure`. */
  readonly rule: string;
  /** Fingerprint printed in RULES.md when it was read. */
  readonly fingerprint: string;
  /** "obstetrician", "nurse-midwife": the role, never a name. */
  readonly role: string;
  /** YYYY-MM-DD. */
  readonly date: string;
}

/** None yet. A touched number turns a review into "changed since review" by itself. */
export const reviews: readonly Review[] = [];

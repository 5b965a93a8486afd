// One row of a code table, and where it was checked. Types only.

/**
 * How a code is known. `read`: code and meaning were seen in the source named in the terminology table.
 * `from-memory`: not verified; a terminology server should confirm it before a site relies on it.
 */
export type CodeKnown = 'read' | 'from-memory';

/** A code of one code system. `display` is given only where the licence of the system lets us print it. */
export interface CodeRow {
  readonly code: string;
  readonly known: CodeKnown;
  readonly display?: string;
  readonly note?: string;
}

/** A code with its system, where a table mixes systems. */
export interface SystemCode extends CodeRow {
  readonly system: string;
}

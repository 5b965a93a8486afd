// A reference as FHIR writes it, whatever the input called the resource.
import type { Reference } from 'fhir/r4.js';

/** The woman; said in `display` when the input does not name her, for the caller to fill. */
export function subjectReference(subject: string | undefined): Reference {
  return subject === undefined
    ? { display: 'The woman of the submitted data, not named there' }
    : toReference(subject);
}

/**
 * The FHIR reference to a resource.
 *
 * Given    text   `Type/id`, a urn or absolute address; or `Type?identifier=system|value`, known by identifier only
 * Returns  a literal reference; for an identifier a logical one (type and identifier)
 * Throws   never
 * Source   FHIR R4 References: a conditional reference has meaning only in a transaction; F-R08.
 */
export function toReference(text: string): Reference {
  const [, type, token] = /^([A-Z][A-Za-z]*)\?identifier=(.+)$/.exec(text) ?? [];
  if (type === undefined || token === undefined) return { reference: text };
  const bar = token.lastIndexOf('|');
  const value = token.slice(bar + 1);
  return { type, identifier: bar > 0 ? { system: token.slice(0, bar), value } : { value } };
}

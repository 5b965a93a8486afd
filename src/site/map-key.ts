// How a local code is looked up in a site's maps.

/** Codes are compared as they are written, strip texts and units without regard to blanks around them. */
export function mapKey(system: string, code: string): string {
  return `${system}|${code.trim()}`;
}

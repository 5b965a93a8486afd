// Headers every answer carries, and those of the page.

/** JSON is never shown as a page. */
export const safetyHeaders = {
  'Content-Security-Policy': "default-src 'none'; frame-ancestors 'none'",
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
} as const;

/** In production every later visit is https too. */
export const strictTransport = {
  'Strict-Transport-Security': 'max-age=31536000; includeSubDomains',
} as const;

/**
 * The page may run our script and talk to this service, nothing else.
 *
 * Given    connect     further origins the page may talk to: record systems that launch it
 *          ancestors   origins whose pages may show it in a frame; empty: none
 */
export function pageHeaders(
  connect: readonly string[],
  ancestors: readonly string[],
): Readonly<Record<string, string>> {
  const policy = [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    ["connect-src 'self'", ...connect].join(' '),
    "base-uri 'none'",
    "form-action 'none'",
    "require-trusted-types-for 'script'",
    `frame-ancestors ${ancestors.length === 0 ? "'none'" : ancestors.join(' ')}`,
  ];
  return { 'Content-Security-Policy': policy.join('; ') };
}

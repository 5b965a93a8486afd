// Headers every answer carries. Data only.

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

/** The built-in page may run our script and talk to this service, nothing else. */
export const pageHeaders = {
  'Content-Security-Policy':
    "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
} as const;

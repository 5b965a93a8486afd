// Signature algorithms a site may accept. `none` and shared secrets (HS*) are not among them and cannot be configured.
export const signatureAlgorithms = ['ES384', 'RS384', 'ES256', 'RS256', 'PS384', 'EdDSA'] as const;

export type SignatureAlgorithm = (typeof signatureAlgorithms)[number];

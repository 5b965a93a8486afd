// Tokens as an EHR signs them, good ones and bad ones.
import { Buffer } from 'node:buffer';
import { createHmac, createPrivateKey, randomUUID, sign } from 'node:crypto';

const encode = (value) => Buffer.from(JSON.stringify(value)).toString('base64url');
const hashes = { ES256: 'sha256', ES384: 'sha384', RS256: 'sha256', RS384: 'sha384' };

/**
 * A signed token.
 *
 * Given    key      { iss, kid, alg, jwk }: the issuer the service knows, and its private key
 *          aud      address that is called
 *          change   members to put in place of the good ones; undefined takes one away; `alg` none or HS256 too
 */
export function signToken(key, aud, { header = {}, payload = {} } = {}) {
  const seconds = Math.floor(Date.now() / 1000);
  const head = { alg: key.alg, typ: 'JWT', kid: key.kid, ...header };
  const claims = { iss: key.iss, aud, iat: seconds, exp: seconds + 300, jti: randomUUID(), ...payload };
  const text = `${encode(head)}.${encode(claims)}`;
  return `${text}.${signature(key, head.alg, text)}`;
}

function signature(key, alg, text) {
  if (alg === 'none') return '';
  if (alg === 'HS256')
    return createHmac('sha256', JSON.stringify(key.jwk.x)).update(text).digest('base64url');
  const privateKey = createPrivateKey({ key: key.jwk, format: 'jwk' });
  return sign(hashes[alg], Buffer.from(text), { key: privateKey, dsaEncoding: 'ieee-p1363' }).toString(
    'base64url',
  );
}

/** What a token says; undefined when it cannot be read. */
export function readToken(authorization = '') {
  const [head, claims] = authorization.replace(/^Bearer /, '').split('.');
  if (head === undefined || claims === undefined) return undefined;
  const decode = (part) => JSON.parse(Buffer.from(part, 'base64url').toString());
  return { header: decode(head), payload: decode(claims) };
}

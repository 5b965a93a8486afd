// A fingerprint of data: SHA-256 over its canonical JSON. Pure; runs in browsers too.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/**
 * The fingerprint of any JSON value.
 *
 * Given    value  plain data; order of members does not matter
 * Returns  64 hexadecimal digits
 * Throws   never for JSON data
 * Source   FIPS 180-4 through @noble/hashes; canonical form: members sorted by name
 */
export const fingerprint = (value: unknown): string => bytesToHex(sha256(utf8ToBytes(canonicalJson(value))));

/** JSON with members sorted by name and absent members left out. */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const members = Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, member]) => `${JSON.stringify(name)}:${canonicalJson(member)}`);
    return `{${members.join(',')}}`;
  }
  return value === undefined ? 'null' : JSON.stringify(value);
}

// Identifiers that depend on what is said and nothing else: the same advice carries the same uuid.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

const hexDigitsOfUuid = 32;

/**
 * A UUID, version 8, from the parts that make two pieces of advice the same.
 *
 * Given    parts   ordered; lists inside are ordered too. Times of asking do not belong in them.
 * Returns  lower-case UUID without prefix.
 * Throws   never
 * Source   RFC 9562 section 5.8 (version 8, variant 10), from memory.
 */
export function stableUuid(parts: readonly (string | readonly string[])[]): string {
  const digest = bytesToHex(sha256(utf8ToBytes(JSON.stringify(parts)))).slice(0, hexDigitsOfUuid);
  const variant = ((parseInt(digest.slice(16, 17), 16) & 0x3) | 0x8).toString(16);
  return [
    digest.slice(0, 8),
    digest.slice(8, 12),
    `8${digest.slice(13, 16)}`,
    `${variant}${digest.slice(17, 20)}`,
    digest.slice(20, 32),
  ].join('-');
}

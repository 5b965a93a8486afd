// Card and suggestion uuids that say which rule, guideline and version they come from: feedback counts without a store.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { guidelineNumbers, ruleNumbers } from './card-rules.ts';

/** What a uuid of ours tells. */
export interface CardMark {
  readonly kind: 'card' | 'suggestion';
  /** `class:pre-eclampsia`, `missing:urine-protein`, `medicine:statin-in-pregnancy`, …; `other` for a rule without a number. */
  readonly rule: string;
  readonly guideline: string;
  /** First four hexadecimal digits of the fingerprint of the guideline data. */
  readonly version: string;
}

/**
 * Layout, in hexadecimal digits: 3 mark of this layout, 3 rule, 2 guideline, 4 version of the guideline, version 8 of
 * the uuid, 3 check digits, variant, 1 kind, 14 hash of the instance.
 */
const layoutMark = 'c51';
const kinds = ['card', 'suggestion'] as const;

type Parts = readonly (string | readonly string[])[];

/**
 * A self-describing UUID, version 8.
 *
 * Given    mark    what it speaks for; `version` is a fingerprint, cut to four digits
 *          parts   what makes two pieces of advice the same; times of asking do not belong in them
 * Returns  lower-case UUID without prefix; the same for the same mark and parts
 * Throws   never
 * Source   RFC 9562 section 5.8 (version 8, variant 10), from memory; checklist B-12.
 */
export function markedUuid(mark: CardMark, parts: Parts): string {
  const head = `${layoutMark}${number(ruleNumbers, mark.rule, 3)}${number(guidelineNumbers, mark.guideline, 2)}${mark.version.slice(0, 4).padEnd(4, '0')}`;
  const tail = `${kinds.indexOf(mark.kind)}${hash(JSON.stringify([mark, parts])).slice(0, 14)}`;
  return join(head, tail);
}

/** What a uuid tells; undefined when it is none of ours. */
export function readMark(uuid: string): CardMark | undefined {
  const digits = uuid
    .toLowerCase()
    .replace(/^urn:uuid:/, '')
    .replaceAll('-', '');
  const head = digits.slice(0, 12);
  const tail = digits.slice(17);
  const kind = kinds[parseInt(tail.slice(0, 1), 16)];
  if (!/^[0-9a-f]{32}$/.test(digits) || kind === undefined) return undefined;
  if (!head.startsWith(layoutMark) || join(head, tail).replaceAll('-', '') !== digits) return undefined;
  return {
    kind,
    rule: ruleNumbers[parseInt(head.slice(3, 6), 16)] ?? 'other',
    guideline: guidelineNumbers[parseInt(head.slice(6, 8), 16)] ?? 'other',
    version: head.slice(8, 12),
  };
}

function join(head: string, tail: string): string {
  const check = hash(`${head}${tail}`).slice(0, 3);
  return [head.slice(0, 8), head.slice(8), `8${check}`, `8${tail.slice(0, 3)}`, tail.slice(3)].join('-');
}

function number(table: readonly string[], name: string, digits: number): string {
  return Math.max(table.indexOf(name), 0).toString(16).padStart(digits, '0');
}

function hash(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

// JSON from an untrusted sender: size in depth checked before parsing, faults named by position and never quoted.
import { RequestError } from '../errors.ts';
import { duplicateName } from './duplicate-names.ts';
import { refused } from './request-issues.ts';

/**
 * The value a JSON text stands for.
 *
 * Given    bytes      UTF-8, with or without byte order mark
 *          maxDepth   deepest nesting of objects and lists
 *          onDuplicate   told the byte at which a name stands twice in one object; absent: not looked for
 * Throws   RequestError 400: not UTF-8, not JSON (byte position in diagnostics), too deep.
 * Notes    1. The words of the runtime's own parser are not passed on: they quote the input.
 */
export function parseJson(
  bytes: Uint8Array,
  maxDepth: number,
  onDuplicate?: (byte: number) => void,
): unknown {
  const text = decode(bytes);
  if (deepest(text) > maxDepth) {
    throw refused(400, 'too-deep', 'too-costly', '', `The JSON is nested more than ${maxDepth} levels deep.`);
  }
  try {
    const value: unknown = JSON.parse(text);
    const duplicate = onDuplicate === undefined ? undefined : duplicateName(text);
    if (duplicate !== undefined) onDuplicate?.(byteAt(text, duplicate));
    return value;
  } catch (error) {
    if (error instanceof RequestError) throw error;
    const position = byteAt(text, faultPosition(text));
    throw refused(400, 'not-json', 'structure', '', 'The body is not JSON.', `fault at byte ${position}`);
  }
}

function byteAt(text: string, at: number): number {
  return new TextEncoder().encode(text.slice(0, at)).length;
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw refused(400, 'not-json', 'structure', '', 'The body is not UTF-8 text.', 'fault at byte 0');
  }
}

function deepest(text: string): number {
  let depth = 0;
  let most = 0;
  let inString = false;
  for (let index = 0; index < text.length; index += 1) {
    const character = text.charAt(index);
    if (inString) {
      if (character === '\\') index += 1;
      else if (character === '"') inString = false;
    } else if (character === '"') inString = true;
    else if (character === '{' || character === '[') most = Math.max(most, (depth += 1));
    else if (character === '}' || character === ']') depth -= 1;
  }
  return most;
}

const blank = /[ \t\n\r]*/y;
const scalar =
  /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;
const name = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;

interface Scan {
  readonly text: string;
  at: number;
}

/** Where the text stops being JSON, in UTF-16 units; its length when it only ends too soon. */
function faultPosition(text: string): number {
  const scan = { text, at: 0 };
  if (readValue(scan)) take(scan, blank);
  return scan.at;
}

function readValue(scan: Scan): boolean {
  take(scan, blank);
  const opening = scan.text.charAt(scan.at);
  if (opening === '{') return readList(scan, '}', readMember);
  if (opening === '[') return readList(scan, ']', readValue);
  return take(scan, scalar);
}

function readMember(scan: Scan): boolean {
  take(scan, blank);
  return take(scan, name) && takeMark(scan, ':') && readValue(scan);
}

function readList(scan: Scan, closing: string, readItem: (scan: Scan) => boolean): boolean {
  scan.at += 1;
  if (takeMark(scan, closing)) return true;
  do {
    if (!readItem(scan)) return false;
  } while (takeMark(scan, ','));
  return takeMark(scan, closing);
}

function takeMark(scan: Scan, mark: string): boolean {
  take(scan, blank);
  if (scan.text.charAt(scan.at) !== mark) return false;
  scan.at += 1;
  return true;
}

function take(scan: Scan, pattern: RegExp): boolean {
  pattern.lastIndex = scan.at;
  const found = pattern.exec(scan.text)?.[0];
  if (found === undefined) return false;
  scan.at += found.length;
  return true;
}

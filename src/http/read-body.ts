// The body of a request, read by hand: media type, size and depth are ours to refuse, each with its own answer.
import type { IncomingMessage } from 'node:http';
import { parseJson } from './json-text.ts';
import { refused } from './request-issues.ts';

export interface BodyLimits {
  readonly maxBodyBytes: number;
  /** Deepest nesting of objects and lists. */
  readonly maxDepth: number;
}

export const defaultBodyLimits: BodyLimits = { maxBodyBytes: 10_000_000, maxDepth: 64 };

const accepted: readonly string[] = ['application/json', 'application/fhir+json', 'text/json'];

/**
 * The JSON body of a request.
 *
 * Given    onDuplicate   told the byte at which a name stands twice in one object (T-08)
 * Throws   RequestError: 415 other media type or encoding; 413 too long; 400 not JSON or too deep.
 * Notes    1. A missing Content-Type with a JSON body is accepted (checklist T-06).
 */
export async function readBody(
  request: IncomingMessage,
  limits: BodyLimits,
  onDuplicate?: (byte: number) => void,
): Promise<unknown> {
  checkMediaType(request);
  return parseJson(await readBytes(request, limits.maxBodyBytes), limits.maxDepth, onDuplicate);
}

function checkMediaType(request: IncomingMessage): void {
  const [type = '', ...parameters] = (request.headers['content-type'] ?? '').toLowerCase().split(';');
  const charset = parameters.map((each) => each.trim()).find((each) => each.startsWith('charset='));
  const isAccepted = type.trim() === '' || accepted.includes(type.trim());
  const isUtf8 = charset === undefined || /^charset="?utf-?8"?$/.test(charset);
  const encoding = request.headers['content-encoding'] ?? 'identity';
  if (isAccepted && isUtf8 && encoding === 'identity') return;
  request.resume();
  throw refused(
    415,
    'media-type',
    'not-supported',
    encoding === 'identity' ? 'http.Content-Type' : 'http.Content-Encoding',
    'Send JSON as application/json or application/fhir+json, UTF-8, not compressed.',
  );
}

function readBytes(request: IncomingMessage, maxBodyBytes: number): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    let length = 0;
    request.on('data', (chunk: Buffer) => {
      length += chunk.length;
      if (length > maxBodyBytes) {
        // The rest is read and dropped, so that the sender can hear the answer.
        chunks.length = 0;
        reject(tooLong(maxBodyBytes));
      } else chunks.push(chunk);
    });
    request.on('end', () => {
      resolve(Buffer.concat(chunks));
    });
    request.on('error', reject);
  });
}

function tooLong(maxBodyBytes: number) {
  return refused(413, 'too-long', 'too-long', '', `The body is longer than ${maxBodyBytes} bytes.`);
}

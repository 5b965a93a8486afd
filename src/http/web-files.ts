// The page as it was built: read once, sent compressed where the client takes it.
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Call } from './call.ts';
import { errorReply, type Reply } from './reply.ts';
import { requestIssue } from './request-issues.ts';

/** The folder lies at the same place seen from src/http and from dist/http. */
const folder = fileURLToPath(new URL('../../dist/web/', import.meta.url));

const types = {
  'page.html': 'text/html',
  'launch.html': 'text/html',
  'page.css': 'text/css',
  'page.js': 'text/javascript',
  'launch.js': 'text/javascript',
  'fhir-client.js': 'text/javascript',
  'stories.json': 'application/json',
} as const;

export type WebFile = keyof typeof types;

const encodings = [
  ['br', '.br'],
  ['gzip', '.gz'],
] as const;

/**
 * One file of the page.
 *
 * Given    file   by name; built by `npm run build`
 * Returns  its bytes, in the first of brotli and gzip that the client takes; 503 when it was not built
 */
export const webFile =
  (file: WebFile) =>
  ({ acceptEncoding = '' }: Pick<Call, 'acceptEncoding'>): Reply => {
    const [encoding, ending] = encodings.find(([name]) => takes(acceptEncoding, name)) ?? [undefined, ''];
    const bytes = bytesOf(`${file}${ending}`);
    if (bytes === undefined) return notBuilt;
    return {
      status: 200,
      type: types[file],
      body: '',
      bytes,
      headers: {
        'Cache-Control': 'no-cache',
        Vary: 'Accept-Encoding',
        ...(encoding === undefined ? {} : { 'Content-Encoding': encoding }),
      },
    };
  };

const notBuilt = errorReply(503, [
  requestIssue('page-not-built', 'not-found', 'http.path', 'The page was not built. Run `npm run build`.'),
]);

function takes(acceptEncoding: string, name: string): boolean {
  return acceptEncoding.split(',').some((each) => {
    const [coding = '', ...parameters] = each.trim().split(';');
    return coding.trim() === name && !parameters.some((parameter) => /^\s*q=0(\.0*)?$/.test(parameter));
  });
}

const read = new Map<string, Buffer>();

function bytesOf(name: string): Buffer | undefined {
  const known = read.get(name);
  if (known !== undefined) return known;
  if (!existsSync(`${folder}${name}`)) return undefined;
  const bytes = readFileSync(`${folder}${name}`);
  read.set(name, bytes);
  return bytes;
}

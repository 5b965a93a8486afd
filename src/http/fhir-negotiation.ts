// How a FHIR request says which form of answer it wants, and how strictly it wants to be read.
import type { Call } from './call.ts';
import { refused } from './request-issues.ts';

const jsonFormats: readonly string[] = ['json', 'application/json', 'application/fhir+json', 'text/json'];

/**
 * Refuses a client that takes no JSON.
 *
 * Throws   RequestError 406: `_format`, or else Accept, names only what is not served
 * Notes    1. `_format` overrides Accept. A plus sign that was not escaped arrives as a blank and is mended.
 * Source   FHIR R4 4.0.1 RESTful API, content types; F-H01, F-H02
 */
export function checkFormat(call: Call): void {
  const format = call.query('_format')?.toLowerCase().split(';')[0]?.trim().replace(' ', '+');
  if (format !== undefined) {
    if (jsonFormats.includes(format)) return;
    throw refused(
      406,
      'not-acceptable',
      'not-supported',
      'http._format',
      'This service answers in JSON only: use _format=json.',
    );
  }
  const { accept } = call;
  if (accept === undefined || accept.split(',').some(isServed)) return;
  throw refused(406, 'not-acceptable', 'not-supported', 'http.Accept', 'This service answers in JSON only.');
}

function isServed(range: string): boolean {
  const [type = '', ...parameters] = range
    .toLowerCase()
    .split(';')
    .map((each) => each.trim());
  const isExcluded = parameters.some((each) => /^q=0(\.0*)?$/.test(each));
  const version = parameters.find((each) => each.startsWith('fhirversion='))?.slice('fhirversion='.length);
  const isOurVersion = version === undefined || version.startsWith('4.0');
  return (
    !isExcluded &&
    isOurVersion &&
    (['*/*', 'application/*', 'text/*'].includes(type) || jsonFormats.includes(type))
  );
}

/**
 * Is the request to be read strictly?
 *
 * Given    call   its Prefer header: `handling=strict` or `handling=lenient`; the site's own rule without it
 * Notes    1. Other preferences are ignored, as RFC 7240 asks. The last `handling` counts.
 * Source   FHIR R4 4.0.1 RESTful API (Prefer: handling)
 */
export function isStrict(call: Pick<Call, 'prefer' | 'site'>): boolean {
  const all = [...(call.prefer ?? '').matchAll(/(?:^|[,;]\s*)handling\s*=\s*"?(strict|lenient)"?/gi)];
  const said = all.at(-1)?.[1]?.toLowerCase();
  return said === undefined ? (call.site?.setup.strict ?? false) : said === 'strict';
}

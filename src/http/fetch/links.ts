// Links of a FHIR Bundle.
import { isObject } from '../cds-request.ts';

/** Address of the next page, exactly as given; undefined when there is none, or none that can be read. */
export function nextLink(bundle: unknown, from: URL): URL | undefined {
  const next = linkOf(bundle, 'next');
  return next !== undefined && URL.canParse(next, from.href) ? new URL(next, from) : undefined;
}

/** The search the server says it ran. */
export function selfLink(bundle: unknown): string | undefined {
  return linkOf(bundle, 'self');
}

function linkOf(bundle: unknown, relation: string): string | undefined {
  const links: unknown = isObject(bundle) ? bundle['link'] : undefined;
  if (!Array.isArray(links)) return undefined;
  const link: unknown = links.find((each: unknown) => isObject(each) && each['relation'] === relation);
  const url = isObject(link) ? link['url'] : undefined;
  return typeof url === 'string' ? url : undefined;
}

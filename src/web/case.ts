// What is looked at: a bundle from a story, a paste, a file or a record system, and the moment of the answer.
import { subjectsOf } from '../bundle/read-bundle.ts';
import { parseMoment } from '../timeline/moment.ts';

export interface Story {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  /** Path with query, as story.md gives it. */
  readonly path: string;
  readonly request: unknown;
}

export interface Case {
  readonly title: string;
  readonly text: string;
  /** What the engine reads. */
  readonly input: unknown;
  /** The moment of the answer, milliseconds since 1970-01-01T00:00Z. */
  readonly asOf: number;
  /** Set when several women are in the input. */
  readonly subject?: string;
  readonly subjects: readonly string[];
  readonly path: string;
  readonly request: unknown;
  /** A story: it may be sent without being asked. */
  readonly isInvented: boolean;
}

type Json = Readonly<Record<string, unknown>>;

export const isJson = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export function caseOfStory({ title, text, path, request }: Story): Case {
  const query = new URLSearchParams(path.split('?')[1] ?? '');
  const asOf = instantOf(query.get('asOf') ?? '') ?? newestTime(request);
  return { title, text, path, request, ...inputOf(request), asOf, isInvented: true };
}

/**
 * A case of what was pasted, dropped or read.
 *
 * Given    request   a Bundle, Parameters, resource, list of resources, or a CDS Hooks request
 *          now       taken when nothing in it has a time
 * Notes    1. The moment of the answer is the newest time in the data, so that old data can be looked at.
 */
export function caseOf(title: string, request: unknown): Case {
  const input = inputOf(request);
  const asOf = newestTime(request);
  const when = encodeURIComponent(new Date(asOf).toISOString());
  const service = isHook(request) ? '/cds-services/pregnancy-hypertension' : '/fhir/$assess-hypertension';
  return { title, text: '', path: `${service}?asOf=${when}`, request, ...input, asOf, isInvented: false };
}

export const isHook = (request: unknown): request is Json =>
  isJson(request) && typeof request['hook'] === 'string';

function inputOf(request: unknown): Pick<Case, 'input' | 'subjects' | 'subject'> {
  if (isHook(request)) {
    const context = request['context'];
    const patient = isJson(context) ? context['patientId'] : undefined;
    const subject = typeof patient === 'string' ? `Patient/${patient}` : undefined;
    return {
      input: collection(prefetched(request['prefetch'])),
      subjects: [],
      ...(subject === undefined ? {} : { subject }),
    };
  }
  const subjects = subjectsOf(request);
  const [first] = subjects;
  return {
    input: request,
    subjects,
    ...(subjects.length < 2 || first === undefined ? {} : { subject: first }),
  };
}

const collection = (resources: readonly unknown[]): unknown => ({
  resourceType: 'Bundle',
  type: 'collection',
  entry: resources.map((resource) => ({ resource })),
});

function prefetched(prefetch: unknown): readonly unknown[] {
  if (!isJson(prefetch)) return [];
  return Object.entries(prefetch).flatMap(([key, value]) => {
    if (key === 'user' || !isJson(value)) return [];
    return value['resourceType'] === 'Bundle' ? resourcesIn(value) : [value];
  });
}

/** The resources of a Bundle, or of a list. */
export function resourcesIn(input: unknown): readonly unknown[] {
  if (Array.isArray(input)) return input;
  if (!isJson(input)) return [];
  const entries: readonly unknown[] = Array.isArray(input['entry']) ? input['entry'] : [];
  return input['resourceType'] === 'Bundle'
    ? entries.flatMap((entry) =>
        isJson(entry) && entry['resource'] !== undefined ? [entry['resource']] : [],
      )
    : [input];
}

function instantOf(text: string): number | undefined {
  return parseMoment(text, 0)?.latest;
}

const timed =
  /"(?:effectiveDateTime|effectiveInstant|issued|authoredOn|recordedDate|start)"\s*:\s*"([^"]+)"/g;

/** The newest time at which something was seen, or else the present. */
function newestTime(data: unknown): number {
  const times = [...JSON.stringify(data).matchAll(timed)].flatMap(([, text]) => instantOf(text ?? '') ?? []);
  const now = Date.now();
  const past = times.filter((time) => time <= now);
  return past.length === 0 ? now : past.reduce((a, b) => Math.max(a, b)) + 60_000;
}

/** The moments at which something became known, oldest first: where the replay may stop. */
export function momentsOf(times: readonly number[], asOf: number): readonly number[] {
  return [...new Set([...times, asOf])].filter((time) => time <= asOf).sort((a, b) => a - b);
}

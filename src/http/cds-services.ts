// The CDS Hooks routes: discovery, the service, feedback.
import { everyGuideline } from '../compare-guidelines.ts';
import { evaluate } from '../evaluate.ts';
import { RequestError } from '../errors.ts';
import { toCards } from '../presenters/cds-cards.ts';
import { discovery } from './cds-discovery.ts';
import { isObject, readCdsRequest, serviceId } from './cds-request.ts';
import { completeChart } from './fetch/complete-chart.ts';
import { gather, readPrefetch, type Gathered } from './prefetch.ts';
import { errorReply, jsonReply, type Reply } from './reply.ts';
import { refused, requestIssue } from './request-issues.ts';
import { queriedInstant, type Call } from './call.ts';

/** `GET /cds-services` */
export function discoveryReply(): Reply {
  return jsonReply(discovery(), { 'Cache-Control': 'public, max-age=300' });
}

/**
 * `POST /cds-services/{id}`
 *
 * Throws   RequestError: 404 unknown service; 400 a request out of form; 412 blood pressures cannot be had.
 */
export async function serviceReply(call: Call): Promise<Reply> {
  checkService(call);
  const body = await call.body();
  const request = readCdsRequest(body);
  const states = await completeChart({ ...request, body }, readPrefetch(request.prefetch), call.fetching);
  const gathered = gather(states, request.patientId);
  const evaluation = evaluate(gathered.bundle, {
    asOf: queriedInstant(call) ?? request.asOf ?? call.now,
    ...guidelineOption(call.query('guideline') ?? request.guideline),
    subject: `Patient/${request.patientId}`,
    compare: true,
  });
  // Without pressures a danger symptom may still decide; only then is there an answer to give.
  const isAnswered = gathered.unknownRequired.length === 0 || evaluation.assessment.urgency === 'emergency';
  return isAnswered ? jsonReply(toCards(evaluation, gathered.gaps)) : preconditionReply(gathered);
}

/** The option for `evaluate`, left out when no guideline is named, or every one: a card names those that differ. */
export function guidelineOption(guideline: string | undefined): { readonly guideline?: string } {
  return guideline === undefined || guideline === everyGuideline ? {} : { guideline };
}

function checkService({ parameter }: Call): void {
  if (parameter('id') === serviceId) return;
  throw refused(404, 'unknown-service', 'not-found', 'http.id', `There is one service here: ${serviceId}.`);
}

/** 412 as CDS Hooks means it: required data can be had neither from prefetch nor from the server. */
function preconditionReply({ unknownRequired }: Gathered): Reply {
  return errorReply(
    412,
    unknownRequired.map((query) =>
      requestIssue(
        'required-data-unknown',
        'required',
        `prefetch.${query.key}`,
        `Nothing can be judged without ${query.what}: send the key, with an empty Bundle or null when there are none.`,
        query.key,
      ),
    ),
  );
}

/**
 * `POST /cds-services/{id}/feedback`: accepted and not stored.
 *
 * Throws   RequestError 400 with one issue for each bad item (rows B-02 to B-07).
 */
export async function feedbackReply(call: Call): Promise<Reply> {
  checkService(call);
  const body = await call.body();
  const items: unknown = isObject(body) ? body['feedback'] : undefined;
  if (!Array.isArray(items)) {
    throw refused(400, 'required', 'required', 'feedback', '`feedback` is required and must be a list.');
  }
  const issues = items.flatMap((item: unknown, index) =>
    feedbackFaults(item).map((member) =>
      requestIssue(
        'feedback-item',
        'value',
        `feedback[${index}].${member}`,
        `\`${member}\` is missing or not valid.`,
      ),
    ),
  );
  if (issues.length > 0) throw new RequestError(400, issues);
  return { status: 200, type: 'application/json', body: '' };
}

function feedbackFaults(item: unknown): readonly string[] {
  if (!isObject(item)) return ['card'];
  const { card, outcome, outcomeTimestamp, acceptedSuggestions } = item;
  const zoned = /^\d{4}-\d{2}-\d{2}[Tt]\d{2}:\d{2}:\d{2}(?:\.\d+)?(?:[Zz]|[+-]\d{2}:\d{2})$/;
  return [
    ...(typeof card === 'string' && card !== '' ? [] : ['card']),
    ...(outcome === 'accepted' || outcome === 'overridden' ? [] : ['outcome']),
    ...(outcome === 'accepted' && !Array.isArray(acceptedSuggestions) ? ['acceptedSuggestions'] : []),
    ...(typeof outcomeTimestamp === 'string' && zoned.test(outcomeTimestamp) ? [] : ['outcomeTimestamp']),
  ];
}

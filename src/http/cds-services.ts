// The CDS Hooks routes: discovery, the services, feedback.
import { everyGuideline } from '../compare-guidelines.ts';
import { evaluate, momentOrNow } from '../evaluate.ts';
import type { Evaluation } from '../evaluation.ts';
import { chosenLanguage } from '../messages/languages.ts';
import type { CardContext } from '../presenters/card-context.ts';
import type { CardsResponse } from '../presenters/card-types.ts';
import { readMark } from '../presenters/card-uuid.ts';
import { dialects } from '../presenters/data-requirements.ts';
import { withLaunchLink } from '../presenters/launch-link.ts';
import { roleOf } from '../presenters/user-role.ts';
import { receive, withReception } from '../receive.ts';
import { broughtBy, proposedBy } from './cds-context.ts';
import { discovery } from './cds-discovery.ts';
import { readCdsRequest, type CdsCall } from './cds-request.ts';
import { cdsServices, type CdsService } from './cds-service-table.ts';
import { completeChart } from './fetch/complete-chart.ts';
import { isStrict } from './fhir-negotiation.ts';
import { gather, readPrefetch, type Gathered, type KeyState } from './prefetch.ts';
import { readFeedback } from './read-feedback.ts';
import { errorReply, jsonReply, type Reply } from './reply.ts';
import { refused, requestIssue } from './request-issues.ts';
import { queriedInstant, type Call } from './call.ts';

/**
 * `GET /cds-services`, with `dialect=3.0` the newer prefetch templates.
 *
 * Throws   RequestError 400: another dialect.
 */
export function discoveryReply(call: Call): Reply {
  const asked = call.query('dialect') ?? '2.0';
  const dialect = dialects.find((each) => each === asked);
  if (dialect === undefined) {
    throw refused(
      400,
      'dialect',
      'not-supported',
      'http.dialect',
      `Prefetch is written as ${dialects.join(' or ')}.`,
    );
  }
  return jsonReply(discovery(dialect), { 'Cache-Control': 'public, max-age=300' });
}

/**
 * `POST /cds-services/{id}`
 *
 * Throws   RequestError: 404 unknown service; 400 a request out of form; 412 data that are indispensable to this
 *          service cannot be had.
 */
export async function serviceReply(call: Call): Promise<Reply> {
  const service = serviceOf(call);
  const body = await call.body();
  const request = readCdsRequest(body, service, isStrict(call));
  countUnknownMembers(call, request);
  if (request.isForLayUser) return cardsReply(call, { cards: [] }, request);
  const sent = readPrefetch(request.prefetch, service.queries);
  const states = await completeChart(request, sent, call.fetching);
  const gathered = gather(states, request.patientId, broughtBy(request.context, request.hook));
  const evaluation = evaluationOf(call, request, gathered);
  const cards = service.present(evaluation, contextOf(call, request, states, gathered));
  const answer = withLaunchLink(cards, call.smart?.launchUrl);
  const unknown = stillUnknown(request, gathered);
  return unknown.length === 0 || isDecided(evaluation, service, answer)
    ? cardsReply(call, answer, request)
    : preconditionReply(unknown);
}

function evaluationOf(call: Call, request: CdsCall, { bundle }: Gathered): Evaluation {
  const received = receive(bundle, { isStrict: false, site: call.site?.setup });
  const evaluation = evaluate(received.input, {
    ...call.site?.options,
    ...momentOrNow(queriedInstant(call) ?? request.asOf, call.now),
    ...guidelineOption(call.query('guideline') ?? request.guideline),
    subject: `Patient/${request.patientId}`,
    compare: true,
  });
  return withReception(evaluation, received);
}

/** The option for `evaluate`, left out when no guideline is named, or every one: a card names those that differ. */
export function guidelineOption(guideline: string | undefined): { readonly guideline?: string } {
  return guideline === undefined || guideline === everyGuideline ? {} : { guideline };
}

function contextOf(
  call: Call,
  request: CdsCall,
  states: readonly KeyState[],
  gathered: Gathered,
): CardContext {
  const proposed = proposedBy(request.context, request.hook, gathered.broughtAt);
  return {
    gaps: gathered.gaps,
    states: gathered.states,
    role: request.role ?? roleFrom(states) ?? roleOf(request.prefetch['user']),
    messages: chosenLanguage(call.acceptLanguage, call.site?.setup.language),
    warnings: [...call.warnings, ...request.warnings],
    ...(proposed === undefined ? {} : { proposed }),
  };
}

function roleFrom(states: readonly KeyState[]): CardContext['role'] {
  const user = states.find(({ query }) => query.isAboutUser === true)?.state;
  const entries: readonly unknown[] = user?.kind === 'found' ? user.entries : [];
  return entries.map((entry) => roleOf(resourceIn(entry))).find((role) => role !== undefined);
}

function resourceIn(entry: unknown): unknown {
  return typeof entry === 'object' && entry !== null && 'resource' in entry ? entry.resource : undefined;
}

/** What the hook itself brings may stand in for a key: a fresh reading can be judged without the earlier ones. */
function stillUnknown({ context, hook }: CdsCall, { unknownRequired }: Gathered) {
  const brings = broughtBy(context, hook).length > 0;
  return unknownRequired.filter(({ key }) => !(brings && key === hook.standsFor));
}

/** Without what is indispensable a danger symptom, or a rule that needs none of it, may still decide. */
function isDecided({ assessment }: Evaluation, service: CdsService, { cards }: CardsResponse): boolean {
  const needsPressure = service.queries.some(
    ({ key, need }) => key === 'bloodPressures' && need === 'required',
  );
  return needsPressure ? assessment.urgency === 'emergency' : cards.length > 0;
}

function cardsReply(call: Call, answer: CardsResponse, { warnings: ofRequest }: CdsCall): Reply {
  for (const { uuid, indicator } of answer.cards) {
    const mark = readMark(uuid);
    const { rule, guideline } = mark ?? { rule: 'other', guideline: 'other' };
    call.metrics.count('pregnancy_htn_cards_total', { rule, guideline, indicator });
  }
  const warnings = [...call.warnings, ...ofRequest];
  const extension = warnings.length === 0 ? {} : { extension: { 'org.pregnancy-htn.request': { warnings } } };
  const { language } = chosenLanguage(call.acceptLanguage, call.site?.setup.language);
  return jsonReply(
    { ...answer, ...extension },
    { 'Cache-Control': 'no-store', 'Content-Language': language, Vary: 'Accept-Language' },
  );
}

const knownMembers: readonly string[] = [
  'hook',
  'hookInstance',
  'fhirServer',
  'fhirAuthorization',
  'context',
  'prefetch',
  'extension',
];

function countUnknownMembers({ metrics }: Call, { body }: CdsCall): void {
  for (const name of Object.keys(body)) {
    if (!knownMembers.includes(name)) metrics.count('pregnancy_htn_unknown_members_total');
  }
}

function serviceOf({ parameter }: Call): CdsService {
  const id = parameter('id');
  const service = cdsServices.find((each) => each.id === id);
  if (service !== undefined) return service;
  const message = `The services here are ${cdsServices.map((each) => each.id).join(', ')}.`;
  throw refused(404, 'unknown-service', 'not-found', 'http.id', message);
}

/** 412 as CDS Hooks means it: required data can be had neither from prefetch nor from the server. */
function preconditionReply(unknown: Gathered['unknownRequired']): Reply {
  return errorReply(
    412,
    unknown.map((query) =>
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
 * `POST /cds-services/{id}/feedback`: counted for the rule that made the card, each item once.
 *
 * Throws   RequestError 400 with one issue for each fault (rows B-02 to B-07).
 */
export async function feedbackReply(call: Call): Promise<Reply> {
  serviceOf(call);
  call.takeFeedback(readFeedback(await call.body()));
  return { status: 200, type: 'application/json', body: '' };
}

/** `GET /metrics`: counters of this process. */
export function metricsReply(call: Call): Reply {
  const headers = { 'Cache-Control': 'no-store' };
  return { status: 200, type: 'text/plain; version=0.0.4', body: call.metrics.text(), headers };
}

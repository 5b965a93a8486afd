// The answer of PlanDefinition/$apply: one Bundle with a RequestGroup and the proposals it holds together.
import type {
  Bundle,
  CommunicationRequest,
  FhirResource,
  Reference,
  RequestGroup,
  RequestGroupAction,
} from 'fhir/r4.js';
import type { Evaluation } from '../evaluation.ts';
import type { Action } from '../findings/finding.ts';
import { toReference } from './reference.ts';
import { stableUuid } from './stable-uuid.ts';
import { toSuggestions } from './suggestions.ts';
import { traced } from './trace-back.ts';
import { canonicalBase, classWords, referralWords } from './vocabulary.ts';
import { sentenceCase } from './words.ts';

type Identified = FhirResource & { readonly id: string };

interface Proposal {
  readonly title: string;
  readonly description?: string;
  readonly resource: Identified;
}

/**
 * A guideline applied to one woman.
 *
 * Returns  a collection: first the RequestGroup, then what its actions point to, in the order of the actions:
 *          suggested Conditions, the referral, and each step as a CommunicationRequest
 * Throws   never
 * Notes    1. Everything is a proposal; nothing is ordered.
 *          2. An action has a resource and no sub-actions (rqg-1).
 *          3. The same evaluation gives the same bytes.
 * Source   FHIR R4 4.0.1 RequestGroup; CPG-on-FHIR 2.0.0 $apply with `data`
 */
export function toPlanBundle(evaluation: Evaluation): Bundle<FhirResource> {
  const proposals = proposalsOf(evaluation);
  const group = toRequestGroup(evaluation, proposals);
  const resources: readonly Identified[] = [group, ...proposals.map(({ resource }) => resource)];
  return {
    resourceType: 'Bundle',
    type: 'collection',
    timestamp: evaluation.asOf,
    entry: resources.map((resource) => ({ fullUrl: urn(resource.id), resource })),
  };
}

function urn(id: string): string {
  return `urn:uuid:${id}`;
}

function proposalsOf(evaluation: Evaluation): readonly Proposal[] {
  const { conditions, referral } = toSuggestions(evaluation);
  const ids = new Set(conditions.map(({ resource }) => resource.id));
  const recorded = conditions.map(({ classification, resource }): Proposal => ({
    title: `Record: ${classWords[classification]}`,
    resource,
  }));
  const level = evaluation.assessment.referral?.level;
  const referred: readonly Proposal[] =
    referral === undefined || level === undefined
      ? []
      : [
          {
            title: `Refer: ${referralWords[level]}`,
            resource: {
              ...referral,
              ...(referral.reasonReference === undefined
                ? {}
                : { reasonReference: referral.reasonReference.map((reason) => local(reason, ids)) }),
            },
          },
        ];
  return [
    ...recorded,
    ...referred,
    ...evaluation.assessment.actions.map((action) => toStep(evaluation, action)),
  ];
}

function local(reason: Reference, ids: ReadonlySet<string>): Reference {
  const id = reason.reference?.replace(/^Condition\//, '') ?? '';
  return ids.has(id) ? { reference: urn(id) } : reason;
}

function subjectOf({ subject }: Evaluation): { readonly subject?: Reference } {
  return subject === undefined ? {} : { subject: toReference(subject) };
}

function toStep(evaluation: Evaluation, action: Action): Proposal {
  const resource: CommunicationRequest & { readonly id: string } = {
    resourceType: 'CommunicationRequest',
    id: idOf(evaluation, 'CommunicationRequest', action.id),
    meta: traced(evaluation.stamp),
    status: 'draft',
    ...subjectOf(evaluation),
    payload: [{ contentString: action.sentence }],
    ...(action.time === undefined ? {} : { occurrenceDateTime: action.time }),
    authoredOn: evaluation.asOf,
  };
  return { title: sentenceCase(action.kind.replaceAll('-', ' ')), description: action.sentence, resource };
}

function idOf({ stamp, subject, asOf, account }: Evaluation, kind: string, what: string): string {
  const paths = account.entries.map((entry) => entry.path);
  return stableUuid([kind, what, stamp.fingerprint, subject ?? '', asOf, paths]);
}

function toRequestGroup(
  evaluation: Evaluation,
  proposals: readonly Proposal[],
): RequestGroup & { readonly id: string } {
  const { stamp } = evaluation;
  const actions = proposals.map(({ title, description, resource }): RequestGroupAction => ({
    title,
    ...(description === undefined ? {} : { description }),
    resource: { reference: urn(resource.id) },
  }));
  return {
    resourceType: 'RequestGroup',
    id: idOf(evaluation, 'RequestGroup', ''),
    meta: traced(stamp),
    instantiatesCanonical: [`${canonicalBase}/PlanDefinition/${stamp.id}|${stamp.version}`],
    status: 'active',
    intent: 'proposal',
    ...subjectOf(evaluation),
    authoredOn: evaluation.asOf,
    ...(actions.length === 0 ? {} : { action: actions }),
  };
}

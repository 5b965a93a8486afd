// Where a returned resource comes from: the rule set by address, version and fingerprint, and the data used.
import type { Meta, Provenance, ProvenanceEntity, Reference } from 'fhir/r4.js';
import type { Evaluation, GuidelineStamp } from '../evaluation.ts';
import { toReference } from './reference.ts';
import { stableUuid } from './stable-uuid.ts';
import { canonicalBase } from './vocabulary.ts';

/** Our profiles of what is returned. */
export type ReturnedProfile =
  | 'hypertension-guidance'
  | 'provisional-condition'
  | 'referral-proposal'
  | 'safety-issue'
  | 'risk-estimate'
  | 'hypertension-measure-report'
  | 'answer-provenance';

/** `…/PlanDefinition/frontline|1.0.0#<fingerprint>`: with the request it gives the same answer again. */
export function ruleSetAddress({ id, version, fingerprint }: GuidelineStamp): string {
  return `${canonicalBase}/PlanDefinition/${id}|${version}#${fingerprint}`;
}

/** `meta` of a returned resource; a profile where we publish one for its type. */
export function traced(stamp: GuidelineStamp, profile?: ReturnedProfile): Meta {
  const source = ruleSetAddress(stamp);
  if (profile === undefined) return { source };
  return { source, profile: [`${canonicalBase}/StructureDefinition/${profile}`] };
}

/**
 * The Provenance of the resources of one answer.
 *
 * Given    evaluation   the answer
 *          targets      references to its resources as they stand in the result
 * Returns  agent: this software; entities: the rule set (derivation), then each resource used (source), once
 * Notes    1. A used resource without identity is named by its place in the input, in `display`.
 * Source   FHIR R4 Provenance; F-O03, table of section 5.
 */
export function toProvenance(
  evaluation: Evaluation,
  targets: readonly string[],
): Provenance & { readonly id: string } {
  const { stamp, account, asOf } = evaluation;
  const used = account.entries.filter((entry) => entry.outcome === 'used');
  const inputs = new Map(used.map(({ reference, path }) => [reference, inputReference(reference, path)]));
  return {
    resourceType: 'Provenance',
    id: stableUuid(['Provenance', stamp.fingerprint, asOf, targets, [...inputs.keys()]]),
    meta: traced(stamp, 'answer-provenance'),
    target: targets.map((reference) => ({ reference })),
    recorded: asOf,
    agent: [{ type: assembler, who: { display: 'pregnancy-htn' } }],
    entity: [ruleSet(stamp), ...[...inputs.values()].map(toSource)],
  };
}

const assembler = {
  coding: [
    {
      system: 'http://terminology.hl7.org/CodeSystem/provenance-participant-type',
      code: 'assembler',
      display: 'Assembler',
    },
  ],
};

function ruleSet(stamp: GuidelineStamp): ProvenanceEntity {
  const identifier = {
    system: `${canonicalBase}/NamingSystem/rule-set-fingerprint`,
    value: stamp.fingerprint,
  };
  return { role: 'derivation', what: { identifier, display: `${stamp.title}, version ${stamp.version}` } };
}

function toSource(what: Reference): ProvenanceEntity {
  return { role: 'source', what };
}

const withIdentity = /^(?:[A-Z][A-Za-z]+[/?]\S+|urn:\S+|https?:\/\/\S+)$/;

function inputReference(reference: string, path: string): Reference {
  return withIdentity.test(reference) ? toReference(reference) : { display: path };
}

// Conditions, allergies and family history on record, as the facts a rule asks for.
import type { AllergyIntolerance, Condition, FamilyMemberHistory } from 'fhir/r4.js';
import type { Received } from '../bundle/read-bundle-types.ts';
import type { ConditionId, MedicineId } from '../guidelines/guideline.ts';
import { conditionCodes } from '../terminology/condition-codes.ts';
import { familyRelations } from '../terminology/relations.ts';
import { classifiedRows, indexClassified } from './classified-codes.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import { reportMissingSystem, systemCodesOf } from './coded-value.ts';
import { conditionStateOf } from './condition-state.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { codingsOf, fieldsOf, listOf, textOf, wordingOf } from './fields.ts';
import { medicinesOf, medicineWords } from './medicine-names.ts';
import { sourceOf } from './source.ts';
import type { KnownCondition } from './timeline.ts';
import { notAsked, unusable, type NotAsked } from './unusable.ts';

interface ConditionRow {
  readonly system: string;
  readonly code: string;
  readonly conditions: readonly ConditionId[];
}

const rows: readonly ConditionRow[] = conditionCodes;
const index = indexClassified(rows);

/** Which conditions a concept names, each once; empty when it names none that a rule asks for. */
export function conditionsOf(concept: unknown): readonly ConditionId[] {
  return [...new Set(classifiedRows(concept, index).flatMap((row) => row.conditions))];
}

/**
 * Which conditions does this record state?
 *
 * Given    received  a condition
 *          context   `asOf`, zone of the facility, notice of codings without a system
 * Returns  one entry per condition its codings name
 *          not-needed  refuted, or coded and asked for by no rule
 *          unusable    code-missing: no coding has a code
 * Throws   never
 * Notes    1. Two codings of one record count together: a general and a more specific one are no contradiction.
 *          2. Text is never matched: a condition without a code is set aside.
 * Source   fhir checklist F-M09, F-V10.
 */
export function readConditions(
  received: Received<Condition>,
  context: TimelineContext,
): readonly KnownCondition[] | NotAsked | Unusable {
  const { code } = received.resource;
  if (!codingsOf(code).some((coding) => coding.code !== undefined)) {
    return unusable(
      'code-missing',
      'code.coding',
      'The condition has no code. Send its SNOMED CT or ICD code.',
    );
  }
  const conditions = conditionsOf(code);
  if (conditions.length === 0) return notAsked('No rule asks for this condition.');
  reportMissingSystem(received, code, 'code', context);
  return knownConditions(received, conditions, code, context);
}

function knownConditions(
  received: Received,
  conditions: readonly ConditionId[],
  code: unknown,
  context: TimelineContext,
): readonly KnownCondition[] | NotAsked {
  const { state, certainty, onset, recorded } = conditionStateOf(received.resource, context);
  if (certainty === 'refuted') return notAsked('The condition is refuted.');
  const codes = systemCodesOf(code);
  const asSent = wordingOf(code) ?? codes[0] ?? '';
  return conditions.map((condition) => ({
    condition,
    state,
    certainty,
    codes,
    asSent,
    source: sourceOf(received),
    ...(condition === 'aspirin-allergy' ? { allergicTo: ['aspirin'] as const } : {}),
    ...(onset === undefined ? {} : { onset }),
    ...(recorded === undefined ? {} : { recorded }),
  }));
}

/**
 * To which medicines does this record state an allergy?
 *
 * Given    received  an allergy or intolerance
 *          context   as for a condition
 * Returns  one entry with the agents and classes it is to; not-needed when it is to none that a rule asks for, or refuted
 * Throws   never
 * Notes    1. The substance may stand in the code or in a reaction.
 */
export function readAllergy(
  received: Received<AllergyIntolerance>,
  context: TimelineContext,
): readonly KnownCondition[] | NotAsked {
  const { code } = received.resource;
  const substances = [code, ...listOf(received.resource.reaction).map((reaction) => reaction['substance'])];
  const allergicTo = [...new Set(substances.flatMap(agentsOf))];
  if (allergicTo.length === 0) return notAsked('No rule asks for this allergy.');
  const condition = allergicTo.includes('aspirin') ? 'aspirin-allergy' : 'medicine-allergy';
  const known = knownConditions(received, [condition], code, context);
  if ('kind' in known) return known;
  const asSent = wordingOf(code) ?? `allergy to ${medicineWords(allergicTo)}`;
  return known.map((allergy) => ({ ...allergy, allergicTo, asSent }));
}

const agentsOf = (substance: unknown): readonly MedicineId[] =>
  conditionsOf(substance).includes('aspirin-allergy') ? ['aspirin'] : medicinesOf(substance).medicines;

const relations = indexCodes(familyRelations.codes);
const relationWords: ReadonlySet<string> = new Set(familyRelations.words);
const inFamily: ReadonlySet<ConditionId> = new Set<ConditionId>([
  'pre-eclampsia',
  'pre-eclampsia-severe',
  'superimposed-pre-eclampsia',
  'hellp',
  'eclampsia',
  'family-history-of-pre-eclampsia',
]);

/**
 * Had her mother or a sister pre-eclampsia?
 *
 * Given    received  a family member's history
 *          context   as for a condition
 * Returns  family history of pre-eclampsia; not-needed for other relatives and other conditions
 * Throws   never
 * Source   clinical-rules 2.10 (family history: mother, sister).
 */
export function readFamilyHistory(
  received: Received<FamilyMemberHistory>,
  context: TimelineContext,
): readonly KnownCondition[] | NotAsked {
  const { resource } = received;
  if (!isMotherOrSister(resource.relationship))
    return notAsked('Only the history of mother and sisters is asked for.');
  const conditions = listOf(resource.condition).map((condition) => condition['code']);
  const found = conditions.find((code) => conditionsOf(code).some((condition) => inFamily.has(condition)));
  if (found === undefined) return notAsked('No rule asks for this family history.');
  reportMissingSystem(received, found, 'condition.code', context);
  const codes = systemCodesOf(found);
  return [
    {
      condition: 'family-history-of-pre-eclampsia',
      state: 'active',
      certainty: 'confirmed',
      codes,
      asSent: `${wordingOf(resource.relationship) ?? 'relative'}: ${wordingOf(found) ?? codes[0] ?? ''}`,
      source: sourceOf(received),
    },
  ];
}

function isMotherOrSister(relationship: unknown): boolean {
  if (rowsFor(codingsOf(relationship), relations).length > 0) return true;
  const text = textOf(fieldsOf(relationship)['text'])?.trim().toLowerCase();
  return text !== undefined && relationWords.has(text);
}

// Procedures on record that a rule asks for.
import type { Procedure } from 'fhir/r4.js';
import type { Received } from '../bundle/read-bundle-types.ts';
import type { ConditionId } from '../guidelines/guideline.ts';
import { systemCodesOf } from './coded-value.ts';
import { conditionsOf } from './conditions.ts';
import type { TimelineContext } from './context.ts';
import { fieldsOf, textOf, wordingOf } from './fields.ts';
import { parseMoment } from './moment.ts';
import { sourceOf } from './source.ts';
import type { KnownCondition } from './timeline.ts';
import { notAsked, type NotAsked } from './unusable.ts';

/** States of a woman that a procedure tells of as well as a diagnosis does. */
const toldByProcedure: ReadonlySet<ConditionId> = new Set<ConditionId>(['assisted-conception']);

/**
 * What does this procedure tell of her?
 *
 * Given    received  a procedure that is not a birth
 *          context   zone of the facility
 * Returns  assisted conception, from when it was performed; not-needed for any other
 * Throws   never
 * Source   clinical-rules 2.10 (IVF as a factor)
 */
export function readProcedure(
  received: Received<Procedure>,
  context: TimelineContext,
): readonly KnownCondition[] | NotAsked {
  const fields = fieldsOf(received.resource);
  const conditions = conditionsOf(fields['code']).filter((each) => toldByProcedure.has(each));
  if (conditions.length === 0) return notAsked('no rule asks for this Procedure');
  const performed =
    textOf(fields['performedDateTime']) ?? textOf(fieldsOf(fields['performedPeriod'])['start']);
  const onset = performed === undefined ? undefined : parseMoment(performed, context.facilityOffsetMinutes);
  const codes = systemCodesOf(fields['code']);
  return conditions.map((condition) => ({
    condition,
    state: 'active',
    certainty: 'confirmed',
    codes,
    asSent: wordingOf(fields['code']) ?? codes[0] ?? '',
    source: sourceOf(received),
    ...(onset === undefined ? {} : { onset }),
  }));
}

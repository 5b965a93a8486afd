// Is a condition on record active, and how sure is the record? From its two status elements and its dates.
import type { TimelineContext } from './context.ts';
import { codingsOf, fieldsOf, isFields, textOf, type Fields } from './fields.ts';
import { parseMoment } from './moment.ts';
import type { KnownCondition, Moment } from './timeline.ts';

export interface ConditionState {
  readonly state: KnownCondition['state'];
  readonly certainty: KnownCondition['certainty'] | 'refuted';
  readonly onset: Moment | undefined;
  readonly recorded: Moment | undefined;
}

const inactiveCodes: ReadonlySet<string> = new Set(['inactive', 'remission', 'resolved']);
const provisionalCodes: ReadonlySet<string> = new Set(['provisional', 'differential']);

/**
 * Is this condition active, and how certain?
 *
 * Given    resource  a Condition or AllergyIntolerance as sent
 *          context   `asOf` and the zone of the facility
 * Returns  state      inactive when so stated, or when it ended before `asOf`; else active
 *          certainty  confirmed, provisional (provisional, differential), unverified (unconfirmed or not
 *                     stated), refuted
 *          onset, recorded  undefined when not sent or not a date
 * Throws   never
 * Source   FHIR R4 Condition; fhir checklist F-M09.
 */
export function conditionStateOf(resource: unknown, context: TimelineContext): ConditionState {
  const fields = fieldsOf(resource);
  const clinical = firstCode(fields['clinicalStatus']);
  const moment = (value: unknown): Moment | undefined => {
    const text = textOf(value);
    return text === undefined ? undefined : parseMoment(text, context.facilityOffsetMinutes);
  };
  const onset = moment(fields['onsetDateTime']) ?? moment(fieldsOf(fields['onsetPeriod'])['start']);
  const isOver =
    (clinical !== undefined && inactiveCodes.has(clinical)) || hasEnded(fields, moment, context.asOf);
  return {
    state: isOver ? 'inactive' : 'active',
    certainty: certaintyOf(firstCode(fields['verificationStatus'])),
    onset,
    recorded: moment(fields['recordedDate']) ?? moment(fields['assertedDate']),
  };
}

function certaintyOf(code: string | undefined): ConditionState['certainty'] {
  if (code === 'refuted' || code === 'entered-in-error') return 'refuted';
  if (code === 'confirmed') return 'confirmed';
  return code !== undefined && provisionalCodes.has(code) ? 'provisional' : 'unverified';
}

function hasEnded(fields: Fields, moment: (value: unknown) => Moment | undefined, asOf: number): boolean {
  const end = moment(fields['abatementDateTime']) ?? moment(fieldsOf(fields['abatementPeriod'])['end']);
  if (end !== undefined) return end.earliest <= asOf;
  return (
    textOf(fields['abatementString']) !== undefined ||
    isFields(fields['abatementAge']) ||
    isFields(fields['abatementRange'])
  );
}

// R4 sends a CodeableConcept; records brought over from STU3 send the bare code.
function firstCode(concept: unknown): string | undefined {
  return textOf(concept) ?? codingsOf(concept).find(({ code }) => code !== undefined)?.code;
}

// When were babies born? From observations, procedures and coded conditions. Hands on births.
import type { Received } from '../bundle/read-bundle-types.ts';
import {
  birthConditionPrefixes,
  birthConditionSystems,
  birthObservationCodes,
  deliveryProcedureCodes,
} from '../terminology/pregnancy-codes.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import { canonicalSystem, readValue } from './coded-value.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { daysOf } from './duration.ts';
import { isInFuture } from './effective-moment.ts';
import type { Fields } from './fields.ts';
import { codingsOf, fieldsOf, textOf } from './fields.ts';
import { compareMoments, parseMoment } from './moment.ts';
import type { Moment } from './timeline.ts';
import { isUnusable, unusable } from './unusable.ts';

const observationIndex = indexCodes(birthObservationCodes);
const procedureIndex = indexCodes(deliveryProcedureCodes);

export interface Birth {
  readonly at: Moment;
  readonly received: Received;
  readonly asSent: string;
}

/** Does this observation, procedure or condition tell of a birth? */
export function isBirth(fields: Fields): boolean {
  const codings = codingsOf(fields['code']);
  switch (fields['resourceType']) {
    case 'Observation':
      return rowsFor(codings, observationIndex).length > 0;
    case 'Procedure':
      return rowsFor(codings, procedureIndex).length > 0;
    case 'Condition':
      return codings.some(({ system, code }) => isBirthCode(canonicalSystem(system), code));
    default:
      return false;
  }
}

function isBirthCode(system: string | undefined, code: string | undefined): boolean {
  if (system === undefined || code === undefined || !birthConditionSystems.includes(system)) return false;
  return birthConditionPrefixes.some((prefix) => code.toUpperCase().startsWith(prefix));
}

/**
 * The births these resources tell of, one for each birth.
 *
 * Given    resources  those for which `isBirth` holds, in any order
 *          context    time of the evaluation, and where to say what was not used
 * Returns  births, oldest first
 * Throws   never
 * Notes    1. Two dates less than 20 weeks apart are one birth; the finer date is used, then the observation,
 *             then the later one (of twins).
 *          2. A birth observation without a value is not taken from its effective time.
 * Source   decision 27; note 1 ours.
 */
export function readBirths(resources: readonly Received[], context: TimelineContext): readonly Birth[] {
  const births = resources.flatMap((received) => {
    const birth = readBirth(received, context);
    if (!isUnusable(birth)) return [birth];
    context.setAside(received, birth);
    return [];
  });
  return distinct(births, context);
}

function readBirth(received: Received, context: TimelineContext): Birth | Unusable {
  const fields = fieldsOf(received.resource);
  const refuted = refutation(fields);
  if (refuted !== undefined) return refuted;
  const sent = sentDate(fields);
  if (isUnusable(sent)) return sent;
  const at = parseMoment(sent.text, context.facilityOffsetMinutes);
  if (at === undefined)
    return unusable('value-not-readable', sent.element, 'Not a date of the calendar: send YYYY-MM-DD.');
  if (isInFuture(at, context))
    return unusable('time-in-future', sent.element, 'The birth lies after the time of the evaluation.');
  return { at, received, asSent: `birth ${sent.text}` };
}

function refutation(fields: Fields): Unusable | undefined {
  const codes = codingsOf(fields['verificationStatus']).map(({ code }) => code);
  return codes.includes('refuted') || codes.includes('entered-in-error')
    ? unusable('entered-in-error', 'verificationStatus', 'The condition was refuted.')
    : undefined;
}

interface SentDate {
  readonly kind: 'sent';
  readonly text: string;
  readonly element: string;
}

function sentDate(fields: Fields): SentDate | Unusable {
  if (fields['resourceType'] === 'Observation') return sentValue(fields);
  const performed = fieldsOf(fields['performedPeriod']);
  const onset = fieldsOf(fields['onsetPeriod']);
  const candidates: readonly (readonly [string, unknown])[] = [
    ['performedDateTime', fields['performedDateTime']],
    ['performedPeriod.end', performed['end'] ?? performed['start']],
    ['onsetDateTime', fields['onsetDateTime']],
    ['onsetPeriod', onset['start']],
    ['recordedDate', fields['recordedDate']],
  ];
  const found = candidates.find(([, value]) => textOf(value) !== undefined);
  const text = textOf(found?.[1]);
  if (found === undefined || text === undefined)
    return unusable('time-missing', 'performedDateTime', 'The birth has no date: send one.');
  return { kind: 'sent', text, element: found[0] };
}

function sentValue(fields: Fields): SentDate | Unusable {
  const sole = readValue(fields);
  if (isUnusable(sole)) return sole;
  const text = textOf(sole.value)?.trim();
  if (text === undefined || (sole.name !== 'valueDateTime' && sole.name !== 'valueString'))
    return unusable('value-type-not-usable', sole.name, 'A birth is a date and time: send valueDateTime.');
  return { kind: 'sent', text, element: sole.name };
}

function distinct(births: readonly Birth[], context: TimelineContext): readonly Birth[] {
  const apart = daysOf(context.values.startOfSecondHalfDays);
  const groups: Birth[][] = [];
  for (const birth of [...births].sort(compareBirths)) {
    const group = groups.at(-1);
    const last = group?.at(-1);
    if (group !== undefined && last !== undefined && birth.at.localDay - last.at.localDay < apart)
      group.push(birth);
    else groups.push([birth]);
  }
  return groups.flatMap((group) => {
    const [best, ...others] = [...group].sort(compareQuality);
    for (const { received } of others) context.notNeeded(received, 'another resource gives the same birth');
    return best === undefined ? [] : [best];
  });
}

function compareBirths(one: Birth, other: Birth): number {
  return compareMoments(one.at, other.at) || (one.received.reference < other.received.reference ? -1 : 1);
}

const precisions: readonly Moment['precision'][] = ['minute', 'day', 'month', 'year'];
const types: readonly string[] = ['Observation', 'Procedure', 'Condition'];

/** Best first. */
function compareQuality(one: Birth, other: Birth): number {
  return (
    precisions.indexOf(one.at.precision) - precisions.indexOf(other.at.precision) ||
    types.indexOf(one.received.resource.resourceType) - types.indexOf(other.received.resource.resourceType) ||
    -compareBirths(one, other)
  );
}

// Orders and referrals already on the chart, so that none is suggested twice.
import type { ServiceRequest } from 'fhir/r4.js';
import type { Received } from '../bundle/read-bundle-types.ts';
import { reportMissingSystem, systemCodesOf } from './coded-value.ts';
import type { TimelineContext } from './context.ts';
import { fieldsOf, textOf } from './fields.ts';
import { parseMoment } from './moment.ts';
import { sourceOf } from './source.ts';
import type { ExistingRequest, Moment } from './timeline.ts';
import { notAsked, type NotAsked } from './unusable.ts';

/**
 * What was ordered or referred?
 *
 * Given    received  a service request
 *          context   zone of the facility, notice of codings without a system
 * Returns  its codes (`system|code`), status and intent as sent, and when it was written
 *          not-needed  without a code, or an order not to do it
 * Throws   never
 * Notes    1. A missing status or intent is given as `unknown`.
 * Source   FHIR R4 ServiceRequest; fhir checklist F-M02.
 */
export function readRequest(
  received: Received<ServiceRequest>,
  context: TimelineContext,
): ExistingRequest | NotAsked {
  const fields = fieldsOf(received.resource);
  if (fields['doNotPerform'] === true) return notAsked('This is an order not to do it.');
  const codes = systemCodesOf(fields['code']);
  if (codes.length === 0) return notAsked('The request has no code to compare a suggestion with.');
  reportMissingSystem(received, fields['code'], 'code', context);
  const at = writtenAt(fields, context);
  return {
    codes,
    status: textOf(fields['status']) ?? 'unknown',
    intent: textOf(fields['intent']) ?? 'unknown',
    source: sourceOf(received),
    ...(at === undefined ? {} : { at }),
  };
}

function writtenAt(fields: Readonly<Record<string, unknown>>, context: TimelineContext): Moment | undefined {
  const text =
    textOf(fields['authoredOn']) ??
    textOf(fields['occurrenceDateTime']) ??
    textOf(fieldsOf(fields['occurrencePeriod'])['start']);
  return text === undefined ? undefined : parseMoment(text, context.facilityOffsetMinutes);
}

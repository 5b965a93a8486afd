// When was an observation true? Hands on its moment, with the place where the time was found.
import type { Received } from '../bundle/read-bundle-types.ts';
import { millisecondsPerMinute } from './calendar.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { millisecondsOf } from './duration.ts';
import type { Fields } from './fields.ts';
import { fieldsOf, isFields } from './fields.ts';
import { compareMoments, parseMoment } from './moment.ts';
import type { Moment } from './timeline.ts';
import { isUnusable, unusable } from './unusable.ts';

const widestZoneMilliseconds = 14 * 60 * millisecondsPerMinute;

/**
 * When was this observation true?
 *
 * Given    received  an observation, or any resource with `effective[x]`, `issued`, `encounter`
 *          context   `asOf`, the facility's zone, the bundle for its encounter
 * Returns  its moment; `time-invalid` for a date that does not exist; `time-in-future` for one after
 *          `asOf`; `time-missing` when neither the observation nor its encounter has one
 * Throws   never
 * Notes    1. A period counts from its start; a period without start, or a timing without events, says
 *             nothing. Then `issued`, then the start of the encounter; never `meta.lastUpdated`.
 *          2. An assumed zone and a fallback are reported as issues of the resource.
 * Source   fhir checklist F-T01, F-T05 to F-T10, F-M10.
 */
export function effectiveMoment(received: Received, context: TimelineContext): Moment | Unusable {
  const fields = fieldsOf(received.resource);
  const found = statedMoment(fields, context) ?? fallbackMoment(received, fields, context);
  if (found === undefined)
    return unusable('time-missing', 'effectiveDateTime', 'No time was sent: send effectiveDateTime.');
  if (isUnusable(found)) return found;
  if (isInFuture(found.moment, context))
    return unusable(
      'time-in-future',
      found.element,
      'The time lies after the time of the evaluation: compare the clock and the time zone of the sender.',
    );
  reportAssumptions(received, found, context);
  return found.moment;
}

interface Found {
  readonly moment: Moment;
  readonly element: string;
}

/**
 * Does this moment lie after the time of the evaluation?
 *
 * Given    moment   of a fact that was received
 *          context  `asOf` and the tolerance for clocks that differ
 * Returns  true when even its earliest instant lies more than the tolerance after `asOf`
 * Throws   never
 * Notes    1. A date without a zone, where the facility has none, may have begun 14 h earlier than in UTC.
 */
export function isInFuture(
  moment: Moment,
  context: Pick<TimelineContext, 'asOf' | 'values' | 'facilityOffsetMinutes'>,
): boolean {
  const isZoneKnown = moment.offsetMinutes !== undefined || context.facilityOffsetMinutes !== undefined;
  const slack = isZoneKnown ? 0 : widestZoneMilliseconds;
  return moment.earliest - slack > context.asOf + millisecondsOf(context.values.futureTolerance);
}

function statedMoment(fields: Fields, context: TimelineContext): Found | Unusable | undefined {
  if (fields['effectiveDateTime'] !== undefined)
    return read(fields['effectiveDateTime'], 'effectiveDateTime', context);
  if (isFields(fields['effectivePeriod']))
    return periodStart(fields['effectivePeriod'], 'effectivePeriod', context);
  if (fields['effectiveInstant'] !== undefined)
    return read(fields['effectiveInstant'], 'effectiveInstant', context);
  return firstEvent(fieldsOf(fields['effectiveTiming']), context);
}

function read(value: unknown, element: string, context: TimelineContext): Found | Unusable {
  const moment = typeof value === 'string' ? parseMoment(value, context.facilityOffsetMinutes) : undefined;
  if (moment !== undefined) return { moment, element };
  return unusable(
    'time-invalid',
    element,
    'Not a date or time of the calendar: send YYYY-MM-DDThh:mm:ss+zz:zz.',
  );
}

function periodStart(
  period: Fields,
  element: string,
  context: TimelineContext,
): Found | Unusable | undefined {
  if (period['start'] === undefined) return undefined;
  const start = read(period['start'], `${element}.start`, context);
  if (isUnusable(start)) return start;
  const end = periodEnd(period, element, context);
  if (end !== undefined && isUnusable(end)) return end;
  if (end !== undefined && end.moment.latest < start.moment.earliest)
    return unusable('time-invalid', element, 'The period ends before it starts.');
  return { ...start, moment: { ...start.moment, takenFrom: 'period-start' } };
}

/** `stop` is seen in public data where FHIR says `end`. */
function periodEnd(period: Fields, element: string, context: TimelineContext): Found | Unusable | undefined {
  const end = period['end'] ?? period['stop'];
  return end === undefined ? undefined : read(end, `${element}.end`, context);
}

function firstEvent(timing: Fields, context: TimelineContext): Found | Unusable | undefined {
  if (!Array.isArray(timing['event']) || timing['event'].length === 0) return undefined;
  const events = timing['event'].map((event: unknown) => read(event, 'effectiveTiming.event', context));
  const found = events.flatMap((event) => (isUnusable(event) ? [] : [event]));
  return found.sort((one, other) => compareMoments(one.moment, other.moment))[0] ?? events[0];
}

function fallbackMoment(
  received: Received,
  fields: Fields,
  context: TimelineContext,
): Found | Unusable | undefined {
  if (fields['issued'] !== undefined) {
    const issued = read(fields['issued'], 'issued', context);
    return isUnusable(issued) ? issued : { ...issued, moment: { ...issued.moment, takenFrom: 'issued' } };
  }
  if (fields['encounter'] === undefined) return undefined;
  const start = encounterStart(received, fields, context);
  return start === undefined || isUnusable(start) ? undefined : start;
}

const unusableEncounters: readonly unknown[] = ['cancelled', 'entered-in-error'];

function encounterStart(
  received: Received,
  fields: Fields,
  context: TimelineContext,
): Found | Unusable | undefined {
  const encounter = fieldsOf(context.bundle.resolve(fields['encounter'], received)?.resource);
  if (unusableEncounters.includes(encounter['status'])) return undefined;
  const start = periodStart(fieldsOf(encounter['period']), 'encounter', context);
  return start === undefined || isUnusable(start)
    ? start
    : { element: 'encounter', moment: { ...start.moment, takenFrom: 'encounter' } };
}

/**
 * From when to when was this observation true?
 *
 * Given    received, context  as `effectiveMoment`
 * Returns  start and end; equal when no period was sent or its end is not readable; else as `effectiveMoment`
 * Throws   never
 */
export function effectiveSpan(
  received: Received,
  context: TimelineContext,
): { readonly from: Moment; readonly to: Moment } | Unusable {
  const from = effectiveMoment(received, context);
  if (isUnusable(from)) return from;
  if (from.takenFrom !== 'period-start') return { from, to: from };
  const period = fieldsOf(fieldsOf(received.resource)['effectivePeriod']);
  const end = periodEnd(period, 'effectivePeriod', context);
  return { from, to: end === undefined || isUnusable(end) ? from : end.moment };
}

function reportAssumptions(received: Received, found: Found, context: TimelineContext): void {
  const { moment, element } = found;
  if (moment.takenFrom === undefined && (moment.offsetMinutes !== undefined || moment.precision !== 'minute'))
    return;
  const warn = (code: string, message: string): void => {
    context.issue(received, { severity: 'warning', code, type: 'value', element, message });
  };
  if (moment.precision === 'minute' && moment.offsetMinutes === undefined)
    warn(
      'time-zone-assumed',
      'The time has no zone; the zone of the facility was taken, or UTC if none is set.',
    );
  if (moment.takenFrom === 'issued')
    warn('time-from-issued', 'No effective time was sent; the time of issue was taken.');
  if (moment.takenFrom === 'encounter')
    warn('time-from-encounter', 'No effective time was sent; the start of the encounter was taken.');
}

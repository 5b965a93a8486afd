// Whether a medicine is taken, was given, is only proposed, or has stopped; and from when to when.
import type { TimelineContext, Unusable } from './context.ts';
import { fieldsOf, listOf, textOf, type Fields } from './fields.ts';
import { parseMoment } from './moment.ts';
import type { Medicine, Moment } from './timeline.ts';
import { notAsked, unusable, type NotAsked } from './unusable.ts';

export interface Course {
  readonly status: Medicine['status'];
  readonly start: Moment | undefined;
  readonly end: Moment | undefined;
}

type Status = Medicine['status'] | 'not-given' | 'unknown';

const statementStatus: Readonly<Record<string, Status>> = {
  active: 'active',
  completed: 'stopped',
  intended: 'ordered',
  stopped: 'stopped',
  'on-hold': 'stopped',
  'not-taken': 'not-given',
};

const requestStatus: Readonly<Record<string, Status>> = {
  active: 'active',
  draft: 'ordered',
  completed: 'stopped',
  stopped: 'stopped',
  cancelled: 'stopped',
  'on-hold': 'stopped',
};

const administrationStatus: Readonly<Record<string, Status>> = {
  'in-progress': 'active',
  completed: 'given',
  stopped: 'stopped',
  'on-hold': 'stopped',
  'not-done': 'not-given',
};

const orderIntents: ReadonlySet<string> = new Set([
  'order',
  'original-order',
  'reflex-order',
  'filler-order',
  'instance-order',
]);

/**
 * Is this medicine running, and since when?
 *
 * Given    fields   a medication statement, request or administration
 *          context  `asOf` and the zone of the facility
 * Returns  its course; an active one whose period has ended is stopped
 *          not-needed  not taken, not given, or an order not to give
 *          unusable    status-not-usable: unknown, missing, or not a status of the resource
 * Throws   never
 * Notes    1. A request that is a proposal or a plan counts as ordered, not as taken.
 *          2. On hold counts as stopped: it is not being taken.
 * Source   FHIR R4 status value sets of the three resources; fhir checklist F-M02.
 */
export function courseOf(fields: Fields, context: TimelineContext): Course | NotAsked | Unusable {
  if (fields['doNotPerform'] === true) return notAsked('This is an order not to give the medicine.');
  const status = statusOf(fields);
  if (status === 'not-given') return notAsked('The medicine was not taken or not given.');
  if (status === 'unknown') {
    return unusable(
      'status-not-usable',
      'status',
      'The status does not say whether the medicine is taken. Correct the status.',
    );
  }
  const { start, end } = spanOf(fields, context);
  const isOver = status === 'active' && end !== undefined && end.latest < context.asOf;
  return { status: isOver ? 'stopped' : status, start, end };
}

function statusOf(fields: Fields): Status {
  const sent = textOf(fields['status']) ?? '';
  switch (fields['resourceType']) {
    case 'MedicationRequest': {
      const status = statusIn(requestStatus, sent);
      return status === 'active' && !orderIntents.has(textOf(fields['intent']) ?? '') ? 'ordered' : status;
    }
    case 'MedicationAdministration':
      return statusIn(administrationStatus, sent);
    default:
      return statusIn(statementStatus, sent);
  }
}

const statusIn = (table: Readonly<Record<string, Status>>, sent: string): Status =>
  Object.hasOwn(table, sent) ? (table[sent] ?? 'unknown') : 'unknown';

function spanOf(
  fields: Fields,
  context: TimelineContext,
): { start: Moment | undefined; end: Moment | undefined } {
  const moment = (value: unknown): Moment | undefined => {
    const text = textOf(value);
    return text === undefined ? undefined : parseMoment(text, context.facilityOffsetMinutes);
  };
  const period = fieldsOf(fields['effectivePeriod']);
  const bounds = boundsOf(fields);
  const validity = fieldsOf(fieldsOf(fields['dispenseRequest'])['validityPeriod']);
  const starts = [fields['effectiveDateTime'], period['start'], bounds['start'], fields['authoredOn']];
  return {
    start: firstMoment(starts, moment),
    end: firstMoment([period['end'], bounds['end'], validity['end']], moment),
  };
}

function firstMoment(
  values: readonly unknown[],
  moment: (value: unknown) => Moment | undefined,
): Moment | undefined {
  for (const value of values) {
    const found = moment(value);
    if (found !== undefined) return found;
  }
  return undefined;
}

function boundsOf(fields: Fields): Fields {
  for (const dosage of listOf(fields['dosageInstruction'])) {
    const repeat = fieldsOf(fieldsOf(dosage['timing'])['repeat']);
    if (repeat['boundsPeriod'] !== undefined) return fieldsOf(repeat['boundsPeriod']);
  }
  return {};
}

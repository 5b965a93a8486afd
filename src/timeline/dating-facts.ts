// What one observation says about the age of the pregnancy: a first day of gestation. Hands on dating facts.
import type { Received } from '../bundle/read-bundle-types.ts';
import type { DatingCode } from '../terminology/pregnancy-codes.ts';
import { datingCodes } from '../terminology/pregnancy-codes.ts';
import { daysPerWeek, formatDay } from './calendar.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import { readValue } from './coded-value.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { daysOf } from './duration.ts';
import { effectiveMoment } from './effective-moment.ts';
import type { Fields } from './fields.ts';
import { codingsOf, fieldsOf, listOf, textOf } from './fields.ts';
import { daysInText, formatGestation } from './gestation-text.ts';
import { parseMoment } from './moment.ts';
import { readQuantity } from './quantity.ts';
import type { Dating, Moment } from './timeline.ts';
import { isUnusable, unusable } from './unusable.ts';

const codeIndex = indexCodes(datingCodes);

export interface DatingFact {
  readonly received: Received;
  readonly method: Dating['method'];
  /** Day 0 of gestation, in days since 1970-01-01. */
  readonly startDay: number;
  /** Day it was observed or stated; absent when no time was sent. */
  readonly observedDay?: number;
  /** Age in days on `observedDay`, where an age was stated. */
  readonly statedAge?: number;
  readonly asSent: string;
  readonly remarks: readonly string[];
}

/** Does the code, or a component, of this observation date a pregnancy? */
export function isDating(fields: Fields): boolean {
  if (rowsFor(codingsOf(fields['code']), codeIndex).length > 0) return true;
  return listOf(fields['component']).some((part) => rowsFor(codingsOf(part['code']), codeIndex).length > 0);
}

/**
 * Which first day of gestation follows from this observation?
 *
 * Given    received  an observation for which `isDating` holds
 *          daysBeside  remaining days stated in another observation at the same time, for an age in weeks
 *          context   time of the evaluation, lengths in days
 * Returns  the fact; or why it cannot be used: no whole date, an age in another unit than weeks or days, an
 *          age of less than 4 or more than 44 weeks, a date that would make her not yet pregnant
 * Throws   never
 * Notes    1. Due date: day 0 is 280 days before it. An age counts back from the day it was stated.
 *          2. Weeks with a decimal are rounded to the nearest day, with a remark.
 *          3. A last period or due date without a time of its own is used.
 * Source   clinical-rules 2.2 rules 9, 13, 14; terminology.md section 3.
 */
export function readDatingFact(
  received: Received,
  daysBeside: number | undefined,
  context: TimelineContext,
): DatingFact | Unusable {
  const observed = effectiveMoment(received, context);
  const fields = fieldsOf(received.resource);
  const row = rowsFor(codingsOf(fields['code']), codeIndex)[0];
  if (row?.gives === 'last-period' || row?.gives === 'due-date')
    return fromDate(received, row, observed, context);
  if (isUnusable(observed)) return observed;
  if (observed.precision !== 'minute' && observed.precision !== 'day')
    return unusable(
      'time-invalid',
      'effectiveDateTime',
      'A gestational age needs the day on which it was stated.',
    );
  const age = readAge(received, row, daysBeside);
  return isUnusable(age) ? age : fromAge(received, row?.method ?? 'stated-age', age, observed, context);
}

function fromDate(
  received: Received,
  row: DatingCode,
  observed: Moment | Unusable,
  context: TimelineContext,
): DatingFact | Unusable {
  if (isUnusable(observed) && observed.code !== 'time-missing') return observed;
  const date = readDate(received, context);
  if (isUnusable(date)) return date;
  const isDue = row.gives === 'due-date';
  const startDay = date.localDay - (isDue ? daysOf(context.values.pregnancyLengthDays) : 0);
  const observedDay = isUnusable(observed) ? undefined : observed.localDay;
  if (startDay > (observedDay ?? Math.floor(context.asOf / 86_400_000) + 1))
    return unusable(
      'value-out-of-range',
      'valueDateTime',
      'The date lies too far ahead of the day it was recorded.',
    );
  return {
    received,
    method: row.method,
    startDay,
    ...(observedDay === undefined ? {} : { observedDay }),
    asSent: `${isDue ? 'due date' : 'last period'} ${date.text}`,
    remarks: [],
  };
}

function readDate(received: Received, context: TimelineContext): Moment | Unusable {
  const sole = readValue(received.resource);
  if (isUnusable(sole)) return sole;
  if (sole.name !== 'valueDateTime' && sole.name !== 'valueString')
    return unusable('value-type-not-usable', sole.name, 'A date is needed: send valueDateTime.');
  const date = parseMoment(textOf(sole.value)?.trim() ?? '', context.facilityOffsetMinutes);
  if (date === undefined)
    return unusable('value-not-readable', sole.name, 'Not a date of the calendar: send YYYY-MM-DD.');
  if (date.precision === 'minute' || date.precision === 'day') return date;
  return unusable('value-not-readable', sole.name, 'Dating needs the whole date: send YYYY-MM-DD.');
}

interface Age {
  readonly days: number;
  readonly asSent: string;
  readonly remarks: readonly string[];
}

function fromAge(
  received: Received,
  method: Dating['method'],
  age: Age,
  observed: Moment,
  { values }: TimelineContext,
): DatingFact | Unusable {
  if (age.days < daysOf(values.shortestGestationDays) || age.days > daysOf(values.longestGestationDays))
    return unusable(
      'value-out-of-range',
      'value',
      'The gestational age is not possible: check the number and unit.',
    );
  return {
    received,
    method,
    startDay: observed.localDay - age.days,
    observedDay: observed.localDay,
    statedAge: age.days,
    asSent: `${age.asSent} on ${formatDay(observed.localDay)}`,
    remarks: age.remarks,
  };
}

function readAge(
  received: Received,
  row: DatingCode | undefined,
  daysBeside: number | undefined,
): Age | Unusable {
  const fields = fieldsOf(received.resource);
  const parts = listOf(fields['component']).flatMap((component, index) => {
    const part = rowsFor(codingsOf(component['code']), codeIndex)[0];
    return part === undefined
      ? []
      : [{ part, age: readAgeIn(component, part, `component[${String(index)}].`) }];
  });
  const weeksPart = parts.find(({ part }) => part.gives !== 'age-days')?.age;
  const own =
    row === undefined || (parts.length > 0 && isValueless(fields)) ? undefined : readAgeIn(fields, row, '');
  const weeks = own ?? weeksPart;
  const daysPart = parts.find(({ part }) => part.gives === 'age-days')?.age;
  const days = daysPart === undefined || isUnusable(daysPart) ? daysBeside : daysPart.days;
  if (weeks === undefined)
    return daysPart ?? unusable('value-missing', 'value', 'No gestational age was sent: send weeks or days.');
  return isUnusable(weeks) || days === undefined ? weeks : withDays(weeks, days);
}

/** A whole that holds its values in components may say why it has none of its own. */
function isValueless(fields: Fields): boolean {
  const sole = readValue(fields);
  return isUnusable(sole) && (sole.code === 'value-missing' || sole.code === 'value-absent-with-reason');
}

/** Whole weeks beside 0 to 6 days are one age; more than 6 days are the age in days. */
function withDays(weeks: Age, days: number): Age {
  if (days >= daysPerWeek) return { days, asSent: `${String(days)} d`, remarks: [] };
  if (weeks.days % daysPerWeek !== 0) return weeks;
  const total = weeks.days + days;
  return { days: total, asSent: formatGestation(total), remarks: weeks.remarks };
}

function readAgeIn(element: Fields, row: DatingCode, prefix: string): Age | Unusable {
  const sole = readValue(element, prefix);
  if (isUnusable(sole)) return sole;
  const path = `${prefix}${sole.name}`;
  switch (sole.name) {
    case 'valueQuantity':
      return ageFromQuantity(sole.value, path);
    case 'valueInteger':
      return ageFromInteger(sole.value, row, path);
    case 'valueString':
      return ageFromText(textOf(sole.value), path);
    case 'valueCodeableConcept':
      return ageFromText(textOf(fieldsOf(sole.value)['text']), path);
    default:
      return unusable('value-type-not-usable', path, 'A gestational age is a quantity in wk or d.');
  }
}

function ageFromQuantity(value: unknown, path: string): Age | Unusable {
  const read = readQuantity(value, 'gestational-age', path);
  if (isUnusable(read)) return read;
  if (read.measured.comparator !== undefined)
    return unusable(
      'value-not-readable',
      `${path}.comparator`,
      'A gestational age that is only a bound does not date.',
    );
  const exact = read.byUnit.values['d'] ?? read.measured.value;
  const hasDecimal = read.byUnit.sentUnit === 'wk' && !Number.isInteger(fieldsOf(value)['value']);
  const remark = 'weeks were sent with a decimal: read as tenths of a week, not as days';
  return { days: Math.round(exact), asSent: read.asSent, remarks: hasDecimal ? [remark] : [] };
}

/** An integer has no unit of its own; the code says weeks or days, or it cannot be used. */
function ageFromInteger(value: unknown, row: DatingCode, path: string): Age | Unusable {
  if (typeof value !== 'number' || !Number.isInteger(value) || value < 0)
    return unusable('value-not-readable', path, 'The value is not a whole number.');
  if (row.gives === 'age-weeks')
    return { days: value * daysPerWeek, asSent: `${String(value)} wk`, remarks: [] };
  if (row.gives === 'age-days') return { days: value, asSent: `${String(value)} d`, remarks: [] };
  return unusable('unit-missing', path, 'A gestational age without a unit cannot be used: send wk or d.');
}

function ageFromText(text: string | undefined, path: string): Age | Unusable {
  const days = text === undefined ? undefined : daysInText(text);
  if (text === undefined || days === undefined)
    return unusable(
      'value-not-readable',
      path,
      'The gestational age is not readable: send a quantity in wk or d.',
    );
  return { days, asSent: text.trim(), remarks: [] };
}

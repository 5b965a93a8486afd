// Calendar arithmetic on whole days since 1970-01-01, without Date. Hands on days, and days as text.

export const millisecondsPerMinute = 60_000;
export const millisecondsPerDay = 86_400_000;
export const daysPerWeek = 7;

const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * How many days has this month?
 *
 * Given    year   proleptic Gregorian year
 *          month  1 to 12
 * Returns  28 to 31; 0 for a month that does not exist
 * Throws   never
 */
export function daysInMonth(year: number, month: number): number {
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return month === 2 && isLeap ? 29 : (monthLengths[month - 1] ?? 0);
}

/**
 * Which day, counted from 1970-01-01, is this date?
 *
 * Given    year, month, day  a date of the Gregorian calendar that exists
 * Returns  whole days since 1970-01-01; negative before
 * Throws   never
 * Notes    1. Counts in years that begin in March, so that a leap day is the last of its year.
 * Source   ours: Gregorian calendar, 146097 days in 400 years.
 */
export function toDay(year: number, month: number, day: number): number {
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  const leapDays = Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100);
  return era * 146_097 + yearOfEra * 365 + leapDays + dayOfYear - 719_468;
}

/**
 * The date of a day as `YYYY-MM-DD`.
 *
 * Given    day  whole days since 1970-01-01
 * Returns  ten characters for the years 0 to 9999
 * Throws   never
 */
export function formatDay(day: number): string {
  const shifted = day + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1_460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const dayOfMonth = dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1;
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return `${String(year).padStart(4, '0')}-${twoDigits(month)}-${twoDigits(dayOfMonth)}`;
}

/** A number below 100 as two digits. */
export function twoDigits(number: number): string {
  return number < 10 ? `0${String(number)}` : String(number);
}

// Our calendar and gestational ages against a general-purpose date library.
import dates from 'date-fns';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysInMonth, formatDay, toDay } from '../../src/timeline/calendar.ts';
import { dueDate, gestationalAge, lastPeriod } from '../support/resources.ts';
import { built } from './build.ts';

const { addDays, differenceInCalendarDays, format, getDaysInMonth } = dates;

/** The library counts in the zone of the machine: noon is the same calendar day before and after a change of clocks. */
const noon = (year: number, month: number, day: number): Date => new Date(year, month - 1, day, 12);
const epoch = noon(1970, 1, 1);
const written = (date: Date): string => format(date, 'YYYY-MM-DD');

const someDates = fc
  .record({
    year: fc.integer({ min: 1900, max: 2199 }),
    month: fc.integer({ min: 1, max: 12 }),
    day: fc.integer({ min: 1, max: 28 }),
  })
  .chain((date) => fc.integer({ min: 0, max: 31 }).map((more) => ({ ...date, more })))
  .map(({ year, month, day, more }) => addDays(noon(year, month, day), more));

describe('days since 1970-01-01', () => {
  it('are those of the library, there and back', () => {
    fc.assert(
      fc.property(someDates, (date) => {
        const day = toDay(date.getFullYear(), date.getMonth() + 1, date.getDate());
        expect(day).toBe(differenceInCalendarDays(date, epoch));
        expect(formatDay(day)).toBe(written(date));
      }),
      { numRuns: 2000 },
    );
  });

  it('count as many to a month as the library', () => {
    fc.assert(
      fc.property(someDates, (date) => {
        expect(daysInMonth(date.getFullYear(), date.getMonth() + 1)).toBe(getDaysInMonth(date));
      }),
      { numRuns: 1000 },
    );
  });
});

/** Evaluated at noon UTC of a day this century. */
const days = fc.integer({ min: 0, max: 365 * 40 }).map((offset) => addDays(noon(2010, 1, 1), offset));
const ages = fc.integer({ min: 28, max: 300 });
const ageOn = (resources: Parameters<typeof built>[0], on: Date): number | undefined => {
  const { dating } = built(resources, { asOf: `${written(on)}T12:00:00Z` }).timeline.pregnancy;
  return dating === undefined ? undefined : differenceInCalendarDays(on, epoch) - dating.startDay;
};

describe('gestational age', () => {
  it('from the last period is the days the library counts since it', () => {
    fc.assert(
      fc.property(days, ages, (on, age) => {
        const began = written(addDays(on, -age));
        expect(ageOn([lastPeriod(`${written(on)}T09:00:00Z`, began)], on)).toBe(age);
      }),
      { numRuns: 200 },
    );
  });

  it('from a due date is 280 days less those the library counts up to it (clinical rules 2.2 rule 9)', () => {
    fc.assert(
      fc.property(days, ages, (on, age) => {
        const due = written(addDays(on, 280 - age));
        expect(ageOn([dueDate(`${written(on)}T09:00:00Z`, due)], on)).toBe(age);
      }),
      { numRuns: 200 },
    );
  });

  it('stated some days ago has grown by the days the library counts since', () => {
    fc.assert(
      fc.property(days, ages, fc.integer({ min: 0, max: 7 }), (on, age, ago) => {
        const stated = gestationalAge(`${written(addDays(on, -ago))}T09:00:00Z`, age);
        expect(ageOn([stated], on)).toBe(age + ago);
      }),
      { numRuns: 200 },
    );
  });
});

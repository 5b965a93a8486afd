import type { Observation } from 'fhir/r4.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diastolicOnly, loinc, observation, pressure, quantity, systolicOnly } from '../support/resources.ts';
import { built } from './build.ts';
import { at, pressures } from './pressure-support.ts';

describe('properties', () => {
  const pairOfPressures = fc.record({
    s: fc.integer({ min: 100, max: 200 }),
    d: fc.integer({ min: 50, max: 99 }),
    hour: fc.integer({ min: 8, max: 16 }),
  });

  it('the order of entries does not matter', () => {
    fc.assert(
      fc.property(fc.array(pairOfPressures, { minLength: 2, maxLength: 6 }), fc.nat(), (readings, seed) => {
        const resources = readings.flatMap(({ s, d, hour }, index): Observation[] => {
          const time = `2026-02-01T${String(hour).padStart(2, '0')}:00:00Z`;
          return index % 2 === 0
            ? [{ ...pressure(time, s, d), id: `p${String(index)}` }]
            : [
                { ...systolicOnly(time, s), id: `s${String(index)}` },
                { ...diastolicOnly(time, d), id: `d${String(index)}` },
              ];
        });
        const turned = [
          ...resources.slice(seed % resources.length),
          ...resources.slice(0, seed % resources.length),
        ].reverse();
        expect(built(turned).timeline).toEqual(built(resources).timeline);
      }),
    );
  });

  it('the zone a time is written in does not matter', () => {
    const readingOf = (time: string) =>
      pressures([pressure(time, 150, 95)]).map((reading) => reading.at.earliest);
    expect(readingOf('2026-02-01T15:30:00+05:30')).toEqual(readingOf('2026-02-01T10:00:00Z'));
    expect(readingOf('2026-02-01T07:00:00-03:00')).toEqual(readingOf('2026-02-01T10:00:00Z'));
  });

  it('a reading in kPa is the reading a conversion by hand gives', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 340 }), (tenths) => {
        const [reading] = pressures([
          observation(loinc('8480-6'), at, { valueQuantity: quantity(tenths / 10, 'kPa') }),
        ]);
        expect(reading?.systolicMmHg).toBe(Math.floor((tenths * 750_062) / 1_000_000 + 0.5));
      }),
    );
  });
});

import type { Encounter, Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { pressure } from '../support/resources.ts';
import { built, codesOf, defaultAsOf } from './build.ts';

const { effectiveDateTime: _at, ...timeless } = pressure('2026-02-01', 150, 95);

function timed(fields: Partial<Observation>): Observation {
  return { ...timeless, ...fields };
}

const momentOf = (fields: Partial<Observation>) => built([timed(fields)]).timeline.pressures[0]?.at;
const codeOf = (fields: Partial<Observation>) => codesOf(built([timed(fields)]))[0];

describe('the time of an observation', () => {
  it('is its effective time, as an instant or a date', () => {
    expect(momentOf({ effectiveDateTime: '2026-02-01T10:00:00Z' })).toMatchObject({
      text: '2026-02-01T10:00:00Z',
    });
    expect(momentOf({ effectiveInstant: '2026-02-01T10:00:00Z' })).toMatchObject({ precision: 'minute' });
    expect(momentOf({ effectiveDateTime: '2026-02' })).toMatchObject({ precision: 'month' });
  });

  it('of a period is its start, and says so (F-T07)', () => {
    const period = { start: '2026-02-01T10:00:00Z', end: '2026-02-01T10:05:00Z' };
    expect(momentOf({ effectivePeriod: period })).toMatchObject({
      text: period.start,
      takenFrom: 'period-start',
    });
  });

  it('of a period without a start is unknown', () => {
    expect(codeOf({ effectivePeriod: { end: '2026-02-01T10:05:00Z' } })).toBe('time-missing');
  });

  it('of a period that ends before it starts is refused (per-1)', () => {
    const period = { start: '2026-02-01T10:00:00Z', end: '2026-02-01T09:00:00Z' };
    expect(codeOf({ effectivePeriod: period })).toBe('time-invalid');
  });

  it('of a timing is its first event; without events it has none (F-T08)', () => {
    const event = ['2026-02-01T12:00:00Z', '2026-02-01T09:00:00Z'];
    expect(momentOf({ effectiveTiming: { event } })).toMatchObject({ text: '2026-02-01T09:00:00Z' });
    expect(codeOf({ effectiveTiming: { repeat: { frequency: 2 } } })).toBe('time-missing');
  });

  it('falls back to the time of issue, labelled (F-T09)', () => {
    expect(momentOf({ issued: '2026-02-01T10:00:00Z' })).toMatchObject({ takenFrom: 'issued' });
    expect(built([timed({ issued: '2026-02-01T10:00:00Z' })]).issues).toMatchObject([
      { code: 'time-from-issued', expression: 'Bundle.entry[1].resource.issued', severity: 'warning' },
    ]);
  });

  it('falls back to the start of the encounter, unless that was cancelled (F-M10)', () => {
    const encounter = (status: Encounter['status']): Encounter => ({
      resourceType: 'Encounter',
      id: 'e',
      status,
      class: { code: 'AMB' },
      subject: { reference: 'Patient/woman' },
      period: { start: '2026-02-01T09:00:00Z' },
    });
    const visit = timed({ encounter: { reference: 'Encounter/e' } });
    expect(built([encounter('finished'), visit]).timeline.pressures).toMatchObject([
      { at: { text: '2026-02-01T09:00:00Z', takenFrom: 'encounter' } },
    ]);
    expect(codesOf(built([encounter('cancelled'), visit]))).toContain('time-missing');
  });

  it('is never the time of the last update', () => {
    expect(codeOf({ meta: { lastUpdated: '2026-02-01T10:00:00Z' } })).toBe('time-missing');
  });

  it('that does not exist is refused', () => {
    expect(codeOf({ effectiveDateTime: '2026-02-31T10:00:00Z' })).toBe('time-invalid');
  });

  it('without a zone is in the zone of the facility, with a warning', () => {
    const result = built([timed({ effectiveDateTime: '2026-02-01T10:00:00' })], {
      facilityOffsetMinutes: 330,
    });
    expect(result.timeline.pressures).toMatchObject([
      { at: { earliest: Date.parse('2026-02-01T04:30:00Z') } },
    ]);
    expect(result.issues).toMatchObject([{ code: 'time-zone-assumed' }]);
  });
});

describe('a time after the evaluation (F-T10)', () => {
  it.each([
    ['2026-02-01T18:05:00Z', false],
    ['2026-02-01T18:05:01Z', true],
    ['2026-02-01', false],
    ['2026-02-02', false],
    ['2026-02-03', true],
  ])(`of ${defaultAsOf} at %s is set aside: %s`, (effectiveDateTime, isAside) => {
    expect(codeOf({ effectiveDateTime })).toBe(isAside ? 'time-in-future' : undefined);
  });

  it('of a date is counted in the zone of the facility when there is one', () => {
    const tomorrow = [timed({ effectiveDateTime: '2026-02-02' })];
    expect(codesOf(built(tomorrow, { facilityOffsetMinutes: 0 }))).toEqual(['time-in-future']);
    expect(codesOf(built(tomorrow, { facilityOffsetMinutes: 360 }))).toEqual([]);
  });
});

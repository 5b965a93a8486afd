// Facts of an invented woman, for presenters that show them.
import type { Moment, PressureReading, Timeline } from '../../src/timeline/timeline.ts';

const hoursOffset = 330;

/** A minute on 24 Nov 2026 at the clinic (+05:30). */
export function clinicTime(clock: string): Moment {
  const text = `2026-11-24T${clock}:00+05:30`;
  const instant = Date.parse(text);
  return {
    earliest: instant,
    latest: instant,
    localDay: 20781,
    precision: 'minute',
    text,
    offsetMinutes: hoursOffset,
  };
}

export function reading(
  id: string,
  clock: string,
  systolicMmHg: number,
  diastolicMmHg: number,
): PressureReading {
  return {
    at: clinicTime(clock),
    systolicMmHg,
    diastolicMmHg,
    asSent: `${systolicMmHg}/${diastolicMmHg} mm[Hg]`,
    sources: [{ reference: `Observation/${id}`, preliminary: false }],
    setting: 'clinic',
    technique: {},
    remarks: [],
  };
}

export function timelineOf(overrides: Partial<Timeline> = {}): Timeline {
  return {
    asOf: Date.parse('2026-11-24T04:00:00Z'),
    woman: { reference: 'Patient/asha', previousBirths: [] },
    pregnancy: { remarks: [] },
    pressures: [reading('bp-1', '09:10', 168, 112)],
    homePressures: [],
    meanPressures: [],
    unusablePressures: [],
    urineProteins: [],
    urineSigns: [],
    laboratory: [],
    symptoms: [],
    conditions: [],
    medicines: [],
    requests: [],
    ...overrides,
  };
}

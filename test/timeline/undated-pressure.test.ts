// A pressure without a usable time cannot classify, and is never lost for urgency.
import { describe, expect, it } from 'vitest';
import { bundleOf, gestationalAge, noDangerSymptoms, pressure } from '../support/resources.ts';
import { evaluateSoundly } from '../support/engine.ts';
import { built, codesOf, defaultAsOf } from './build.ts';
import { diastolic, panel, systolic } from './pressure-support.ts';

const undated = (systolicMmHg: number, diastolicMmHg: number) => {
  const { effectiveDateTime: _none, ...rest } = panel([systolic(systolicMmHg), diastolic(diastolicMmHg)]);
  return rest;
};
const on = (day: string, systolicMmHg: number, diastolicMmHg: number) => ({
  ...undated(systolicMmHg, diastolicMmHg),
  effectiveDateTime: day,
});

describe('a pressure whose time is missing or does not exist', () => {
  it.each([
    ['without any time', undated(170, 112), 'time-missing'],
    ['on 31 February', on('2026-02-31', 170, 112), 'time-invalid'],
  ])('%s is set aside, and keeps its numbers and source', (_, observation, code) => {
    const result = built([observation]);
    expect(result.timeline.pressures).toEqual([]);
    expect(codesOf(result)).toEqual([code]);
    expect(result.timeline.unusablePressures).toMatchObject([
      {
        why: 'time-unusable',
        systolic: 170,
        diastolic: 112,
        asSent: '170/112 mm[Hg]',
        sources: [{ reference: 'Observation/r0' }],
      },
    ]);
    expect(result.timeline.unusablePressures[0]).not.toHaveProperty('at');
  });

  it('is ignored when it lies in the future: an answer for an earlier day must not know it', () => {
    const result = built([on('2026-03-05T10:00:00Z', 170, 112)]);
    expect(codesOf(result)).toEqual(['time-in-future']);
    expect(result.timeline.unusablePressures).toEqual([]);
  });
});

describe('its urgency (a severe half is an emergency, a raised one same-day, neither is nothing)', () => {
  const others = [
    gestationalAge('2026-02-01T10:00:00Z', 168),
    pressure('2026-02-01T10:00:00Z', 118, 74),
    ...noDangerSymptoms('2026-02-01T10:00:00Z'),
  ];
  const answer = (observation: ReturnType<typeof panel>) =>
    evaluateSoundly(bundleOf([...others, observation]), { asOf: defaultAsOf });

  it.each([
    [160, 90, 'emergency', 'cannot-classify'],
    [150, 110, 'emergency', 'cannot-classify'],
    [140, 80, 'same-day', 'cannot-classify'],
    [130, 90, 'same-day', 'cannot-classify'],
    [139, 89, 'routine', 'normotensive'],
  ])('%i/%i on 31 February is %s, and never makes a class of hypertension', (s, d, urgency, leading) => {
    const { assessment } = answer(on('2026-02-31', s, d));
    expect(assessment.urgency).toBe(urgency);
    expect(assessment.classification).toEqual([leading]);
  });

  it('says why, with what was sent', () => {
    const because = answer(undated(170, 112)).assessment.findings.map((finding) => finding.because);
    expect(because).toContain('A blood pressure was sent without a usable time (sent: 170/112 mm[Hg]).');
  });
});

// Averages and home readings: what they can say, and what not (clinical rules 1.1, rules 26 and 27; decision 11).
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/findings/finding.ts';
import type { MeanPressure, PressureReading } from '../../src/timeline/timeline.ts';
import { applied, moment, reading } from './facts.ts';
import type { Applied } from '../../src/rules/apply-rules.ts';

const home = (at: string, systolic?: number, diastolic?: number): PressureReading => ({
  ...reading(at, systolic, diastolic),
  setting: 'home',
});

const mean = (
  setting: MeanPressure['setting'],
  at: string,
  systolic: number | undefined,
  diastolic: number | undefined,
): MeanPressure => ({
  from: moment(at),
  to: moment(at),
  ...(systolic === undefined ? {} : { systolicMmHg: systolic }),
  ...(diastolic === undefined ? {} : { diastolicMmHg: diastolic }),
  asSent: 'average',
  sources: [{ reference: `Observation/mean-${at}`, preliminary: false }],
  setting,
});

const outcomeOf = ({ assessment }: Applied, question: string): Outcome | undefined =>
  assessment.findings.find((finding) => finding.question === question)?.outcome;

describe('single home readings', () => {
  const answer = (...homePressures: readonly PressureReading[]): Outcome | undefined =>
    outcomeOf(applied({ homePressures, pressures: [reading('10:00', 120, 70)] }), 'home-raised');

  it('are averaged, each half by itself', () => {
    expect(answer(home('08:00', 140, 80), home('09:00', 130, 80))).toBe('met');
    expect(answer(home('08:00', 139, 80), home('09:00', 130, 80))).toBe('not-met');
    expect(answer(home('08:00', 120, 90), home('09:00', 120, 80))).toBe('met');
    expect(answer(home('08:00', 120, 89), home('09:00', 120, 80))).toBe('not-met');
  });

  it('say nothing when there is only one', () => {
    expect(answer(home('08:00', 140, 90))).toBe('cannot-tell');
  });

  it('of one half leave the other open', () => {
    expect(answer(home('08:00', 120), home('09:00', 124))).toBe('cannot-tell');
    expect(answer(home('08:00', undefined, 70), home('09:00', undefined, 74))).toBe('cannot-tell');
    expect(answer(home('08:00', undefined, 86), home('09:00', undefined, 86))).toBe('met');
  });

  it('of an earlier pregnancy do not count', () => {
    expect(answer(home('2023-01-02', 140, 90), home('2023-01-03', 140, 90))).toBe('cannot-tell');
  });

  it('in the severe range are an emergency, though taken at home (decision 11: any single reading)', () => {
    const { assessment } = applied({ homePressures: [home('11:00', 164, 100)] });
    expect([assessment.urgency, assessment.classification[0]]).toEqual(['emergency', 'severe-unconfirmed']);
  });
});

describe('averages', () => {
  it('the newest home series decides', () => {
    const meanPressures = [mean('home', '2025-03-01', 138, 88), mean('home', '2025-03-08', 124, 78)];
    const later = applied({ meanPressures: [...meanPressures].reverse() });
    expect(outcomeOf(later, 'home-raised')).toBe('not-met');
    expect(outcomeOf(later, 'home-below')).toBe('met');
  });

  it('single home readings newer than a series decide', () => {
    const both = applied({
      meanPressures: [mean('home', '2025-03-01', 124, 78)],
      homePressures: [home('08:00', 138, 88), home('09:00', 138, 88)],
    });
    expect(outcomeOf(both, 'home-raised')).toBe('met');
  });

  it('taken in the clinic are one reading of their contact', () => {
    const clinic = applied({ meanPressures: [mean('clinic', '09:00', 144, 92)] });
    expect(clinic.view.occasions.map(({ value }) => value)).toEqual([
      { systolicMmHg: 144, diastolicMmHg: 92 },
    ]);
    expect(clinic.assessment.classification).toEqual(['raised-unconfirmed']);
    expect(outcomeOf(clinic, 'home-raised')).toBe('cannot-tell');
    const half = applied({ meanPressures: [mean('clinic', '09:00', undefined, 92)] });
    expect(half.view.occasions.map(({ value }) => value)).toEqual([{ diastolicMmHg: 92 }]);
    const other = applied({ meanPressures: [mean('clinic', '09:00', 144, undefined)] });
    expect(other.view.occasions.map(({ value }) => value)).toEqual([{ systolicMmHg: 144 }]);
  });

  it('of unknown setting count as home readings and never as a contact', () => {
    const unknown = applied({ meanPressures: [mean('unknown', '09:00', 138, 88)] });
    expect(unknown.view.occasions).toEqual([]);
    expect(outcomeOf(unknown, 'home-raised')).toBe('met');
  });
});

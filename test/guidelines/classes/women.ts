// The women of the ways into classes and urgencies: facts with short names, on days of one March.
import type { FhirResource } from 'fhir/r4.js';
import type { Probe } from '../../support/probe.ts';
import * as build from '../../support/resources.ts';
import { dated, type Edition } from '../limits/limit-row.ts';

export interface WayIn extends Pick<Probe, 'title' | 'lists' | 'without' | 'leads' | 'urgency'> {
  readonly source: string;
  /** Absent: every edition. */
  readonly editions?: readonly Edition[];
  readonly given: readonly FhirResource[];
}

export const at = (day: string, time = '09:00'): string => `2025-03-${day}T${time}:00Z`;
export const sixteenWeeks = dated(115);
export const dayFive = build.birth(at('05', '06:00'));
export const dayFourteen = build.birth('2025-02-24T06:00:00Z');
export const normalNow = build.pressure(at('10', '13:30'), 118, 74);
export const normalYesterday = build.pressure(at('09', '08:00'), 120, 76);
export const raised = (day: string, time?: string): FhirResource => build.pressure(at(day, time), 146, 92);
export const severe = (day: string, time?: string): FhirResource => build.pressure(at(day, time), 172, 114);
export const raisedPair = [raised('04'), raised('04', '14:00')];
export const severePair = [severe('04'), severe('04', '09:20')];
export const protein = (day: string): FhirResource => build.ratio(at(day), 60, 'mg/mmol');
export const moreThanAWeekAgo = [
  build.pressure('2025-03-01T09:00:00Z', 146, 92),
  build.pressure('2025-03-01T14:00:00Z', 148, 94),
];
export const settledNow = [normalYesterday, normalNow];
export const headacheNow = build.symptom(at('10', '13:00'), 'headache', true);
export const clonusNow = build.symptom(at('10', '13:00'), 'clonus', true);
export const seizureNow = build.symptom(at('10', '13:00'), 'seizure', true);
export const fewerMovements = build.symptom(at('10', '13:00'), 'reduced-fetal-movement', true);
export const trophoblastic = build.condition('trophoblastic-disease', '2025-01-10');
export const chronic = build.condition('chronic-hypertension', '2020-05-01');
export const lisinopril = build.takes('lisinopril', '2025-01-01');
export const severeLabel: readonly Edition[] = ['frontline', 'acog-2020', 'sogc-2022', 'who-2020'];
export const homeEditions: readonly Edition[] = ['frontline', 'isshp-2021', 'sogc-2022'];
/** Taken, since nobody knows when. */
export const undatedLabetalol: FhirResource = (() => {
  const { effectivePeriod: _begun, ...rest } = build.takes('labetalol', '2025-01-01');
  return rest;
})();

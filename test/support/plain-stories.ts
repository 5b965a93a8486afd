// Plain timelines that several rule tests share: one woman each, on one morning.
import type { PlainTimeline } from './timeline-builder.ts';

export const asOf = '2026-03-10T12:00:00Z';
const yesterday = '2026-03-09T09:00:00Z';
const today = '2026-03-10T09:00:00Z';

export const noDangerSymptoms: NonNullable<PlainTimeline['symptoms']> = [
  { symptom: 'headache', presence: 'absent' },
  { symptom: 'visual-disturbance', presence: 'absent' },
  { symptom: 'epigastric-pain', presence: 'absent' },
  { symptom: 'dyspnoea', presence: 'absent' },
];

const pair = (systolic: number, diastolic: number): NonNullable<PlainTimeline['pressures']> => [
  { at: yesterday, systolic, diastolic },
  { at: today, systolic, diastolic },
];
const organsNormal: NonNullable<PlainTimeline['labs']> = [
  { at: today, analyte: 'platelets', value: 220, unit: '10*9/L' },
  { at: today, analyte: 'creatinine', value: 60, unit: 'umol/L' },
  { at: today, analyte: 'alt', value: 20, unit: 'U/L' },
  { at: today, analyte: 'ast', value: 20, unit: 'U/L' },
];
const clean: Pick<PlainTimeline, 'strips' | 'symptoms' | 'labs'> = {
  strips: [{ at: today, grade: 0 }],
  symptoms: noDangerSymptoms,
  labs: organsNormal,
};

/** Each by what it is. */
export const normal: PlainTimeline = {
  asOf,
  gestation: '24+0',
  pressures: pair(118, 74),
  ...clean,
};
export const gestational: PlainTimeline = { asOf, gestation: '32+0', pressures: pair(148, 94), ...clean };
export const preEclampsia: PlainTimeline = { ...gestational, strips: [{ at: today, grade: 2 }] };
export const chronic: PlainTimeline = { asOf, gestation: '16+0', pressures: pair(148, 94), ...clean };
export const severe: PlainTimeline = {
  ...gestational,
  pressures: [
    { at: '2026-03-10T11:00:00Z', systolic: 172, diastolic: 114 },
    { at: '2026-03-10T11:20:00Z', systolic: 168, diastolic: 112 },
  ],
};
export const severeOnce: PlainTimeline = {
  ...gestational,
  pressures: [{ at: '2026-03-10T11:50:00Z', systolic: 172, diastolic: 114 }],
};
export const severePreEclampsia: PlainTimeline = { ...severe, strips: [{ at: today, grade: 3 }] };
export const eclampsia: PlainTimeline = {
  ...preEclampsia,
  symptoms: [{ symptom: 'seizure', at: '2026-03-10T11:00:00Z' }],
};
export const afterBirth: PlainTimeline = {
  asOf,
  birth: '2026-03-06T09:00:00Z',
  pressures: pair(144, 92),
  ...clean,
};
export const afterPreEclampsia: PlainTimeline = {
  ...afterBirth,
  conditions: [{ condition: 'pre-eclampsia', at: '2026-03-01' }],
};
export const undated: PlainTimeline = { asOf, pressures: pair(148, 94), ...clean };

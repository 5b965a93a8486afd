// Which recorded diagnoses are set beside which classes of ours.

export interface DiagnosisGroup {
  readonly id: string;
  readonly title: string;
  /** Conditions of the timeline, as recorded. */
  readonly recorded: ReadonlySet<string>;
  /** Leading or further classes of the answer. */
  readonly classes: ReadonlySet<string>;
}

const preEclampsiaRecorded = [
  'pre-eclampsia',
  'pre-eclampsia-severe',
  'superimposed-pre-eclampsia',
  'hellp',
  'eclampsia',
];
const preEclampsiaClasses = [
  'eclampsia',
  'imminent-eclampsia',
  'hellp',
  'pre-eclampsia-severe-features',
  'superimposed-pre-eclampsia',
  'postpartum-pre-eclampsia',
  'pre-eclampsia',
];
const gestationalClasses = ['gestational-hypertension-severe-range', 'gestational-hypertension'];
const otherClasses = ['postpartum-hypertension', 'chronic-hypertension', 'hypertension-timing-unknown'];

/** The choice of groups is ours. */
export const diagnosisGroups: readonly DiagnosisGroup[] = [
  {
    id: 'pre-eclampsia',
    title: 'Pre-eclampsia, HELLP or eclampsia',
    recorded: new Set(preEclampsiaRecorded),
    classes: new Set(preEclampsiaClasses),
  },
  {
    id: 'gestational-hypertension',
    title: 'Gestational hypertension',
    recorded: new Set(['gestational-hypertension']),
    classes: new Set(gestationalClasses),
  },
  {
    id: 'any',
    title: 'Any hypertensive disorder of pregnancy',
    recorded: new Set([
      ...preEclampsiaRecorded,
      'gestational-hypertension',
      'postpartum-hypertension',
      'hypertension-in-pregnancy-unspecified',
    ]),
    classes: new Set([...preEclampsiaClasses, ...gestationalClasses, ...otherClasses]),
  },
];

/** Recorded diagnoses that are left out of the chart when agreement with them is judged. */
export const recordedDisorders: ReadonlySet<string> = new Set(
  diagnosisGroups.flatMap(({ recorded }) => [...recorded]),
);

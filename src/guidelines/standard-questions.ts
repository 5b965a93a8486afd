// The questions every guideline is asked, filled with its own limits. Data; the wording is what RULES.md prints.
import { afterBirthQuestions } from './after-birth-questions.ts';
import { acog222, commonPractice, isshp2018, nice133, ours } from './citations.ts';
import { severeResults } from './criteria.ts';
import type { Edition } from './edition.ts';
import { magnesiumQuestions } from './magnesium-questions.ts';
import { careQuestions } from './standard-care-questions.ts';
import type { ConditionId, MedicineId, Omission, Period, Question, SymptomId } from './guideline.ts';
import {
  bloodTestedWithin,
  dosesApart,
  dosesWithin,
  freshness,
  limit,
  newProteinMultiple,
  settledAfter,
  unusableSupersededAfter,
  urineTestedWithin,
  wholePregnancy,
} from './shared-values.ts';

/** Symptoms that, with raised pressure, warn of eclampsia. */
export const dangerSymptoms: readonly SymptomId[] = [
  'headache',
  'visual-disturbance',
  'epigastric-pain',
  'dyspnoea',
  'clonus',
  'altered-mental-status',
];

/** Those asked of every woman at every contact; the others are looked for when there is reason. */
export const askedSymptoms: readonly SymptomId[] = [
  'headache',
  'visual-disturbance',
  'epigastric-pain',
  'dyspnoea',
];

export const agentsToAvoid: readonly MedicineId[] = [
  'ace-inhibitor',
  'angiotensin-receptor-blocker',
  'renin-inhibitor',
  'neprilysin-inhibitor',
  'aldosterone-antagonist',
  'atenolol',
  'enalapril',
  'captopril',
  'statin',
];

/** Agents to avoid while breast-feeding. */
export const agentsToAvoidAfterBirth: readonly MedicineId[] = [
  'angiotensin-receptor-blocker',
  'renin-inhibitor',
  'neprilysin-inhibitor',
];

export const pressureMedicines: readonly MedicineId[] = [
  'labetalol',
  'nifedipine',
  'amlodipine',
  'methyldopa',
  'hydralazine',
  'dihydralazine',
  'nicardipine',
  'ace-inhibitor',
  'angiotensin-receptor-blocker',
  'renin-inhibitor',
  'neprilysin-inhibitor',
  'atenolol',
  'other-beta-blocker',
  'other-antihypertensive',
  'thiazide',
  'enalapril',
  'captopril',
];

/** Doses that show treatment that goes on, where no record says that the medicine is taken; not when it began. */
const repeatedDoses = { within: dosesWithin, apart: dosesApart } as const;

const otherReasonsForPressureMedicines: readonly ConditionId[] = ['heart-failure', 'chronic-kidney-disease'];

const omissions = {
  pressure: {
    id: 'blood-pressure',
    what: 'blood pressure, both halves',
    how: 'Measure seated after rest, cuff fitting the arm, and record systolic and diastolic with unit and time.',
    by: 'same-day',
  },
  secondReading: {
    id: 'second-raised-contact',
    what: 'a second blood pressure after the interval',
    how: 'Repeat the blood pressure after the interval, same arm, after rest.',
    by: 'same-day',
  },
  urine: {
    id: 'urine-protein',
    what: 'urine protein',
    how: 'Test a clean-catch sample by strip; send a protein/creatinine ratio where it can be had.',
    by: 'same-day',
  },
  laboratory: {
    id: 'organ-tests',
    what: 'platelets, creatinine, liver enzymes',
    how: 'Take blood for platelets, creatinine and ALT or AST, here or at the place of referral.',
    by: 'same-day',
  },
  hellp: {
    id: 'hellp-tests',
    what: 'platelets, AST, ALT, LDH',
    how: 'Complete the laboratory set now.',
    by: 'same-day',
  },
  symptoms: {
    id: 'danger-symptoms',
    what: 'danger symptoms',
    how: 'Ask about headache, sight, pain under the ribs and breathlessness, and record the answers.',
    by: 'same-day',
  },
  dating: {
    id: 'gestational-age',
    what: 'gestational age',
    how: 'Record the last period, a due date, a scan, or the height of the fundus.',
    by: 'same-day',
  },
  saturation: {
    id: 'oxygen-saturation',
    what: 'oxygen saturation',
    how: 'Measure oxygen saturation by pulse oximetry.',
    by: 'same-day',
  },
  home: {
    id: 'home-pressure',
    what: 'a series of home readings',
    how: 'Record home readings over some days, where a validated device can be had.',
    by: 'routine',
  },
} as const satisfies Record<string, Omission>;

/** A seizure, or a coma that nothing explains: one to the rules. */
const fits: readonly SymptomId[] = ['seizure', 'coma'];

const allPeriods: readonly Period[] = ['before-20-weeks', 'from-20-weeks', 'after-birth', 'unknown'];
const fromTwenty: readonly Period[] = ['from-20-weeks', 'unknown'];
const late: readonly Period[] = ['from-20-weeks', 'after-birth', 'unknown'];

const periods = [
  ['before-20-weeks', 'Is it before 20+0 weeks?'],
  ['from-20-weeks', 'Is it from 20+0 weeks on, before birth?'],
  ['after-birth', 'Is it within six weeks after birth?'],
  ['unknown', 'Is the length of the pregnancy unknown?'],
] as const satisfies readonly (readonly [Period, string])[];

const dated = commonPractice('20+0 weeks and six weeks after birth divide a pregnancy');

const oxygenLow = limit(
  'oxygen-saturation-emergency',
  '<',
  90,
  '%',
  nice133('1.5.7, thresholds for planned early birth', 'read'),
);
const plateletFall = limit(
  'platelet-fall',
  '>=',
  30,
  '%',
  ours('a fall by about a third is shown as a trend before a cut-off is crossed'),
);
const oxygenReduced = limit(
  'oxygen-saturation-reduced',
  '<',
  94,
  '%',
  ours('cautious alert between 90 and 93 percent'),
);

/** Questions about time and pressure. */
function pressureQuestions(edition: Edition): readonly Question[] {
  const { hypertension, severe, confirmation, severeConfirmation, citation } = edition;
  const danger = { severeConfirmation, dangerSymptoms };
  const needsPressure = { citation, whenCannotTell: omissions.pressure };
  return [
    ...periods.map(([period, asks]): Question => ({
      id: `now-${period}`,
      asks,
      check: 'period-now',
      period,
      citation: dated,
      ...(period === 'unknown' ? { whenCannotTell: omissions.dating } : {}),
    })),
    {
      id: 'raised-once',
      asks: 'Did one recent reading reach 140 systolic or 90 diastolic, or the limits of this guideline?',
      check: 'pressure-raised-once',
      limits: hypertension,
      freshWithin: freshness,
      ...needsPressure,
    },
    {
      id: 'raised-now',
      asks: 'Is the pressure of the newest contact raised?',
      check: 'pressure-raised-now',
      limits: hypertension,
      ...needsPressure,
    },
    {
      id: 'normal-now',
      asks: 'Is the newest contact below the limits, both halves measured?',
      check: 'pressure-normal-now',
      limits: hypertension,
      freshWithin: freshness,
      ...needsPressure,
    },
    {
      id: 'raised-open',
      asks: 'Is a raised contact waiting for its repeat?',
      check: 'pressure-raised-open',
      limits: hypertension,
      confirmation,
      citation: confirmation.citation,
      whenCannotTell: omissions.pressure,
    },
    {
      id: 'transient',
      asks: 'Did a raised pressure settle on repeat?',
      check: 'pressure-transient',
      limits: hypertension,
      confirmation,
      citation: edition.citations.transient,
    },
    {
      id: 'settled',
      asks: 'Has the pressure stayed below the limits since the last raised contact?',
      check: 'pressure-settled',
      limits: hypertension,
      confirmation,
      after: settledAfter,
      citation: settledAfter.citation,
    },
    {
      id: 'pair-stale',
      asks: 'Do the confirming readings lie too far apart?',
      check: 'pressure-pair-stale',
      limits: hypertension,
      confirmation,
      freshWithin: freshness,
      citation: freshness.citation,
    },
    ...periods.map(([period]): Question => ({
      id: `confirmed-${period}`,
      asks: `Is raised pressure confirmed, ${periodWords[period]}?`,
      check: 'pressure-confirmed',
      limits: hypertension,
      severe,
      period,
      confirmation,
      ...danger,
      citation: confirmation.citation,
      whenCannotTell: omissions.secondReading,
    })),
    {
      id: 'severe-open',
      asks: 'Is a severe reading waiting for its repeat?',
      check: 'severe-pressure-open',
      limits: severe,
      ...danger,
      citation: severe.systolic.citation,
    },
    {
      id: 'severe-closed',
      asks: 'Was a severe reading followed by a lower one, unconfirmed?',
      check: 'severe-pressure-closed',
      limits: severe,
      ...danger,
      citation: severeConfirmation.closedAfter.citation,
    },
    {
      id: 'severe-confirmed',
      asks: 'Is severe pressure confirmed, from 20+0 weeks on?',
      check: 'severe-pressure-confirmed',
      limits: severe,
      ...danger,
      period: 'from-20-weeks',
      citation: severe.systolic.citation,
    },
    {
      id: 'severe-confirmed-any-time',
      asks: 'Is severe pressure confirmed at any time of this pregnancy?',
      check: 'severe-pressure-confirmed',
      limits: severe,
      ...danger,
      period: 'any',
      citation: severe.systolic.citation,
    },
    {
      id: 'severe-current',
      asks: 'Is confirmed severe pressure still unsettled?',
      check: 'severe-pressure-current',
      limits: severe,
      ...danger,
      settledAfter,
      citation: settledAfter.citation,
    },
    ...(edition.lossOfControl === undefined
      ? []
      : [
          {
            id: 'control-lost',
            asks: 'Did the pressure suddenly rise into the severe range from 20+0 weeks on?',
            check: 'pressure-control-lost',
            limits: severe,
            ...danger,
            earlierBy: settledAfter,
            citation: edition.lossOfControl,
          } satisfies Question,
        ]),
    {
      id: 'unusable-emergency',
      asks: 'Was a pressure received that cannot be used and may be severe?',
      check: 'unusable-pressure',
      limits: hypertension,
      severe,
      level: 'emergency',
      supersededAfter: unusableSupersededAfter,
      freshWithin: freshness,
      citation: ours('a pressure that cannot be used never lowers the urgency'),
    },
    {
      id: 'unusable-same-day',
      asks: 'Was a pressure received that cannot be used?',
      check: 'unusable-pressure',
      limits: hypertension,
      severe,
      level: 'same-day',
      supersededAfter: unusableSupersededAfter,
      freshWithin: freshness,
      citation: ours('a pressure that cannot be used never lowers the urgency'),
    },
    {
      id: 'after-birth-raised-same-day',
      asks: 'Is the pressure after birth at or above the limit for same-day review?',
      check: 'pressure-raised-now',
      limits: edition.afterBirthSameDay,
      period: 'after-birth',
      citation: edition.afterBirthSameDay.systolic.citation,
      whenCannotTell: omissions.pressure,
    },
    {
      id: 'after-birth-treatment',
      asks: 'Does the pressure after birth reach the level at which treatment starts?',
      check: 'pressure-raised-now',
      limits: edition.afterBirthTreatment,
      period: 'after-birth',
      citation: edition.afterBirthTreatment.systolic.citation,
    },
    {
      id: 'home-severe',
      asks: 'Is the home average in the severe range?',
      check: 'home-pressure',
      want: 'raised',
      limits: severe,
      citation: severe.systolic.citation,
    },
    {
      id: 'home-raised-no-clinic',
      asks: 'Is an average raised as a clinic reading would be, with no clinic reading beside it?',
      check: 'home-pressure',
      want: 'raised',
      onlyWithoutClinic: true,
      limits: hypertension,
      citation: ours('an average whose setting is unknown may be a clinic average'),
    },
    ...homeQuestions(edition),
  ];
}

const periodWords: Readonly<Record<Period, string>> = {
  'before-20-weeks': 'before 20+0 weeks',
  'from-20-weeks': 'from 20+0 weeks on',
  'after-birth': 'after birth',
  unknown: 'at unknown length of pregnancy',
};

function homeQuestions(edition: Edition): readonly Question[] {
  if (edition.home === undefined) return [];
  const rest = { limits: edition.home, citation: edition.citations.home };
  return [
    {
      id: 'home-raised',
      asks: 'Is the home average raised?',
      check: 'home-pressure',
      want: 'raised',
      ...rest,
    },
    {
      id: 'home-below',
      asks: 'Is the home average below the limits?',
      check: 'home-pressure',
      want: 'below',
      ...rest,
      whenCannotTell: omissions.home,
    },
    {
      id: 'home-below-on-record',
      asks: 'Were home readings received, with an average below the limits?',
      check: 'home-pressure',
      want: 'below',
      whenNone: 'not-met',
      ...rest,
    },
  ];
}

/** Questions about urine, blood and symptoms. */
function organQuestions(edition: Edition): readonly Question[] {
  const protein = {
    check: 'proteinuria',
    criteria: edition.proteinuria,
    limits: edition.hypertension,
    lookBack: freshness,
    correctedWithin: freshness,
    citation: edition.citations.preEclampsia,
    whenCannotTell: omissions.urine,
  } as const;
  const organ = {
    check: 'organ-involvement',
    symptomsFreshWithin: freshness,
    citation: edition.citations.preEclampsia,
    whenCannotTell: omissions.laboratory,
  } as const;
  return [
    {
      id: 'protein-now',
      asks: 'Is there significant protein in the newest urine?',
      ...protein,
      span: 'current',
      periods: allPeriods,
    },
    {
      id: 'protein-before-20-weeks',
      asks: 'Is there significant protein before 20+0 weeks?',
      ...protein,
      span: 'current',
      periods: ['before-20-weeks'],
    },
    {
      id: 'protein-from-20-weeks',
      asks: 'Is there significant new protein from 20+0 weeks on, since shortly before the pressure rose?',
      ...protein,
      span: 'since-raised',
      periods: fromTwenty,
      newAgainstBaseline: newProteinMultiple,
    },
    {
      id: 'protein-perhaps-new',
      asks: 'Is there significant protein from 20+0 weeks on that is not known to be the old one?',
      ...protein,
      span: 'current',
      periods: fromTwenty,
      newAgainstBaseline: newProteinMultiple,
      whenNotCompared: 'counts',
    },
    {
      id: 'protein-after-birth',
      asks: 'Is there significant protein after birth?',
      ...protein,
      span: 'since-raised',
      periods: ['after-birth'],
    },
    {
      id: 'urine-tested',
      asks: 'Was urine protein tested within the last day?',
      check: 'urine-tested',
      freshWithin: urineTestedWithin,
      citation: urineTestedWithin.citation,
    },
    {
      id: 'blood-tested',
      asks: 'Were platelets, creatinine and a liver enzyme measured within the last day?',
      check: 'blood-tested',
      groups: [['platelets'], ['creatinine'], ['alt', 'ast']],
      freshWithin: bloodTestedWithin,
      citation: bloodTestedWithin.citation,
    },
    {
      id: 'organ-before-20-weeks',
      asks: 'Is an organ involved before 20+0 weeks, by laboratory or record?',
      ...organ,
      criteria: edition.organs.filter((item) => item.kind !== 'symptom'),
      periods: ['before-20-weeks'],
      newOnset: false,
    },
    {
      id: 'organ-from-20-weeks',
      asks: 'Is an organ newly involved from 20+0 weeks on?',
      ...organ,
      criteria: edition.organs,
      periods: fromTwenty,
      newOnset: true,
      negativeFreshWithin: freshness,
    },
    {
      id: 'organ-after-birth',
      asks: 'Is an organ newly involved from 20+0 weeks on, before the birth or after it?',
      ...organ,
      criteria: edition.organs,
      periods: late,
      newOnset: true,
      negativeFreshWithin: freshness,
    },
    {
      id: 'severe-organ',
      asks: 'Is an organ involved so that the disease counts as severe?',
      ...organ,
      criteria: edition.severeOrgans,
      periods: late,
      newOnset: true,
      negativeFreshWithin: freshness,
    },
    {
      id: 'severe-result',
      asks: 'Is a blood result in the severe range, whatever the pressure?',
      check: 'organ-involvement',
      symptomsFreshWithin: freshness,
      criteria: severeResults,
      periods: allPeriods,
      newOnset: true,
      freshWithin: freshness,
      citation: ours('a severe result at normal pressure may be HELLP or atypical disease beginning'),
    },
    ...heavyProtein(edition),
    ...(edition.hellp === undefined
      ? []
      : [
          {
            id: 'hellp-criteria',
            asks: 'Do the laboratory values fit HELLP?',
            check: 'hellp',
            definition: edition.hellp,
            within: freshness,
            citation: edition.hellp.tennessee.platelets.citation,
            whenCannotTell: omissions.hellp,
          } as const,
        ]),
    {
      id: 'danger-symptom',
      asks: 'Is there a danger symptom: headache, disturbed sight, pain under the ribs, breathlessness?',
      check: 'symptom-present',
      symptoms: askedSymptoms,
      freshWithin: freshness,
      citation: nice133('1.8.3, features of severe pre-eclampsia', 'read'),
      whenCannotTell: omissions.symptoms,
    },
    {
      id: 'danger-sign',
      asks: 'Is there clonus or an altered state of mind?',
      check: 'symptom-present',
      symptoms: ['clonus', 'altered-mental-status'],
      freshWithin: freshness,
      whenUnasked: 'not-recorded',
      citation: nice133('1.8.3, features of severe pre-eclampsia', 'read'),
    },
    {
      id: 'breathless',
      asks: 'Is she breathless?',
      check: 'symptom-present',
      symptoms: ['dyspnoea', 'lung-crackles'],
      freshWithin: freshness,
      whenUnasked: 'not-recorded',
      citation: ours('breathlessness with low saturation points to the lung'),
    },
    {
      id: 'lung-oedema',
      asks: 'Is there pulmonary oedema?',
      check: 'symptom-present',
      symptoms: ['pulmonary-oedema'],
      freshWithin: freshness,
      whenUnasked: 'not-recorded',
      citation: acog222('severe features', 'read'),
    },
    {
      id: 'chest-pain',
      asks: 'Is there chest pain?',
      check: 'symptom-present',
      symptoms: ['chest-pain'],
      freshWithin: freshness,
      whenUnasked: 'not-recorded',
      citation: ours('chest pain is examined the same day'),
    },
    {
      id: 'seizure',
      asks: 'Was there a seizure from 20+0 weeks on, or within six weeks after birth?',
      check: 'symptom-present',
      symptoms: fits,
      freshWithin: freshness,
      whenUnasked: 'not-recorded',
      periods: late,
      evenWhenOver: true,
      citation: edition.citations.eclampsia,
    },
    {
      id: 'seizure-any-time',
      asks: 'Was there a recent seizure?',
      check: 'symptom-present',
      symptoms: fits,
      freshWithin: freshness,
      whenUnasked: 'not-recorded',
      evenWhenOver: true,
      citation: edition.citations.eclampsia,
    },
    {
      id: 'seizure-in-pregnancy',
      asks: 'Was there a seizure at any time since 20+0 weeks of this pregnancy?',
      check: 'symptom-present',
      symptoms: fits,
      freshWithin: wholePregnancy,
      whenUnasked: 'not-recorded',
      periods: late,
      evenWhenOver: true,
      citation: wholePregnancy.citation,
    },
    {
      id: 'vaginal-bleeding',
      asks: 'Is there vaginal bleeding?',
      check: 'symptom-present',
      symptoms: ['vaginal-bleeding'],
      freshWithin: freshness,
      whenUnasked: 'not-recorded',
      citation: isshp2018('abruption as a complication', 'read'),
    },
    {
      id: 'abdominal-pain',
      asks: 'Is there abdominal pain?',
      check: 'symptom-present',
      symptoms: ['abdominal-pain', 'epigastric-pain'],
      freshWithin: freshness,
      whenUnasked: 'not-recorded',
      citation: isshp2018('abruption as a complication', 'read'),
    },
    {
      id: 'reduced-fetal-movement',
      asks: 'Are fetal movements reduced?',
      check: 'symptom-present',
      symptoms: ['reduced-fetal-movement'],
      freshWithin: freshness,
      whenUnasked: 'not-recorded',
      citation: nice133('1.6.8', 'read'),
    },
    {
      id: 'platelets-falling',
      asks: 'Have the platelets fallen far, though no cut-off is crossed?',
      check: 'laboratory-fall',
      analyte: 'platelets',
      limit: plateletFall,
      freshWithin: freshness,
      citation: plateletFall.citation,
    },
    {
      id: 'oxygen-below-90',
      asks: 'Is oxygen saturation in the emergency range?',
      check: 'laboratory-reaches',
      analyte: 'oxygen-saturation',
      limit: oxygenLow,
      freshWithin: freshness,
      citation: oxygenLow.citation,
    },
    {
      id: 'oxygen-below-94',
      asks: 'Is oxygen saturation reduced?',
      check: 'laboratory-reaches',
      analyte: 'oxygen-saturation',
      limit: oxygenReduced,
      freshWithin: freshness,
      citation: oxygenReduced.citation,
    },
  ];
}

function heavyProtein(edition: Edition): readonly Question[] {
  const { heavyProtein: grade, citation } = edition.severeFeatures;
  if (grade === undefined) return [];
  return [
    {
      id: 'heavy-protein',
      asks: 'Is the protein so heavy that the disease counts as severe?',
      check: 'proteinuria',
      criteria: {
        strip: grade,
        ungradedPositive: 'cannot-tell',
        proteinCreatinineRatio: [],
        albuminCreatinineRatio: [],
        excretion24h: [],
      },
      span: 'since-raised',
      periods: late,
      limits: edition.hypertension,
      lookBack: freshness,
      correctedWithin: freshness,
      citation,
    },
  ];
}

/** Questions about the record. */
function recordQuestions(edition: Edition): readonly Question[] {
  const recorded = (
    id: string,
    asks: string,
    conditions: readonly ConditionId[],
    scope: 'active' | 'this-pregnancy' | 'ever' = 'this-pregnancy',
  ): Question => ({
    id,
    asks,
    check: 'condition-recorded',
    conditions,
    scope,
    citation: ours('a diagnosis in the record is respected and said to come from it'),
  });
  return [
    recorded('recorded-chronic', 'Is chronic hypertension recorded?', ['chronic-hypertension'], 'active'),
    recorded('recorded-gestational', 'Is gestational hypertension recorded for this pregnancy?', [
      'gestational-hypertension',
    ]),
    recorded('recorded-pre-eclampsia', 'Is pre-eclampsia recorded for this pregnancy?', [
      'pre-eclampsia',
      'pre-eclampsia-severe',
    ]),
    recorded('recorded-severe-pre-eclampsia', 'Is severe pre-eclampsia recorded for this pregnancy?', [
      'pre-eclampsia-severe',
    ]),
    recorded('recorded-superimposed', 'Is superimposed pre-eclampsia recorded for this pregnancy?', [
      'superimposed-pre-eclampsia',
    ]),
    recorded('recorded-hellp', 'Is HELLP recorded for this pregnancy?', ['hellp']),
    recorded('recorded-eclampsia', 'Is eclampsia recorded for this pregnancy?', ['eclampsia']),
    recorded('recorded-postpartum', 'Is postpartum hypertension recorded?', ['postpartum-hypertension']),
    recorded('recorded-any-hypertension', 'Is a hypertensive disorder of this pregnancy recorded?', [
      'gestational-hypertension',
      'pre-eclampsia',
      'pre-eclampsia-severe',
      'superimposed-pre-eclampsia',
      'hellp',
      'eclampsia',
      'hypertension-in-pregnancy-unspecified',
    ]),
    recorded('recorded-trophoblastic', 'Is trophoblastic disease recorded?', ['trophoblastic-disease']),
    recorded('recorded-epilepsy', 'Is epilepsy recorded?', ['epilepsy'], 'active'),
    recorded('recorded-stroke', 'Is a stroke recorded for this pregnancy?', ['stroke']),
    recorded('recorded-abruption', 'Is placental abruption recorded?', ['placental-abruption']),
    recorded('recorded-multiple', 'Is this a multiple pregnancy?', ['multiple-pregnancy']),
    recorded(
      'recorded-kidney-disease',
      'Is chronic kidney disease recorded?',
      ['chronic-kidney-disease'],
      'active',
    ),
    {
      id: 'treated-before-20-weeks',
      asks: 'Was a medicine for pressure in use before 20+0 weeks, with no other reason recorded?',
      check: 'medicine-active',
      medicines: pressureMedicines,
      activeIn: 'before-20-weeks',
      doses: repeatedDoses,
      otherIndications: otherReasonsForPressureMedicines,
      citation: ours('such a medicine before 20 weeks speaks for chronic hypertension; the question is put'),
    },
    {
      id: 'treated-from-20-weeks',
      asks: 'Was a medicine for pressure begun from 20+0 weeks on, with no other reason recorded?',
      check: 'medicine-active',
      medicines: pressureMedicines,
      activeIn: 'from-20-weeks',
      startKnown: true,
      otherIndications: otherReasonsForPressureMedicines,
      citation: ours('normal pressure on treatment is still hypertension; the question is put'),
    },
    {
      id: 'treated',
      asks: 'Is a medicine for pressure in use?',
      check: 'medicine-active',
      medicines: pressureMedicines,
      doses: repeatedDoses,
      otherIndications: otherReasonsForPressureMedicines,
      citation: edition.citation,
    },
    {
      id: 'agent-to-avoid',
      asks: 'Is a medicine in use that is to be avoided in pregnancy?',
      check: 'medicine-active',
      medicines: agentsToAvoid,
      doses: { within: freshness },
      citation: nice133('1.3.3', 'read'),
    },
    {
      id: 'agent-to-avoid-after-birth',
      asks: 'Is a medicine in use that is not advised while breast-feeding?',
      check: 'medicine-active',
      medicines: agentsToAvoidAfterBirth,
      doses: { within: dosesWithin },
      citation: nice133('1.9.4-9', 'read'),
    },
  ];
}

/** Every question, filled with the values of an edition. */
export const standardQuestions = (edition: Edition): readonly Question[] => [
  ...pressureQuestions(edition),
  ...organQuestions(edition),
  ...recordQuestions(edition),
  ...careQuestions(edition),
  ...afterBirthQuestions,
  ...magnesiumQuestions(edition),
];

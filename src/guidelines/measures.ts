// Quality measures: what is counted, in words, with the limits they use. Data only; the counting reads it.
import {
  acog767,
  commonPractice,
  isshp2018,
  isshp2021,
  ours,
  postpartumReport,
  terminalDigits,
} from './citations.ts';
import type { Citation, Threshold } from './guideline.ts';
import { limit, severeRepeat } from './shared-values.ts';

export const measureIds = [
  'pressure-at-every-contact',
  'urine-protein-when-raised',
  'severe-pressure-repeated',
  'severe-pressure-treated',
  'raised-pressure-resolved',
  'referral-made',
  'pressure-checked-after-birth',
  'aspirin-offered',
  'terminal-digit-preference',
] as const;
export type MeasureId = (typeof measureIds)[number];

/** The three ways in which a result is broken down; each adds a stratum `unknown`. */
export const stratifierIds = ['guideline-class', 'trimester', 'site'] as const;
export type StratifierId = (typeof stratifierIds)[number];

/** FHIR measure populations used here. */
export type PopulationId =
  'initial-population' | 'denominator' | 'denominator-exclusion' | 'denominator-exception' | 'numerator';

/** Who or what is in a population: in words, and the name of the criterion that the evaluation implements. */
export interface Population {
  readonly id: PopulationId;
  /** `<measure>/<population>`: the name of the criterion in the Measure resource and in the evaluation. */
  readonly criterion: string;
  readonly words: string;
}

export interface MeasureDefinition {
  readonly id: MeasureId;
  readonly title: string;
  /** One sentence: what a good score means. */
  readonly sentence: string;
  readonly scoring: 'proportion' | 'ratio';
  readonly improvementNotation: 'increase' | 'decrease';
  /** What is counted: pregnancies (one woman, one pregnancy), or single readings. */
  readonly basis: 'pregnancy' | 'reading';
  readonly populations: readonly Population[];
  readonly stratifiers: readonly StratifierId[];
  /** Clinical numbers of the criteria, by id. */
  readonly limits: readonly Threshold[];
  readonly citation: Citation;
}

const perPregnancy = 'Pregnancies with at least one usable resource in the measurement period.';

const populationOrder: readonly PopulationId[] = [
  'initial-population',
  'denominator',
  'denominator-exclusion',
  'denominator-exception',
  'numerator',
];

type Words = Readonly<Partial<Record<PopulationId, string>>>;

function populations(measure: MeasureId, words: Words): readonly Population[] {
  const all: Words = { 'initial-population': perPregnancy, ...words };
  return populationOrder.flatMap((id) => {
    const said = all[id];
    return said === undefined ? [] : [{ id, criterion: `${measure}/${id}`, words: said }];
  });
}

type Common = 'scoring' | 'improvementNotation' | 'basis' | 'stratifiers' | 'populations' | 'limits';
type Varying = Omit<MeasureDefinition, Common> & {
  readonly words: Words;
  readonly limits?: readonly Threshold[];
};

const proportion = ({ words, limits = [], ...rest }: Varying): MeasureDefinition => ({
  ...rest,
  scoring: 'proportion',
  improvementNotation: 'increase',
  basis: 'pregnancy',
  stratifiers: stratifierIds,
  populations: populations(rest.id, words),
  limits,
});

const quick = acog767('first-line therapy', 'read');
export const severeTreatedWithin = limit('measure-severe-treated-within', '<=', 60, 'min', quick);

const resolve = ours('a raised pressure is confirmed or cleared while a confirming pair is still fresh');
export const raisedResolvedWithin = limit('measure-raised-resolved-within', '<=', 7, 'd', resolve);

const afterBirth = postpartumReport('schedule of ACOG', 'read');
export const firstCheckWithin = limit('measure-after-birth-first-check', '<=', 72, 'h', afterBirth);
export const secondCheckFrom = limit('measure-after-birth-second-check-from', '>=', 7, 'd', afterBirth);
export const secondCheckUntil = limit('measure-after-birth-second-check-until', '<=', 10, 'd', afterBirth);

/** The measures, in the order in which they are reported. */
export const measureDefinitions: readonly MeasureDefinition[] = [
  proportion({
    id: 'pressure-at-every-contact',
    title: 'Blood pressure recorded at every antenatal contact',
    sentence: 'Every antenatal contact has a usable blood pressure.',
    words: {
      denominator: 'Of these, those with at least one antenatal contact (Encounter) in the period.',
      numerator: 'Every such contact has a usable blood pressure of the same day.',
    },
    citation: commonPractice('pressure is measured at every antenatal contact'),
  }),
  proportion({
    id: 'urine-protein-when-raised',
    title: 'Urine protein tested when the pressure is raised',
    sentence: 'A woman whose pressure is raised has her urine tested for protein on the same day.',
    words: {
      denominator: 'Of these, those with a raised pressure in pregnancy or within six weeks after birth.',
      numerator: 'A urine protein result (strip, ratio or 24 hours) on the day of the first raised pressure.',
    },
    citation: isshp2018('proteinuria is assessed when the pressure is raised', 'from-memory'),
  }),
  proportion({
    id: 'severe-pressure-repeated',
    title: 'Severe pressure repeated within 15 minutes',
    sentence: 'A severe pressure is measured again within the stated minutes.',
    words: {
      denominator: 'Of these, those with a severe pressure.',
      'denominator-exclusion': 'The severe pressure has a date and no time of day.',
      numerator: 'Another pressure after the first severe one, within the limit.',
    },
    limits: [severeRepeat],
    citation: severeRepeat.citation,
  }),
  proportion({
    id: 'severe-pressure-treated',
    title: 'Severe pressure treated within 60 minutes',
    sentence: 'A confirmed severe pressure is treated with a drug for pressure within the stated minutes.',
    words: {
      denominator: 'Of these, those with a confirmed severe pressure.',
      'denominator-exclusion': 'The severe pressure has a date and no time of day.',
      numerator:
        'A drug for pressure given within the limit after the reading that confirmed it, or before it.',
    },
    limits: [severeTreatedWithin],
    citation: quick,
  }),
  proportion({
    id: 'raised-pressure-resolved',
    title: 'Raised pressure confirmed or cleared within 7 days',
    sentence: 'A first raised pressure is followed by a second occasion that confirms or clears it in time.',
    words: {
      denominator: 'Of these, those with a raised pressure.',
      'denominator-exception': 'The time to do so is not over at the end of the period.',
      numerator: 'A later occasion within the limit, raised or not.',
    },
    limits: [raisedResolvedWithin],
    citation: resolve,
  }),
  proportion({
    id: 'referral-made',
    title: 'Referral made when indicated',
    sentence: 'A woman whom the guideline refers has a referral or an admission on record.',
    words: {
      denominator: 'Of these, those whom the guideline refers at a visit in the period.',
      numerator:
        'A ServiceRequest of referral or admission, not cancelled, or a stay in hospital, on record.',
    },
    citation: isshp2021('place of care', 'from-memory'),
  }),
  proportion({
    id: 'pressure-checked-after-birth',
    title: 'Pressure checked within 72 hours and again 7 to 10 days after birth',
    sentence: 'After a pregnancy with hypertension the pressure is checked twice in the first days.',
    words: {
      denominator:
        'Of these, those with a hypertensive disorder, before the birth or after it, and a birth in the period.',
      'denominator-exception': 'The second check is not yet due at the end of the period.',
      numerator: 'A pressure within the first limit after birth and another inside the second window.',
    },
    limits: [firstCheckWithin, secondCheckFrom, secondCheckUntil],
    citation: afterBirth,
  }),
  proportion({
    id: 'aspirin-offered',
    title: 'Aspirin offered when indicated',
    sentence: 'A woman at risk is offered aspirin to prevent pre-eclampsia.',
    words: {
      denominator: 'Of these, those for whom the guideline indicates aspirin at a visit in the period.',
      'denominator-exclusion': 'Aspirin is contraindicated on record.',
      numerator: 'Aspirin ordered, in use or given on record.',
    },
    citation: isshp2021('low-dose aspirin for women at risk', 'read'),
  }),
  {
    id: 'terminal-digit-preference',
    title: 'Terminal digit preference',
    sentence: 'Pressures ending in zero are no commoner than chance: rounding hides raised pressures.',
    scoring: 'ratio',
    improvementNotation: 'decrease',
    basis: 'reading',
    stratifiers: stratifierIds,
    populations: populations('terminal-digit-preference', {
      'initial-population': 'Single usable clinic pressures in mm[Hg] in the period; averages are left out.',
      denominator: 'Systolic and diastolic values of these readings.',
      numerator: 'Those values that end in zero.',
    }),
    limits: [],
    citation: terminalDigits('expected share of terminal zeros', 'read'),
  },
];

/** The measure of an id; undefined when there is none. */
export const measureOf = (id: string): MeasureDefinition | undefined =>
  measureDefinitions.find((measure) => measure.id === id);

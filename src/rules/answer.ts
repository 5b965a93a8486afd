// What a check hands back, and how evidence is written. No decision here.
import type { Evidence, Outcome } from '../findings/finding.ts';
import type { Omission, PressureLimits, Threshold } from '../guidelines/guideline.ts';
import type {
  LaboratoryResult,
  Moment,
  PressureReading,
  Source,
  UrineProtein,
} from '../timeline/timeline.ts';
import type { Occasion } from './view.ts';
import type { Pressure } from './visit-value.ts';

export interface Answer {
  readonly outcome: Outcome;
  /** One sentence, with the values. */
  readonly because: string;
  readonly evidence?: readonly Evidence[];
  readonly thresholds?: readonly Threshold[];
  /** Replaces the omission of the question where the check knows more exactly what is missing. */
  readonly missing?: Partial<Omission> & { readonly at?: string };
}

export const limitsOf = (limits: PressureLimits): readonly Threshold[] => [limits.systolic, limits.diastolic];

/** "152/98", "168/-", ">155/85": halves rounded for reading only. */
export function pressureText({ systolicMmHg, diastolicMmHg, lowerBounds }: Pressure): string {
  const systolic = `${lowerBounds?.systolic ?? ''}${halfText(systolicMmHg)}`;
  return `${systolic}/${lowerBounds?.diastolic ?? ''}${halfText(diastolicMmHg)}`;
}

/** Why a pressure that does not reach a limit cannot be said to lie below it either. */
export function whatIsOpen({ lowerBounds, isDiastolicUnheard }: Pressure): string {
  if (lowerBounds !== undefined) return 'it was sent as "at least", and may be higher';
  return isDiastolicUnheard === true
    ? 'the systolic was felt, so no diastolic was heard'
    : 'one half is missing';
}

const halfText = (value: number | undefined): string => (value === undefined ? '-' : numberText(value));

/** A number for people: at most two decimals, no trailing zeros. */
export const numberText = (value: number): string => String(Math.round(value * 100) / 100);

const remarkOf = (sources: readonly Source[], remarks: readonly string[]): { remark: string } | object => {
  const all = [...(sources.some((source) => source.preliminary) ? ['preliminary'] : []), ...remarks];
  return all.length === 0 ? {} : { remark: all.join('; ') };
};

/** One piece of evidence for each resource a reading came from. */
export function ofReading(reading: PressureReading): readonly Evidence[] {
  return reading.sources.map((source) => ({
    reference: source.reference,
    what: 'blood pressure',
    at: reading.at.text,
    asSent: reading.asSent,
    asCompared: `${pressureText(reading)} mm[Hg]`,
    ...remarkOf([source], reading.remarks),
  }));
}

/** Readings of a contact; each compared as part of the visit value. */
export function ofOccasion(occasion: Occasion): readonly Evidence[] {
  const average =
    occasion.readings.length > 1 ? `visit value ${pressureText(occasion.value)} mm[Hg]` : undefined;
  return occasion.readings.flatMap((reading) =>
    ofReading(reading).map((evidence) =>
      average === undefined ? evidence : { ...evidence, asCompared: average },
    ),
  );
}

export function ofResult(result: LaboratoryResult, compared?: string): Evidence {
  return {
    reference: result.source.reference,
    what: result.analyte,
    at: result.at.text,
    asSent: result.asSent,
    ...(compared === undefined ? {} : { asCompared: compared }),
    ...remarkOf([result.source], result.haemolysed ? ['haemolysed sample'] : []),
  };
}

export const urineNames: Readonly<Record<UrineProtein['kind'], string>> = {
  strip: 'urine protein, strip',
  'protein-creatinine-ratio': 'urine protein/creatinine ratio',
  'albumin-creatinine-ratio': 'urine albumin/creatinine ratio',
  'excretion-24h': 'urine protein in 24 hours',
  concentration: 'urine protein concentration',
};

export function ofUrine(result: UrineProtein, compared?: string): Evidence {
  return {
    reference: result.source.reference,
    what: urineNames[result.kind],
    at: result.at.text,
    asSent: result.asSent,
    ...(compared === undefined ? {} : { asCompared: compared }),
    ...remarkOf([result.source], result.remarks),
  };
}

export function ofFact(
  what: string,
  fact: { readonly asSent: string; readonly source: Source },
  at?: Moment,
): Evidence {
  return {
    reference: fact.source.reference,
    what,
    ...(at === undefined ? {} : { at: at.text }),
    asSent: fact.asSent,
    ...remarkOf([fact.source], []),
  };
}

export const met = (because: string, rest: Omit<Answer, 'outcome' | 'because'> = {}): Answer => ({
  outcome: 'met',
  because,
  ...rest,
});
export const notMet = (because: string, rest: Omit<Answer, 'outcome' | 'because'> = {}): Answer => ({
  outcome: 'not-met',
  because,
  ...rest,
});
export const cannotTell = (because: string, rest: Omit<Answer, 'outcome' | 'because'> = {}): Answer => ({
  outcome: 'cannot-tell',
  because,
  ...rest,
});
export const notApplicable = (because: string, rest: Omit<Answer, 'outcome' | 'because'> = {}): Answer => ({
  outcome: 'not-applicable',
  because,
  ...rest,
});

// The values a risk equation asks for, found in the view, with where each came from.
import type { Evidence } from '../findings/finding.ts';
import type { Analyte, SymptomId, Threshold } from '../guidelines/guideline.ts';
import type { RiskInput } from '../guidelines/risk-model.ts';
import { ofFact, ofReading, ofResult, ofUrine } from './answer.ts';
import { newestResult } from './checks/laboratory-values.ts';
import { datingEvidence } from './checks/period-now.ts';
import { idWords } from '../id-words.ts';
import { symptomPresent } from './checks/symptoms.ts';
import { milliseconds } from './compare.ts';
import type { View } from './view.ts';

/** A value, or what is missing in words. A bound ("<10") is not a value. */
export type FoundInput =
  { readonly value: number; readonly evidence: readonly Evidence[] } | { readonly missing: string };

const daysInWeek = 7;

/**
 * One input of an equation.
 *
 * Given    input        which
 *          freshWithin  older values do not count
 * Returns  the value in the unit the input is defined in, with its evidence; or what is missing
 * Throws   never
 * Notes    1. Gestational age is in weeks with fractions; systolic pressure is the highest of the newest contact.
 *          2. A symptom never asked about is missing, not absent.
 */
export function findInput(view: View, input: RiskInput, freshWithin: Threshold): FoundInput {
  switch (input) {
    case 'gestational-age':
      return gestationalAge(view);
    case 'systolic':
      return systolic(view, freshWithin);
    case 'creatinine':
      return laboratory(view, 'creatinine', 'umol/L', freshWithin);
    case 'platelets':
      return laboratory(view, 'platelets', '10*9/L', freshWithin);
    case 'ast':
      return laboratory(view, 'ast', 'U/L', freshWithin);
    case 'oxygen-saturation':
      return laboratory(view, 'oxygen-saturation', '%', freshWithin);
    case 'multiparous':
      return multiparous(view);
    case 'strip-2':
      return strip(view, 2, freshWithin);
    case 'strip-3':
      return strip(view, 3, freshWithin);
    case 'strip-4':
      return strip(view, 4, freshWithin);
    case 'bleeding-with-abdominal-pain':
      return both(
        symptom(view, 'vaginal-bleeding', freshWithin),
        symptom(view, 'abdominal-pain', freshWithin),
      );
    case 'headache-or-visual-disturbance':
      return either(symptom(view, 'headache', freshWithin), symptom(view, 'visual-disturbance', freshWithin));
    case 'chest-pain-or-dyspnoea':
      return either(symptom(view, 'chest-pain', freshWithin), symptom(view, 'dyspnoea', freshWithin));
  }
}

function gestationalAge(view: View): FoundInput {
  const days = view.now.gestationalAgeDays;
  if (days === undefined) return { missing: 'gestational age' };
  return { value: days / daysInWeek, evidence: datingEvidence(view) };
}

const isFresh = (view: View, latest: number, freshWithin: Threshold): boolean =>
  latest >= view.timeline.asOf - milliseconds(freshWithin);

function systolic(view: View, freshWithin: Threshold): FoundInput {
  const newest = view.occasions.at(-1);
  const readings = (newest?.readings ?? []).filter(
    ({ systolicMmHg, at }) => systolicMmHg !== undefined && isFresh(view, at.latest, freshWithin),
  );
  const value = Math.max(...readings.flatMap(({ systolicMmHg }) => systolicMmHg ?? []));
  if (!Number.isFinite(value)) return { missing: 'recent systolic pressure' };
  const highest = readings.find(({ systolicMmHg }) => systolicMmHg === value);
  return { value, evidence: highest === undefined ? [] : ofReading(highest) };
}

function laboratory(view: View, analyte: Analyte, unit: string, freshWithin: Threshold): FoundInput {
  const result = newestResult(view, analyte);
  const value = result?.byUnit.values[unit];
  const isUsable =
    result !== undefined &&
    value !== undefined &&
    result.measured.comparator === undefined &&
    isFresh(view, result.at.latest, freshWithin);
  if (!isUsable) return { missing: `recent ${idWords(analyte)}` };
  return { value, evidence: [ofResult(result, `${String(value)} ${unit}`)] };
}

function multiparous(view: View): FoundInput {
  const { parity, gravidity, previousBirths } = view.timeline.woman;
  if (parity !== undefined) {
    const asSent = String(parity.count);
    return {
      value: parity.count > 0 ? 1 : 0,
      evidence: [ofFact('parity', { asSent, source: parity.source })],
    };
  }
  const birth = previousBirths.at(-1);
  if (birth !== undefined)
    return {
      value: 1,
      evidence: [ofFact('previous birth', { asSent: birth.at.text, source: birth.source }, birth.at)],
    };
  if (gravidity?.count === 1)
    return { value: 0, evidence: [ofFact('gravidity', { asSent: '1', source: gravidity.source })] };
  return { missing: 'parity' };
}

function strip(view: View, grade: number, freshWithin: Threshold): FoundInput {
  const newest = view.timeline.urineProteins
    .filter((result) => result.kind === 'strip')
    .filter(({ at }) => isFresh(view, at.latest, freshWithin) && view.place(at).outside !== 'earlier')
    .at(-1);
  if (newest === undefined || newest.grade === 'positive-ungraded')
    return { missing: 'recent urine strip with its grade' };
  return { value: newest.grade === grade ? 1 : 0, evidence: [ofUrine(newest)] };
}

function symptom(view: View, id: SymptomId, freshWithin: Threshold): FoundInput {
  const { outcome, evidence = [] } = symptomPresent(view, {
    check: 'symptom-present',
    symptoms: [id],
    freshWithin,
  });
  if (outcome === 'cannot-tell') return { missing: idWords(id) };
  return { value: outcome === 'met' ? 1 : 0, evidence };
}

const isPresent = (found: FoundInput): boolean => 'value' in found && found.value === 1;
const isAbsent = (found: FoundInput): boolean => 'value' in found && found.value === 0;

/** One present decides; else one missing keeps it open. */
function either(a: FoundInput, b: FoundInput): FoundInput {
  if (isPresent(a)) return a;
  if (isPresent(b)) return b;
  return joined(a, b, 0);
}

/** One absent decides; else one missing keeps it open. */
function both(a: FoundInput, b: FoundInput): FoundInput {
  if (isAbsent(a)) return a;
  if (isAbsent(b)) return b;
  return joined(a, b, 1);
}

function joined(a: FoundInput, b: FoundInput, value: number): FoundInput {
  const missing = [a, b].flatMap((found) => ('missing' in found ? [found.missing] : []));
  if (missing.length > 0) return { missing: missing.join(', ') };
  return { value, evidence: [a, b].flatMap((found) => ('evidence' in found ? found.evidence : [])) };
}

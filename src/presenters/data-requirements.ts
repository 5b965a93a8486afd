// What we need from a chart, once: the prefetch templates and the FHIR data requirements are both made from it.
import type { DataRequirement } from 'fhir/r4.js';
import type { Missing } from '../findings/finding.ts';
import { loinc, type LoincConcept } from '../terminology/loinc.ts';
import { symptomCodes } from '../terminology/symptom-codes.ts';
import { systems } from '../terminology/systems.ts';
import { codeSystems } from './vocabulary.ts';

/** One search a client runs for us before it calls. */
export interface ChartQuery {
  /** Prefetch key. */
  readonly key: string;
  readonly what: string;
  /** `required`: without it nothing can be judged. */
  readonly need: 'required' | 'optional';
  /** CDS Hooks 2.0.1 prefetch template. */
  readonly template: string;
}

const conceptsOf = (start: string): readonly LoincConcept[] =>
  concepts.filter((concept) => concept.startsWith(start));
const isConcept = (key: string): key is LoincConcept => key in loinc;
const concepts: readonly LoincConcept[] = Object.keys(loinc).filter(isConcept);

const dating: readonly LoincConcept[] = [
  ...conceptsOf('gestational-age'),
  'last-menstrual-period-date',
  ...conceptsOf('estimated-delivery-date'),
  'pregnancy-status',
  'pregnancy-status-reported',
  'number-of-fetuses',
  'number-of-fetuses-ultrasound',
  'gravidity',
  'parity',
  'delivery-date-time',
  'fundal-height',
  'body-mass-index',
];

const laboratory: readonly LoincConcept[] = [
  'platelets',
  'creatinine-mass',
  'creatinine-moles',
  'alt',
  'ast',
  'ldh',
  'bilirubin-total-mass',
  'bilirubin-total-moles',
  'haemoglobin',
  'haemoglobin-moles',
  'urate-mass',
  'urate-moles',
  'fibrinogen',
  'sflt1-plgf-ratio',
  'plgf',
  'oxygen-saturation',
  'oxygen-saturation-pulse-oximetry',
  'heart-rate',
  'respiratory-rate',
  'urine-output',
  'potassium',
  'magnesium',
];

const pressures = conceptsOf('blood-pressure').filter((concept) => !/method|cuff|site|device/.test(concept));
const urine = conceptsOf('urine').filter((concept) => concept !== 'urine-output');

const snomedSymptoms = symptomCodes
  .filter((row) => row.system === systems.snomed)
  .map((row) => `${row.system}|${row.code}`);

/**
 * The searches, in the order in which their results are read.
 *
 * Notes    1. Only the portable grammar of 2.0.1 is used (checklist 5.2); commas between codes are plain FHIR search.
 *          2. Conditions are asked for whatever their status: a resolved pre-eclampsia is a risk factor.
 */
export const chartQueries: readonly ChartQuery[] = [
  query('patient', 'the woman', 'optional', 'Patient/{{context.patientId}}'),
  query('bloodPressures', 'blood pressures', 'required', observations(pressures, 100)),
  query('results', 'urine and laboratory results', 'optional', observations([...urine, ...laboratory], 200)),
  query('pregnancy', 'dating of the pregnancy and birth', 'optional', observations(dating, 50)),
  query(
    'symptoms',
    'symptoms and danger signs',
    'optional',
    byCodes([...loincCodes(['symptom']), ...snomedSymptoms], 100),
  ),
  query(
    'conditions',
    'problems and diagnoses',
    'optional',
    'Condition?patient={{context.patientId}}&_count=200',
  ),
  query('medications', 'medicines', 'optional', 'MedicationRequest?patient={{context.patientId}}&_count=100'),
  query('referrals', 'open referrals', 'optional', 'ServiceRequest?patient={{context.patientId}}&_count=100'),
];

function query(key: string, what: string, need: ChartQuery['need'], template: string): ChartQuery {
  return { key, what, need, template };
}

function observations(wanted: readonly LoincConcept[], count: number): string {
  return byCodes(loincCodes(wanted), count);
}

function loincCodes(wanted: readonly LoincConcept[]): readonly string[] {
  return wanted.flatMap((concept) => loinc[concept].map((row) => `${systems.loinc}|${row.code}`));
}

function byCodes(codes: readonly string[], count: number): string {
  return `Observation?patient={{context.patientId}}&code=${codes.join(',')}&_sort=-date&_count=${count}`;
}

const lookedFor: readonly { readonly words: RegExp; readonly concepts: readonly LoincConcept[] }[] = [
  {
    words: /pressure|repeat/,
    concepts: ['blood-pressure-panel', 'blood-pressure-systolic', 'blood-pressure-diastolic'],
  },
  {
    words: /protein|urine|strip/,
    concepts: ['urine-protein-presence-test-strip', 'urine-protein-creatinine-mass-ratio'],
  },
  {
    words: /gestation|dating|dated|due-date|birth/,
    concepts: ['gestational-age', 'estimated-delivery-date', 'last-menstrual-period-date'],
  },
  {
    words: /platelet|blood|laborator|organ|hellp/,
    concepts: ['platelets', 'creatinine-mass', 'alt', 'ast', 'ldh'],
  },
  { words: /symptom|headache|seizure/, concepts: ['symptom'] },
  { words: /oxygen|saturation/, concepts: ['oxygen-saturation-pulse-oximetry'] },
];

/**
 * What is missing as a FHIR DataRequirement.
 *
 * Given    missing   one thing to measure or ask
 * Returns  an Observation requirement: our id of it first, then the LOINC codes under which it is usually sent.
 */
export function toDataRequirement(missing: Missing): DataRequirement {
  const found = lookedFor.find((each) => each.words.test(missing.id));
  const codes = (found?.concepts ?? []).flatMap((concept) =>
    loinc[concept].map((row) => ({ system: systems.loinc, code: row.code, display: row.display })),
  );
  const own = { system: codeSystems.missing, code: missing.id, display: missing.what };
  return { type: 'Observation', codeFilter: [{ path: 'code', code: [own, ...codes] }] };
}

// What we need from a chart, once: the prefetch templates and the FHIR data requirements are both made from it.
import type { DataRequirement } from 'fhir/r4.js';
import type { Missing } from '../findings/finding.ts';
import { loinc, type LoincConcept } from '../terminology/loinc.ts';
import { observedFindingCodes } from '../terminology/observed-findings.ts';
import { symptomCodes } from '../terminology/symptom-codes.ts';
import { systems } from '../terminology/systems.ts';
import { codeSystems } from './vocabulary.ts';

/** How prefetch templates are written: what every client can expand, or with the date arithmetic of the newer text. */
export const dialects = ['2.0', '3.0'] as const;
export type Dialect = (typeof dialects)[number];

/** One search a client runs for us before it calls. */
export interface ChartQuery {
  /** Prefetch key. */
  readonly key: string;
  readonly what: string;
  /** `required`: without it nothing can be judged. */
  readonly need: 'required' | 'optional';
  /** Portable template (CDS Hooks 2.0.1). */
  readonly template: string;
  /** The same in the newer dialect (3.0 ballot), bounded by date; absent: the same in both. */
  readonly newerTemplate?: string;
  /** About the one who asks, not about the woman: never judged. */
  readonly isAboutUser?: true;
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

const snomedSymptoms = [...symptomCodes, ...observedFindingCodes]
  .filter((row) => row.system === systems.snomed)
  .map((row) => `${row.system}|${row.code}`);

type Wanted = Omit<ChartQuery, 'key' | 'need'>;

/** Days the newer dialect looks back: a pregnancy and the weeks after it (ours). */
const lookBackDays = 400;

/**
 * Everything asked of a chart, by prefetch key.
 *
 * Notes    1. Only the portable grammar of 2.0.1 is used (checklist 5.2); commas between codes are plain FHIR search.
 *          2. Conditions are asked for whatever their status: a resolved pre-eclampsia is a risk factor.
 *          3. In the newer dialect observations are bounded by date; a condition or a medicine is asked for
 *             however old it is.
 */
const wanted = {
  patient: { what: 'the woman', template: 'Patient/{{context.patientId}}' },
  bloodPressures: observations('blood pressures', pressures, 100),
  results: observations('urine and laboratory results', [...urine, ...laboratory], 200),
  pregnancy: observations('dating of the pregnancy and birth', dating, 50),
  symptoms: byCodes('symptoms and danger signs', [...loincCodes(['symptom']), ...snomedSymptoms], 100),
  conditions: ofPatient('problems and diagnoses', 'Condition', 200),
  medications: ofPatient('medicines', 'MedicationRequest', 100),
  medicationStatements: ofPatient('medicines taken', 'MedicationStatement', 100),
  referrals: ofPatient('open referrals', 'ServiceRequest', 100),
  user: { what: 'the user', template: '{{context.userId}}', isAboutUser: true },
} as const satisfies Readonly<Record<string, Wanted>>;

export type QueryKey = keyof typeof wanted;

/**
 * The searches of one service, in the order in which their results are read.
 *
 * Given    keys       few: the client runs each search
 *          required   those without which nothing can be judged
 */
export function queriesOf(keys: readonly QueryKey[], required: readonly QueryKey[]): readonly ChartQuery[] {
  return keys.map((key) => ({ key, need: required.includes(key) ? 'required' : 'optional', ...wanted[key] }));
}

/**
 * The searches of the main service.
 *
 * Notes    1. Nine keys, one more than checklist P-08 advises: a medicine to avoid may stand in either form, and
 *             missing it is worse than one more search.
 */
export const chartQueries: readonly ChartQuery[] = queriesOf(
  [
    'patient',
    'bloodPressures',
    'results',
    'pregnancy',
    'symptoms',
    'conditions',
    'medications',
    'medicationStatements',
    'referrals',
  ],
  ['bloodPressures'],
);

/** The template of a search in one dialect. */
export function templateOf({ template, newerTemplate }: ChartQuery, dialect: Dialect): string {
  return dialect === '3.0' ? (newerTemplate ?? template) : template;
}

function observations(what: string, concepts: readonly LoincConcept[], count: number): Wanted {
  return byCodes(what, loincCodes(concepts), count);
}

function loincCodes(concepts: readonly LoincConcept[]): readonly string[] {
  return concepts.flatMap((concept) => loinc[concept].map((row) => `${systems.loinc}|${row.code}`));
}

function byCodes(what: string, codes: readonly string[], count: number): Wanted {
  const search = `Observation?patient={{context.patientId}}&code=${codes.join(',')}`;
  return {
    what,
    template: `${search}&_sort=-date&_count=${count}`,
    newerTemplate: `${search}&date=ge{{today() - ${lookBackDays} days}}&_sort=-date&_count=${count}`,
  };
}

function ofPatient(what: string, type: string, count: number): Wanted {
  return { what, template: `${type}?patient={{context.patientId}}&_count=${count}` };
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

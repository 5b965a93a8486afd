// An Evaluation written by hand, so that presenters are tested without the engine. Invented woman, invented values.
import type { Citation, Guideline, Threshold } from '../../src/guidelines/guideline.ts';
import type { Assessment, Finding } from '../../src/findings/finding.ts';
import type { Account, Evaluation } from '../../src/evaluation.ts';
import { reading, timelineOf } from './timeline-builder.ts';

export const readCitation: Citation = { publication: 'Book', section: '1.1', year: 2020, known: 'read' };
export const memoryCitation: Citation = { ...readCitation, section: '2.2', known: 'from-memory' };
export const ownCitation: Citation = {
  ...readCitation,
  publication: 'ours',
  section: 'reason',
  known: 'ours',
};

export const severeSystolic: Threshold = {
  id: 'severe-systolic',
  comparator: '>=',
  value: 160,
  unit: 'mm[Hg]',
  citation: memoryCitation,
};

export const guideline: Guideline = {
  id: 'book-2020',
  title: 'Book of Examples',
  publisher: 'Invented Society',
  edition: '2nd edition',
  year: 2020,
  url: 'https://example.org/book',
  version: '1.2.3',
  status: 'active',
  remark: 'Invented for tests.',
  questions: [],
  classRules: [
    {
      id: 'rule-imminent-eclampsia',
      classification: 'imminent-eclampsia',
      sentence: 'Raised pressure with a severe danger symptom.',
      appliesTo: 'from 20+0 weeks',
      when: 'severe-now',
      supersedes: [],
      citation: readCitation,
    },
  ],
  urgencyRules: [],
  referralRules: [],
  actionRules: [],
  chartLimits: {
    hypertension: { systolic: severeSystolic, diastolic: severeSystolic },
    severe: { systolic: severeSystolic, diastolic: severeSystolic },
  },
  visit: { occasionLength: severeSystolic, thirdReadingWhenDifferenceOver: severeSystolic },
};

const pressureEvidence = {
  reference: 'Observation/bp-1',
  what: 'blood pressure',
  at: '2026-11-24T09:10:00+05:30',
  asSent: '168/112 mm[Hg]',
  asCompared: '168/112 mm[Hg]',
};

const findings: readonly Finding[] = [
  {
    question: 'severe-now',
    asks: 'Is the pressure severe now?',
    outcome: 'met',
    because: 'Severe: 168/112 mm[Hg] at 09:10.',
    evidence: [pressureEvidence],
    thresholds: [severeSystolic],
    source: memoryCitation,
  },
  {
    question: 'class:imminent-eclampsia',
    asks: 'Imminent eclampsia?',
    outcome: 'met',
    because: 'Raised pressure with severe headache.',
    evidence: [pressureEvidence, { reference: 'Observation/headache', what: 'headache', asSent: 'present' }],
    thresholds: [],
    source: readCitation,
    restsOn: ['severe-now'],
  },
  {
    question: 'platelets-low',
    asks: 'Are the platelets low?',
    outcome: 'cannot-tell',
    because: 'No platelet count was received.',
    evidence: [],
    thresholds: [],
    source: ownCitation,
    missing: { id: 'platelets', what: 'platelet count', how: 'Send blood now.', by: 'same-day' },
  },
];

export const assessment: Assessment = {
  classification: ['imminent-eclampsia'],
  urgency: 'emergency',
  urgencyBecause: [
    {
      rule: 'urgency-severe',
      urgency: 'emergency',
      sentence: 'Severe pressure with a danger symptom.',
      source: readCitation,
    },
  ],
  findings,
  missing: [
    {
      id: 'platelets',
      what: 'platelet count',
      how: 'Send blood now.',
      by: 'same-day',
      couldChange: ['hellp'],
    },
    { id: 'fetal-heart', what: 'fetal heart', how: 'Listen.', by: 'routine', couldChange: [] },
  ],
  actions: [
    { id: 'call-for-help', kind: 'refer', sentence: 'Call for help.', order: 1, source: readCitation },
    {
      id: 'magnesium',
      kind: 'before-transfer',
      sentence: 'Give the loading dose.',
      order: 2,
      source: readCitation,
    },
    { id: 'line', kind: 'before-transfer', sentence: 'Put up a line.', order: 3, source: readCitation },
    {
      id: 'tell',
      kind: 'tell-the-woman',
      sentence: 'You need the hospital now.',
      order: 4,
      source: ownCitation,
    },
  ],
  referral: {
    level: 'hospital-with-intensive-care',
    urgency: 'emergency',
    sentence: 'Refer now to a hospital able to operate.',
    source: readCitation,
  },
  medicines: [],
  treatment: [],
  prevention: [],
  quality: [],
};

export const account: Account = {
  received: 4,
  used: 2,
  notNeeded: 1,
  setAside: 1,
  entries: [
    entry(0, 'Observation/bp-1', { outcome: 'used', by: ['severe-now'] }),
    entry(1, 'Observation/headache', { outcome: 'used', by: ['class:imminent-eclampsia'] }),
    entry(2, 'Patient/asha', { outcome: 'not-needed', why: 'names the woman' }),
    entry(3, 'Observation/wrong-unit', {
      outcome: 'set-aside',
      code: 'unit-unknown',
      expression: 'Bundle.entry[3].resource.valueQuantity',
      message: 'The unit is not known: send UCUM.',
      about: 'blood-pressure',
    }),
  ],
  issues: [],
};

type Fate = Account['entries'][number] extends infer E
  ? E extends unknown
    ? Omit<E, 'path' | 'reference' | 'resourceType'>
    : never
  : never;

function entry(index: number, reference: string, fate: Fate): Account['entries'][number] {
  const [resourceType = ''] = reference.split('/');
  return { path: `Bundle.entry[${index}].resource`, reference, resourceType, ...fate };
}

export const cleanAccount: Account = {
  received: 3,
  used: 2,
  notNeeded: 1,
  setAside: 0,
  entries: account.entries.slice(0, 3),
  issues: [],
};

/** An emergency with everything a presenter can show; parts may be replaced. */
export function evaluationOf(overrides: Partial<Evaluation> = {}): Evaluation {
  return {
    asOf: '2026-11-24T04:00:00Z',
    guideline,
    stamp: {
      id: guideline.id,
      title: guideline.title,
      version: guideline.version,
      fingerprint: 'f1'.repeat(32),
    },
    subject: 'Patient/asha',
    gestationalAge: {
      days: 240,
      text: '34+2',
      period: 'from-20-weeks',
      method: 'ultrasound',
      evidence: [],
      remarks: [],
    },
    timeline: timelineOf(),
    assessment,
    account,
    ...overrides,
  };
}

/** Nothing raised, nothing urgent missing, nothing lost. */
export function normalEvaluation(overrides: Partial<Evaluation> = {}): Evaluation {
  const { referral: _none, ...rest } = assessment;
  return evaluationOf({
    timeline: timelineOf({ pressures: [reading('bp-1', '09:10', 112, 70)] }),
    assessment: {
      ...rest,
      classification: ['normotensive'],
      urgency: 'routine',
      urgencyBecause: [],
      findings: [],
      missing: [],
      actions: [],
    },
    account: cleanAccount,
    ...overrides,
  });
}

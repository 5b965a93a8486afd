// How severe, and whether it is over: codes and words. Data only.
import type { SystemCode } from './code-row.ts';
import { systems } from './systems.ts';

export interface SeverityCode extends SystemCode {
  readonly severity: 'mild' | 'moderate' | 'severe';
}

/** Source: terminology.csv section 5; LOINC answers from memory. */
export const severityCodes: readonly SeverityCode[] = [
  {
    system: systems.snomed,
    code: '24484000',
    display: 'Severe (severity modifier) (qualifier value)',
    known: 'read',
    severity: 'severe',
  },
  {
    system: systems.snomed,
    code: '6736007',
    display: 'Moderate (severity modifier) (qualifier value)',
    known: 'read',
    severity: 'moderate',
  },
  {
    system: systems.snomed,
    code: '255604002',
    display: 'Mild (qualifier value)',
    known: 'read',
    severity: 'mild',
  },
  { system: systems.loinc, code: 'LA6750-9', display: 'Severe', known: 'from-memory', severity: 'severe' },
  { system: systems.loinc, code: 'LA6751-7', display: 'Moderate', known: 'read', severity: 'moderate' },
  { system: systems.loinc, code: 'LA6752-5', display: 'Mild', known: 'from-memory', severity: 'mild' },
];

/** Words for the same; `denied` is the word, denied. Ours. */
export const severityWords = [
  { severity: 'severe', word: /\bsevere(?:ly)?\b/i, denied: /\b(?:not|no|non)[\s-]+severe/i },
  { severity: 'moderate', word: /\bmoderate(?:ly)?\b/i, denied: /\bnot moderate/i },
  { severity: 'mild', word: /\bmild(?:ly)?\b/i, denied: /\bnot mild/i },
] as const;

export const relief = {
  word: /\b(?:relieved|resolved|settled|subsided|gone|disappeared|no longer)\b/i,
  denied:
    /\b(?:not|never|un|hardly|partly|partially)[\s-]*(?:yet |been |fully |completely )?(?:relieved|resolved|settled|subsided|gone|disappeared)\b/i,
} as const;

/** Codes under which a symptom or finding is the value, not the code. */
export const symptomHolderCodes: readonly SystemCode[] = [
  { system: systems.loinc, code: '75325-1', display: 'Symptom', known: 'from-memory' },
  {
    system: systems.loinc,
    code: '10154-3',
    display: 'Chief complaint Narrative - Reported',
    known: 'from-memory',
  },
  { system: systems.snomed, code: '418799008', known: 'from-memory' },
  { system: systems.snomed, code: '404684003', known: 'from-memory' },
  { system: systems.actCode, code: 'ASSERTION', known: 'from-memory' },
];

/**
 * Names of symptoms, lower case, used only when no code of a concept was recognised. From memory.
 * The whole text must be the name, with or without a word of severity before it.
 */
export const symptomNames = [
  { names: ['headache', 'headaches'], symptoms: ['headache'] },
  {
    names: [
      'blurred vision',
      'visual disturbance',
      'visual disturbances',
      'blurring of vision',
      'seeing spots',
      'flashing lights',
      'scotoma',
      'photopsia',
    ],
    symptoms: ['visual-disturbance'],
  },
  {
    names: ['epigastric pain', 'right upper quadrant pain', 'ruq pain', 'upper abdominal pain'],
    symptoms: ['epigastric-pain'],
  },
  {
    names: [
      'shortness of breath',
      'breathlessness',
      'dyspnoea',
      'dyspnea',
      'difficulty breathing',
      'difficulty in breathing',
    ],
    symptoms: ['dyspnoea'],
  },
  { names: ['vomiting'], symptoms: ['vomiting'] },
  { names: ['nausea'], symptoms: ['nausea'] },
  { names: ['nausea and vomiting'], symptoms: ['nausea', 'vomiting'] },
  { names: ['chest pain'], symptoms: ['chest-pain'] },
  { names: ['clonus'], symptoms: ['clonus'] },
  { names: ['hyperreflexia', 'brisk reflexes'], symptoms: ['hyperreflexia'] },
  {
    names: ['confusion', 'altered mental status', 'altered consciousness', 'drowsy'],
    symptoms: ['altered-mental-status'],
  },
  { names: ['coma', 'unconscious'], symptoms: ['altered-mental-status', 'coma'] },
  {
    names: ['seizure', 'seizures', 'convulsion', 'convulsions', 'fit', 'fits', 'eclamptic fit'],
    symptoms: ['seizure'],
  },
  { names: ['oliguria', 'anuria'], symptoms: ['oliguria'] },
  { names: ['vaginal bleeding', 'bleeding per vaginam', 'pv bleeding'], symptoms: ['vaginal-bleeding'] },
  { names: ['abdominal pain'], symptoms: ['abdominal-pain'] },
  {
    names: [
      'reduced fetal movement',
      'reduced fetal movements',
      'decreased fetal movement',
      'decreased fetal movements',
      'absent fetal movements',
    ],
    symptoms: ['reduced-fetal-movement'],
  },
  { names: ['oedema', 'edema', 'swelling', 'facial swelling', 'swelling of face'], symptoms: ['oedema'] },
  { names: ['pulmonary oedema', 'pulmonary edema'], symptoms: ['pulmonary-oedema'] },
  { names: ['lung crackles', 'crackles', 'crepitations'], symptoms: ['lung-crackles'] },
] as const;

// Medicines to avoid or to use with care, in pregnancy and after birth. Data, the same for every edition.
import {
  acog203,
  acog222,
  commonPractice,
  ergotSummary,
  esc2025,
  escPeripartum,
  nice133,
  ours,
  sogc2022,
  ukMagnesiumLabel,
} from './citations.ts';
import type { Citation, MedicineId, MedicineRule, Threshold } from './guideline.ts';
import { decidedByPrescriber, figure, say } from './sentences.ts';
import { dosesWithin, freshness, limit, magnesiumLoadWithin } from './shared-values.ts';
import { afterBirth, anyRaised, kidneyTrouble, preEclampsiaOfAnyKind, pregnant } from './states.ts';

const replacement = nice133('1.3.3', 'read');
const breastFeeding = nice133('1.9.4 to 1.9.9', 'read');
const classes = esc2025('drug classes', 'read');
const table = acog203('oral drug table', 'read');
const nsaid = ours('from memory of product information');
const nsaidFromMemory: Citation = {
  ...nsaid,
  publication: 'Product information of NSAIDs',
  known: 'from-memory',
};
const statinFromMemory: Citation = { ...nsaidFromMemory, publication: 'Product information of statins' };

const instead = {
  sentence: `Named instead: labetalol, nifedipine (extended release) or methyldopa. ${decidedByPrescriber}`,
  citation: table,
};
const insteadAfterBirth = {
  sentence: `Named instead: enalapril, nifedipine or amlodipine. ${decidedByPrescriber}`,
  citation: breastFeeding,
};

const reninAngiotensin: readonly MedicineId[] = [
  'ace-inhibitor',
  'angiotensin-receptor-blocker',
  'renin-inhibitor',
  'neprilysin-inhibitor',
  'enalapril',
  'captopril',
];
const calciumBlockers: readonly MedicineId[] = ['nifedipine', 'amlodipine', 'nicardipine'];

const avoidInPregnancy: readonly MedicineRule[] = [
  {
    id: 'renin-angiotensin-agent-in-pregnancy',
    medicines: reninAngiotensin,
    when: pregnant,
    severity: 'avoid',
    ...say(
      'Not in pregnancy: agents of the renin-angiotensin system harm the baby. Stop, and replace within {days:bare} working days of the news of pregnancy.',
      { days: figure('replace-renin-angiotensin-within', 2, 'd', replacement) },
    ),
    alternative: instead,
    citation: replacement,
  },
  {
    id: 'atenolol-in-pregnancy',
    medicines: ['atenolol'],
    when: pregnant,
    severity: 'avoid',
    sentence: 'Avoid in pregnancy: atenolol slows the growth of the baby.',
    alternative: instead,
    citation: classes,
  },
  {
    id: 'aldosterone-antagonist-in-pregnancy',
    medicines: ['aldosterone-antagonist'],
    when: pregnant,
    severity: 'avoid',
    sentence: 'Avoid in pregnancy: spironolactone and eplerenone.',
    alternative: instead,
    citation: classes,
  },
  {
    id: 'statin-in-pregnancy',
    medicines: ['statin'],
    when: pregnant,
    severity: 'avoid',
    sentence: 'Statins are usually stopped in pregnancy.',
    citation: statinFromMemory,
  },
  {
    id: 'thiazide-in-pregnancy',
    medicines: ['thiazide'],
    when: pregnant,
    severity: 'caution',
    sentence: 'Thiazides may carry a risk for the baby: second or third choice at most.',
    alternative: instead,
    citation: nice133('1.3.4', 'read'),
  },
  {
    id: 'diuretic-in-pre-eclampsia',
    medicines: ['loop-diuretic', 'thiazide'],
    when: { all: [preEclampsiaOfAnyKind, { none: ['lung-oedema'] }] },
    severity: 'avoid',
    sentence: 'Diuretics are avoided in pre-eclampsia; pulmonary oedema is the exception.',
    alternative: instead,
    citation: esc2025(
      'drug classes',
      'from-memory',
      'that diuretics are avoided was read; the exception is from memory',
    ),
  },
];

const nifedipineAndMagnesium: readonly MedicineRule[] = [
  {
    id: 'sublingual-nifedipine',
    medicines: ['sublingual-nifedipine'],
    when: { any: [pregnant, afterBirth] },
    severity: 'avoid',
    sentence: 'Never under the tongue: the pressure falls too fast.',
    alternative: { sentence: `Nifedipine is swallowed. ${decidedByPrescriber}`, citation: table },
    citation: table,
  },
  {
    id: 'magnesium-with-kidney-impairment',
    medicines: ['magnesium-sulfate'],
    givenWithin: magnesiumLoadWithin,
    when: kidneyTrouble,
    severity: 'caution',
    sentence:
      'Signs of kidney impairment: magnesium gathers. Loading dose unchanged, maintenance reduced; watch breathing, knee jerk and urine, and measure the level where it can be had.',
    whenCannotTell:
      'Kidney function is not known: take creatinine and count the urine; with kidney impairment the maintenance is reduced.',
    citation: ukMagnesiumLabel('renal impairment', 'from-memory'),
  },
  {
    id: 'second-magnesium-load',
    medicines: ['magnesium-sulfate'],
    statuses: ['ordered'],
    when: { any: [pregnant, afterBirth] },
    alongside: {
      medicines: ['magnesium-sulfate'],
      statuses: ['given'],
      within: magnesiumLoadWithin,
    },
    severity: 'avoid',
    ...say(
      'Magnesium was given or is running: no second loading dose. Only after a further fit {again} more.',
      { again: figure('magnesium-again', 2, 'g', nice133('1.8.4', 'read'), 4) },
    ),
    citation: nice133('1.8.4', 'read'),
  },
  {
    id: 'second-magnesium-order',
    medicines: ['magnesium-sulfate'],
    statuses: ['ordered'],
    when: { any: [pregnant, afterBirth] },
    alongside: { medicines: ['magnesium-sulfate'], statuses: ['order-in-force'] },
    severity: 'caution',
    sentence: 'Magnesium is on order already: two orders, one loading dose.',
    citation: ours('two orders can become two loading doses'),
  },
  {
    id: 'magnesium-with-calcium-blocker',
    medicines: calciumBlockers,
    when: { any: [pregnant, afterBirth] },
    alongside: {
      medicines: ['magnesium-sulfate'],
      statuses: ['active', 'ordered', 'given'],
      within: magnesiumLoadWithin,
    },
    severity: 'note',
    sentence:
      'Together with magnesium: publications differ (a European position paper says not together, others allow it). In an emergency neither is withheld; watch pressure, breathing and strength.',
    alternative: {
      sentence: `Oral labetalol first where nothing speaks against it. ${decidedByPrescriber}`,
      citation: ours('offered first so that the question does not arise'),
    },
    citation: escPeripartum('magnesium together with nifedipine', 'read'),
  },
  {
    id: 'magnesium-too-long',
    medicines: ['magnesium-sulfate'],
    statuses: ['active'],
    when: pregnant,
    longerThan: limit(
      'magnesium-longest',
      '>',
      5,
      'd',
      nice133('magnesium, neonatal bone', 'read', 'five to seven days; the shorter is used'),
    ),
    severity: 'caution',
    ...say('Magnesium for longer than {days} before birth can harm the bones of the baby.', {
      days: figure('magnesium-longest-quoted', 5, 'd', nice133('magnesium, neonatal bone', 'read'), 7),
    }),
    citation: nice133('magnesium, neonatal bone', 'read'),
  },
];

/** Agents and classes narrow enough that an allergy to one speaks against the others. */
const agentsOfAllergy: readonly MedicineId[] = [
  'labetalol',
  'nifedipine',
  'amlodipine',
  'nicardipine',
  'methyldopa',
  'hydralazine',
  'dihydralazine',
  'magnesium-sulfate',
  'aspirin',
  'ace-inhibitor',
  'angiotensin-receptor-blocker',
  'aldosterone-antagonist',
  'atenolol',
  'thiazide',
  'loop-diuretic',
  'statin',
  'nsaid',
  'ergometrine',
];

const withOtherStates: readonly MedicineRule[] = [
  {
    id: 'allergy-on-record',
    medicines: agentsOfAllergy,
    when: { any: [pregnant, afterBirth] },
    ofAllergy: true,
    severity: 'avoid',
    sentence: 'An allergy to this medicine, or to one of its class, is on record.',
    citation: commonPractice('a medicine is not given where an allergy to it is on record'),
  },
  {
    id: 'labetalol-contraindicated',
    medicines: ['labetalol'],
    when: { any: [pregnant, afterBirth] },
    conditions: ['asthma', 'heart-block', 'heart-failure', 'bradycardia'],
    severity: 'avoid',
    sentence: 'Labetalol is avoided with asthma, heart block, heart failure and a slow pulse.',
    alternative: {
      sentence: `Named instead: nifedipine (extended release) or methyldopa. ${decidedByPrescriber}`,
      citation: table,
    },
    citation: table,
  },
  {
    id: 'methyldopa-with-depression',
    medicines: ['methyldopa'],
    when: pregnant,
    conditions: ['depression'],
    severity: 'caution',
    sentence: 'Methyldopa can bring on or worsen depression.',
    alternative: {
      ...instead,
      sentence: `Named instead: labetalol or nifedipine (extended release). ${decidedByPrescriber}`,
    },
    citation: nice133('1.3.18 and 1.5.18', 'read'),
  },
  {
    id: 'ergometrine-with-hypertension',
    medicines: ['ergometrine'],
    when: anyRaised,
    severity: 'avoid',
    sentence:
      'Ergometrine and methylergometrine raise the pressure: contraindicated in hypertension and pre-eclampsia (one summary: caution when mild or moderate).',
    alternative: {
      sentence: `Named instead: oxytocin. ${decidedByPrescriber}`,
      citation: commonPractice('oxytocin is the first choice after birth'),
    },
    citation: ergotSummary(
      'contraindications',
      'from-memory',
      'read for methylergometrine; ergometrine itself from memory',
    ),
  },
  {
    id: 'nsaid-from-20-weeks',
    medicines: ['nsaid'],
    when: { any: ['now-from-20-weeks', 'now-unknown'] },
    severity: 'avoid',
    sentence:
      'NSAIDs are avoided in the second half of pregnancy: kidney of the baby, amniotic fluid, ductus.',
    alternative: {
      sentence: `Named instead: paracetamol. ${decidedByPrescriber}`,
      citation: nsaidFromMemory,
    },
    citation: nsaidFromMemory,
  },
  {
    id: 'nsaid-with-kidney-impairment',
    medicines: ['nsaid'],
    when: { all: [pregnant, kidneyTrouble] },
    severity: 'avoid',
    sentence: 'NSAIDs are avoided with signs of kidney impairment.',
    alternative: {
      sentence: `Named instead: paracetamol. ${decidedByPrescriber}`,
      citation: nsaidFromMemory,
    },
    citation: nsaidFromMemory,
  },
];

const sinceBirth: readonly MedicineRule[] = [
  {
    id: 'nsaid-after-birth',
    medicines: ['nsaid'],
    when: {
      all: [
        afterBirth,
        { any: ['after-birth-raised-same-day', 'severe-current', kidneyTrouble, 'platelets-low'] },
      ],
    },
    severity: 'caution',
    sentence:
      'No NSAID while the pressure is hard to control, the kidneys are affected or platelets are low. Publications differ: ACOG prefers NSAIDs to opioids after birth.',
    alternative: {
      sentence: `Named instead: paracetamol. ${decidedByPrescriber}`,
      citation: nsaidFromMemory,
    },
    citation: sogc2022('post partum, as digested on a teaching site', 'read'),
  },
  {
    id: 'receptor-blocker-while-breast-feeding',
    medicines: ['angiotensin-receptor-blocker', 'renin-inhibitor', 'neprilysin-inhibitor'],
    when: afterBirth,
    severity: 'avoid',
    sentence: 'Not advised while breast-feeding.',
    alternative: insteadAfterBirth,
    citation: breastFeeding,
  },
  {
    id: 'enalapril-captopril-after-birth',
    medicines: ['enalapril', 'captopril'],
    when: afterBirth,
    severity: 'note',
    sentence:
      'Allowed while breast-feeding; watch potassium and creatinine. To be stopped before a next pregnancy.',
    citation: nice133('1.9.4 to 1.9.9', 'read', 'captopril and the last sentence: our decision'),
  },
  {
    id: 'other-ace-inhibitor-after-birth',
    medicines: ['ace-inhibitor'],
    except: ['enalapril', 'captopril'],
    when: afterBirth,
    severity: 'caution',
    sentence:
      'While breast-feeding, of the ACE inhibitors only enalapril and captopril are named as allowed.',
    alternative: insteadAfterBirth,
    citation: ours('the texts read name no other'),
  },
  {
    id: 'diuretic-while-breast-feeding',
    medicines: ['thiazide', 'loop-diuretic', 'aldosterone-antagonist'],
    when: { all: [afterBirth, { none: ['lung-oedema'] }] },
    severity: 'caution',
    sentence: 'Diuretics for pressure are avoided while breast-feeding.',
    alternative: insteadAfterBirth,
    citation: breastFeeding,
  },
  {
    id: 'methyldopa-after-birth',
    medicines: ['methyldopa'],
    when: afterBirth,
    severity: 'caution',
    ...say('Stop methyldopa within {days} after birth: it can bring on depression.', {
      days: figure('methyldopa-stop-within', 2, 'd', nice133('1.3.18 and 1.5.18', 'read')),
    }),
    alternative: insteadAfterBirth,
    citation: nice133('1.3.18 and 1.5.18', 'read'),
  },
  {
    id: 'methyldopa-urgent',
    medicines: ['methyldopa'],
    statuses: ['ordered'],
    when: { any: ['severe-current', 'severe-open'] },
    severity: 'note',
    sentence: 'Methyldopa works slowly: not for urgent lowering where a faster drug is at hand.',
    alternative: {
      sentence: `Oral labetalol first where nothing speaks against it. ${decidedByPrescriber}`,
      citation: acog222('acute treatment', 'from-memory'),
    },
    citation: escPeripartum('methyldopa', 'read'),
  },
];

/** A dose given counts for so long, unless the rule names the time, or speaks of orders or of what is in use. */
const countingDoses = (within: Threshold, rules: readonly MedicineRule[]): readonly MedicineRule[] =>
  rules.map((rule) => (rule.statuses === undefined ? { givenWithin: within, ...rule } : rule));

/** Every medicine rule. */
export const medicineRules: readonly MedicineRule[] = [
  ...countingDoses(freshness, avoidInPregnancy),
  ...countingDoses(dosesWithin, [...nifedipineAndMagnesium, ...withOtherStates, ...sinceBirth]),
];

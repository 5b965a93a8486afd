// LOINC codes of observations we recognise, by concept. LOINC long common names are unchanged.
// LOINC is copyright Regenstrief Institute, Inc.; https://loinc.org/license. Source: terminology.csv unless a row says otherwise.
import type { CodeRow } from './code-row.ts';

/** Concept key of the terminology table to its LOINC codes. */
export const loinc = {
  'blood-pressure-panel': [
    { code: '85354-9', display: 'Blood pressure panel with all children optional', known: 'read' },
    { code: '55284-4', display: 'Blood pressure systolic and diastolic', known: 'read' },
    { code: '35094-2', display: 'Blood pressure panel', known: 'read' },
    { code: '55417-0', display: 'Short blood pressure panel', known: 'read' },
  ],
  'blood-pressure-panel-mean': [
    { code: '96607-7', display: 'Blood pressure panel mean systolic and mean diastolic', known: 'read' },
  ],
  'blood-pressure-panel-24h-mean': [
    { code: '97844-5', display: 'Blood pressure panel 24 hour mean', known: 'read' },
  ],
  'vital-signs-panel': [
    {
      code: '85353-1',
      display: 'Vital signs, weight, height, head circumference, oxygen saturation and BMI panel',
      known: 'read',
    },
  ],
  'blood-pressure-systolic': [{ code: '8480-6', display: 'Systolic blood pressure', known: 'read' }],
  'blood-pressure-diastolic': [{ code: '8462-4', display: 'Diastolic blood pressure', known: 'read' }],
  'blood-pressure-mean-arterial': [{ code: '8478-0', display: 'Mean blood pressure', known: 'read' }],
  'blood-pressure-systolic-mean-of-readings': [
    { code: '96608-5', display: 'Systolic blood pressure mean', known: 'read' },
  ],
  'blood-pressure-diastolic-mean-of-readings': [
    { code: '96609-3', display: 'Diastolic blood pressure mean', known: 'read' },
  ],
  'blood-pressure-systolic-24h-mean': [
    { code: '8490-5', display: 'Systolic blood pressure 24 hour mean', known: 'read' },
  ],
  'blood-pressure-diastolic-24h-mean': [
    { code: '8472-3', display: 'Diastolic blood pressure 24 hour mean', known: 'read' },
  ],
  'blood-pressure-systolic-sitting': [
    { code: '8459-0', display: 'Systolic blood pressure--sitting', known: 'read' },
  ],
  'blood-pressure-systolic-standing': [
    { code: '8460-8', display: 'Systolic blood pressure--standing', known: 'read' },
  ],
  'blood-pressure-systolic-supine': [
    { code: '8461-6', display: 'Systolic blood pressure--supine', known: 'read' },
  ],
  'blood-pressure-systolic-left-lateral': [
    { code: '89268-7', display: 'Systolic blood pressure--lying in L-lateral position', known: 'read' },
  ],
  'blood-pressure-diastolic-sitting': [
    { code: '8453-3', display: 'Diastolic blood pressure--sitting', known: 'read' },
  ],
  'blood-pressure-diastolic-standing': [
    { code: '8454-1', display: 'Diastolic blood pressure--standing', known: 'read' },
  ],
  'blood-pressure-diastolic-supine': [
    { code: '8455-8', display: 'Diastolic blood pressure--supine', known: 'read' },
  ],
  'blood-pressure-diastolic-left-lateral': [
    { code: '89267-9', display: 'Diastolic blood pressure--lying in L-lateral position', known: 'read' },
  ],
  'blood-pressure-systolic-palpation': [
    { code: '8479-8', display: 'Systolic blood pressure by palpation', known: 'read' },
  ],
  'blood-pressure-systolic-noninvasive': [
    { code: '76534-7', display: 'Systolic blood pressure by Noninvasive', known: 'read' },
  ],
  'blood-pressure-diastolic-noninvasive': [
    { code: '76535-4', display: 'Diastolic blood pressure by Noninvasive', known: 'read' },
  ],
  'blood-pressure-systolic-continuous-noninvasive': [
    {
      code: '75997-7',
      display: 'Systolic blood pressure by Continuous non-invasive monitoring',
      known: 'read',
    },
  ],
  'blood-pressure-diastolic-continuous-noninvasive': [
    {
      code: '75995-1',
      display: 'Diastolic blood pressure by Continuous non-invasive monitoring',
      known: 'read',
    },
  ],
  'blood-pressure-systolic-invasive': [
    { code: '76215-3', display: 'Invasive Systolic blood pressure', known: 'read' },
  ],
  'blood-pressure-diastolic-invasive': [
    { code: '76213-8', display: 'Invasive Diastolic blood pressure', known: 'read' },
  ],
  'blood-pressure-systolic-first-encounter': [
    { code: '11378-7', display: 'Systolic blood pressure at First encounter', known: 'read' },
  ],
  'blood-pressure-method': [{ code: '8357-6', display: 'Blood pressure method', known: 'read' }],
  'blood-pressure-cuff-size': [{ code: '8358-4', display: 'Blood pressure device Cuff size', known: 'read' }],
  'blood-pressure-measurement-site': [
    { code: '41904-4', display: 'Blood pressure measurement site', known: 'read' },
  ],
  'blood-pressure-device-type': [
    { code: '41901-0', display: 'Type of Blood pressure device', known: 'read' },
  ],
  'arm-circumference': [
    { code: '56072-2', display: 'Circumference Mid upper arm - right', known: 'from-memory' },
  ],
  'body-position': [{ code: '8361-8', display: 'Body position with respect to gravity', known: 'read' }],
  'urine-protein-presence-test-strip': [
    { code: '20454-5', display: 'Protein [Presence] in Urine by Test strip', known: 'read' },
  ],
  'urine-protein-presence-test-strip-automated': [
    { code: '57735-3', display: 'Protein [Presence] in Urine by Automated test strip', known: 'read' },
  ],
  'urine-protein-presence': [{ code: '2887-8', display: 'Protein [Presence] in Urine', known: 'read' }],
  'urine-protein-presence-sulfosalicylic-acid': [
    { code: '53525-2', display: 'Protein [Presence] in Urine by SSA method', known: 'read' },
  ],
  'urine-protein-semiquantitative-test-strip': [
    { code: '5804-0', display: 'Protein [Mass/volume] in Urine by Test strip', known: 'read' },
  ],
  'urine-protein-semiquantitative-test-strip-automated': [
    { code: '50561-0', display: 'Protein [Mass/volume] in Urine by Automated test strip', known: 'read' },
  ],
  'urine-protein-mass-concentration': [
    { code: '2888-6', display: 'Protein [Mass/volume] in Urine', known: 'read' },
  ],
  'urine-protein-mass-concentration-24h': [
    { code: '21482-5', display: 'Protein [Mass/volume] in 24 hour Urine', known: 'read' },
  ],
  'urine-protein-excretion-24h': [
    { code: '2889-4', display: 'Protein [Mass/time] in 24 hour Urine', known: 'read' },
  ],
  'urine-protein-creatinine-mass-ratio': [
    { code: '2890-2', display: 'Protein/Creatinine [Mass Ratio] in Urine', known: 'read' },
  ],
  'urine-protein-creatinine-ratio': [
    { code: '34366-5', display: 'Protein/Creatinine [Ratio] in Urine', known: 'read' },
  ],
  'urine-protein-creatinine-mass-ratio-24h': [
    { code: '13801-6', display: 'Protein/Creatinine [Mass Ratio] in 24 hour Urine', known: 'read' },
  ],
  'urine-protein-creatinine-ratio-24h': [
    { code: '40486-3', display: 'Protein/Creatinine [Ratio] in 24 hour Urine', known: 'read' },
  ],
  'urine-protein-creatinine-mass-ratio-12h': [
    { code: '60678-0', display: 'Protein/Creatinine [Mass Ratio] in 12 hour Urine', known: 'read' },
  ],
  'urine-protein-creatinine-ratio-test-strip': [
    { code: '98121-7', display: 'Protein/Creatinine Test strip Ql (U)', known: 'read' },
  ],
  'urine-albumin-creatinine-mass-ratio': [
    { code: '9318-7', display: 'Albumin/Creatinine [Mass Ratio] in Urine', known: 'read' },
    { code: '14959-1', display: 'Microalbumin/Creatinine [Mass Ratio] in Urine', known: 'read' },
  ],
  'urine-albumin-creatinine-mass-ratio-24h': [
    { code: '14958-3', display: 'Microalbumin/Creatinine [Mass Ratio] in 24 hour Urine', known: 'read' },
    { code: '13705-9', display: 'Albumin/Creatinine [Mass Ratio] in 24 hour Urine', known: 'read' },
  ],
  'urine-albumin-creatinine-ratio': [
    { code: '32294-1', display: 'Albumin/Creatinine [Ratio] in Urine', known: 'read' },
    { code: '30000-4', display: 'Microalbumin/Creatinine [Ratio] in Urine', known: 'read' },
  ],
  'urine-albumin-creatinine-molar-ratio': [
    { code: '14585-4', display: 'Albumin/Creatinine [Molar ratio] in Urine', known: 'read' },
  ],
  'urine-albumin-mass-concentration': [
    { code: '1754-1', display: 'Albumin [Mass/volume] in Urine', known: 'read' },
  ],
  'urinalysis-panel': [
    { code: '24357-6', display: 'Urinalysis macro (dipstick) panel - Urine', known: 'read' },
    { code: '24356-8', display: 'Urinalysis complete panel - Urine', known: 'read' },
    { code: '50556-0', display: 'Urinalysis dipstick panel - Urine by Automated test strip', known: 'read' },
  ],
  'gestational-age': [
    { code: '18185-9', display: 'Gestational age', known: 'read' },
    { code: '49051-6', display: 'Gestational age in weeks', known: 'read' },
  ],
  'gestational-age-days': [{ code: '49052-4', display: 'Gestational age in days', known: 'read' }],
  'gestational-age-clinical-estimate': [
    { code: '11884-4', display: 'Gestational age Estimated', known: 'read' },
  ],
  'gestational-age-from-lmp': [
    { code: '11885-1', display: 'Gestational age Estimated from last menstrual period', known: 'read' },
  ],
  'gestational-age-from-selected-delivery-date': [
    { code: '11887-7', display: 'Gestational age Estimated from selected delivery date', known: 'read' },
  ],
  'gestational-age-ultrasound': [
    { code: '11888-5', display: 'Gestational age US composite estimate', known: 'read' },
  ],
  'gestational-age-from-conception': [
    { code: '53693-8', display: 'Gestational age Estimated from conception date', known: 'read' },
  ],
  'gestational-age-obstetric-estimate': [
    { code: '57714-8', display: 'Obstetric estimation of gestational age', known: 'read' },
  ],
  'last-menstrual-period-date': [
    { code: '8665-2', display: 'Last menstrual period start date', known: 'read' },
  ],
  'estimated-delivery-date': [{ code: '11778-8', display: 'Delivery date Estimated', known: 'read' }],
  'estimated-delivery-date-from-lmp': [
    { code: '11779-6', display: 'Delivery date Estimated from last menstrual period', known: 'read' },
  ],
  'estimated-delivery-date-from-ovulation': [
    { code: '11780-4', display: 'Delivery date Estimated from ovulation date', known: 'read' },
  ],
  'estimated-delivery-date-ultrasound': [
    { code: '11781-2', display: 'Delivery date US composite estimate', known: 'read' },
  ],
  'estimated-delivery-date-from-conception': [
    { code: '53692-0', display: 'Delivery date Estimated from conception date', known: 'read' },
  ],
  'estimated-delivery-date-from-prior-assessment': [
    {
      code: '53694-6',
      display: 'Delivery date Estimated from prior gestational age assessment',
      known: 'read',
    },
  ],
  'pregnancy-status': [{ code: '82810-3', display: 'Pregnancy status', known: 'read' }],
  'pregnancy-status-reported': [{ code: '11449-6', display: 'Pregnancy status - Reported', known: 'read' }],
  'number-of-fetuses': [{ code: '55281-0', display: 'Number of Fetuses', known: 'read' }],
  'number-of-fetuses-ultrasound': [{ code: '11878-6', display: 'Number of fetuses by US', known: 'read' }],
  gravidity: [{ code: '11996-6', display: '[#] Pregnancies', known: 'read' }],
  parity: [{ code: '11977-6', display: '[#] Parity', known: 'read' }],
  'births-total': [{ code: '11640-0', display: '[#] Births total', known: 'read' }],
  'births-preterm': [{ code: '11637-6', display: '[#] Births.preterm', known: 'read' }],
  'births-live': [{ code: '11636-8', display: '[#] Births.live', known: 'read' }],
  'delivery-date-time': [{ code: '93857-1', display: 'Date and time of obstetric delivery', known: 'read' }],
  'body-height': [{ code: '8302-2', display: 'Body height', known: 'read' }],
  'body-weight': [{ code: '29463-7', display: 'Body weight', known: 'read' }],
  'body-weight-prepregnancy': [
    { code: '56077-1', display: 'Body weight --pre current pregnancy', known: 'read' },
  ],
  'body-mass-index': [{ code: '39156-5', display: 'Body mass index (BMI) [Ratio]', known: 'read' }],
  age: [{ code: '30525-0', display: 'Age', known: 'read' }],
  platelets: [
    { code: '777-3', display: 'Platelets [#/volume] in Blood by Automated count', known: 'read' },
    { code: '26515-7', display: 'Platelets [#/volume] in Blood', known: 'read' },
    { code: '49497-1', display: 'Platelets [#/volume] in Blood by Estimate', known: 'read' },
  ],
  'creatinine-mass': [
    { code: '2160-0', display: 'Creatinine [Mass/volume] in Serum or Plasma', known: 'read' },
    { code: '38483-4', display: 'Creatinine [Mass/volume] in Blood', known: 'read' },
  ],
  'creatinine-moles': [
    { code: '14682-9', display: 'Creatinine [Moles/volume] in Serum or Plasma', known: 'read' },
    { code: '59826-8', display: 'Creatinine [Moles/volume] in Blood', known: 'read' },
    { code: '77140-2', display: 'Creatinine [Moles/volume] in Serum, Plasma or Blood', known: 'read' },
  ],
  alt: [
    {
      code: '1742-6',
      display: 'Alanine aminotransferase [Enzymatic activity/volume] in Serum or Plasma',
      known: 'read',
    },
    {
      code: '1743-4',
      display: "Alanine aminotransferase [Enzymatic activity/volume] in Serum or Plasma by With P-5'-P",
      known: 'read',
    },
  ],
  ast: [
    {
      code: '1920-8',
      display: 'Aspartate aminotransferase [Enzymatic activity/volume] in Serum or Plasma',
      known: 'read',
    },
    {
      code: '30239-8',
      display: "Aspartate aminotransferase [Enzymatic activity/volume] in Serum or Plasma by With P-5'-P",
      known: 'read',
    },
    {
      code: '88112-8',
      display:
        "Aspartate aminotransferase [Enzymatic activity/volume] in Serum or Plasma by No addition of P-5'-P",
      known: 'read',
    },
  ],
  ldh: [
    {
      code: '2532-0',
      display: 'Lactate dehydrogenase [Enzymatic activity/volume] in Serum or Plasma',
      known: 'read',
    },
    {
      code: '14804-9',
      display:
        'Lactate dehydrogenase [Enzymatic activity/volume] in Serum or Plasma by Lactate to pyruvate reaction',
      known: 'read',
    },
  ],
  'bilirubin-total-mass': [
    { code: '1975-2', display: 'Bilirubin.total [Mass/volume] in Serum or Plasma', known: 'read' },
  ],
  'bilirubin-total-moles': [
    { code: '14631-6', display: 'Bilirubin.total [Moles/volume] in Serum or Plasma', known: 'read' },
  ],
  haemoglobin: [{ code: '718-7', display: 'Hemoglobin [Mass/volume] in Blood', known: 'read' }],
  'haemoglobin-moles': [{ code: '59260-0', display: 'Hemoglobin [Moles/volume] in Blood', known: 'read' }],
  haematocrit: [
    { code: '4544-3', display: 'Hematocrit [Volume Fraction] of Blood by Automated count', known: 'read' },
  ],
  'urate-mass': [{ code: '3084-1', display: 'Urate [Mass/volume] in Serum or Plasma', known: 'read' }],
  'urate-moles': [{ code: '14933-6', display: 'Urate [Moles/volume] in Serum or Plasma', known: 'read' }],
  fibrinogen: [
    {
      code: '3255-7',
      display: 'Fibrinogen [Mass/volume] in Platelet poor plasma by Coagulation assay',
      known: 'read',
    },
    {
      code: '30902-1',
      display: 'Fibrinogen [Mass/volume] in Platelet poor plasma by Heat denaturation',
      known: 'read',
    },
  ],
  'sflt1-plgf-ratio': [
    {
      code: '74757-6',
      display: 'Soluble fms-like tyrosine kinase-1/placental growth factor [Ratio] in Serum',
      known: 'read',
    },
  ],
  plgf: [{ code: '74755-0', display: 'Placental growth factor [Mass/volume] in Serum', known: 'read' }],
  sflt1: [
    { code: '74756-8', display: 'Soluble fms-like tyrosine kinase-1 [Mass/volume] in Serum', known: 'read' },
  ],
  'oxygen-saturation-pulse-oximetry': [
    { code: '59408-5', display: 'Oxygen saturation in Arterial blood by Pulse oximetry', known: 'read' },
  ],
  'oxygen-saturation': [{ code: '2708-6', display: 'Oxygen saturation in Arterial blood', known: 'read' }],
  'heart-rate': [{ code: '8867-4', display: 'Heart rate', known: 'read' }],
  'respiratory-rate': [{ code: '9279-1', display: 'Respiratory Rate', known: 'read' }],
  'urea-nitrogen': [
    { code: '3094-0', display: 'Urea nitrogen [Mass/volume] in Serum or Plasma', known: 'read' },
  ],
  'fundal-height': [{ code: '11881-0', display: 'Uterus Fundal height Tape measure', known: 'read' }],
  'urine-nitrite': [{ code: '5802-4', display: 'Nitrite [Presence] in Urine by Test strip', known: 'read' }],
  'urine-leukocytes': [
    { code: '5799-2', display: 'Leukocyte esterase [Presence] in Urine by Test strip', known: 'read' },
  ],
  'hcg-serum': [
    { code: '19080-1', display: 'Choriogonadotropin [Units/volume] in Serum or Plasma', known: 'read' },
    {
      code: '21198-7',
      display: 'Choriogonadotropin.beta subunit [Units/volume] in Serum or Plasma',
      known: 'from-memory',
      note: 'not in the terminology table',
    },
  ],
  'urine-output': [{ code: '9187-6', display: 'Urine output', known: 'from-memory' }],
  'urine-specific-gravity': [
    {
      code: '5811-5',
      display: 'Specific gravity of Urine by Test strip',
      known: 'from-memory',
      note: 'not in the terminology table',
    },
    {
      code: '2965-2',
      display: 'Specific gravity of Urine',
      known: 'from-memory',
      note: 'not in the terminology table',
    },
  ],
  'urine-ph': [
    {
      code: '5803-2',
      display: 'pH of Urine by Test strip',
      known: 'from-memory',
      note: 'not in the terminology table',
    },
    { code: '2756-5', display: 'pH of Urine', known: 'from-memory', note: 'not in the terminology table' },
  ],
  'urine-blood': [
    {
      code: '5794-3',
      display: 'Hemoglobin [Presence] in Urine by Test strip',
      known: 'from-memory',
      note: 'not in the terminology table',
    },
  ],
  potassium: [
    {
      code: '2823-3',
      display: 'Potassium [Moles/volume] in Serum or Plasma',
      known: 'from-memory',
      note: 'not in the terminology table',
    },
    {
      code: '6298-4',
      display: 'Potassium [Moles/volume] in Blood',
      known: 'from-memory',
      note: 'not in the terminology table',
    },
  ],
  magnesium: [
    {
      code: '19123-9',
      display: 'Magnesium [Mass/volume] in Serum or Plasma',
      known: 'from-memory',
      note: 'not in the terminology table',
    },
    {
      code: '2601-3',
      display: 'Magnesium [Moles/volume] in Serum or Plasma',
      known: 'from-memory',
      note: 'not in the terminology table',
    },
  ],
  symptom: [
    { code: '75325-1', display: 'Symptom', known: 'from-memory', note: 'not in the terminology table' },
    {
      code: '10154-3',
      display: 'Chief complaint Narrative - Reported',
      known: 'from-memory',
      note: 'not in the terminology table',
    },
  ],
} as const satisfies Readonly<Record<string, readonly CodeRow[]>>;

export type LoincConcept = keyof typeof loinc;

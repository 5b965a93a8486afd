// SNOMED CT codes of observations, qualifiers, body sites and orders, by concept.
// SNOMED CT Global Patient Set content is used under CC BY 4.0; rows outside that set carry no term.
import type { CodeRow } from './code-row.ts';

/** Concept key of the terminology table to its SNOMED CT codes. Conditions, symptoms and medicines have files of their own. */
export const snomed = {
  'blood-pressure-panel': [
    { code: '75367002', display: 'Blood pressure (observable entity)', known: 'read' },
  ],
  'blood-pressure-systolic': [
    { code: '271649006', display: 'Systolic blood pressure (observable entity)', known: 'read' },
    { code: '72313002', known: 'read' },
  ],
  'blood-pressure-diastolic': [
    { code: '271650006', display: 'Diastolic blood pressure (observable entity)', known: 'read' },
  ],
  'blood-pressure-mean-arterial': [
    { code: '6797001', display: 'Mean blood pressure (observable entity)', known: 'read' },
  ],
  'blood-pressure-systolic-mean-of-readings': [
    { code: '314440001', display: 'Average systolic blood pressure (observable entity)', known: 'read' },
  ],
  'blood-pressure-diastolic-mean-of-readings': [
    { code: '314453003', display: 'Average diastolic blood pressure (observable entity)', known: 'read' },
  ],
  'blood-pressure-systolic-home-average': [{ code: '413606001', known: 'read' }],
  'blood-pressure-diastolic-home-average': [{ code: '413605002', known: 'from-memory' }],
  'blood-pressure-systolic-sitting': [{ code: '407554009', known: 'read' }],
  'blood-pressure-sitting': [{ code: '163035008', known: 'read' }],
  'blood-pressure-standing': [{ code: '163034007', known: 'read' }],
  'blood-pressure-lying': [{ code: '163033001', known: 'read' }],
  'body-position-sitting': [{ code: '33586001', display: 'Sitting position (finding)', known: 'read' }],
  'body-position-standing': [
    { code: '10904000', display: 'Orthostatic body position (finding)', known: 'read' },
  ],
  'body-position-supine': [{ code: '40199007', display: 'Supine body position (finding)', known: 'read' }],
  'body-position-recumbent': [
    { code: '102538003', display: 'Recumbent body position (finding)', known: 'read' },
  ],
  'body-position-left-lateral': [
    { code: '102536004', display: 'Left lateral decubitus position (finding)', known: 'read' },
  ],
  'body-site-upper-arm': [
    {
      code: '40983000',
      display: 'Structure of upper extremity between shoulder and elbow (body structure)',
      known: 'read',
    },
  ],
  'body-site-left-upper-arm': [{ code: '368208006', known: 'read' }],
  'body-site-right-upper-arm': [{ code: '368209003', known: 'read' }],
  'body-site-wrist': [{ code: '8205005', display: 'Wrist region structure (body structure)', known: 'read' }],
  'body-site-brachial-artery': [
    { code: '17137000', display: 'Structure of brachial artery (body structure)', known: 'read' },
  ],
  'body-site-left-brachial-artery': [{ code: '723961002', known: 'read' }],
  'body-site-right-brachial-artery': [{ code: '723962009', known: 'read' }],
  'body-site-radial-artery': [
    { code: '45631007', display: 'Structure of radial artery (body structure)', known: 'read' },
  ],
  'bp-method-auscultation': [{ code: '37931006', known: 'read' }],
  'bp-method-palpation': [{ code: '113011001', display: 'Palpation (procedure)', known: 'read' }],
  'bp-method-oscillometry': [{ code: '31813000', known: 'read' }],
  'bp-method-noninvasive': [{ code: '17146006', known: 'read' }],
  'bp-method-invasive': [{ code: '77938009', known: 'read' }],
  'bp-device-aneroid': [{ code: '309641003', known: 'read' }],
  'bp-device-mercury': [{ code: '309642005', known: 'read' }],
  'bp-device-automatic-arm-or-wrist': [{ code: '466086009', known: 'read' }],
  'bp-device-noninvasive-monitor': [{ code: '258057004', known: 'read' }],
  'bp-cuff-adult': [{ code: '720737000', known: 'read' }],
  'bp-cuff-paediatric': [{ code: '720736009', known: 'read' }],
  'bp-setting-home': [{ code: '264362003', known: 'read' }],
  'bp-setting-clinic': [{ code: '257585005', known: 'read' }],
  'bp-setting-hospital': [{ code: '285201006', known: 'read' }],
  'gestational-age': [{ code: '57036006', known: 'read' }],
  'last-menstrual-period-date': [
    { code: '21840007', display: 'Date of last menstrual period (observable entity)', known: 'read' },
  ],
  'estimated-delivery-date': [{ code: '161714006', known: 'read' }],
  gravidity: [{ code: '161732006', display: 'Gravida (observable entity)', known: 'read' }],
  parity: [{ code: '364325004', display: 'Parity (observable entity)', known: 'read' }],
  'severity-severe': [
    { code: '24484000', display: 'Severe (severity modifier) (qualifier value)', known: 'read' },
  ],
  'severity-moderate': [
    { code: '6736007', display: 'Moderate (severity modifier) (qualifier value)', known: 'read' },
  ],
  'severity-mild': [{ code: '255604002', display: 'Mild (qualifier value)', known: 'read' }],
  referral: [{ code: '3457005', display: 'Patient referral (procedure)', known: 'read' }],
  'referral-obstetrics': [
    { code: '183548008', display: 'Referral to obstetrics service (procedure)', known: 'read' },
  ],
  'referral-obstetrician': [{ code: '308484001', known: 'read' }],
  'referral-obstetrician-gynaecologist': [{ code: '306297007', known: 'read' }],
  'referral-hospital': [{ code: '310449005', display: 'Referral to hospital (procedure)', known: 'read' }],
  'referral-emergency-service': [
    { code: '306104004', display: 'Referral to accident and emergency service (procedure)', known: 'read' },
  ],
  'emergency-hospital-admission': [
    { code: '183452005', display: 'Emergency hospital admission (procedure)', known: 'read' },
  ],
  'obstetric-emergency-admission': [{ code: '183460006', known: 'read' }],
  'patient-transfer': [{ code: '107724000', display: 'Patient transfer (procedure)', known: 'read' }],
  'transfer-of-care-to-hospital': [
    { code: '429202003', display: 'Transfer of care to hospital (procedure)', known: 'read' },
  ],
  'blood-pressure-remeasurement': [
    { code: '46973005', display: 'Blood pressure taking (procedure)', known: 'read' },
  ],
  'blood-pressure-monitoring': [
    { code: '135840009', display: 'Blood pressure monitoring (regime/therapy)', known: 'read' },
  ],
  'ambulatory-blood-pressure-recording': [
    { code: '164783007', display: 'Ambulatory blood pressure recording (procedure)', known: 'read' },
  ],
  'urine-protein-24h': [{ code: '19518008', known: 'read' }],
  'urine-protein-test': [{ code: '167271000', known: 'read' }],
  urinalysis: [{ code: '27171005', known: 'read' }],
  'platelet-count': [{ code: '61928009', display: 'Platelet count (procedure)', known: 'read' }],
  'full-blood-count': [{ code: '26604007', known: 'read' }],
  'liver-function-tests': [{ code: '26958001', known: 'read' }],
  'creatinine-measurement': [{ code: '70901006', known: 'read' }],
  'fetal-ultrasound-growth': [{ code: '241493005', known: 'read' }],
  'obstetric-ultrasound': [
    { code: '268445003', display: 'Ultrasound scan - obstetric (procedure)', known: 'read' },
  ],
  'cardiotocography-antepartum': [{ code: '386276009', known: 'read' }],
  'nonstress-test': [{ code: '387673001', known: 'read' }],
  'fetal-heart-monitoring': [
    { code: '281568006', display: 'Fetal heart monitoring (regime/therapy)', known: 'read' },
  ],
  'fetal-movement-counting': [
    { code: '713120004', display: 'Counting fetal movement (regime/therapy)', known: 'read' },
  ],
  'patient-education': [{ code: '311401005', display: 'Patient education (procedure)', known: 'read' }],
  'pregnancy-diet-education': [
    { code: '171054004', display: 'Pregnancy diet education (procedure)', known: 'read' },
  ],
  'diet-education': [{ code: '11816003', display: 'Diet education (procedure)', known: 'read' }],
  'antenatal-education': [{ code: '135892000', display: 'Antenatal education (procedure)', known: 'read' }],
  'education-fetal-movement': [
    { code: '440309009', display: 'Education about fetal movement monitoring (procedure)', known: 'read' },
  ],
  'induction-of-labour': [{ code: '236958009', display: 'Induction of labor (procedure)', known: 'read' }],
  'service-category-laboratory': [{ code: '108252007', known: 'read' }],
  'service-category-imaging': [{ code: '363679005', display: 'Imaging (procedure)', known: 'read' }],
  'service-category-counselling': [{ code: '409063005', display: 'Counseling (procedure)', known: 'read' }],
  'service-category-education': [{ code: '409073007', display: 'Education (procedure)', known: 'read' }],
  'service-category-surgical': [
    { code: '387713003', display: 'Surgical procedure (procedure)', known: 'read' },
  ],
  'performer-obstetrician': [{ code: '11935004', known: 'read' }],
  'performer-obstetrician-gynaecologist': [
    { code: '309367003', display: 'Obstetrician and gynecologist (occupation)', known: 'read' },
  ],
  'performer-midwife': [{ code: '309453006', display: 'Registered midwife (occupation)', known: 'read' }],
  'performer-nurse': [{ code: '224535009', display: 'Registered nurse (occupation)', known: 'read' }],
  'performer-family-physician': [
    { code: '62247001', display: 'Family medicine specialist (occupation)', known: 'read' },
  ],
  'performer-doctor': [{ code: '158965000', display: 'Medical practitioner (occupation)', known: 'read' }],
  'specialty-obstetrics': [{ code: '408470005', known: 'read' }],
  'specialty-obstetrics-gynaecology': [{ code: '394585009', known: 'read' }],
  'home-blood-pressure-monitoring': [{ code: '413153004', known: 'read' }],
  'urine-protein-measurement': [{ code: '57378007', known: 'from-memory' }],
  present: [{ code: '52101004', known: 'from-memory', note: 'not in the terminology table' }],
  'known-present': [{ code: '410515003', known: 'from-memory', note: 'not in the terminology table' }],
  'known-absent': [{ code: '410516002', known: 'from-memory', note: 'not in the terminology table' }],
  detected: [{ code: '260373001', known: 'from-memory', note: 'not in the terminology table' }],
  yes: [{ code: '373066001', known: 'from-memory', note: 'not in the terminology table' }],
  no: [{ code: '373067005', known: 'from-memory', note: 'not in the terminology table' }],
  unknown: [{ code: '261665006', known: 'from-memory', note: 'not in the terminology table' }],
  severity: [{ code: '246112005', known: 'from-memory', note: 'not in the terminology table' }],
  symptom: [{ code: '418799008', known: 'from-memory', note: 'not in the terminology table' }],
  'clinical-finding': [{ code: '404684003', known: 'from-memory', note: 'not in the terminology table' }],
  'sublingual-route': [{ code: '37839007', known: 'from-memory', note: 'not in the terminology table' }],
  mother: [{ code: '72705000', known: 'from-memory', note: 'not in the terminology table' }],
  sister: [{ code: '27733009', known: 'from-memory', note: 'not in the terminology table' }],
  birth: [{ code: '3950001', known: 'from-memory', note: 'not in the terminology table' }],
} as const satisfies Readonly<Record<string, readonly CodeRow[]>>;

export type SnomedConcept = keyof typeof snomed;

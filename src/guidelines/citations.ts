// Publications the figures come from. One builder per publication keeps a citation to one line. Data only.
import type { Citation, Known } from './guideline.ts';

const publication =
  (title: string, year: number) =>
  (section: string, known: Known, note?: string): Citation =>
    note === undefined
      ? { publication: title, section, year, known }
      : { publication: title, section, year, known, note };

export const who2011 = publication(
  'WHO, Recommendations for prevention and treatment of pre-eclampsia and eclampsia',
  2011,
);
export const who2017 = publication(
  'WHO, Managing complications in pregnancy and childbirth, second edition',
  2017,
);
export const who2003 = publication(
  'WHO, Managing complications in pregnancy and childbirth, first edition',
  2003,
);
export const who2018 = publication('WHO, Drug treatment for severe hypertension in pregnancy', 2018);
export const who2020 = publication('WHO, Drug treatment for non-severe hypertension in pregnancy', 2020);
export const whoCalcium = publication('WHO, Recommendations on antenatal care: calcium', 2016);
export const isshp2018 = publication(
  'ISSHP, Hypertensive disorders of pregnancy, Hypertension 72:24-43',
  2018,
);
export const isshp2021 = publication(
  'ISSHP, Classification, diagnosis and management of hypertensive disorders of pregnancy',
  2021,
);
export const acog222 = publication(
  'ACOG Practice Bulletin 222, Gestational hypertension and preeclampsia',
  2020,
);
export const acog203 = publication('ACOG Practice Bulletin 203, Chronic hypertension in pregnancy', 2019);
export const acog767 = publication('ACOG Committee Opinion 767, Severe-range hypertension', 2019);
export const acog700 = publication('ACOG Committee Opinion 700, Methods for estimating the due date', 2017);
export const acog2022 = publication('ACOG Practice Advisory, Chronic hypertension in pregnancy (CHAP)', 2022);
export const acogAspirin = publication('ACOG/SMFM Practice Advisory, Low-dose aspirin', 2021);
export const nice133 = publication('NICE NG133, Hypertension in pregnancy', 2023);
export const niceDg49 = publication('NICE DG49, PLGF-based testing', 2022);
export const indiaDeck = publication(
  'Government of India, training deck on pregnancy-induced hypertension',
  2015,
);
export const indiaStg = publication(
  'India MoHFW, Standard Treatment Guideline, Hypertension in pregnancy',
  2016,
);
export const sogc2014 = publication('SOGC guideline 307, Hypertensive disorders of pregnancy', 2014);
export const sogc2022 = publication('SOGC guideline 426, Hypertensive disorders of pregnancy', 2022);
export const somanz2023 = publication('SOMANZ, Hypertension in pregnancy guideline', 2023);
export const uspstf2021 = publication('USPSTF, Aspirin use to prevent preeclampsia', 2021);
export const escPeripartum = publication('ESC position paper, Peripartum management of hypertension', 2020);
export const esc2025 = publication('ESC, Cardiovascular disease and pregnancy (drug classes)', 2025);
export const hellpTable = publication('BMC Medical Imaging s12880-017-0208-6, HELLP classes', 2017);
export const hellpTennessee = publication(
  'Tennessee criteria of HELLP, as reproduced in an encyclopaedia page',
  2017,
);
export const magnesiumReview = publication(
  'BMC Pregnancy and Childbirth 13:34, magnesium sulfate regimens',
  2013,
);
export const ukMagnesiumLabel = publication('UK product information, magnesium sulfate', 2020);
export const indonesiaMagnesiumLabel = publication('Indonesian product information, magnesium sulfate', 2020);
export const usMagnesiumTeaching = publication(
  'University obstetrics teaching page, magnesium sulfate',
  2020,
);
export const aspirinSchemes = publication('PMC10409147 table 1, aspirin schemes of five publications', 2023);
export const easterling2019 = publication('Easterling et al., Lancet 394:1011, three oral drugs', 2019);
export const doseTable2009 = publication('AHA review of antihypertensive drugs in pregnancy', 2009);
export const sogcDoseTable = publication('PMC5096310, acute and oral antihypertensive doses', 2016);
export const angiogenicReview = publication('PMC5309866, sFlt-1/PlGF ratio', 2016);
export const aha2005 = publication(
  'AHA, Recommendations for blood pressure measurement, Hypertension 45:142-61',
  2005,
);
export const ksh2018 = publication('Korean Society of Hypertension, blood pressure measurement', 2018);
export const measuringBp = publication(
  'Blood-pressure technique pages for obstetrics, as reproduced in continuing-education digests',
  2018,
);
export const terminalDigits = publication('Screening study in Nepal, terminal digits', 2018);
export const payne2014 = publication('Payne et al., PLoS Medicine 11:e1001589', 2014);
export const vonDadelszen2011 = publication('von Dadelszen et al., Lancet 377:219-27', 2011);
export const stripGuide = publication('Urine protein reagent strip, primary-care notebook page', 2020);
export const ergotSummary = publication('Methylergometrine product summary', 2020);
export const ckdReview = publication('CJASN, Preeclampsia and chronic kidney disease', 2016);
export const postpartumReport = publication(
  'BMJ Quality and Safety 27:871, post-partum pressure checks',
  2018,
);
export const latePostpartum = publication(
  'IJRCOG case report, late new-onset postpartum pre-eclampsia',
  2024,
);
export const homePressure = publication(
  'Home blood pressure in pregnancy, BUMP comparison and ISSHP threshold',
  2022,
);
export const ucum = publication('Unit arithmetic, UCUM and molar mass', 2017);

/** Our own default, cautious, with the reason. */
export const ours = (reason: string): Citation => ({
  publication: 'pregnancy-htn',
  section: 'own default',
  year: 2026,
  known: 'ours',
  note: reason,
});

/** A rule of thumb of the trade that no publication read here states. */
export const commonPractice = (what: string): Citation => ({
  publication: 'Common practice',
  section: 'rule of the trade',
  year: 2026,
  known: 'common-practice',
  note: what,
});

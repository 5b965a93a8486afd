// Codes whose subject is a pregnant woman or somebody whose blood pressure is followed: used only to tell which of
// several persons in a bundle is meant. Data only.

/**
 * LOINC codes of blood pressure, dating of a pregnancy, and urine protein.
 *
 * Source   LOINC names as read in the terminology table of this project; the choice is ours
 */
export const SUBJECT_HINT_LOINC: ReadonlySet<string> = new Set([
  '85354-9', // Blood pressure panel with all children optional
  '55284-4', // Blood pressure systolic and diastolic
  '35094-2', // Blood pressure panel
  '55417-0', // Short blood pressure panel
  '96607-7', // Blood pressure panel mean systolic and mean diastolic
  '8480-6', // Systolic blood pressure
  '8462-4', // Diastolic blood pressure
  '18185-9', // Gestational age
  '49051-6', // Gestational age in weeks
  '49052-4', // Gestational age in days
  '11884-4', // Gestational age Estimated
  '11885-1', // Gestational age Estimated from last menstrual period
  '11887-7', // Gestational age Estimated from selected delivery date
  '11888-5', // Gestational age US composite estimate
  '53693-8', // Gestational age Estimated from conception date
  '57714-8', // Obstetric estimation of gestational age
  '8665-2', // Last menstrual period start date
  '11778-8', // Delivery date Estimated
  '11779-6', // Delivery date Estimated from last menstrual period
  '11780-4', // Delivery date Estimated from ovulation date
  '11781-2', // Delivery date US composite estimate
  '53692-0', // Delivery date Estimated from conception date
  '53694-6', // Delivery date Estimated from prior gestational age assessment
  '82810-3', // Pregnancy status
  '11449-6', // Pregnancy status - Reported
  '20454-5', // Protein [Presence] in Urine by Test strip
  '57735-3', // Protein [Presence] in Urine by Automated test strip
  '2887-8', // Protein [Presence] in Urine
  '5804-0', // Protein [Mass/volume] in Urine by Test strip
  '50561-0', // Protein [Mass/volume] in Urine by Automated test strip
  '2888-6', // Protein [Mass/volume] in Urine
  '2889-4', // Protein [Mass/time] in 24 hour Urine
  '2890-2', // Protein/Creatinine [Mass Ratio] in Urine
]);

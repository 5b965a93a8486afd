// An edition's values laid into the standard questions and rules.
import type { Edition } from './edition.ts';
import type { Guideline } from './guideline.ts';
import { qualityRules } from './quality-rules.ts';
import { medicineRules } from './medicine-rules.ts';
import { occasionLength, thirdReadingDifference } from './shared-values.ts';
import { standardActionRules } from './standard-actions.ts';
import { standardClassRules } from './standard-classes.ts';
import { standardQuestions } from './standard-questions.ts';
import { standardReferralRules, standardUrgencyRules } from './standard-urgency.ts';
import { standardTreatmentRules } from './treatment-options.ts';

/** The complete guideline of an edition. A new edition is new data; this does not change. */
export function buildGuideline(edition: Edition): Guideline {
  const { id, title, publisher, year, version, status, remark, url } = edition;
  return {
    id,
    title,
    publisher,
    edition: edition.edition,
    year,
    ...(url === undefined ? {} : { url }),
    version,
    status,
    remark,
    questions: standardQuestions(edition),
    classRules: standardClassRules(edition),
    urgencyRules: standardUrgencyRules(edition),
    referralRules: standardReferralRules(edition),
    actionRules: standardActionRules(edition),
    medicineRules,
    treatmentRules: standardTreatmentRules(edition),
    preventionRules: edition.care.prevention,
    chartLimits: { hypertension: edition.hypertension, severe: edition.severe },
    visit: { occasionLength, thirdReadingWhenDifferenceOver: thirdReadingDifference },
    qualityRules: qualityRules(edition),
  };
}

// What a CDS client reads first: the service, what it needs, and what it answers.
import { guidelineIds, defaultGuidelineId } from '../guidelines/registry.ts';
import { chartQueries } from '../presenters/data-requirements.ts';
import { servedHook, serviceId } from './cds-request.ts';

/** Version of this software as published. */
export const productVersion = '0.1.0';

/** The discovery document (CDS Hooks 2.0.1, discovery; rows D-01 to D-16). */
export function discovery() {
  return {
    services: [
      {
        hook: servedHook,
        id: serviceId,
        title: 'Hypertension in pregnancy and after birth',
        description:
          'Judges blood pressure, urine protein, symptoms and laboratory results of a pregnant or recently delivered woman against a named guideline: what it is, how urgent, what to do now, what to measure next, where to refer. It supports a clinician and does not replace one.',
        usageRequirements:
          'FHIR R4. Blood pressures are indispensable; without a dated pregnancy (gestational age, due date, last period or ultrasound) the class stays open and the answer says so. Every other key improves the answer.',
        version: '2.0.1',
        prefetch: Object.fromEntries(chartQueries.map((query) => [query.key, query.template])),
        extension: {
          'org.pregnancy-htn.service': {
            productVersion,
            fhirVersion: '4.0.1',
            locales: ['en'],
            guidelines: [...guidelineIds],
            defaultGuideline: defaultGuidelineId,
            prefetch: Object.fromEntries(chartQueries.map((query) => [query.key, query.need])),
          },
        },
      },
    ],
  };
}

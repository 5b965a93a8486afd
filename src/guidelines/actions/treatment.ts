// When a drug is started and how far the pressure is lowered; and aspirin that is due. Data of the edition.
import { step } from '../action-rule.ts';
import type { Edition } from '../edition.ts';
import type { ActionRule } from '../guideline.ts';
import { decidedByPrescriber } from '../sentences.ts';
import { forDrugs, noEmergency, pregnant } from '../states.ts';

/** Start, target and prevention as an edition has them. */
export function treatmentActions(edition: Edition): readonly ActionRule[] {
  const { startDrug, target, prevention } = edition.care;
  const aspirin = prevention.find((rule) => rule.id === 'aspirin');
  const classes = forDrugs(edition);
  return [
    step(
      'start-drug',
      'treatment-option',
      60,
      startDrug.advice.said,
      { all: [pregnant, 'start-drug', classes, { none: ['treated'] }, noEmergency] },
      startDrug.advice.citation,
    ),
    ...(target === undefined
      ? []
      : [
          step(
            'target-on-treatment',
            'treatment-option',
            61,
            target.said,
            { all: [pregnant, classes, { any: ['treated', 'start-drug'] }, noEmergency] },
            target.citation,
          ),
        ]),
    ...(aspirin === undefined
      ? []
      : [
          step(
            'aspirin-due',
            'prevention',
            65,
            `Aspirin to prevent pre-eclampsia is indicated and not on record: ask, and offer it. ${decidedByPrescriber}`,
            'prevention:aspirin-due',
            aspirin.citation,
          ),
        ]),
  ];
}

// Services and hooks in one table: discovery, the reading of a call and its answer are all made from it.
import { toCards } from '../presenters/cds-cards.ts';
import type { CardContext } from '../presenters/card-context.ts';
import type { CardsResponse } from '../presenters/card-types.ts';
import { chartQueries, queriesOf, type ChartQuery } from '../presenters/data-requirements.ts';
import { toFollowUpCards } from '../presenters/follow-up-cards.ts';
import { toMedicineCards } from '../presenters/medicine-cards.ts';
import type { Evaluation } from '../evaluation.ts';

/** A field of a hook's context; `bundle` and `references` have a shape, the others are texts. */
export interface ContextField {
  readonly name: string;
  readonly isRequired: boolean;
  readonly kind: 'user' | 'patient' | 'id' | 'bundle' | 'references';
}

export interface ServedHook {
  readonly name: string;
  /** Version of the published definition; absent for a private hook. */
  readonly version?: string;
  readonly fields: readonly ContextField[];
  /** The context bundle whose resources are judged with the chart. */
  readonly brings?: string;
  /** The context bundle the cards speak about; `selections`, where there are any, narrow it. */
  readonly proposes?: string;
  /** A required key that what the hook brings stands in for. */
  readonly standsFor?: string;
}

export interface CdsService {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly usageRequirements: string;
  readonly hooks: readonly ServedHook[];
  readonly queries: readonly ChartQuery[];
  readonly present: (evaluation: Evaluation, context: CardContext) => CardsResponse;
}

const field = (name: string, kind: ContextField['kind'], isRequired = true): ContextField => ({
  name,
  kind,
  isRequired,
});
const user = field('userId', 'user');
const patient = field('patientId', 'patient');
const encounter = field('encounterId', 'id', false);
const visit = field('encounterId', 'id');

/** The moment vital signs are saved, for which no standard hook exists (checklist H-04). */
export const vitalSignsHook = 'org.pregnancy-htn.vital-signs-saved';

const needs = 'FHIR R4. Without a dated pregnancy (gestational age, due date, last period or ultrasound)';

/**
 * Every service.
 *
 * Notes    1. The context fields are those of the published definitions; where the samples of those differ from
 *             their tables, the reading is tolerant (`readContext`).
 *          2. Cards of a later hook under the same id take the place of those of an earlier one: every answer is the
 *             full set.
 * Source   CDS Hooks Library, hook definitions, as in the checklist section 10
 */
export const cdsServices: readonly CdsService[] = [
  {
    id: 'pregnancy-hypertension',
    title: 'Hypertension in pregnancy and after birth',
    description:
      'Judges blood pressure, urine protein, symptoms and laboratory results of a pregnant or recently delivered woman against a named guideline: what it is, how urgent, what to do now, what to measure next, where to refer. It supports a clinician and does not replace one.',
    usageRequirements: `${needs} the class stays open and the answer says so. Blood pressures are indispensable; every other key improves the answer. Call ${vitalSignsHook} with the new Observations in context.observations (a Bundle) when vital signs are saved.`,
    hooks: [
      { name: 'patient-view', version: '1.0', fields: [user, patient, encounter] },
      { name: 'encounter-start', version: '1.0', fields: [user, patient, visit] },
      {
        name: 'problem-list-item-create',
        version: '0.1.0',
        fields: [user, patient, encounter, field('conditions', 'bundle')],
        brings: 'conditions',
      },
      {
        name: vitalSignsHook,
        fields: [user, patient, encounter, field('observations', 'bundle')],
        brings: 'observations',
        standsFor: 'bloodPressures',
      },
    ],
    queries: chartQueries,
    present: toCards,
  },
  {
    id: 'pregnancy-medicine-safety',
    title: 'Safety of medicines in pregnancy and after birth',
    description:
      'Says which of the medicines being ordered are to be avoided or used with care by a pregnant or recently delivered woman, why, and what publications name instead. It speaks only about the order; the prescriber decides.',
    usageRequirements: `${needs} little can be said of a medicine. What dates the pregnancy is indispensable; every other key improves the answer. Medicines are recognised by ATC, RxNorm or SNOMED CT code.`,
    hooks: [
      {
        name: 'order-select',
        version: '1.0',
        fields: [user, patient, encounter, field('selections', 'references'), field('draftOrders', 'bundle')],
        brings: 'draftOrders',
        proposes: 'draftOrders',
      },
      {
        name: 'order-sign',
        version: '1.0',
        fields: [user, patient, encounter, field('draftOrders', 'bundle')],
        brings: 'draftOrders',
        proposes: 'draftOrders',
      },
      {
        name: 'medication-refill',
        version: '0.1.0',
        fields: [field('userId', 'user', false), patient, encounter, field('medications', 'bundle')],
        brings: 'medications',
        proposes: 'medications',
      },
    ],
    queries: queriesOf(
      [
        'patient',
        'bloodPressures',
        'results',
        'pregnancy',
        'conditions',
        'medications',
        'medicationStatements',
        'user',
      ],
      ['pregnancy'],
    ),
    present: toMedicineCards,
  },
  {
    id: 'pregnancy-follow-up',
    title: 'Follow-up of hypertension in pregnancy and after birth',
    description:
      'At discharge and at booking: whether the next contact comes in time, what is open before she leaves, and the plan of follow-up after birth. It supports a clinician and does not replace one.',
    usageRequirements: `${needs} the class stays open and the answer says so. Blood pressures are indispensable; every other key improves the answer.`,
    hooks: [
      { name: 'encounter-discharge', version: '1.0', fields: [user, patient, visit] },
      {
        name: 'appointment-book',
        version: '1.0',
        fields: [user, patient, encounter, field('appointments', 'bundle')],
        proposes: 'appointments',
      },
    ],
    queries: queriesOf(
      [
        'patient',
        'bloodPressures',
        'results',
        'pregnancy',
        'symptoms',
        'conditions',
        'medications',
        'medicationStatements',
      ],
      ['bloodPressures'],
    ),
    present: toFollowUpCards,
  },
];

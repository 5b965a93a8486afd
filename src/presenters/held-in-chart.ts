// What the chart already holds, so that nothing is proposed twice.
import type { Assessment } from '../findings/finding.ts';
import type { ActionKind, Classification, ConditionId, ReferralLevel } from '../guidelines/guideline.ts';
import type { Evaluation } from '../evaluation.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { classConcept, referralConcept } from './suggested-concepts.ts';

/** Recorded conditions that say the same as a class, or more. Ours: so that a milder entry is not added beside them. */
const saysAsMuch: Readonly<Record<Classification, readonly ConditionId[]>> = {
  eclampsia: ['eclampsia'],
  'imminent-eclampsia': ['pre-eclampsia-severe', 'eclampsia'],
  hellp: ['hellp'],
  'pre-eclampsia-severe-features': ['pre-eclampsia-severe', 'hellp', 'eclampsia'],
  'superimposed-pre-eclampsia': ['superimposed-pre-eclampsia'],
  'postpartum-pre-eclampsia': ['pre-eclampsia', 'pre-eclampsia-severe', 'superimposed-pre-eclampsia'],
  'severe-unconfirmed': ['raised-pressure-finding'],
  'pre-eclampsia': [
    'pre-eclampsia',
    'pre-eclampsia-severe',
    'superimposed-pre-eclampsia',
    'hellp',
    'eclampsia',
  ],
  'gestational-hypertension-severe-range': ['gestational-hypertension'],
  'postpartum-hypertension': ['postpartum-hypertension', 'gestational-hypertension', 'chronic-hypertension'],
  'gestational-hypertension': ['gestational-hypertension'],
  'cannot-classify': [],
  'white-coat-hypertension': ['white-coat-hypertension'],
  'chronic-hypertension': ['chronic-hypertension'],
  'hypertension-timing-unknown': [
    'hypertension-in-pregnancy-unspecified',
    'chronic-hypertension',
    'gestational-hypertension',
  ],
  'masked-hypertension': [],
  'raised-unconfirmed': ['raised-pressure-finding'],
  'isolated-proteinuria': ['proteinuria'],
  'transient-hypertension': ['transient-hypertension', 'raised-pressure-finding'],
  normotensive: [],
};

const openStatuses: readonly string[] = ['draft', 'active', 'on-hold'];

/** The active Condition in the chart that already says this class; undefined when there is none. */
export function heldCondition(timeline: Timeline, classification: Classification): string | undefined {
  const codes = new Set(
    (['before-20-weeks', 'from-20-weeks', 'after-birth', 'unknown'] as const).flatMap((period) =>
      (classConcept(classification, period)?.coding ?? []).map(codeKey),
    ),
  );
  return timeline.conditions.find(
    (known) =>
      known.state === 'active' &&
      (saysAsMuch[classification].includes(known.condition) ||
        known.codes.some((code) => codes.has(comparable(code)))),
  )?.source.reference;
}

/** The open request in the chart that already asks for this level of referral; undefined when there is none. */
export function heldReferral(timeline: Timeline, level: ReferralLevel): string | undefined {
  const codes = new Set((referralConcept(level).coding ?? []).map(codeKey));
  return timeline.requests.findLast(
    (request) =>
      openStatuses.includes(request.status) && request.codes.some((code) => codes.has(comparable(code))),
  )?.source.reference;
}

/** What was proposed and what the chart holds of it, as far as `isDone` looks at it. */
interface Held {
  readonly conditions: readonly unknown[];
  readonly referral?: unknown;
  readonly heldConditions: readonly string[];
  readonly heldReferral?: string;
}

/**
 * Does the chart already show everything the card would propose, so that it would only repeat itself?
 *
 * Returns  true when every diagnosis is recorded and the referral is open and was written after the newest pressure;
 *          without a referral, only when nothing presses and no step but the usual follow-up is advised
 * Throws   never
 * Notes    1. Never in an emergency. A reading later than the referral brings the card back.
 * Source   ours; pain-points section 3 (a repeated card is a card less read)
 */
export function isDone({ assessment, timeline }: Evaluation, held: Held): boolean {
  if (assessment.urgency === 'emergency' || held.heldConditions.length === 0) return false;
  if (held.conditions.length > 0 || held.referral !== undefined) return false;
  if (assessment.medicines.some(({ severity }) => severity === 'avoid')) return false;
  if (held.heldReferral === undefined) return isCalm(assessment);
  const written = timeline.requests.find(({ source }) => source.reference === held.heldReferral)?.at;
  const newest = Math.max(
    ...[...timeline.pressures, ...timeline.homePressures].map(({ at }) => at.latest),
    -Infinity,
  );
  return written !== undefined && written.latest >= newest;
}

/** Steps that accompany a known state; every other kind asks for something the chart does not show as done. */
const accompanying: readonly ActionKind[] = [
  'follow-up',
  'after-birth',
  'long-term',
  'tell-the-woman',
  'delivery-review',
  'measurement-quality',
];

function isCalm({ urgency, actions }: Assessment): boolean {
  const presses = urgency !== 'within-7-days' && urgency !== 'routine';
  return !presses && actions.every(({ kind }) => accompanying.includes(kind));
}

function codeKey(coding: {
  readonly system?: string | undefined;
  readonly code?: string | undefined;
}): string {
  return comparable(`${coding.system ?? ''}|${coding.code ?? ''}`);
}

/** Exports often leave out the dot of an ICD code; systems are kept apart. */
function comparable(systemAndCode: string): string {
  const [system = '', code = ''] = systemAndCode.split('|');
  return `${system}|${code.replace('.', '').toUpperCase()}`;
}

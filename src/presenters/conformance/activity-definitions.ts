// What a guideline asks to do again or to whom it refers, as ActivityDefinitions.
import type { ActivityDefinition, Duration } from 'fhir/r4.js';
import type { ActionRule, Guideline, ReferralRule, Threshold, Urgency } from '../../guidelines/guideline.ts';
import { loinc } from '../../terminology/loinc.ts';
import { systems } from '../../terminology/systems.ts';
import { referralConcept } from '../suggested-concepts.ts';
import { citedArtifacts, header } from './header.ts';

/** Steps that are worth a request of their own. */
export const isRepeat = (rule: ActionRule): boolean => rule.kind === 'repeat-pressure';

/** Id of the ActivityDefinition of a step or a referral of a guideline. */
export const activityId = (guideline: Guideline, name: string): string => `${guideline.id}-${name}`;

/** Id of a referral: by level, once. */
export const referralActivity = ({ level }: ReferralRule): string => `refer-${level}`;

/** Every ActivityDefinition of a guideline: its repeats, then its referrals. */
export function activityDefinitions(guideline: Guideline): readonly ActivityDefinition[] {
  return [
    ...guideline.actionRules.filter(isRepeat).map((rule) => repeatActivity(guideline, rule)),
    ...guideline.referralRules.map((rule) => referral(guideline, rule)),
  ];
}

function common(guideline: Guideline, name: string, description: string) {
  const title = `${name.replaceAll('-', ' ')} (${guideline.id})`;
  const { version } = guideline;
  return {
    ...header('ActivityDefinition', {
      id: activityId(guideline, name),
      title: `${title.slice(0, 1).toUpperCase()}${title.slice(1)}`,
      description,
      version,
      status: guideline.status === 'active' ? 'active' : 'retired',
    }),
    subjectCodeableConcept: {
      coding: [{ system: 'http://hl7.org/fhir/resource-types', code: 'Patient', display: 'Patient' }],
    },
    kind: 'ServiceRequest' as const,
    intent: 'proposal' as const,
    doNotPerform: false,
  };
}

function repeatActivity(guideline: Guideline, rule: ActionRule): ActivityDefinition {
  const [panel] = loinc['blood-pressure-panel'];
  const { code, display } = panel;
  return {
    ...common(guideline, rule.id, rule.sentence.replace('{time}', 'the time stated')),
    relatedArtifact: citedArtifacts([rule.citation]),
    code: { coding: [{ system: systems.loinc, code, display }], text: 'Repeat the blood pressure' },
    ...(rule.clock === undefined ? {} : { timingDuration: duration(rule.clock.add) }),
  };
}

function referral(guideline: Guideline, rule: ReferralRule): ActivityDefinition {
  return {
    ...common(guideline, referralActivity(rule), rule.sentence),
    relatedArtifact: citedArtifacts([rule.citation]),
    code: referralConcept(rule.level),
  };
}

function duration({ value, unit }: Threshold): Duration {
  return { value, unit, system: systems.ucum, code: unit };
}

const priorities = {
  emergency: 'stat',
  'same-day': 'asap',
  'within-48-hours': 'urgent',
  'within-7-days': 'routine',
  routine: 'routine',
} as const satisfies Readonly<Record<Urgency, string>>;

/** The request priority that an urgency stands for. */
export const priorityOf = (urgency: Urgency) => priorities[urgency];

// A guideline as PlanDefinition: its classes, urgencies, referrals and steps, each with its condition and source.
import type { PlanDefinition, PlanDefinitionAction } from 'fhir/r4.js';
import type {
  ActionRule,
  ClassRule,
  Guideline,
  ReferralRule,
  UrgencyRule,
} from '../../guidelines/guideline.ts';
import { citationsIn, type RuleData } from '../rule-sources.ts';
import { classWords, codeSystems, referralWords, urgencyWords } from '../vocabulary.ts';
import { sentenceCase } from '../words.ts';
import { activityId, isRepeat, priorityOf, referralActivity } from './activity-definitions.ts';
import { canonical, citedArtifacts, header } from './header.ts';
import { needExpression } from './need-expression.ts';

/**
 * The guideline as an event-condition-action rule.
 *
 * Given    guideline   whose rules are written out
 *          mark        fingerprint of its data, hexadecimal
 * Returns  four groups of actions: class, urgency, referral, steps; the values stand in the Library of the same id.
 * Notes    1. Conditions are FHIRPath over `%met`, the ids answered met (see the Library).
 */
export function planDefinition(guideline: Guideline, mark: string): PlanDefinition {
  const { id, title, version, remark } = guideline;
  return {
    ...header('PlanDefinition', {
      id,
      title,
      version,
      status: guideline.status === 'active' ? 'active' : 'retired',
      description: `Hypertension in pregnancy and after birth under: ${title}. ${remark}`,
    }),
    identifier: [{ system: canonical('NamingSystem', 'rule-set-fingerprint'), value: mark }],
    type: {
      coding: [
        {
          system: 'http://terminology.hl7.org/CodeSystem/plan-definition-type',
          code: 'eca-rule',
          display: 'ECA Rule',
        },
      ],
    },
    subjectCodeableConcept: {
      coding: [{ system: 'http://hl7.org/fhir/resource-types', code: 'Patient', display: 'Patient' }],
    },
    relatedArtifact: citedArtifacts(citationsIn(rulesOf(guideline))),
    library: [`${canonical('Library', id)}|${version}`],
    action: [
      group(
        'classification',
        'What it is',
        guideline.classRules.map((rule) => classAction(guideline, rule)),
      ),
      group(
        'urgency',
        'How urgent it is',
        guideline.urgencyRules.map((rule) => urgencyAction(guideline, rule)),
      ),
      group(
        'referral',
        'Where to',
        guideline.referralRules.map((rule) => referralAction(guideline, rule)),
      ),
      group(
        'steps',
        'What to do',
        guideline.actionRules.map((rule) => stepAction(guideline, rule)),
      ),
    ],
  };
}

function rulesOf({ classRules, urgencyRules, referralRules, actionRules }: Guideline) {
  return [classRules, urgencyRules, referralRules, actionRules.map(({ citation }) => citation)];
}

function group(id: string, title: string, action: PlanDefinitionAction[]): PlanDefinitionAction {
  return { id, title, groupingBehavior: 'logical-group', selectionBehavior: 'any', action };
}

function conditional(
  guideline: Guideline,
  id: string,
  title: string,
  description: string,
  rule: Pick<RuleData, 'when' | 'citation'>,
): PlanDefinitionAction {
  return {
    id,
    title,
    description,
    documentation: citedArtifacts([rule.citation]),
    condition: [{ kind: 'applicability', expression: needExpression(rule.when, guideline) }],
  };
}

function classAction(guideline: Guideline, rule: ClassRule): PlanDefinitionAction {
  const display = classWords[rule.classification];
  return {
    ...conditional(guideline, `class-${rule.id}`, sentenceCase(display), rule.sentence, rule),
    code: [{ coding: [{ system: codeSystems.classification, code: rule.classification, display }] }],
  };
}

function urgencyAction(guideline: Guideline, rule: UrgencyRule): PlanDefinitionAction {
  const display = urgencyWords[rule.urgency];
  return {
    ...conditional(guideline, `urgency-${rule.id}`, sentenceCase(display), rule.sentence, rule),
    priority: priorityOf(rule.urgency),
    code: [{ coding: [{ system: codeSystems.urgency, code: rule.urgency, display }] }],
  };
}

function referralAction(guideline: Guideline, rule: ReferralRule): PlanDefinitionAction {
  const name = referralActivity(rule);
  return {
    ...conditional(guideline, name, sentenceCase(referralWords[rule.level]), rule.sentence, rule),
    definitionCanonical: activityCanonical(guideline, name),
  };
}

function stepAction(guideline: Guideline, rule: ActionRule): PlanDefinitionAction {
  const title = sentenceCase(rule.id.replaceAll('-', ' '));
  const sentence = rule.sentence.replace('{time}', 'the time stated');
  return {
    ...conditional(guideline, `step-${rule.id}`, title, sentence, rule),
    ...(isRepeat(rule) ? { definitionCanonical: activityCanonical(guideline, rule.id) } : {}),
  };
}

function activityCanonical(guideline: Guideline, name: string): string {
  return `${canonical('ActivityDefinition', activityId(guideline, name))}|${guideline.version}`;
}

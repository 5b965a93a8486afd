// How far measurements can be trusted. Runs the measurement rules; nothing clinical inside.
import type { QualityNotice } from '../../findings/finding.ts';
import type { QualityCheck, QualityRule } from '../../guidelines/quality-rule.ts';
import { ofReading, ofResult, ofUrine } from '../answer.ts';
import type { View } from '../view.ts';
import { cuffSize } from './cuff-size.ts';
import { doubtAbout, isRecent, recentReadings, type Doubt } from './recent.ts';
import {
  automatedNearLimit,
  palpated,
  position,
  pulsePressure,
  rest,
  timeNotExact,
  unusablePressures,
  type RuleOf,
} from './single-readings.ts';
import { firstMorningRatio, stripDilute, stripDoubtful, stripReadByEye } from './urine.ts';
import { armChanged, armsDiffer, sameValue, visitDifference } from './visits.ts';

type RuleByCheck = { readonly [K in QualityCheck['check']]: RuleOf<K> };
type Checks = {
  readonly [K in keyof RuleByCheck]: (view: View, rule: RuleByCheck[K]) => Doubt | undefined;
};

const checks: Checks = {
  'unusable-pressure': unusablePressures,
  'pulse-pressure': pulsePressure,
  'cuff-size': cuffSize,
  rest,
  position,
  'automated-near-limit': automatedNearLimit,
  palpated,
  'visit-difference': visitDifference,
  'time-not-exact': timeNotExact,
  'arm-changed': armChanged,
  'arms-differ': armsDiffer,
  'same-value': sameValue,
  'strip-doubtful': stripDoubtful,
  'strip-dilute': stripDilute,
  'strip-read-by-eye': stripReadByEye,
  'first-morning-ratio': firstMorningRatio,
  preliminary,
};

/**
 * What is doubtful about how things were measured.
 *
 * Given    view   of one woman
 *          rules  the measurement rules, in the order in which to say them
 * Returns  one notice for each rule that finds something, with everything it found; empty when nothing is doubtful
 * Throws   never
 * Notes    1. Only recent measurements of this pregnancy are looked at, by the time each rule names.
 *          2. What was not recorded raises no doubt: a missing arm, cuff or position is silence.
 *          3. A notice never changes a class or an urgency.
 */
export function judgeQuality(view: View, rules: readonly QualityRule[]): readonly QualityNotice[] {
  return rules.flatMap((rule) => {
    const doubt = ask(view, rule);
    if (doubt === undefined) return [];
    return [
      {
        rule: rule.id,
        grade: rule.grade,
        sentence: doubt.detail === undefined ? rule.sentence : `${rule.sentence} ${doubt.detail}`,
        evidence: doubt.evidence,
        source: rule.citation,
      },
    ];
  });
}

/** Asks one rule: the check of its name, with the rule. */
function ask<K extends keyof RuleByCheck>(
  view: View,
  rule: RuleByCheck[K] & { readonly check: K },
): Doubt | undefined {
  const name: K = rule.check;
  return checks[name](view, rule);
}

/** Values sent as preliminary. */
function preliminary(view: View, rule: RuleOf<'preliminary'>): Doubt | undefined {
  const readings = recentReadings(view, rule.freshWithin).filter(({ sources }) =>
    sources.some((source) => source.preliminary),
  );
  const isMeant = ({
    at,
    source,
  }: (typeof view.timeline.laboratory)[number] | (typeof view.timeline.urineProteins)[number]): boolean =>
    source.preliminary && isRecent(view, at, rule.freshWithin);
  return doubtAbout([
    ...readings.flatMap(ofReading),
    ...view.timeline.urineProteins.filter(isMeant).map((result) => ofUrine(result)),
    ...view.timeline.laboratory.filter(isMeant).map((result) => ofResult(result)),
  ]);
}

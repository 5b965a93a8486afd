// Findings that count as diagnoses, sent as observations: abruption, a fetus that grows too little or has died.
import type { Observation } from 'fhir/r4.js';
import type { Received } from '../bundle/read-bundle-types.ts';
import type { ConditionId } from '../guidelines/guideline.ts';
import { observedFindings } from '../terminology/observed-findings.ts';
import { systemCodesOf } from './coded-value.ts';
import { conditionsOf } from './conditions.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { effectiveMoment } from './effective-moment.ts';
import { wordingOf } from './fields.ts';
import { readPresence } from './presence.ts';
import { sourceOf } from './source.ts';
import type { KnownCondition } from './timeline.ts';
import { isUnusable, notAsked, type NotAsked } from './unusable.ts';

const observed: ReadonlySet<ConditionId> = new Set(observedFindings);

/** The findings an observation's code names; empty when it names none that is read so. */
export const findingsIn = (code: unknown): readonly ConditionId[] =>
  conditionsOf(code).filter((each) => observed.has(each));

/**
 * Is the finding there?
 *
 * Given    received  an observation whose code names one
 *          context   `asOf` and the zone of the facility
 * Returns  one entry for each finding; not-needed when it says that there is none
 *          unusable  as `readPresence` and `effectiveMoment`; without a time it counts, undated
 * Throws   never
 * Notes    1. A finding in the code, without any value, says that it is there.
 * Source   terminology.md section 5, findings as observations
 */
export function readFinding(
  received: Received<Observation>,
  context: TimelineContext,
): readonly KnownCondition[] | NotAsked | Unusable {
  const { code } = received.resource;
  const presence = readPresence(received.resource);
  if (presence.kind === 'unusable' && presence.code !== 'value-missing') return presence;
  if (presence.kind === 'usable' && presence.presence === 'absent')
    return notAsked('The observation says that there is none.');
  const at = effectiveMoment(received, context);
  if (isUnusable(at) && at.code !== 'time-missing') return at;
  const codes = systemCodesOf(code);
  return findingsIn(code).map((condition) => ({
    condition,
    state: 'active',
    certainty: 'confirmed',
    codes,
    asSent: wordingOf(code) ?? codes[0] ?? '',
    source: sourceOf(received),
    ...(isUnusable(at) ? {} : { onset: at }),
  }));
}

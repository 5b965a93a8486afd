// ReadBundle to Timeline: each resource to its reader, each list in time order, nothing lost.
import type { NotNeeded, ReadBundle, SetAside } from '../bundle/read-bundle-types.ts';
import type { Issue } from '../errors.ts';
import { readPressures } from './blood-pressure.ts';
import { openCollector } from './collector.ts';
import type { TimelineContext } from './context.ts';
import { readPregnancy } from './pregnancy-facts.ts';
import { openFacts, readResource } from './read-resource.ts';
import type { Facts } from './read-resource.ts';
import { sortFacts, sourceText } from './sort-facts.ts';
import type { Timeline } from './timeline.ts';

export type BuildOptions = Pick<
  TimelineContext,
  'asOf' | 'asOfIsNow' | 'values' | 'facilityOffsetMinutes' | 'defaultPressureUnit'
>;

export interface BuiltTimeline {
  readonly timeline: Timeline;
  readonly setAside: readonly SetAside[];
  readonly notNeeded: readonly NotNeeded[];
  readonly issues: readonly Issue[];
}

/**
 * One woman's clinical facts up to `asOf`.
 *
 * Given    bundle   her usable resources
 *          options  time of the evaluation, values, zone of the facility, unit of pressures sent without one
 * Returns  the timeline, every list oldest first; what was set aside and what no rule asks for; issues of
 *          resources that were used all the same. Each usable resource is the source of a fact, or set aside,
 *          or not needed; the woman's own Patient is named by the timeline
 * Throws   never, but for a threshold of time in a unit that is none
 * Notes    1. Facts of other pregnancies stay in the lists: `placeOf` tells where a fact lies.
 *          2. The order of entries decides nothing.
 *          3. Facts later than `asOf` are set aside, beyond a tolerance for clocks that differ. Where `asOf` is now, the
 *             numbers of a pressure are kept for urgency.
 */
export function buildTimeline(bundle: ReadBundle, options: BuildOptions): BuiltTimeline {
  const { say, ...lists } = openCollector();
  const context: TimelineContext = { ...say, ...optionsOf(options), bundle };
  const sorted = openFacts();
  for (const received of bundle.usable) readResource(received, sorted, context);
  const laboratory = sortFacts(
    sorted.laboratory,
    (fact) => fact.at,
    (fact) => `${fact.analyte} ${sourceText(fact)}`,
  );
  const pregnancy = readPregnancy({ ...sorted, laboratory }, context);
  return {
    timeline: { asOf: options.asOf, ...pregnancy, ...timelineLists(sorted, context), laboratory },
    ...lists,
  };
}

function optionsOf({
  asOf,
  asOfIsNow,
  values,
  facilityOffsetMinutes,
  defaultPressureUnit,
}: BuildOptions): BuildOptions {
  return {
    asOf,
    values,
    ...(asOfIsNow === undefined ? {} : { asOfIsNow }),
    ...(facilityOffsetMinutes === undefined ? {} : { facilityOffsetMinutes }),
    ...(defaultPressureUnit === undefined ? {} : { defaultPressureUnit }),
  };
}

function timelineLists(
  facts: Facts,
  context: TimelineContext,
): Omit<Timeline, 'asOf' | 'woman' | 'pregnancy' | 'laboratory'> {
  return {
    ...readPressures(facts.pressures, facts.pressureCircumstances, context),
    urineProteins: sortFacts(facts.urineProteins, ({ at }) => at, sourceText),
    urineSigns: sortFacts(facts.urineSigns, ({ at }) => at, sourceText),
    symptoms: sortFacts(
      facts.symptoms,
      ({ at }) => at,
      (fact) => `${fact.symptom} ${fact.presence} ${sourceText(fact)}`,
    ),
    conditions: sortFacts(
      facts.conditions,
      ({ onset, recorded }) => onset ?? recorded,
      (fact) => `${fact.condition} ${sourceText(fact)}`,
    ),
    medicines: sortFacts(
      facts.medicines,
      ({ start }) => start,
      (fact) => `${fact.medicine} ${sourceText(fact)}`,
    ),
    requests: sortFacts(
      facts.requests,
      ({ at }) => at,
      ({ codes, source }) => `${codes.join(' ')} ${source.reference}`,
    ),
  };
}

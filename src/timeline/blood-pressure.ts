// All blood pressures of a bundle as readings, averages, and numbers that may not classify.
import type { Received } from '../bundle/read-bundle-types.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { readFaultyPressures } from './faulty-pressure.ts';
import { fieldsOf } from './fields.ts';
import { withTechniqueBeside } from './pressure-beside.ts';
import { candidatesOf } from './pressure-candidate.ts';
import type { PressureCandidate } from './pressure-candidate.ts';
import { judgePressure } from './pressure-judgement.ts';
import type { Judgement } from './pressure-judgement.ts';
import { joinMembers } from './pressure-members.ts';
import { pairPressures } from './pressure-pairing.ts';
import { isMeanArterial, isVitalSignsPanel, readPressureParts } from './pressure-panel.ts';
import type { PressureParts } from './pressure-panel.ts';
import { sortFacts, sourceText } from './sort-facts.ts';
import type { MeanPressure, PressureReading, Timeline, UnusablePressure } from './timeline.ts';
import { unusable } from './unusable.ts';

export type Pressures = Pick<Timeline, 'pressures' | 'homePressures' | 'meanPressures' | 'unusablePressures'>;

/**
 * Which blood pressures were taken?
 *
 * Given    observations  those for which `isPressure` holds, in any order
 *          beside        observations of how a pressure was taken
 *          context       time of the evaluation, units, and where to say what was not used
 * Returns  readings in a clinic or of unknown setting, readings at home, averages, and numbers that may not
 *          classify; each list oldest first
 * Throws   never
 * Notes    1. Every observation ends once: as a source of a fact, set aside, or not needed. One that gave a
 *             fact and also had a part that was not used is reported as an issue.
 * Source   fhir checklist 4.3; terminology.md section 1; decisions 5 and 14.
 */
export function readPressures(
  observations: readonly Received[],
  beside: readonly Received[],
  context: TimelineContext,
): Pressures {
  const isContainer = (received: Received): boolean => isVitalSignsPanel(fieldsOf(received.resource));
  const parts = observations.map((received) => readPressureParts(received, context));
  const panels = parts
    .filter((part) => part.values.length === 0 && hasMembers(part))
    .map(({ received }) => received);
  const read = parts.flatMap((part) => candidatesOf(part, context));
  const { candidates, panelsWithMembers } = joinMembers(
    panels.filter((panel) => !isContainer(panel)),
    read,
    context,
  );
  const paired = pairPressures(candidates, context.values);
  const judged = withTechniqueBeside(paired, beside, context).map((candidate) => ({
    candidate,
    judgement: judgePressure(candidate, context),
  }));
  account(parts, judged, panelsWithMembers, context);
  return pressuresIn(
    judged.map(({ judgement }) => judgement),
    readFaultyPressures(context.bundle.faulty, context),
  );
}

function hasMembers({ received }: PressureParts): boolean {
  return fieldsOf(received.resource)['hasMember'] !== undefined;
}

interface Judged {
  readonly candidate: PressureCandidate;
  readonly judgement: Judgement;
}

/** Says of each observation once what became of it. */
function account(
  parts: readonly PressureParts[],
  judged: readonly Judged[],
  panelsWithMembers: ReadonlySet<Received>,
  context: TimelineContext,
): void {
  const used = new Set<number>();
  const reasons = new Map<number, Unusable[]>();
  const addReason = (index: number, why: Unusable): void => {
    reasons.set(index, [...(reasons.get(index) ?? []), why]);
  };
  for (const part of parts) for (const failure of part.failures) addReason(part.received.index, failure);
  for (const { candidate, judgement } of judged) {
    for (const { index } of candidate.sources) {
      if (judgement.reading !== undefined || judgement.mean !== undefined) used.add(index);
      if (judgement.why !== undefined) addReason(index, judgement.why);
    }
    const [first] = candidate.sources;
    if (first !== undefined && isReported(reasons.get(first.index))) continue;
    reportMissingHalf(judgement, candidate, context);
  }
  for (const { received } of parts) {
    const why = reasons.get(received.index) ?? [];
    if (used.has(received.index)) for (const reason of why) report(received, reason, context);
    else conclude(received, why, panelsWithMembers, context);
  }
}

/** F-P05: one half is used, and what is missing is said; a pressure felt at the wrist has no other half. */
function reportMissingHalf(
  { reading, mean }: Judgement,
  { sources, isStandAlone, technique }: PressureCandidate,
  context: TimelineContext,
): void {
  const found = reading ?? mean;
  const [received] = sources;
  if (found === undefined || received === undefined || technique.method === 'palpation') return;
  if (found.systolicMmHg !== undefined && found.diastolicMmHg !== undefined) return;
  const missing = found.systolicMmHg === undefined ? 'systolic' : 'diastolic';
  context.issue(received, {
    severity: 'warning',
    code: 'pressure-half-missing',
    type: 'required',
    element: isStandAlone ? 'code' : 'component',
    message: `The ${missing} pressure is missing: send both in one panel, ${missing === 'systolic' ? '8480-6' : '8462-4'} as a component.`,
  });
}

function report(received: Received, { code, element, message }: Unusable, context: TimelineContext): void {
  if (isPlainlyAbsent(code)) return;
  context.issue(received, { severity: 'warning', code, type: 'value', element, message });
}

const isPlainlyAbsent = (code: Unusable['code']): boolean =>
  code === 'value-absent-with-reason' || code === 'value-missing';

/** A fault of the other half is an issue of its own, which says more than that it is missing. */
const isReported = (reasons: readonly Unusable[] | undefined): boolean =>
  reasons?.some(({ code }) => !isPlainlyAbsent(code)) === true;

/** The reason said first: a fault in the numbers, before a value that is absent. */
const leading: readonly Unusable['code'][] = [
  'value-out-of-range',
  'diastolic-not-below-systolic',
  'unit-missing',
];

function conclude(
  received: Received,
  why: readonly Unusable[],
  panelsWithMembers: ReadonlySet<Received>,
  context: TimelineContext,
): void {
  const fields = fieldsOf(received.resource);
  const fault = why.find((reason) => leading.includes(reason.code));
  if (fault !== undefined) context.setAside(received, fault);
  else if (isMeanArterial(fields))
    context.notNeeded(received, 'a mean arterial pressure; no rule asks for it');
  else if (isVitalSignsPanel(fields) || panelsWithMembers.has(received))
    context.notNeeded(received, 'a panel; its members are read by themselves');
  else if (fields['hasMember'] !== undefined && why.every((reason) => reason.code === 'value-missing'))
    context.setAside(
      received,
      unusable(
        'reference-unresolved',
        'hasMember',
        'None of the members of this panel can be used: send them too.',
      ),
    );
  else
    context.setAside(
      received,
      why[0] ?? unusable('value-missing', 'component', 'No pressure was sent: send two components.'),
    );
}

function pressuresIn(judgements: readonly Judgement[], setAside: readonly UnusablePressure[]): Pressures {
  const readings: PressureReading[] = [];
  const homeReadings: PressureReading[] = [];
  const means: MeanPressure[] = [];
  const unusables: UnusablePressure[] = [...setAside];
  for (const { reading, mean, unusablePressure } of judgements) {
    if (reading !== undefined) (reading.setting === 'home' ? homeReadings : readings).push(reading);
    if (mean !== undefined) means.push(mean);
    if (unusablePressure !== undefined) unusables.push(unusablePressure);
  }
  return {
    pressures: sortFacts(readings, ({ at }) => at, sourceText),
    homePressures: sortFacts(homeReadings, ({ at }) => at, sourceText),
    meanPressures: sortFacts(means, ({ from }) => from, sourceText),
    unusablePressures: sortFacts(unusables, ({ at }) => at, sourceText),
  };
}

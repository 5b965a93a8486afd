// Panels that hold their pressures as members: which members are one reading. Hands on candidates.
import type { Received } from '../bundle/read-bundle-types.ts';
import type { TimelineContext } from './context.ts';
import { effectiveSpan } from './effective-moment.ts';
import { fieldsOf, listOf } from './fields.ts';
import type { PressureCandidate } from './pressure-candidate.ts';
import { joined } from './pressure-candidate.ts';
import { circumstancesOf } from './pressure-technique.ts';
import { isUnusable } from './unusable.ts';

/**
 * Candidates after joining the members of each panel that has members and no values of its own.
 *
 * Given    panels      panels of blood pressure without a value of their own
 *          candidates  of all other observations of blood pressure
 *          context     the bundle, to resolve members
 * Returns  candidates, the two halves of a panel being one of them with the panel among its sources; and the
 *          panels of which a member was found
 * Throws   never
 * Notes    1. A member's own status and time count; a member without a time takes the panel's.
 *          2. A single half among the members may still find its other half outside the panel.
 *          3. A panel with more than one systolic or diastolic member joins nothing: its members are paired
 *             like any stand-alone values.
 * Source   fhir checklist F-P04.
 */
export function joinMembers(
  panels: readonly Received[],
  candidates: readonly PressureCandidate[],
  context: TimelineContext,
): { readonly candidates: readonly PressureCandidate[]; readonly panelsWithMembers: ReadonlySet<Received> } {
  const panelsWithMembers = new Set<Received>();
  if (panels.length === 0) return { candidates, panelsWithMembers };
  const byIndex = new Map<number, PressureCandidate[]>();
  for (const candidate of candidates)
    for (const { index } of candidate.sources) byIndex.set(index, [...(byIndex.get(index) ?? []), candidate]);
  const remaining = new Set(candidates);
  for (const panel of panels) {
    const members = membersOf(panel, context).flatMap((member) => byIndex.get(member.index) ?? []);
    if (members.length > 0) panelsWithMembers.add(panel);
    const free = members.filter((member) => remaining.has(member));
    const reading = readingOf(panel, free, context);
    if (reading === undefined) continue;
    for (const member of free) remaining.delete(member);
    remaining.add(reading);
  }
  return { candidates: [...remaining], panelsWithMembers };
}

function membersOf(panel: Received, context: TimelineContext): readonly Received[] {
  return listOf(fieldsOf(panel.resource)['hasMember']).flatMap((reference) => {
    const member = context.bundle.resolve(reference, panel);
    return member === undefined ? [] : [member];
  });
}

function readingOf(
  panel: Received,
  members: readonly PressureCandidate[],
  context: TimelineContext,
): PressureCandidate | undefined {
  const [systolic, ...otherSystolics] = members.filter((member) => member.systolic !== undefined);
  const [diastolic, ...otherDiastolics] = members.filter((member) => member.diastolic !== undefined);
  const isPair = otherSystolics.length === 0 && otherDiastolics.length === 0 && systolic !== diastolic;
  if (!isPair) return undefined;
  if (systolic === undefined || diastolic === undefined) {
    const half = systolic ?? diastolic;
    return half && { ...withPanel(half, panel, context), isStandAlone: half.isStandAlone };
  }
  return systolic.isMean === diastolic.isMean
    ? withPanel(joined(systolic, diastolic), panel, context)
    : undefined;
}

function withPanel(reading: PressureCandidate, panel: Received, context: TimelineContext): PressureCandidate {
  const { technique, arm } = circumstancesOf(panel, listOf(fieldsOf(panel.resource)['component']), context);
  const time =
    isUnusable(reading.time) && reading.time.code === 'time-missing'
      ? effectiveSpan(panel, context)
      : reading.time;
  return {
    ...(arm === undefined ? {} : { arm }),
    ...reading,
    time,
    technique: { ...technique, ...reading.technique },
    sources: [...reading.sources, panel],
    isStandAlone: false,
  };
}

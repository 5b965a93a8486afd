// Every way into a class or an urgency, as probes.
import type { Probe } from '../../support/probe.ts';
import { asOf, everyEdition } from '../limits/limit-row.ts';
import { intoClasses } from './ways-into-classes.ts';
import { intoUrgency } from './ways-into-urgency.ts';
import { longAfter } from './ways-long-after.ts';

export const wayProbes: readonly (readonly [title: string, probes: readonly Probe[]])[] = [
  ...intoClasses,
  ...intoUrgency,
  ...longAfter,
].map(({ source, editions = everyEdition, given, title, ...expected }) => [
  `${title} (${source})`,
  editions.map((guideline) => ({ title, guideline, woman: { asOf, sent: given }, ...expected })),
]);

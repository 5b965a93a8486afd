// Every probe of the tables in these folders, for the mutation of the guidelines as data (test/heavy/mutation).
import type { Probe } from '../support/probe.ts';
import { placeProbes } from './classes/takes-the-place.ts';
import { wayProbes } from './classes/ways-in.ts';
import { limitProbes } from './limits/index.ts';
import { listProbes } from './lists/index.ts';

export const everyProbe: readonly Probe[] = [
  ...limitProbes,
  ...listProbes,
  ...placeProbes,
  ...wayProbes,
].flatMap(([, probes]) => probes);

// Classes beside each other, and the ways into each of them; expected classes and urgency from the clinical rules and decisions.
import { describe, expect, it } from 'vitest';
import { timelineValues } from '../../src/guidelines/registry.ts';
import { applyRules } from '../../src/rules/apply-rules.ts';
import { guideline } from '../support/assess.ts';
import { faultsOf, timelineOf, type Probe } from '../support/probe.ts';
import { placeProbes } from './classes/takes-the-place.ts';
import { wayProbes } from './classes/ways-in.ts';

const faults = (probe: Probe): readonly string[] =>
  faultsOf(probe, applyRules(timelineOf(probe), guideline(probe.guideline), timelineValues).assessment);

describe('a disorder', () => {
  it.each(placeProbes)('%s', (_title, probes) => {
    expect(probes.flatMap(faults)).toEqual([]);
  });
});

describe('a way in', () => {
  it.each(wayProbes)('%s', (_title, probes) => {
    expect(probes.flatMap(faults)).toEqual([]);
  });
});

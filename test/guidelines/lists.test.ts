// Every name in a list of a question has a woman of her own: with it the question is met, with any other name it is not.
import { describe, expect, it } from 'vitest';
import { timelineValues } from '../../src/guidelines/registry.ts';
import { applyRules } from '../../src/rules/apply-rules.ts';
import { guideline } from '../support/assess.ts';
import { faultsOf, timelineOf, type Probe } from '../support/probe.ts';
import { listProbes } from './lists/index.ts';

const faults = (probe: Probe): readonly string[] =>
  faultsOf(probe, applyRules(timelineOf(probe), guideline(probe.guideline), timelineValues).assessment);

describe('a list holds what its sources name, and nothing else', () => {
  it.each(listProbes)('%s', (_title, probes) => {
    expect(probes.flatMap(faults)).toEqual([]);
  });
});

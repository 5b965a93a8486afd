// Every limit of every edition below, at and above it, in every accepted unit. Expected values are typed from the
// clinical rules and decisions, named beside each row; none comes from our own data.
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import { faultsOf, type Probe } from '../support/probe.ts';
import { bundleOf } from '../support/resources.ts';
import { limitProbes } from './limits/index.ts';

/** Through the public door. */
function faults(probe: Probe): readonly string[] {
  const { woman, guideline } = probe;
  if (!('sent' in woman)) throw new Error('a limit is probed with what was sent');
  return faultsOf(probe, evaluate(bundleOf(woman.sent), { asOf: woman.asOf, guideline }).assessment);
}

describe('every edition that prints it keeps the limit', () => {
  it.each(limitProbes)('%s', (_title, probes) => {
    expect(probes.flatMap(faults)).toEqual([]);
  });
});

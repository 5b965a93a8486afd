// Every limit of every edition below, at and above it, in every accepted unit. Expected values are typed from the
// clinical rules and decisions, named beside each row; none comes from our own data.
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import { faultsOf, faultsOfAll } from '../support/probe.ts';
import { bundleOf } from '../support/resources.ts';
import { limitProbes } from './limits/index.ts';

describe('every edition that prints it keeps the limit', () => {
  it.each(limitProbes)('%s', (_title, probes) => {
    expect(faultsOfAll(probes)).toEqual([]);
  });
});

it('and so does the public door', () => {
  const through = limitProbes.flatMap(([, [probe]]) => {
    if (probe === undefined || !('sent' in probe.woman)) return ['a limit is probed with what was sent'];
    const { woman, guideline } = probe;
    return faultsOf(probe, evaluate(bundleOf(woman.sent), { asOf: woman.asOf, guideline }).assessment);
  });
  expect(through).toEqual([]);
});

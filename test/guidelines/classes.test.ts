// Classes beside each other, and the ways into each of them; expected classes and urgency from the clinical rules and decisions.
import { describe, expect, it } from 'vitest';
import { faultsOfAll } from '../support/probe.ts';
import { placeProbes } from './classes/takes-the-place.ts';
import { wayProbes } from './classes/ways-in.ts';

describe('a disorder', () => {
  it.each(placeProbes)('%s', (_title, probes) => {
    expect(faultsOfAll(probes)).toEqual([]);
  });
});

describe('a way in', () => {
  it.each(wayProbes)('%s', (_title, probes) => {
    expect(faultsOfAll(probes)).toEqual([]);
  });
});

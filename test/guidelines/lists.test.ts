// Every name in a list of a question has a woman of her own: with it the question is met, with any other name it is not.
import { describe, expect, it } from 'vitest';
import { faultsOfAll } from '../support/probe.ts';
import { listProbes } from './lists/index.ts';

describe('a list holds what its sources name, and nothing else', () => {
  it.each(listProbes)('%s', (_title, probes) => {
    expect(faultsOfAll(probes)).toEqual([]);
  });
});

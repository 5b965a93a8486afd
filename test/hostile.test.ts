// Malformed variants of real files: no failure of ours, whatever is sent. `npm run bench:hostile` runs 10,000 of them.
import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { variantOf } from './bench/mutate.mjs';
import { validateStrict } from '../src/bundle/strict/validate-strict.ts';
import { RequestError } from '../src/errors.ts';
import { evaluateEach } from '../src/evaluate-each.ts';
import { receive, withReception } from '../src/receive.ts';

const data = new URL('data/', import.meta.url);
const files = ['hl7-r4-examples', 'us-core-examples', 'fhir-validator-cases'].flatMap((folder) =>
  readdirSync(new URL(`${folder}/`, data))
    .filter((name) => name.endsWith('.json'))
    .flatMap((name): unknown[] => {
      const value = parsed(readFileSync(new URL(`${folder}/${name}`, data), 'utf8'));
      return value === undefined
        ? []
        : [{ resourceType: 'Bundle', type: 'collection', entry: [{ resource: value }] }];
    }),
);
const stories = readdirSync(new URL('../examples/', import.meta.url)).flatMap((name): unknown[] => {
  try {
    return [JSON.parse(readFileSync(new URL(`../examples/${name}/request.json`, import.meta.url), 'utf8'))];
  } catch {
    return [];
  }
});

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** What a door does with it; `refused` for a request that is refused in good order. */
function outcomeOf(input: unknown, isStrict: boolean): 'answered' | 'refused' {
  try {
    const received = receive(input, { isStrict });
    for (const evaluation of evaluateEach(received.input, { asOf: '2026-01-01T00:00:00Z' }))
      JSON.stringify(withReception(evaluation, received).account);
    return 'answered';
  } catch (error) {
    if (error instanceof RequestError) return 'refused';
    throw error;
  }
}

describe('malformed input', () => {
  it.each([true, false])('is answered or refused in good order, never a failure (strict: %s)', (isStrict) => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const input = parsed(variantOf([...files, ...stories, ...stories], seed));
        if (input !== undefined) expect(['answered', 'refused']).toContain(outcomeOf(input, isStrict));
      }),
      { seed: 4, numRuns: 500 },
    );
  });

  it('any JSON at all is answered or refused, and strict names at least one fault of it', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), (input) => {
        expect(['answered', 'refused']).toContain(outcomeOf(input, false));
        const isList = Array.isArray(input);
        if (!isList) expect(validateStrict(input).length).toBeGreaterThan(0);
      }),
      { seed: 4, numRuns: 300 },
    );
  });
});

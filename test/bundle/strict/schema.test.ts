// The cut schema is what the script makes of the official one, and small enough to ship.
import { execFileSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { READ_TYPES } from '../../../src/bundle/read-types.ts';

const file = new URL('../../../src/bundle/strict/schema/r4.json', import.meta.url);

describe('the cut R4 schema', () => {
  it('is fresh', () => {
    const script = new URL('../../../.ci/cut-schema.mjs', import.meta.url).pathname;
    expect(execFileSync(process.execPath, [script, '--check'], { encoding: 'utf8' })).toContain('fresh');
  });

  it('covers every type that is read, without the root oneOf, in less than 500 kB', () => {
    const schema = JSON.parse(readFileSync(file, 'utf8')) as {
      oneOf?: unknown;
      definitions: Record<string, unknown>;
    };
    expect(
      [...READ_TYPES.keys(), 'Bundle', 'Parameters'].filter((type) => schema.definitions[type] === undefined),
    ).toEqual([]);
    expect(schema.oneOf).toBeUndefined();
    expect(schema.definitions['ResourceList']).toEqual({ type: 'object', required: ['resourceType'] });
    expect(statSync(file).size).toBeLessThan(500_000);
  });
});

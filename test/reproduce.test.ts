// An answer can be had again from the request and the rule set's fingerprint alone, in another process.
import { describe, expect, it } from 'vitest';
import { execFileSync, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fingerprint } from '../src/fingerprint.ts';
import { guidelineIds, guidelineOf } from '../src/guidelines/registry.ts';

// Built by `npm test` before the tests run.
const command = 'dist/cli/main.js';
const request = 'examples/protein-and-pressure/request.json';

/** Exit code 4 (cannot be classified) is an answer too. */
function assess(guideline: string, asOf: string): string {
  return execFileSync(
    process.execPath,
    [command, 'assess', request, '--guideline', guideline, '--as-of', asOf, '--format', 'fhir'],
    { encoding: 'utf8' },
  );
}

interface RuleSet {
  readonly id: string;
  readonly fingerprint: string;
}

/** What an answer says of its own origin: meta.source of its first resource. */
function originOf(answer: string): RuleSet & { readonly asOf: string } {
  const [, id = '', mark = ''] =
    /"source": ?"[^"]*\/PlanDefinition\/([\w-]+)\|[\d.]+#([0-9a-f]{64})"/.exec(answer) ?? [];
  const [, asOf = ''] = /"occurrenceDateTime": ?"([^"]+)"/.exec(answer) ?? [];
  return { id, fingerprint: mark, asOf };
}

/** The guideline of a fingerprint, looked up by nothing else. */
function guidelineWith(mark: string): string {
  return guidelineIds.find((id) => fingerprint(guidelineOf(id)) === mark) ?? '(none)';
}

async function fromServer(guideline: string, asOf: string): Promise<string> {
  const server = spawn(process.execPath, [command, 'serve', '--port', '0'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  try {
    const lines = createInterface({ input: server.stdout });
    const address = await new Promise<string>((resolve) => {
      lines.on('line', (line) => {
        const found = /http:\/\/127\.0\.0\.1:\d+/.exec(line)?.[0];
        if (found !== undefined) resolve(found);
      });
    });
    const query = new URLSearchParams({ guideline, asOf }).toString();
    const response = await fetch(`${address}/fhir/$assess-hypertension?${query}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/fhir+json' },
      body: readFileSync(request),
    });
    return await response.text();
  } finally {
    const ended = once(server, 'exit');
    server.kill();
    await ended;
  }
}

describe('an answer', () => {
  it(
    'comes again, byte for byte, from the request and the fingerprint, in other processes',
    { timeout: 60_000 },
    async () => {
      const first = assess('nice-2023', '2025-03-10T13:40:00Z');
      const origin = originOf(first);
      const guideline = guidelineWith(origin.fingerprint);
      expect(guideline).toBe('nice-2023');
      const again = assess(guideline, origin.asOf);
      expect(again).toBe(first);
      // The server writes the same without indentation.
      expect(await fromServer(guideline, origin.asOf)).toBe(JSON.stringify(JSON.parse(first)));
    },
  );

  it('names in its Provenance every resource it used, and nothing else of the request', () => {
    const answer = JSON.parse(assess('frontline', '2025-03-10T13:40:00Z')) as {
      readonly entry: readonly {
        readonly fullUrl: string;
        readonly resource: Readonly<Record<string, unknown>>;
      }[];
    };
    const provenance = answer.entry.at(-1)?.resource as {
      readonly resourceType: string;
      readonly target: readonly { readonly reference: string }[];
      readonly entity: readonly { readonly role: string; readonly what: { readonly reference?: string } }[];
    };
    expect(provenance.resourceType).toBe('Provenance');
    expect(provenance.target.map(({ reference }) => reference)).toEqual(
      answer.entry.slice(0, -1).map(({ fullUrl }) => fullUrl),
    );
    const sent = readFileSync(request, 'utf8');
    const sources = provenance.entity.filter(({ role }) => role === 'source');
    expect(sources.length).toBeGreaterThan(2);
    for (const { what } of sources)
      expect(sent).toContain(what.reference?.split('/').at(-1) ?? '(no reference)');
  });
});

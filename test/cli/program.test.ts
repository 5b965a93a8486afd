// The command line as a whole, without a process of its own.
import { describe, expect, it } from 'vitest';
import type { CommandResult } from '../../src/cli/assess.ts';
import { createProgram } from '../../src/cli/program.ts';
import { exampleAsOf, exampleBundle } from '../../src/http/example-bundle.ts';

interface Run {
  readonly results: readonly CommandResult[];
  readonly started: readonly (string | undefined)[];
  readonly said: string;
  readonly error: unknown;
}

async function run(...words: readonly string[]): Promise<Run> {
  const results: CommandResult[] = [];
  const started: (string | undefined)[] = [];
  let said = '';
  let error: unknown;
  const program = createProgram({
    now: () => Date.parse(exampleAsOf),
    read: () => Promise.resolve(JSON.stringify(exampleBundle)),
    rules: () => '# The rules\n\n### hellp\n\nA rule.\n\n### normotensive\n\nAnother.\n',
    finish: (result) => results.push(result),
    serve: (host, port) => {
      started.push(host, port);
      return Promise.resolve();
    },
  });
  const write = (text: string) => {
    said += text;
  };
  for (const command of [program, ...program.commands])
    command.exitOverride().configureOutput({ writeOut: write, writeErr: write });
  try {
    await program.parseAsync(words, { from: 'user' });
  } catch (thrown) {
    error = thrown;
  }
  return { results, started, said, error };
}

describe('the command line', () => {
  it('assesses a file in plain words by default', async () => {
    const { results } = await run('assess', 'file.json');
    expect(results[0]?.output).toContain('WHAT TO DO');
    expect(results[0]?.exitCode).toBe(0);
  });

  it('lists the guidelines and marks the default', async () => {
    const { results } = await run('guidelines');
    expect(results[0]?.output).toContain('frontline (default)');
  });

  it('starts the service', async () => {
    expect((await run('serve', '--host', '0.0.0.0', '--port', '0')).started).toEqual(['0.0.0.0', '0']);
  });

  it('documents its exit codes and the caution in --help', async () => {
    const { said } = await run('--help');
    for (const line of ['0   answered', '3   the input cannot be read', 'does not replace it'])
      expect(said).toContain(line);
  });

  it('refuses an unknown guideline, format or command before reading anything', async () => {
    for (const words of [
      ['assess', '-', '--guideline', 'x'],
      ['assess', '-', '--format', 'x'],
      ['no-such'],
    ]) {
      const { results, error } = await run(...words);
      expect(results).toEqual([]);
      expect(error).toMatchObject({ exitCode: 1 });
    }
  });
});

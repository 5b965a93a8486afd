// Ctrl-C in the middle of a run: nothing half written, and the next run goes on to the same bytes.
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readExport } from './clinic.ts';
import { folderOf, lines, remove } from './runs.ts';

const command = (folder: string, out: string, threads: number): string[] => [
  'dist/cli/main.js',
  'replay',
  folder,
  ...['--out', out, '--threads', String(threads)],
];

const filesIn = (out: string) =>
  Object.fromEntries(
    readdirSync(out, { withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ name }) => [name, readFileSync(join(out, name), 'utf8')]),
  );

/** Runs it until all lines are read, then presses Ctrl-C; hands on exit code and words. */
async function interrupted(asked: readonly string[]) {
  const child = spawn(process.execPath, asked, { stdio: ['ignore', 'ignore', 'pipe'] });
  let words = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    if (words === '') child.kill('SIGINT');
    words += text;
  });
  const [code] = (await once(child, 'close')) as [number];
  return { code, words };
}

describe.each([1, 2])('Ctrl-C with %d threads', (threads) => {
  const folder = folderOf({ 'all.ndjson': lines(readExport().flat()) });
  const out = mkdtempSync(join(tmpdir(), 'replay-out-'));
  const whole = mkdtempSync(join(tmpdir(), 'replay-out-'));
  let end: Awaited<ReturnType<typeof interrupted>>;
  beforeAll(async () => {
    end = await interrupted(command(folder, out, threads));
  });
  afterAll(() => [folder, out, whole].forEach(remove));

  it('says that the run was interrupted and how to go on', () => {
    expect(end.code).toBe(130);
    expect(end.words).toMatch(/Interrupted\. The same command with --resume goes on/);
  });

  it('leaves nothing half written, and what was finished in a folder of its own', () => {
    expect(readdirSync(out)).toEqual(['.replay-work']);
    const left = readdirSync(join(out, '.replay-work'));
    expect(left.filter((name) => /unfinished/.test(name))).toEqual([]);
    expect(left.filter((name) => /^x.*\.json$/.test(name)).length).toBeGreaterThan(0);
  });

  it('goes on to the bytes of a run that nobody interrupted', () => {
    for (const [to, more] of [
      [out, ['--resume']],
      [whole, []],
    ] as const)
      execFileSync(process.execPath, [...command(folder, to, threads), ...more], { stdio: 'pipe' });
    expect(filesIn(out)).toEqual(filesIn(whole));
    expect(readdirSync(out)).not.toContain('.replay-work');
  });
});

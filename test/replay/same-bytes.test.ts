// One thread, many threads, any order of files, any cut: the same bytes.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readExport } from './clinic.ts';
import { folderOf, lines, remove, run } from './runs.ts';

const women = readExport().slice(0, 30);
const all = women.flat();

/** Everything that is said about women; the account names files, and those differ. */
const said = (files: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(files).filter(([name]) => /^results|^report.*(?:json|csv)$/.test(name)));

async function saidOf(files: Readonly<Record<string, string>>, rangeBytes?: number) {
  const folder = folderOf(files);
  const ran = await run(folder, {}, rangeBytes === undefined ? {} : { rangeBytes });
  remove(folder);
  return said(ran.files);
}

describe('the same bytes', () => {
  it('for any order of lines, any split over files, any cut of a file', async () => {
    const usual = await saidOf({ 'all.ndjson': lines(all) });
    await fc.assert(
      fc.asyncProperty(
        fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length }),
        fc.nat({ max: all.length }),
        fc.integer({ min: 700, max: 50_000 }),
        async (shuffled, cut, rangeBytes) => {
          const files = { 'a.ndjson': lines(shuffled.slice(0, cut)), 'b.ndjson': lines(shuffled.slice(cut)) };
          expect(await saidOf(files, rangeBytes)).toEqual(usual);
        },
      ),
      { numRuns: 6 },
    );
  });

  it('for one thread and three, by the command itself', () => {
    const folder = folderOf({ 'a.ndjson': lines(all.slice(0, 200)), 'b.ndjson': lines(all.slice(200)) });
    const [one, three] = ['1', '3'].map((threads) => {
      const out = mkdtempSync(join(tmpdir(), 'replay-out-'));
      execFileSync(
        process.execPath,
        ['dist/cli/main.js', 'replay', folder, '--out', out, '--threads', threads],
        { stdio: 'pipe' },
      );
      return Object.fromEntries(
        readdirSync(out).map((name) => [name, readFileSync(join(out, name), 'utf8')]),
      );
    });
    remove(folder);
    expect(Object.keys(one ?? {})).toContain('results.ndjson');
    expect(three).toEqual(one);
  });

  it('for the two stages as filters, with the shuffle in between done by sorting', async () => {
    const usual = await saidOf({ 'all.ndjson': lines(all) });
    const stage = (name: string, input: string): string =>
      execFileSync(process.execPath, ['dist/cli/main.js', 'replay-stage', name], {
        input,
        maxBuffer: 1 << 28,
      }).toString();
    const kept = stage('extract', lines(all))
      .split('\n')
      .filter((line) => line !== '')
      .sort();
    const results = stage('assess', `${kept.join('\n')}\n`)
      .split('\n')
      .filter((line) => line.startsWith('Patient/'));
    expect(results.map((line) => `${line.split('\t').slice(2).join('\t')}\n`).join('')).toBe(
      usual['results.ndjson'],
    );
  });
});

describe('a run that was interrupted', () => {
  it('leaves no file of its own name, and goes on to the same bytes', async () => {
    const folder = folderOf({ 'all.ndjson': lines(all) });
    const whole = await run(folder, {}, { rangeBytes: 20_000 });
    const out = mkdtempSync(join(tmpdir(), 'replay-out-'));
    await expect(interrupted(folder, out)).rejects.toThrow('pulled the plug');
    expect(existsSync(join(out, 'results.ndjson'))).toBe(false);
    expect(
      readdirSync(join(out, '.replay-work')).filter((name) => name.endsWith('.json')).length,
    ).toBeGreaterThan(0);
    // What was finished is not done again: its account is believed.
    const resumed = await run(folder, {}, { rangeBytes: 20_000, out, resume: true });
    expect(resumed.files).toEqual(whole.files);
    remove(folder);
  });

  it('is begun anew when the sources have changed', async () => {
    const folder = folderOf({ 'all.ndjson': lines(all) });
    const out = mkdtempSync(join(tmpdir(), 'replay-out-'));
    await expect(interrupted(folder, out)).rejects.toThrow();
    writeFileSync(join(folder, 'all.ndjson'), lines(all.slice(0, 100)));
    const resumed = await run(folder, {}, { rangeBytes: 20_000, out, resume: true });
    expect(resumed.accounting.total.lines).toBe(100);
    remove(folder);
  });
});

/** A run whose power fails after three pieces of work. */
async function interrupted(folder: string, out: string): Promise<void> {
  const { runReplay } = await import('../../src/replay/run-replay.ts');
  const { findSources } = await import('../../src/replay/find-sources.ts');
  let pieces = 0;
  await runReplay(
    findSources([folder]),
    {
      out,
      threads: 1,
      resume: false,
      rangeBytes: 20_000,
      assess: { guidelines: ['frontline'], every: 'visit', everyone: false },
    },
    () => {
      pieces += 1;
      if (pieces === 3) throw new Error('pulled the plug');
    },
  );
}

// The commands `replay` and `replay-stage`: arguments to a run over files, or to one stage of it over a stream.
import { availableParallelism } from 'node:os';
import { text } from 'node:stream/consumers';
import { Option, type Command } from 'commander';
import { defaultGuidelineId, guidelineIds } from '../guidelines/registry.ts';
import type { AssessOptions } from '../replay/assess-woman.ts';
import { findSources, UnreadableSource } from '../replay/find-sources.ts';
import { openProgress } from '../replay/progress.ts';
import { mergeReports } from '../replay/report/tally.ts';
import { writeReport } from '../replay/report/write-report.ts';
import { Interrupted } from '../replay/pool.ts';
import { runReplay } from '../replay/run-replay.ts';
import { assessStage, extractStage } from '../replay/stages.ts';
import { exitCodes, type CommandResult } from './assess.ts';

interface AskedFlags {
  readonly guideline: string;
  readonly every: 'visit' | 'end';
  readonly from?: string;
  readonly to?: string;
  readonly everyone?: true;
  readonly site?: string;
}

interface ReplayFlags extends AskedFlags {
  readonly out: string;
  readonly threads: string;
  readonly resume?: true;
  readonly parquet?: true;
}

type Finish = (result: CommandResult) => void;

const help = `
Written to the folder: results.ndjson (a line for each woman and visit), rejected.ndjson, accounting.json,
report.json, report.html, report-*.csv, changes.csv when several guidelines are named, and with --from and --to a FHIR
MeasureReport for each measure, measure-*.json.
An interrupted run leaves no half-written file there; --resume goes on from where it was.`;

/** Adds both commands to the program. */
export function addReplay(program: Command, finish: Finish): void {
  asking(program.command('replay'))
    .description('what would have been said: over a Bulk Data export, NDJSON files or bundles')
    .argument(
      '<source...>',
      'export folder, manifest.json, .ndjson or .json files (also .gz); - for standard input',
    )
    .option('--out <folder>', 'where to write', 'replay')
    .option('--threads <number>', 'how many at a time', String(availableParallelism()))
    .option('--resume', 'go on with an interrupted run')
    .option('--parquet', 'also results.parquet, the same as results.ndjson in columns')
    .addHelpText('after', help)
    .action(async (sources: string[], flags: ReplayFlags) => finish(await replay(sources, flags)));
  asking(program.command('replay-stage', { hidden: true }))
    .description('one stage of a replay, for a cluster: standard input to standard output')
    .addArgument(stageArgument(program))
    .option('--out <folder>', 'for report: where to write', 'replay')
    .action(async (stage: string, flags: ReplayFlags) => finish(await runStage(stage, flags)));
}

const stageArgument = (program: Command) =>
  program.createArgument('<stage>', 'what to do').choices(['extract', 'assess', 'report']);

const asking = (command: Command): Command =>
  command
    .option(
      '--guideline <ids>',
      `rules to apply, the first decides: ${guidelineIds.join(',')}`,
      defaultGuidelineId,
    )
    .addOption(
      new Option('--every <view>', 'answer at each visit, or once at the last')
        .choices(['visit', 'end'])
        .default('visit'),
    )
    .option('--from <date>', 'leave out visits before this day')
    .option('--to <date>', 'leave out visits after this day')
    .option('--everyone', 'also persons without any sign of a pregnancy in the record')
    .option('--site <folder>', 'folder with site.json and ConceptMaps');

/** A usage error in words; nothing was done. */
class WrongUse extends Error {}

async function replay(sources: readonly string[], flags: ReplayFlags): Promise<CommandResult> {
  return answered(async () => {
    const threads = Number(flags.threads);
    if (!Number.isInteger(threads) || threads < 1) throw new WrongUse('--threads is a whole number from 1.');
    const progress = openProgress(process.stderr, () => Date.now());
    const accounting = await runReplay(
      findSources(sources),
      {
        out: flags.out,
        threads,
        resume: flags.resume === true,
        parquet: flags.parquet === true,
        assess: assessOptions(flags),
        siteFolder: flags.site,
        signal: stopOnSignals(),
      },
      progress.say,
    );
    progress.end();
    const { lines, used, notNeeded, setAside, rejected } = accounting.total;
    return [
      ...accounting.warnings,
      `${lines} lines read: ${used} used, ${notNeeded} not needed, ${setAside} set aside, ${rejected} rejected.`,
      `The report: ${flags.out}/report.html`,
      '',
    ].join('\n');
  });
}

/** Ctrl-C, or the end of a session: the run stops after what it has in hand. A second Ctrl-C ends it at once. */
function stopOnSignals(): AbortSignal {
  const controller = new AbortController();
  for (const name of ['SIGINT', 'SIGTERM'] as const) process.once(name, () => controller.abort());
  return controller.signal;
}

async function runStage(stage: string, flags: ReplayFlags): Promise<CommandResult> {
  return answered(async () => {
    const streams = { input: process.stdin, output: process.stdout };
    const options = assessOptions(flags);
    if (stage === 'extract') await extractStage(streams, flags.site);
    else if (stage === 'assess') await assessStage(streams, { options, siteFolder: flags.site });
    else writeReport(flags.out, { tally: mergeReports(talliesOf(await text(process.stdin))), options });
    return '';
  });
}

async function answered(run: () => Promise<string>): Promise<CommandResult> {
  try {
    return { exitCode: exitCodes.answered, output: await run(), errors: '' };
  } catch (error) {
    if (error instanceof WrongUse) return failed(exitCodes.usage, error.message);
    if (error instanceof Interrupted)
      return failed(exitCodes.interrupted, 'Interrupted. The same command with --resume goes on from here.');
    if (error instanceof UnreadableSource) return failed(exitCodes.unreadable, error.message);
    throw error;
  }
}

const failed = (exitCode: number, message: string): CommandResult => ({
  exitCode,
  output: '',
  errors: `pregnancy-htn: ${message}\n`,
});

function assessOptions(flags: AskedFlags): Omit<AssessOptions, 'site'> {
  const guidelines = flags.guideline.split(',').map((id) => id.trim());
  const unknown = guidelines.filter((id) => !guidelineIds.includes(id));
  if (unknown.length > 0)
    throw new WrongUse(`There is no guideline ${unknown.join(', ')}. Known: ${guidelineIds.join(', ')}.`);
  const from = momentOf('--from', flags.from, 'T00:00:00Z');
  const to = momentOf('--to', flags.to, 'T23:59:59.999Z');
  return {
    guidelines,
    every: flags.every,
    everyone: flags.everyone === true,
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
  };
}

function momentOf(flag: string, asked: string | undefined, time: string): number | undefined {
  if (asked === undefined) return undefined;
  const moment = Date.parse(/^\d{4}-\d{2}-\d{2}$/.test(asked) ? `${asked}${time}` : asked);
  if (Number.isNaN(moment)) throw new WrongUse(`${flag} is no date: write it as 2025-03-10.`);
  return moment;
}

function talliesOf(lines: string): Record<string, number>[] {
  return lines
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => {
      const value: unknown = JSON.parse(line);
      const pairs = typeof value === 'object' && value !== null ? Object.entries(value) : [];
      return Object.fromEntries(pairs.map(([name, count]) => [name, Number(count)]));
    });
}

#!/usr/bin/env node
// The command `pregnancy-htn`: files, streams, clock and exit code; all else is in program.ts.
import { CommanderError } from 'commander';
import { readFile } from 'node:fs/promises';
import { text } from 'node:stream/consumers';
import { readRulePage } from '../http/rules-page.ts';
import { addressFrom, serve } from '../http/serve.ts';
import { exitCodes, type CommandResult } from './assess.ts';
import { createProgram } from './program.ts';
import { isAddress, readAddress } from './read-address.ts';
import { UnreadableInput } from './read-input.ts';
import { loadSite } from '../http/site-folder.ts';
import { SiteError } from '../site/read-site.ts';

async function read(file: string): Promise<string> {
  if (file === '-') return text(process.stdin);
  if (isAddress(file)) return readAddress(file);
  try {
    return await readFile(file, 'utf8');
  } catch {
    throw new UnreadableInput(`The file cannot be read: ${file}`);
  }
}

// A reader that stops early (`| head`) is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

function finish(result: CommandResult): void {
  process.stdout.write(result.output);
  process.stderr.write(result.errors);
  process.exitCode = result.exitCode;
}

async function startService(
  host: string | undefined,
  port: string | undefined,
  site: string | undefined,
): Promise<void> {
  const address = addressFrom({ HOST: host ?? process.env['HOST'], PORT: port ?? process.env['PORT'] });
  const environment = site === undefined ? process.env : { ...process.env, SITE: site };
  await serve(
    address,
    (line) => {
      console.log(line);
    },
    environment,
  );
}

function exitCodeFor(error: unknown): number {
  // commander has written its own message; help and version are no errors.
  if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.answered : exitCodes.usage;
  const isExplained = error instanceof UnreadableInput || error instanceof SiteError;
  const message = isExplained ? error.message : 'The program failed; the fault is ours.';
  process.stderr.write(`pregnancy-htn: ${message}\n`);
  if (error instanceof SiteError) return exitCodes.usage;
  return error instanceof UnreadableInput ? exitCodes.unreadable : exitCodes.internal;
}

try {
  await createProgram({
    now: () => Date.now(),
    read,
    site: loadSite,
    rules: readRulePage,
    finish,
    serve: startService,
  }).parseAsync();
} catch (error) {
  process.exitCode = exitCodeFor(error);
}

// The `check` command: would these data work? Input text and options to output text and exit code.
import { RequestError } from '../errors.ts';
import type { EvaluateOptions } from '../evaluate.ts';
import type { ServedSite } from '../http/site-folder.ts';
import { toReadinessText } from '../presenters/readiness-text.ts';
import { checkReadiness } from '../readiness/check-readiness.ts';
import type { Readiness } from '../readiness/readiness.ts';
import { exitCodes, type CommandResult } from './assess.ts';
import { readInput, UnreadableInput } from './read-input.ts';

export const checkFormats = ['text', 'json'] as const;

export interface CheckOptions extends Omit<EvaluateOptions, 'asOf'> {
  readonly asOf?: string | undefined;
  readonly format: (typeof checkFormats)[number];
}

/** Documented in `--help`; the others are those of `assess`. */
export const checkExitCodes = { ready: 0, findings: 5 } as const;

/**
 * The readiness of one input.
 *
 * Given    text      as read from the file, the address or standard input
 *          options   of the command line
 *          world     now: without a time each woman is judged at her newest fact up to now; the site, whose codes are read as ours
 * Returns  exit code 0: every resource that is asked for can be used and R4 is kept; 5: read on; 4: a woman cannot be
 *          classified; 2 and 3 as `assess`
 */
export function checkText(
  text: string,
  { format, asOf, ...options }: CheckOptions,
  world: { readonly now: number; readonly site?: ServedSite | undefined },
): CommandResult {
  try {
    const asked = {
      ...world.site?.options,
      ...options,
      asOf: asOf ?? world.now,
      atNewestFact: asOf === undefined,
    };
    const readiness = checkReadiness(readInput(text), asked, world.site?.setup);
    const output = format === 'json' ? `${JSON.stringify(readiness, null, 2)}\n` : toReadinessText(readiness);
    return { exitCode: exitCodeOf(readiness), output, errors: '' };
  } catch (error) {
    if (error instanceof UnreadableInput) return failed(exitCodes.unreadable, [error.message]);
    if (!(error instanceof RequestError)) throw error;
    const isOption = error.issues.some(({ code }) => /guideline|as-of|subject/.test(code));
    return failed(
      isOption ? exitCodes.usage : exitCodes.unreadable,
      error.issues.map(({ message }) => message),
    );
  }
}

function failed(exitCode: number, messages: readonly string[]): CommandResult {
  return { exitCode, output: '', errors: messages.map((message) => `pregnancy-htn: ${message}\n`).join('') };
}

function exitCodeOf({ women, classified, setAside, strict }: Readiness): number {
  if (classified < women) return exitCodes.cannotClassify;
  const isClean = setAside.length === 0 && !strict.some(({ severity }) => severity === 'error');
  return isClean ? checkExitCodes.ready : checkExitCodes.findings;
}

// The `assess` command: input text and options to output text and exit code. No disk, no clock.
import { RequestError } from '../errors.ts';
import { compareEach, everyGuideline } from '../compare-guidelines.ts';
import { momentOrNow } from '../evaluate.ts';
import { evaluateEach } from '../evaluate-each.ts';
import type { Comparison, Evaluation } from '../evaluation.ts';
import { toAnswer } from '../presenters/answer.ts';
import { toCards } from '../presenters/cds-cards.ts';
import { toComparisonAnswer, toComparisonText } from '../presenters/comparison.ts';
import { toFhirBundle, toFhirBundleOfComparisons, toFhirBundleOfMany } from '../presenters/fhir-result.ts';
import { toText } from '../presenters/text.ts';
import type { ServedSite } from '../http/site-folder.ts';
import { receive, withReception } from '../receive.ts';
import { readInput, UnreadableInput } from './read-input.ts';

export const formats = ['text', 'json', 'fhir', 'cards'] as const;
export type Format = (typeof formats)[number];

/** Documented in `--help`. */
export const exitCodes = {
  answered: 0,
  usage: 2,
  unreadable: 3,
  cannotClassify: 4,
  internal: 70,
  interrupted: 130,
} as const;

export interface AssessOptions {
  readonly guideline?: string | undefined;
  readonly asOf?: string | undefined;
  readonly subject?: string | undefined;
  readonly riskModels?: boolean | undefined;
  readonly site?: ServedSite | undefined;
  readonly format: Format;
}

export interface CommandResult {
  readonly exitCode: number;
  readonly output: string;
  readonly errors: string;
}

/**
 * The answer to one input.
 *
 * Given    text      as read from the file or standard input
 *          options   of the command line
 *          now       milliseconds since 1970-01-01T00:00Z, used when no time is given
 * Returns  exit code 0 answered; 2 unknown guideline, time or subject; 3 input not readable; 4 answered, but at
 *          least one woman cannot be classified from what was sent.
 */
export function assessText(text: string, options: AssessOptions, now: number): CommandResult {
  try {
    const received = receive(readInput(text), { isStrict: false, site: options.site?.setup });
    const asked = {
      ...options.site?.options,
      ...momentOrNow(options.asOf, now),
      ...(options.subject === undefined ? {} : { subject: options.subject }),
      riskModels: options.riskModels === true,
    };
    if (options.guideline === everyGuideline) return comparedResult(received.input, asked, options.format);
    const evaluations = evaluateEach(received.input, {
      ...asked,
      ...(options.guideline === undefined ? {} : { guideline: options.guideline }),
      compare: true,
    }).map((evaluation) => withReception(evaluation, received));
    return { exitCode: exitCodeOf(evaluations), output: formatted(evaluations, options.format), errors: '' };
  } catch (error) {
    if (error instanceof UnreadableInput) return failed(exitCodes.unreadable, [error.message]);
    if (error instanceof RequestError)
      return failed(
        requestExitCode(error),
        error.issues.map((issue) => issue.message),
      );
    throw error;
  }
}

function comparedResult(
  input: unknown,
  options: Parameters<typeof compareEach>[1],
  format: Format,
): CommandResult {
  const comparisons = compareEach(input, options);
  const evaluations = comparisons.map(({ evaluation }) => evaluation);
  return { exitCode: exitCodeOf(evaluations), output: formattedComparison(comparisons, format), errors: '' };
}

function formattedComparison(comparisons: readonly Comparison[], format: Format): string {
  switch (format) {
    case 'text':
      return comparisons
        .map((comparison) => `${toText(comparison.evaluation)}\n${toComparisonText(comparison)}`)
        .join(separator);
    case 'json':
      return json(
        oneOrList(
          comparisons.map((comparison) => ({
            ...toAnswer(comparison.evaluation),
            comparison: toComparisonAnswer(comparison),
          })),
        ),
      );
    case 'fhir':
      return json(toFhirBundleOfComparisons(comparisons));
    case 'cards':
      return formatted(
        comparisons.map(({ evaluation }) => evaluation),
        format,
      );
  }
}

const separator = `\n${'='.repeat(78)}\n\n`;

function failed(exitCode: number, messages: readonly string[]): CommandResult {
  return { exitCode, output: '', errors: messages.map((message) => `pregnancy-htn: ${message}\n`).join('') };
}

/** A fault of an option is a usage error; a fault of the input is not. */
function requestExitCode(error: RequestError): number {
  const isOption = error.issues.some((issue) =>
    /guideline|as-?of|subject/i.test(`${issue.code} ${issue.expression}`),
  );
  return isOption ? exitCodes.usage : exitCodes.unreadable;
}

function exitCodeOf(evaluations: readonly Evaluation[]): number {
  const isOpen = evaluations.some(({ assessment }) => assessment.classification[0] === 'cannot-classify');
  return isOpen ? exitCodes.cannotClassify : exitCodes.answered;
}

function formatted(evaluations: readonly Evaluation[], format: Format): string {
  switch (format) {
    case 'text':
      return evaluations.map(toText).join(separator);
    case 'json':
      return json(oneOrList(evaluations.map(toAnswer)));
    case 'fhir':
      return json(
        evaluations.length > 1 ? toFhirBundleOfMany(evaluations) : oneOrList(evaluations.map(toFhirBundle)),
      );
    case 'cards':
      return json(oneOrList(evaluations.map((evaluation) => cardsOf(evaluation, evaluations.length > 1))));
  }
}

function cardsOf(evaluation: Evaluation, isOneOfMany: boolean) {
  const cards = toCards(evaluation);
  return isOneOfMany ? { subject: evaluation.subject, ...cards } : cards;
}

function oneOrList<T>(items: readonly T[]): T | readonly T[] {
  const [first, ...others] = items;
  return first === undefined || others.length > 0 ? items : first;
}

function json(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}

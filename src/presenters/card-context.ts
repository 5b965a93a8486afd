// To whom a card speaks, and what is known of the call. Types, and the defaults.
import type { Evaluation } from '../evaluation.ts';
import { english } from '../messages/en.ts';
import type { Messages } from '../messages/messages.ts';
import type { ChartGap } from './card-types.ts';

/** Wording and order follow the role; urgency never does. */
export type Role = 'nurse-midwife' | 'physician';

/** What became of one prefetch key. */
export type KeyStateName = 'found' | 'found-in-part' | 'known-absent' | 'failed' | 'never-asked';

/** Something a hook brings that is not yet in the chart. */
export interface Proposed {
  /** References by which the answer names it. */
  readonly references: readonly string[];
  readonly resource: Readonly<Record<string, unknown>>;
}

/** All optional: a command line knows none of it. */
export interface CardContext {
  /** Data the client could not give. */
  readonly gaps?: readonly ChartGap[];
  readonly states?: Readonly<Record<string, KeyStateName>>;
  readonly role?: Role | undefined;
  readonly messages?: Messages;
  /** What was odd about the request and was let pass. */
  readonly warnings?: readonly string[];
  /** Absent: the hook proposes nothing. Orders or appointments spoken about, and no others. */
  readonly proposed?: readonly Proposed[];
}

/** An answer on its way into cards: the evaluation, and how to tell it. */
export interface Telling {
  readonly evaluation: Evaluation;
  readonly messages: Messages;
  readonly role: Role;
  readonly gaps: readonly ChartGap[];
  readonly context: CardContext;
}

/**
 * The context with its defaults: no gaps, English, the wording of a nurse-midwife.
 *
 * Notes    1. A user whose role is not known is spoken to as a nurse-midwife: nothing is taken for known.
 */
export function toTelling(evaluation: Evaluation, context: CardContext): Telling {
  return {
    evaluation,
    messages: context.messages ?? english,
    role: context.role ?? 'nurse-midwife',
    gaps: context.gaps ?? [],
    context,
  };
}

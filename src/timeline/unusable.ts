// Saying that a value was received and is not used, or that nothing asks for it.
import type { SetAsideCode } from '../errors.ts';
import type { Unusable } from './context.ts';
import { isFields } from './fields.ts';

/** Understood, and no rule asks for it. */
export interface NotAsked {
  readonly kind: 'not-needed';
  readonly why: string;
}

/** A reason for not using a value; `element` is relative to the resource. */
export function unusable(code: SetAsideCode, element: string, message: string): Unusable {
  return { kind: 'unusable', code, element, message };
}

export function notAsked(why: string): NotAsked {
  return { kind: 'not-needed', why };
}

/** Is this a reason instead of a result? */
export function isUnusable(result: unknown): result is Unusable {
  return isFields(result) && result['kind'] === 'unusable';
}

/** Does nothing ask for this? */
export function isNotAsked(result: unknown): result is NotAsked {
  return isFields(result) && result['kind'] === 'not-needed';
}

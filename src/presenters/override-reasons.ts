// Reasons a clinician may give for not following a card. Data only; the words are in the messages.
import { english } from '../messages/en.ts';
import type { Messages } from '../messages/messages.ts';
import type { HooksCoding } from './card-types.ts';
import { codeSystems } from './vocabulary.ts';

const standard = 'http://terminology.hl7.org/CodeSystem/non-adherence-reason-codes';

/** The standard categories first, then those of ours that the commonest free-text answers call for. */
const codes: readonly (readonly [system: string, code: string])[] = [
  [standard, 'cds-not-applicable'],
  [standard, 'cds-suboptimal-context'],
  [standard, 'recipient-disagrees-evidence'],
  [standard, 'recipient-concerns-outcomes'],
  [standard, 'does-not-align-preferences'],
  [standard, 'not-convenient-feasible'],
  [codeSystems.overrideReason, 'already-done'],
  [codeSystems.overrideReason, 'reading-in-doubt'],
  [codeSystems.overrideReason, 'will-monitor'],
  [codeSystems.overrideReason, 'tolerated-before'],
];

/** About a medicine, not about a measurement; and the other way round. */
const medicineOnly: readonly string[] = ['tolerated-before'];
const measurementOnly: readonly string[] = ['reading-in-doubt'];

/** All of them, in English. */
export const overrideReasons: readonly HooksCoding[] = codes.map((each) => toCoding(each, english));

/**
 * The reasons offered with a card.
 *
 * Source   CDS Hooks 3.0.0 ballot, override reasons (codes read; displays in our words); ours: pain-points section 3
 *          ("will monitor" and "tolerated before" are the commonest reasons given).
 */
export function offeredReasons(
  messages: Messages,
  about: 'assessment' | 'medicine' = 'assessment',
): readonly HooksCoding[] {
  const left = about === 'medicine' ? measurementOnly : medicineOnly;
  return codes.filter(([, code]) => !left.includes(code)).map((each) => toCoding(each, messages));
}

function toCoding([system, code]: readonly [string, string], messages: Messages): HooksCoding {
  return { code, system, display: messages.overrideReasons[code] ?? code };
}

// What is recorded about a urine sample: when it was passed, how clean it is, who read the strip.
import type { Observation } from 'fhir/r4.js';
import type { Received } from '../bundle/read-bundle-types.ts';
import { urineAnalyserCodes } from '../terminology/urine-codes.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import type { TimelineContext } from './context.ts';
import { codingsOf, fieldsOf, listOf, textOf, wordingOf } from './fields.ts';
import { isWritten, notesOf } from './free-text.ts';
import { encounterClassOf, isHospitalClass } from './pressure-setting.ts';
import type { UrineSample } from './timeline.ts';

const analyserIndex = indexCodes(urineAnalyserCodes);

interface Words {
  readonly word: RegExp;
  readonly denied: RegExp;
}

const wordsFor = (word: string): Words => ({
  word: new RegExp(word, 'i'),
  denied: new RegExp(`\\b(?:no|not|non|nil|without|free of)\\b[^.;]{0,24}(?:${word})`, 'i'),
});
const firstMorning = wordsFor('first[ -]?(?:morning|void of the (?:day|morning))|early[ -]morning');
const contaminated = wordsFor('contaminat');
const antiseptic = wordsFor('antiseptic|chlorhexidine|cetrimide|benzalkonium|quaternary ammonium');

/**
 * What is recorded about the sample of a urine result?
 *
 * Given    received  the observation
 *          context   the bundle, for its specimen and its encounter
 * Returns  only what is recorded; undefined when nothing is
 * Throws   never
 * Notes    1. Read from the words of code, method, notes and specimen; a denied word does not count.
 *          2. A strip under the code of an automated reader, or with a method that says so, was read by it; any
 *             other strip is taken as read by eye.
 * Source   clinical-rules Q15, Q17, Q18
 */
export function urineSampleOf(
  received: Received<Observation>,
  context: TimelineContext,
): UrineSample | undefined {
  const text = wordsOf(received, context);
  const says = ({ word, denied }: Words): boolean => isWritten(text, word, denied);
  const sample: UrineSample = {
    ...(says(firstMorning) ? { isFirstMorning: true } : {}),
    ...(says(contaminated) ? { isContaminated: true } : {}),
    ...(says(antiseptic) ? { hasAntiseptic: true } : {}),
    ...(isHospitalClass(encounterClassOf(received, context)) ? { isFromHospital: true } : {}),
  };
  return Object.keys(sample).length === 0 ? undefined : { ...sample, readBy: readerOf(received.resource) };
}

function readerOf(resource: Observation): 'eye' | 'analyser' {
  if (rowsFor(codingsOf(resource.code), analyserIndex).length > 0) return 'analyser';
  const method = wordingOf(resource.method) ?? '';
  return /automat|analy[sz]er|reader/i.test(method) ? 'analyser' : 'eye';
}

function wordsOf(received: Received<Observation>, context: TimelineContext): string {
  const { resource } = received;
  const specimen =
    resource.specimen === undefined ? undefined : context.bundle.resolve(resource.specimen, received);
  const fields = fieldsOf(specimen?.resource);
  return [
    ...codingsOf(resource.code).map(({ display }) => display),
    textOf(fieldsOf(resource.code)['text']),
    wordingOf(resource.method),
    notesOf(resource),
    wordingOf(fields['type']),
    textOf(fieldsOf(resource.specimen)['display']),
    ...listOf(fields['condition']).map(wordingOf),
    notesOf(specimen?.resource),
  ]
    .filter((text) => text !== undefined && text !== '')
    .join('; ');
}

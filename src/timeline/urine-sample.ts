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
import type { Writable } from './writable.ts';

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
  const sample: Writable<UrineSample> = {};
  if (says(firstMorning)) sample.isFirstMorning = true;
  if (says(contaminated)) sample.isContaminated = true;
  if (says(antiseptic)) sample.hasAntiseptic = true;
  if (isHospitalClass(encounterClassOf(received, context))) sample.isFromHospital = true;
  if (Object.keys(sample).length === 0) return undefined;
  sample.readBy = readerOf(received.resource);
  return sample;
}

function readerOf(resource: Observation): 'eye' | 'analyser' {
  if (rowsFor(codingsOf(resource.code), analyserIndex).length > 0) return 'analyser';
  const method = wordingOf(resource.method) ?? '';
  return /automat|analy[sz]er|reader/i.test(method) ? 'analyser' : 'eye';
}

function wordsOf(received: Received<Observation>, context: TimelineContext): string {
  const { resource } = received;
  const words = [
    ...codingsOf(resource.code).map(({ display }) => display),
    textOf(fieldsOf(resource.code)['text']),
    wordingOf(resource.method),
    notesOf(resource),
    ...(resource.specimen === undefined ? [] : specimenWords(resource.specimen, received, context)),
  ];
  return words.filter((text) => text !== undefined && text !== '').join('; ');
}

function specimenWords(
  reference: unknown,
  received: Received<Observation>,
  context: TimelineContext,
): readonly (string | undefined)[] {
  const specimen = context.bundle.resolve(reference, received);
  const fields = fieldsOf(specimen?.resource);
  return [
    wordingOf(fields['type']),
    textOf(fieldsOf(reference)['display']),
    ...listOf(fields['condition']).map(wordingOf),
    notesOf(specimen?.resource),
  ];
}

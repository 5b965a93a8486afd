// Medicines, drugs named by the publication, prevention, quality and risk as plain sentences; the same for cards and text.
import type { PreventionAdvice, TreatmentOption } from '../findings/finding.ts';
import type { Evaluation } from '../evaluation.ts';
import type { Messages } from '../messages/messages.ts';
import { fill, translated } from '../messages/say.ts';
import { sentenceCase } from './words.ts';
import { spokenValue } from './newest-data.ts';

/** What these lines need: an answer and a language. */
export interface Said {
  readonly evaluation: Evaluation;
  readonly messages: Messages;
}

/** A medicine in the chart or ordered, with what is said about it and what is named instead. */
export function medicineLines({ evaluation, messages }: Said): readonly string[] {
  return unique(
    evaluation.assessment.medicines.map(({ medicine, sentence, alternative }) => {
      const said = [sentence, alternative ?? ''].filter((text) => text !== '');
      const words = said.map((text) => spokenValue(translated(messages, text))).join(' ');
      return fill(messages.phrases.medicine, { medicine: sentenceCase(medicine), sentence: words });
    }),
  );
}

/** Reference values, never orders. */
export function treatmentLines({ evaluation, messages }: Said): readonly string[] {
  return unique(evaluation.assessment.treatment.map((option) => optionLine(option, messages)));
}

function optionLine({ medicine, dose, offeredFirst, against }: TreatmentOption, messages: Messages): string {
  const { phrases } = messages;
  const plain = fill(phrases.option, { medicine: sentenceCase(medicine), dose: spokenValue(dose) });
  const option = offeredFirst ? fill(phrases['option-first'], { option: plain }) : plain;
  if (against.length === 0) return option;
  const reasons = against.map(({ sentence }) => translated(messages, sentence)).join(' ');
  return fill(phrases.against, { option, reasons });
}

/** Aspirin and calcium; not where they are no question, nor where nothing speaks for them. */
export function preventionLines({ evaluation, messages }: Said): readonly string[] {
  return unique(
    evaluation.assessment.prevention
      .filter(
        ({ outcome, found }) => outcome !== 'not-applicable' && (outcome !== 'not-met' || found.length > 0),
      )
      .map((advice) => adviceLine(advice, messages)),
  );
}

function adviceLine(
  { id, sentence, dose, window, found, absent, neverAsked }: PreventionAdvice,
  messages: Messages,
): string {
  const { phrases } = messages;
  const dosed = dose === undefined ? '' : `${sentenceCase(dose)}.`;
  const said = [translated(messages, sentence), dosed].filter((text) => text !== '').join(' ');
  const timed = window === undefined ? said : fill(phrases.window, { sentence: said, window });
  const lists = [
    ['factors-found', found.map(({ factor }) => factor)],
    ['factors-absent', absent],
    ['never-asked', neverAsked],
  ] as const;
  const words = lists.reduce(
    (text, [phrase, factors]) =>
      factors.length === 0 ? text : fill(phrases[phrase], { sentence: text, factors: factors.join(', ') }),
    timed,
  );
  return fill(phrases.medicine, { medicine: sentenceCase(translated(messages, id)), sentence: words });
}

/** Doubts about how something was measured. */
export function qualityLines({ evaluation, messages }: Said): readonly string[] {
  return unique(
    evaluation.assessment.quality.map(({ sentence }) =>
      spokenValue(translated(messages, sentence), messages.months),
    ),
  );
}

/** Figures of risk equations, only where they were asked for. */
export function riskLines({ evaluation, messages }: Said): readonly string[] {
  return unique(
    (evaluation.riskEstimates ?? []).map(({ sentence, verified }) =>
      verified ? sentence : fill(messages.phrases['not-verified'], { text: sentence }),
    ),
  );
}

function unique(lines: readonly string[]): readonly string[] {
  return [...new Set(lines)];
}

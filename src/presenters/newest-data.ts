// The newest facts behind an answer, with their times, so that a stale answer can be recognised.
import type { Evaluation } from '../evaluation.ts';
import { english } from '../messages/en.ts';
import type { Messages } from '../messages/messages.ts';
import { fill, translated } from '../messages/say.ts';
import { idWords } from '../id-words.ts';
import type { LaboratoryResult, Moment, Symptom } from '../timeline/timeline.ts';
import { evidenceMet } from './class-findings.ts';
import { spokenTime } from './clock.ts';

/** One fact as people read it. */
export interface Datum {
  readonly what: string;
  readonly asSent: string;
  /** In words; absent when no time was sent. */
  readonly at?: string;
}

interface Dated {
  readonly at?: Moment;
  readonly asSent: string;
}

/**
 * The newest of each kind that was received: pressure first, then urine, symptoms, and what was measured besides.
 *
 * Returns  at most one datum of each kind and three symptoms, values as sent ("mmHg" for mm[Hg]); empty when nothing
 *          was received. Of the other measurements those that the answer rests on.
 * Notes    1. Shows what is there; judges nothing. A pressure that could not be used is said to be such.
 */
export function newestData(evaluation: Evaluation, messages: Messages = english): readonly Datum[] {
  const { timeline } = evaluation;
  const unusable = timeline.unusablePressures.map((pressure) => ({
    ...pressure,
    asSent: fill(messages.phrases.unusable, { value: pressure.asSent }),
  }));
  const homeMeans = timeline.meanPressures
    .filter(({ setting }) => setting !== 'clinic')
    .map(({ asSent, to }) => ({ asSent, at: to }));
  const present = timeline.symptoms.filter((symptom) => symptom.presence === 'present' && !symptom.relieved);
  const datum = (what: string, fact: Dated | undefined) =>
    datumOf(translated(messages, what), fact, messages);
  return [
    ...datum('blood pressure', newest([...timeline.pressures, ...unusable])),
    ...datum('blood pressure at home', newest([...timeline.homePressures, ...homeMeans])),
    ...datum('urine protein', newest(timeline.urineProteins)),
    ...present
      .slice(-3)
      .flatMap((symptom) => datum('symptom', { ...symptom, asSent: symptomWords(symptom) })),
    ...newestCited(evaluation).flatMap((result) => datum(idWords(result.analyte), result)),
  ];

  function symptomWords({ symptom, asSent }: Symptom): string {
    const said = asSent.replace(bareAnswer, '');
    return said === '' ? translated(messages, idWords(symptom)) : said;
  }
}

/** "true", and "Headache: true": present, and no more was said. */
const bareAnswer = /(?:^|: )(?:true|present|recorded)$/;

/** The newest result of each kind among those that a finding rests on. */
function newestCited(evaluation: Evaluation): readonly LaboratoryResult[] {
  const cited = new Set(evidenceMet(evaluation));
  const newestOf = new Map<string, LaboratoryResult>();
  for (const result of evaluation.timeline.laboratory)
    if (cited.has(result.source.reference)) newestOf.set(result.analyte, result);
  return [...newestOf.values()];
}

/** "BP 152/98 mmHg, 24 Nov 2026 09:10"; empty when no pressure was received. */
export function newestPressureWords(evaluation: Evaluation, messages: Messages = english): string {
  const data = newestData(evaluation, messages);
  const named = (name: string) => data.find((datum) => datum.what === translated(messages, name));
  const clinic = named('blood pressure');
  const pressure = clinic ?? named('blood pressure at home');
  if (pressure === undefined) return '';
  const value = `${pressure.asSent}${pressure.at === undefined ? '' : `, ${pressure.at}`}`;
  return fill(messages.phrases[clinic === undefined ? 'home-pressure' : 'pressure'], { value });
}

const instant = /\b\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:Z|[+-]\d{2}:\d{2})?/g;

/** Units and times as people write them. */
export function spokenValue(sentence: string, months?: readonly string[]): string {
  return sentence.replaceAll('mm[Hg]', 'mmHg').replace(instant, (text) => spokenTime(text, months));
}

function newest<T extends Dated>(facts: readonly T[]): T | undefined {
  return facts.reduce<T | undefined>((best, fact) => (isLater(fact, best) ? fact : best), undefined);
}

function isLater(fact: Dated, best: Dated | undefined): boolean {
  if (best === undefined) return true;
  return (fact.at?.latest ?? -Infinity) >= (best.at?.latest ?? -Infinity);
}

function datumOf(what: string, fact: Dated | undefined, { months }: Messages): readonly Datum[] {
  if (fact === undefined) return [];
  const asSent = spokenValue(fact.asSent, months);
  return [fact.at === undefined ? { what, asSent } : { what, asSent, at: spokenTime(fact.at.text, months) }];
}

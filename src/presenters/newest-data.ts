// The newest facts behind an answer, with their times, so that a stale answer can be recognised.
import type { Evaluation } from '../evaluation.ts';
import type { Moment } from '../timeline/timeline.ts';
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
 * The newest of each kind that was received: pressure first, then urine, then the rest.
 *
 * Returns  at most one datum of each kind, values as sent ("mmHg" for mm[Hg]); empty when nothing was received.
 * Notes    1. Shows what is there; judges nothing. A pressure that could not be used is said to be such.
 */
export function newestData(evaluation: Evaluation): readonly Datum[] {
  const { timeline } = evaluation;
  const unusable = timeline.unusablePressures.map((pressure) => ({
    ...pressure,
    asSent: `${pressure.asSent} (could not be used)`,
  }));
  const present = timeline.symptoms.filter((symptom) => symptom.presence === 'present' && !symptom.relieved);
  return [
    ...datumOf('blood pressure', newest([...timeline.pressures, ...unusable])),
    ...datumOf('blood pressure at home', newest(timeline.homePressures)),
    ...datumOf('urine protein', newest(timeline.urineProteins)),
    ...present.slice(-3).flatMap((symptom) => datumOf('symptom', symptom)),
  ];
}

/** "BP 152/98 mmHg, 24 Nov 2026 09:10"; empty when no pressure was received. */
export function newestPressureWords(evaluation: Evaluation): string {
  const pressure = newestData(evaluation).find((datum) => datum.what.startsWith('blood pressure'));
  if (pressure === undefined) return '';
  const label = pressure.what === 'blood pressure' ? 'BP' : 'BP at home';
  return `${label} ${pressure.asSent}${pressure.at === undefined ? '' : `, ${pressure.at}`}`;
}

const instant = /\b\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:Z|[+-]\d{2}:\d{2})?/g;

/** Units and times as people write them. */
export function spokenValue(sentence: string): string {
  return sentence.replaceAll('mm[Hg]', 'mmHg').replace(instant, spokenTime);
}

function newest<T extends Dated>(facts: readonly T[]): T | undefined {
  return facts.reduce<T | undefined>((best, fact) => (isLater(fact, best) ? fact : best), undefined);
}

function isLater(fact: Dated, best: Dated | undefined): boolean {
  if (best === undefined) return true;
  return (fact.at?.latest ?? -Infinity) >= (best.at?.latest ?? -Infinity);
}

function datumOf(what: string, fact: Dated | undefined): readonly Datum[] {
  if (fact === undefined) return [];
  const asSent = spokenValue(fact.asSent);
  return [fact.at === undefined ? { what, asSent } : { what, asSent, at: spokenTime(fact.at.text) }];
}

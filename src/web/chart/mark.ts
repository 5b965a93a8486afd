// One fact as a mark: what it is made of, and how its time and place are worded.
import { spokenTime } from '../../presenters/clock.ts';
import type { Trend } from '../../trend.ts';
import type { Moment, Source } from '../../timeline/timeline.ts';
import { placeWords } from '../words.ts';

export type MarkKind =
  | 'reading'
  | 'home-reading'
  | 'visit-average'
  | 'sent-average'
  | 'unusable'
  | 'urine'
  | 'laboratory'
  | 'symptom'
  | 'symptom-absent'
  | 'medicine';

export interface Mark {
  /** Same fact, same key, at every moment of the replay. */
  readonly key: string;
  readonly kind: MarkKind;
  /** Row below the pressures; absent for pressures. */
  readonly lane?: string;
  /** Local time of the clinic as if it were UTC, in milliseconds. */
  readonly at: number;
  readonly until?: number;
  readonly when: string;
  readonly place: string;
  readonly what: string;
  readonly value: string;
  /** In few characters, for a lane. */
  readonly short: string;
  readonly note: string;
  readonly systolic?: number;
  readonly diastolic?: number;
  readonly references: readonly string[];
}

/** What every mark of one view is made with. */
export interface Setting {
  readonly offset: number;
  readonly trend: Trend;
  readonly reasons: ReadonlyMap<string, string>;
}

type Content = Pick<Mark, 'kind' | 'what' | 'value'> & {
  readonly lane?: string;
  readonly short?: string;
  readonly note?: string;
  readonly until?: number | undefined;
  readonly systolic?: number;
  readonly diastolic?: number;
};

export function mark(
  { offset, trend }: Setting,
  at: Moment,
  sources: readonly Source[],
  content: Content,
): Mark {
  const references = sources.map(({ reference }) => reference);
  const preliminary = sources.some((source) => source.preliminary) ? ['preliminary'] : [];
  const unsure = at.precision === 'minute' ? [] : [`only the ${at.precision} is known`];
  const { until, ...rest } = content;
  return {
    short: content.value,
    ...rest,
    key: `${content.kind} ${references.join(' ')} ${at.text}`,
    at: middleOf(at) + offset * 60_000,
    when: spokenTime(at.text),
    place: placeWords(trend.placeOf(at)),
    note: [content.note ?? '', ...preliminary, ...unsure].filter((part) => part !== '').join('; '),
    references,
    ...(until === undefined ? {} : { until }),
  };
}

const middleOf = ({ earliest, latest }: Moment): number => (earliest + latest) / 2;

/** Where a fact without a time is drawn. */
export function momentUnknown(asOf: number): Moment {
  const localDay = Math.floor(asOf / 86_400_000);
  return { earliest: asOf, latest: asOf, localDay, precision: 'minute', text: 'time not known' };
}

export const drawnAtAsOf = 'drawn at the moment shown, for want of a time';

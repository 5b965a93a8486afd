// Doses: was a medicine given within some time, or is it running? An order is neither.
import type { MedicineId, Threshold } from '../guidelines/guideline.ts';
import type { Medicine } from '../timeline/timeline.ts';
import { milliseconds } from './compare.ts';
import type { View } from './view.ts';

/** In use, by a record or an order: its time is not over. */
export const isNotOver = (view: View, { end }: Medicine): boolean =>
  end === undefined || end.latest >= view.timeline.asOf;

/**
 * Was this given within the time, or is it running?
 *
 * Returns  false for an order; undefined for a dose whose time is not recorded
 * Notes    1. A course that has ended counts from its end, a dose from its time; a partial date by its last moment.
 */
export const isGivenWithin = (view: View, item: Medicine, within: Threshold): boolean | undefined =>
  item.isOrder === true ? false : isWithin(view, item, within);

function isWithin(view: View, item: Medicine, within: Threshold): boolean | undefined {
  if (item.status === 'ordered' || isLater(view, item)) return false;
  if (item.status === 'active') return isNotOver(view, item);
  const at = item.end ?? item.start;
  if (at === undefined) return item.status === 'given' ? undefined : false;
  return at.latest >= view.timeline.asOf - milliseconds(within);
}

/** After the moment of the answer. */
const isLater = (view: View, { start }: Medicine): boolean =>
  start !== undefined && start.earliest > view.timeline.asOf + milliseconds(view.values.futureTolerance);

/** Those of the medicines that were given within the time or are running. */
export const givenWithin = (
  view: View,
  medicines: readonly MedicineId[],
  within: Threshold,
): readonly Medicine[] =>
  view.timeline.medicines.filter(
    (item) => medicines.includes(item.medicine) && isGivenWithin(view, item, within) === true,
  );

/** Doses given within the time; with `apart`, only where two of one medicine lie at least so far from each other. */
export function dosesInUse(
  view: View,
  medicines: readonly MedicineId[],
  { within, apart }: { readonly within: Threshold; readonly apart?: Threshold },
): readonly Medicine[] {
  const given = view.timeline.medicines.filter(
    (item) =>
      item.status === 'given' &&
      medicines.includes(item.medicine) &&
      isGivenWithin(view, item, within) === true,
  );
  if (apart === undefined) return given;
  const least = milliseconds(apart);
  return given.filter((item) =>
    given.some((other) => other.medicine === item.medicine && distance(item, other) >= least),
  );
}

const distance = (one: Medicine, other: Medicine): number => Math.abs(timeOf(one) - timeOf(other));

/** Of a dose whose time is known, if only by its end. */
const timeOf = ({ start, end }: Medicine): number => (start ?? end)?.earliest ?? 0;

/** Those that may have been given: ordered and not known to be given, or given at a time not recorded. */
export const perhapsGiven = (
  view: View,
  medicines: readonly MedicineId[],
  within: Threshold,
): readonly Medicine[] =>
  view.timeline.medicines.filter(
    (item) =>
      medicines.includes(item.medicine) &&
      isWithin(view, item, within) === (item.isOrder === true ? true : undefined),
  );

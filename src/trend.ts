// The facts of one woman as a chart shows them: readings told from visit averages, each placed on the pregnancy. Pure.
import type { Evaluation } from './evaluation.ts';
import { timelineValues } from './guidelines/registry.ts';
import { prepareView } from './rules/view.ts';
import type { Moment, Place } from './timeline/timeline.ts';

/** The value of one contact with several readings. Values in mm[Hg], unrounded. */
export interface VisitAverage {
  readonly at: Moment;
  readonly systolicMmHg?: number;
  readonly diastolicMmHg?: number;
  /** The readings it was made from. */
  readonly references: readonly string[];
  readonly numberOfReadings: number;
}

export interface Trend {
  /** Every contact of this pregnancy, oldest first; a contact with one reading is that reading. */
  readonly visits: readonly VisitAverage[];
  readonly placeOf: (moment: Moment) => Place;
}

/**
 * What a chart needs beside the timeline.
 *
 * Given    evaluation   the answer; its guideline says how readings become a visit value
 * Returns  visit averages as the rules see them, and where on the pregnancy a moment lies
 * Throws   never
 */
export function trendOf({ timeline, guideline }: Evaluation): Trend {
  const view = prepareView(timeline, timelineValues, guideline.visit);
  return {
    placeOf: view.place,
    visits: view.occasions.map(({ at, value, readings }) => ({
      at,
      ...value,
      references: readings.flatMap(({ sources }) => sources.map(({ reference }) => reference)),
      numberOfReadings: readings.length,
    })),
  };
}

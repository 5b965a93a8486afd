// The same engine as in the service, run here: no round trip.
import { compareGuidelines } from '../compare-guidelines.ts';
import { evaluate, type EvaluateOptions } from '../evaluate.ts';
import type { Comparison, Evaluation } from '../evaluation.ts';
import { adaptInput } from '../site/adapt-input.ts';
import type { Moment, Timeline } from '../timeline/timeline.ts';
import type { Case } from './case.ts';
import { pageSettings } from './page-settings.ts';

/**
 * The answer for a case at a moment, with the settings of the site as the service has them.
 *
 * Throws   RequestError as `evaluate` does
 */
export function answerAt(shown: Case, asOf: number, guideline: string): Evaluation {
  return evaluate(inputOf(shown), { ...optionsOf(shown, asOf), guideline });
}

export function comparisonAt(shown: Case, asOf: number): Comparison {
  return compareGuidelines(inputOf(shown), optionsOf(shown, asOf));
}

const adapted = new WeakMap<Case, unknown>();

function inputOf(shown: Case): unknown {
  const { site } = pageSettings();
  if (site === undefined) return shown.input;
  const known = adapted.get(shown);
  if (known !== undefined) return known;
  const { input } = adaptInput(shown.input, site.setup);
  adapted.set(shown, input);
  return input;
}

function optionsOf({ subject }: Case, asOf: number): EvaluateOptions {
  const { site } = pageSettings();
  return { ...site?.options, asOf, ...(subject === undefined ? {} : { subject }) };
}

/** Every moment at which a fact became known, milliseconds since 1970-01-01T00:00Z, oldest first. */
export function momentsIn(timeline: Timeline): readonly number[] {
  const moments: readonly (Moment | undefined)[] = [
    ...timeline.pressures.map(({ at }) => at),
    ...timeline.homePressures.map(({ at }) => at),
    ...timeline.meanPressures.map(({ to }) => to),
    ...timeline.unusablePressures.map(({ at }) => at),
    ...timeline.urineProteins.map(({ at }) => at),
    ...timeline.laboratory.map(({ at }) => at),
    ...timeline.symptoms.map(({ at }) => at),
    ...timeline.medicines.flatMap(({ start, end }) => [start, end]),
    ...timeline.conditions.map(({ onset, recorded }) => recorded ?? onset),
    timeline.pregnancy.birth?.at,
  ];
  const times = moments.flatMap((moment) => (moment === undefined ? [] : [moment.latest]));
  return [...new Set([...times, timeline.asOf])]
    .filter((time) => time <= timeline.asOf)
    .sort((a, b) => a - b);
}

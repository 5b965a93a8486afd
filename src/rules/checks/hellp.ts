// HELLP: haemolysis, raised liver enzymes, low platelets, by either published set of criteria.
import type { Analyte, QuestionCheck, Threshold } from '../../guidelines/guideline.ts';
import type { LaboratoryResult } from '../../timeline/timeline.ts';
import { cannotTell, met, notApplicable, notMet, ofResult, type Answer } from '../answer.ts';
import { inUnitOf, milliseconds, satisfies } from '../compare.ts';
import type { View } from '../view.ts';
import { resultsOf } from './laboratory-values.ts';
import { idWords } from '../../id-words.ts';

type Options = Extract<QuestionCheck, { check: 'hellp' }>;
type Verdict = boolean | undefined;

interface Part {
  readonly verdict: Verdict;
  readonly wanting: readonly Analyte[];
  readonly thresholds: readonly Threshold[];
}

const analytes: readonly Analyte[] = ['platelets', 'ast', 'alt', 'ldh', 'bilirubin'];

/**
 * Are the criteria of HELLP met?
 *
 * Given    options.definition  Tennessee triad and Mississippi classes
 *          options.within      results further apart than this do not belong together
 * Returns  met with the name of the set; cannot-tell when platelets or enzymes fit and the rest is not measured;
 *          not-met otherwise
 * Throws   never
 * Notes    1. Pressure and protein play no part.
 *          2. Fitted at any time within the span, it stays while platelets or enzymes fit the triad.
 *          3. A haemolysed sample keeps the class and asks for a repeat; it never waits for it.
 * Source   the limits come from the guideline
 */
export function hellp(view: View, options: Options): Answer {
  const now = judgedAt(view, options, view.timeline.asOf);
  if (now.outcome === 'met' || now.outcome === 'not-applicable') return now;
  return stillThere(view, options) ?? now;
}

/** Fitted within the last days, and the platelets or the enzymes are not back yet: one part that crossed its limit ends nothing. */
function stillThere(view: View, options: Options): Answer | undefined {
  const { tennessee } = options.definition;
  const newest = newestTogether(view, options.within, view.timeline.asOf);
  const remains =
    one(newest, ['platelets'], tennessee.platelets).verdict === true ||
    one(newest, ['ast', 'alt'], tennessee.ast).verdict === true;
  if (!remains) return undefined;
  const oldest = view.timeline.asOf - milliseconds(options.within);
  const earlier = analytes
    .flatMap((analyte) => resultsOf(view, analyte))
    .map(({ at }) => at.latest)
    .filter((at) => at >= oldest)
    .sort((a, b) => b - a)
    .map((at) => judgedAt(view, options, at))
    .find(({ outcome }) => outcome === 'met');
  return earlier === undefined
    ? undefined
    : { ...earlier, because: `${earlier.because} The newest values are not back to normal.` };
}

function judgedAt(view: View, options: Options, until: number): Answer {
  const results = newestTogether(view, options.within, until);
  const evidence = [...results.values()].map((result) => ofResult(result));
  if (results.size === 0) return notApplicable('No laboratory values were received.');
  if (!results.has('platelets'))
    return cannotTell('Platelets were not measured.', {
      evidence,
      missing: { what: 'platelets, liver enzymes, LDH' },
    });
  const { tennessee, mississippi } = options.definition;
  const classes = mississippi.map((set) => ({
    name: `Mississippi ${set.name}`,
    part: allOf([
      one(results, ['platelets'], set.platelets),
      one(results, ['ast', 'alt'], set.transaminase),
      one(results, ['ldh'], set.ldh),
    ]),
  }));
  const triad = {
    name: 'Tennessee triad',
    part: allOf([
      one(results, ['platelets'], tennessee.platelets),
      one(results, ['ast'], tennessee.ast),
      anyOf([one(results, ['ldh'], tennessee.ldh), one(results, ['bilirubin'], tennessee.bilirubin)]),
    ]),
  };
  const isMet = ({ part }: typeof triad): boolean => part.verdict === true;
  // The worst class stands first and is the only one named.
  const found = [...classes.filter(isMet).slice(0, 1), ...[triad].filter(isMet)];
  const haemolysed = [...results.values()].some((result) => result.haemolysed);
  if (found.length > 0)
    return met(
      `${found.map((set) => set.name).join(' and ')}.${haemolysed ? ' The sample was haemolysed: repeat it now, and do not wait for it.' : ''}`,
      {
        evidence,
        thresholds: found.flatMap((set) => set.part.thresholds),
      },
    );
  const open = [...classes, triad].find((set) => set.part.verdict === undefined);
  if (open === undefined) return notMet('The laboratory values do not fit.', { evidence });
  const wanting = open.part.wanting.map(idWords).join(', ');
  return cannotTell(`What was measured fits ${open.name}; not measured: ${wanting}.`, {
    evidence,
    missing: { what: wanting },
  });
}

/** Of each analyte the newest result up to a moment, as far as they belong together. */
function newestTogether(
  view: View,
  within: Threshold,
  until: number,
): ReadonlyMap<Analyte, LaboratoryResult> {
  const newest = analytes.flatMap(
    (analyte) => resultsOf(view, analyte).findLast(({ at }) => at.latest <= until) ?? [],
  );
  const last = Math.max(...newest.map((result) => result.at.latest));
  const width = milliseconds(within);
  return new Map(
    newest.filter((result) => last - result.at.latest <= width).map((result) => [result.analyte, result]),
  );
}

function one(
  results: ReadonlyMap<Analyte, LaboratoryResult>,
  of: readonly Analyte[],
  limit: Threshold,
): Part {
  const known = of.flatMap((analyte) => results.get(analyte) ?? []);
  const verdicts = known.map((result): Verdict => {
    const compared = inUnitOf(result.measured, result.byUnit, limit);
    return compared === undefined ? undefined : satisfies(compared.measured, compared.threshold);
  });
  const verdict = verdicts.includes(true)
    ? true
    : verdicts.length > 0 && !verdicts.includes(undefined)
      ? false
      : undefined;
  return { verdict, wanting: verdict === undefined ? of : [], thresholds: [limit] };
}

const allOf = (parts: readonly Part[]): Part => ({
  verdict: parts.some((part) => part.verdict === false)
    ? false
    : parts.some((part) => part.verdict === undefined)
      ? undefined
      : true,
  wanting: parts.flatMap((part) => part.wanting),
  thresholds: parts.flatMap((part) => part.thresholds),
});

const anyOf = (parts: readonly Part[]): Part => ({
  verdict: parts.some((part) => part.verdict === true)
    ? true
    : parts.some((part) => part.verdict === undefined)
      ? undefined
      : false,
  wanting: parts.flatMap((part) => part.wanting),
  thresholds: parts.flatMap((part) => part.thresholds),
});

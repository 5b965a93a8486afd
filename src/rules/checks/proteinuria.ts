// Significant urine protein by any accepted measure, each in its own unit.
import type { QuestionCheck } from '../../guidelines/guideline.ts';
import type { UrineProtein } from '../../timeline/timeline.ts';
import { cannotTell, met, notApplicable, notMet, ofUrine, urineNames, type Answer } from '../answer.ts';
import { milliseconds } from '../compare.ts';
import { isRaised, type View } from '../view.ts';
import { judgeUrine, type JudgedUrine, type UrineVerdict } from './judge-urine.ts';
import { baselineOf, isNewAgainst } from './protein-baseline.ts';

type Options = Extract<QuestionCheck, { check: 'proteinuria' }>;

const ofJudged = (judged: JudgedUrine) => ofUrine(judged.result, judged.compared);

/**
 * Is there significant protein?
 *
 * Given    options.span  `current`: the newest results; `since-raised`: from shortly before the pressure first rose
 * Returns  met; not-met; cannot-tell when nothing recent enough, or only an ungraded or unquantified result, is there
 * Throws   never
 * Notes    1. A quantitative result on the same day as a strip, or soon after it, takes its place.
 *          2. Protein already present before 20 weeks counts as new only against its baseline.
 * Source   the limits come from the guideline; the order of tests is ours
 */
export function proteinuria(view: View, options: Options): Answer {
  const scoped = inScope(view, options);
  const judged = uncorrected(
    scoped.map((result) => judgeUrine(result, options.criteria)),
    options,
  );
  const used = judged.filter((item) => item.verdict !== 'not-used');
  const positive = used.filter((item) => item.verdict === 'significant');
  const decisive = options.span === 'current' ? newestOnly(used, positive) : positive;
  const newest = decisive.at(-1);
  if (newest !== undefined) return positiveAnswer(view, options, decisive, newest);
  return noneSignificant(view, options, scoped, used);
}

function positiveAnswer(
  view: View,
  options: Options,
  decisive: readonly JudgedUrine[],
  newest: JudgedUrine,
): Answer {
  const thresholds = newest.threshold === undefined ? [] : [newest.threshold];
  const evidence = decisive.map(ofJudged);
  const remark =
    newest.result.kind === 'strip' && options.criteria.remark !== undefined
      ? ` ${options.criteria.remark}`
      : '';
  const because = `${urineNames[newest.result.kind]}: ${newest.result.asSent} at ${newest.result.at.text}.${remark}`;
  if (options.newAgainstBaseline === undefined) return met(because, { thresholds, evidence });
  const baseline = baselineOf(view, options.criteria);
  if (baseline === undefined) return met(because, { thresholds, evidence });
  const isNew = isNewAgainst(baseline, decisive, options.newAgainstBaseline);
  const all = {
    thresholds: [...thresholds, options.newAgainstBaseline],
    evidence: [...baseline.evidence, ...evidence],
  };
  if (isNew === true) return met(`${because} It has at least doubled since before 20 weeks.`, all);
  if (isNew === false)
    return notMet(`${because} Protein was there before 20 weeks and has not doubled.`, all);
  const notCompared = `${because} Protein was known before 20 weeks and the two cannot be compared.`;
  return options.whenNotCompared === 'counts' ? met(notCompared, all) : cannotTell(notCompared, all);
}

function noneSignificant(
  view: View,
  options: Options,
  scoped: readonly UrineProtein[],
  used: readonly JudgedUrine[],
): Answer {
  if (
    options.span === 'since-raised' &&
    !view.occasions.some((o) => options.periods.includes(o.place.period)) &&
    scoped.length === 0
  )
    return notApplicable('No reading and no urine result belong to this part of the pregnancy.');
  const newest = used.at(-1);
  if (newest === undefined)
    return cannotTell(
      scoped.length === 0
        ? 'No urine protein result was received.'
        : 'The urine results received are of a kind that decides nothing here.',
      { evidence: scoped.map((result) => ofUrine(result)) },
    );
  const evidence = [ofJudged(newest)];
  const thresholds = newest.threshold === undefined ? [] : [newest.threshold];
  const text = `${urineNames[newest.result.kind]}: ${newest.result.asSent} at ${newest.result.at.text}`;
  if (newest.verdict === 'open')
    return cannotTell(`${text}: a ratio is needed.`, {
      evidence,
      thresholds,
      missing: {
        what: 'urine protein/creatinine ratio',
        how: 'Send urine for a protein/creatinine ratio; note the strip grade.',
      },
    });
  if (isTooOld(view, newest, options))
    return cannotTell(`${text}, too old for today.`, { evidence, thresholds });
  return notMet(`${text}: below the limit.`, { evidence, thresholds });
}

function isTooOld(view: View, newest: JudgedUrine, options: Options): boolean {
  const reference =
    view.occasions.filter((occasion) => isRaised(occasion, options.limits)).at(-1)?.at.earliest ??
    view.timeline.asOf;
  return reference - newest.result.at.latest > milliseconds(options.lookBack);
}

/**
 * Results of the asked periods; for `since-raised` from shortly before the first raised contact on, for `current`
 * none of the pregnancy once the six weeks after it are over.
 */
function inScope(view: View, options: Options): readonly UrineProtein[] {
  const placed = view.timeline.urineProteins
    .map((result) => ({ result, place: view.place(result.at) }))
    .filter(({ place }) => place.outside !== 'earlier' && options.periods.includes(place.period));
  if (options.span === 'current')
    return placed
      .filter(({ place }) => view.now.outside !== 'later' || place.outside === 'later')
      .map(ofPlaced);
  const first = view.occasions.find(
    (o) => options.periods.includes(o.place.period) && isRaised(o, options.limits),
  );
  const results = placed.map(ofPlaced);
  if (first === undefined) return results;
  const from = first.at.earliest - milliseconds(options.lookBack);
  return results.filter((result) => result.at.latest >= from);
}

const ofPlaced = ({ result }: { readonly result: UrineProtein }): UrineProtein => result;

/** Strips whose place a quantitative result takes are left out. */
function uncorrected(judged: readonly JudgedUrine[], options: Options): readonly JudgedUrine[] {
  const quantities = judged.filter((item) => item.result.kind !== 'strip' && isDecided(item.verdict));
  const within = milliseconds(options.correctedWithin);
  return judged.filter(
    (item) =>
      item.result.kind !== 'strip' ||
      !quantities.some(
        ({ result }) =>
          result.at.localDay === item.result.at.localDay ||
          (result.at.earliest >= item.result.at.earliest &&
            result.at.earliest - item.result.at.latest <= within),
      ),
  );
}

const isDecided = (verdict: UrineVerdict): boolean =>
  verdict === 'significant' || verdict === 'not-significant';

/** The newest result decides: positives older than the newest usable result fall away. */
function newestOnly(used: readonly JudgedUrine[], positive: readonly JudgedUrine[]): readonly JudgedUrine[] {
  const newest = used.at(-1);
  return newest === undefined
    ? []
    : positive.filter((item) => item.result.at.localDay === newest.result.at.localDay);
}

/** Was urine protein tested recently, whatever the result? */
export function urineTested(view: View, options: Extract<QuestionCheck, { check: 'urine-tested' }>): Answer {
  const oldest = view.timeline.asOf - milliseconds(options.freshWithin);
  const newest = view.timeline.urineProteins.at(-1);
  const thresholds = [options.freshWithin];
  if (newest === undefined || newest.at.latest < oldest)
    return notMet('No recent urine protein result was received.', { thresholds });
  return met(`${urineNames[newest.kind]} at ${newest.at.text}.`, { thresholds, evidence: [ofUrine(newest)] });
}

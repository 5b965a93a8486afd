// The main flow: unknown JSON in, an evaluation out. Pure: no clock, no disk, no network, no environment.
import { readBundle } from './bundle/read-bundle.ts';
import { RequestError, type Issue } from './errors.ts';
import type { Evaluation } from './evaluation.ts';
import { account } from './findings/account.ts';
import { differencesFrom } from './findings/differences.ts';
import type { Assessment } from './findings/finding.ts';
import type { Guideline } from './guidelines/guideline.ts';
import { riskModels } from './guidelines/risk-models.ts';
import { defaultGuidelineId, guidelineIds, guidelineOf, timelineValues } from './guidelines/registry.ts';
import { opinionOf, opinionsOf, type ViewedOpinion } from './opinions.ts';
import { withoutAdvice } from './rules/after-death.ts';
import { factsUsed } from './rules/facts-used.ts';
import { gestationalAgeOf } from './rules/gestational-age-now.ts';
import { factsJudged } from './rules/quality/facts-judged.ts';
import { estimateRisks } from './rules/risk-models.ts';
import type { Site } from './rules/site.ts';
import { buildTimeline, type BuiltTimeline } from './timeline/build-timeline.ts';
import { parseMoment } from './timeline/moment.ts';
import type { ReadBundle } from './bundle/read-bundle-types.ts';

export interface EvaluateOptions {
  /** The moment to answer for: ISO 8601 with zone, or milliseconds since 1970-01-01T00:00Z. Never read from a clock. */
  readonly asOf: string | number;
  /**
   * The moment is now by the clock: a pressure dated after it has a wrong time, and is to be repeated. Left out, what
   * lies after the moment is not seen: later facts change no earlier answer.
   */
  readonly asOfIsNow?: true;
  /** Default `frontline`. */
  readonly guideline?: string;
  /** The woman, when the input holds several: `Patient/1`. */
  readonly subject?: string;
  /** Offset in minutes for times sent without a zone, or a function from local milliseconds to it; default UTC. */
  readonly facilityOffsetMinutes?: number | ((localMilliseconds: number) => number);
  /** Unit a site declares for pressures sent without one; default: such pressures are not classified. */
  readonly defaultPressureUnit?: 'mm[Hg]' | 'kPa';
  /** Name the guidelines that would answer differently (`differs`); takes the time of evaluating every one. */
  readonly compare?: boolean;
  /**
   * What the site can do, by the names the data uses (`magnesium`, `intravenous-drugs`, `laboratory`, `operate`), and
   * what the next level is called. Default: a first-level site that can do everything except operating and intensive care.
   */
  readonly site?: Site;
  /** Add the figures of published risk equations (`riskEstimates`); off by default. */
  readonly riskModels?: boolean;
}

/** The moment asked for; now by the clock when none was. */
export const momentOrNow = (
  asked: string | undefined,
  now: number,
): Pick<EvaluateOptions, 'asOf' | 'asOfIsNow'> =>
  asked === undefined ? { asOf: now, asOfIsNow: true } : { asOf: asked };

/**
 * What a guideline says about one woman at one moment.
 *
 * Given    input    a FHIR R4 Bundle, Parameters, resource, or array of resources, as parsed JSON
 *          options  the moment, the guideline, the woman
 * Returns  the evaluation: ranked classes, urgency, findings with their trace, what is missing, what to do, and an
 *          account of every resource received
 * Throws   RequestError when the request as a whole cannot be answered; one bad resource never does
 * Notes    1. The same input and options give the same bytes.
 *          2. Every guideline's urgency is lifted to that of `frontline`.
 */
export function evaluate(input: unknown, options: EvaluateOptions): Evaluation {
  const guideline = chosenGuideline(options.guideline ?? defaultGuidelineId);
  const prepared = prepare(input, options);
  const { timeline } = prepared.built;
  if (options.compare !== true) return evaluationOf(prepared, opinionOf(timeline, guideline, options.site));
  return comparedEvaluation(prepared, guideline.id, opinionsOf(timeline, options.site));
}

/** What all guidelines share about one woman: the reading of the input, and her timeline. */
export interface Prepared {
  readonly asOf: number;
  readonly bundle: ReadBundle;
  readonly built: BuiltTimeline;
  readonly riskModels?: boolean;
  readonly site?: Site;
}

/** The first two steps of `evaluate`, with the same arguments and the same throws. */
export function prepare(input: unknown, options: EvaluateOptions): Prepared {
  const asOf = chosenMoment(options.asOf);
  const bundle = readBundle(input, options.subject === undefined ? {} : { subject: options.subject });
  const built = buildTimeline(bundle, { ...options, asOf, values: timelineValues });
  return {
    asOf,
    bundle,
    built,
    ...(options.riskModels === true ? { riskModels: true } : {}),
    ...(options.site === undefined ? {} : { site: options.site }),
  };
}

/** The last two steps of `evaluate` for one of the opinions; those that differ from it are named. */
export function comparedEvaluation(
  prepared: Prepared,
  guideline: string,
  opinions: readonly ViewedOpinion[],
): Evaluation {
  const opinion =
    opinions.find(({ stamp }) => stamp.id === guideline) ??
    opinionOf(prepared.built.timeline, chosenGuideline(guideline), prepared.site);
  return { ...evaluationOf(prepared, opinion), differs: differencesFrom(opinion, opinions) };
}

function evaluationOf(prepared: Prepared, opinion: ViewedOpinion): Evaluation {
  const { guideline, stamp, view } = opinion;
  const { hasDied } = prepared.built.timeline.woman;
  const assessment = hasDied === true ? withoutAdvice(opinion.assessment) : opinion.assessment;
  const riskEstimates =
    prepared.riskModels === true ? estimateRisks(view, riskModels, assessment) : undefined;
  return {
    asOf: new Date(prepared.asOf).toISOString(),
    guideline,
    stamp,
    subject: prepared.bundle.subject,
    gestationalAge: gestationalAgeOf(view),
    timeline: prepared.built.timeline,
    assessment,
    account: accountOf(prepared, guideline, assessment, riskEstimates),
    ...(riskEstimates === undefined ? {} : { riskEstimates }),
  };
}

const diedIssue: Issue = {
  severity: 'information',
  code: 'woman-deceased',
  type: 'business-rule',
  expression: 'Patient.deceased',
  message: 'The record says that the woman has died: nothing is advised. Correct the record if it is wrong.',
};

function accountOf(
  { bundle, built }: Prepared,
  guideline: Guideline,
  assessment: Assessment,
  riskEstimates: Evaluation['riskEstimates'] = [],
): Evaluation['account'] {
  return account({
    received: bundle.received,
    usable: bundle.usable.map(({ index, path, reference, resource }) => ({
      index,
      path,
      reference,
      resourceType: resource.resourceType,
    })),
    setAside: [...bundle.setAside, ...built.setAside],
    notNeeded: [...bundle.notNeeded, ...built.notNeeded],
    issues: [
      ...bundle.issues,
      ...built.issues,
      ...(built.timeline.woman.hasDied === true ? [diedIssue] : []),
    ],
    usedBy: usedBy({ bundle, built }, guideline, assessment, riskEstimates),
  });
}

/** A measurement rule or an equation is named only where no question looked at the fact. */
function usedBy(
  { bundle, built }: Pick<Prepared, 'bundle' | 'built'>,
  guideline: Guideline,
  assessment: Assessment,
  riskEstimates: NonNullable<Evaluation['riskEstimates']>,
): ReadonlyMap<string, readonly string[]> {
  const { timeline } = built;
  const judged = factsJudged(timeline, guideline.qualityRules ?? [], [
    ...assessment.quality.map(({ rule, evidence }) => ({ by: rule, evidence })),
    ...riskEstimates.map(({ model, evidence }) => ({ by: model, evidence })),
    ...assessment.medicines.map(({ rule, evidence }) => ({ by: rule, evidence })),
    ...assessment.treatment.flatMap(({ id, against }) =>
      against.map(({ evidence }) => ({ by: id, evidence })),
    ),
    ...assessment.prevention.flatMap(({ id, found }) => found.map(({ evidence }) => ({ by: id, evidence }))),
  ]);
  return new Map([
    ...judged,
    ...factsUsed(timeline, guideline, assessment.findings),
    ...(bundle.patient === undefined ? [] : [[bundle.patient.reference, ['subject']] as const]),
    ...timeline.requests.map(({ source }) => [source.reference, ['suggestions']] as const),
  ]);
}

function chosenGuideline(id: string): Guideline {
  const guideline = guidelineOf(id);
  if (guideline !== undefined) return guideline;
  throw new RequestError(400, [
    {
      severity: 'error',
      code: 'guideline-unknown',
      type: 'not-found',
      expression: 'http.guideline',
      message: `There is no guideline of this id. Known: ${guidelineIds.join(', ')}.`,
    },
  ]);
}

function chosenMoment(asOf: string | number): number {
  if (typeof asOf === 'number' && Number.isFinite(asOf)) return asOf;
  const moment = typeof asOf === 'string' ? parseMoment(asOf, 0) : undefined;
  if (moment !== undefined) return moment.latest;
  throw new RequestError(400, [
    {
      severity: 'error',
      code: 'as-of-invalid',
      type: 'value',
      expression: 'http.asOf',
      message: 'asOf is not a date or an instant. Write it as 2025-03-10T13:05:00Z.',
    },
  ]);
}

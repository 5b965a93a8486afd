// Results and totals of measures as FHIR MeasureReport: individual, subject-list and summary.
import type {
  FhirResource,
  List,
  MeasureReport,
  MeasureReportGroup,
  MeasureReportGroupPopulation,
  MeasureReportGroupStratifier,
} from 'fhir/r4.js';
import type { GuidelineStamp } from '../evaluation.ts';
import type { MeasureDefinition, StratifierId } from '../guidelines/measures.ts';
import type { Counts } from '../measures/membership.ts';
import type { MeasureTotals } from '../measures/sum-reports.ts';
import type { PregnancyResult } from '../measures/measure-pregnancy.ts';
import { artefactVersion } from './conformance/header.ts';
import { toReference } from './reference.ts';
import { stableUuid } from './stable-uuid.ts';
import { traced } from './trace-back.ts';
import { canonicalBase, codeSystems } from './vocabulary.ts';

/** What is said of every report. */
export interface ReportFrame {
  readonly definition: MeasureDefinition;
  readonly periodStart: string;
  readonly periodEnd: string;
  /** ISO 8601 instant of the evaluation. */
  readonly date: string;
  readonly guideline: string;
  /** Rule set the women were judged by. */
  readonly stamp?: GuidelineStamp;
}

/** Of the numerator over the counted denominator; absent when nobody is counted: never 0 or NaN (F-Q02). */
export type ScoreOf = (counts: Counts) => number | undefined;

type ReportType = MeasureReport['type'];

const populationSystem = 'http://terminology.hl7.org/CodeSystem/measure-population';

/**
 * The report of many women, without anything that tells one from another.
 *
 * Given    totals   sums; strata with their own
 *          frame    measure, period, date
 *          score    of counts
 * Returns  type `summary`: no subjectResults and no evaluatedResource
 * Throws   never
 * Source   FHIR R4 4.0.1 MeasureReport; DEQM summary; F-Q05 to F-Q07
 */
export function toSummaryReport(totals: MeasureTotals, frame: ReportFrame, score: ScoreOf): MeasureReport {
  return {
    ...report('summary', frame, [totals.counts, totals.failed]),
    group: [groupOf(totals, frame, score)],
  };
}

/** The report of one woman: type `individual`, with her as subject. */
export function toIndividualReport(
  totals: MeasureTotals,
  subject: string | undefined,
  { frame, score }: { readonly frame: ReportFrame; readonly score: ScoreOf },
): MeasureReport {
  return {
    ...report('individual', frame, [subject, totals.counts]),
    ...(subject === undefined ? {} : { subject: toReference(subject) }),
    group: [groupOf(totals, frame, score)],
  };
}

/** As the summary, with the list of women in each population (contained Lists). */
export function toSubjectListReport(
  totals: MeasureTotals,
  results: readonly PregnancyResult[],
  { frame, score }: { readonly frame: ReportFrame; readonly score: ScoreOf },
): MeasureReport {
  const lists = populationIds(frame).flatMap((id) => listOf(id, results));
  const contained: FhirResource[] = lists.map(({ list }) => list);
  const listed = new Set(lists.map(({ id }) => id));
  const group = groupOf(totals, frame, score);
  return {
    ...report('subject-list', frame, [totals.counts, results.map(({ subject }) => subject ?? '')]),
    ...(contained.length === 0 ? {} : { contained }),
    group: [
      {
        ...group,
        population: populationIds(frame).map((id) => ({
          ...population(id, totals.counts),
          ...(listed.has(id) ? { subjectResults: { reference: `#${listId(id)}` } } : {}),
        })),
      },
    ],
  };
}

type PopulationId = keyof Counts;

function populationIds({ definition }: ReportFrame): readonly PopulationId[] {
  return [...definition.populations.map(({ id }) => id), 'data-missing'];
}

function report(type: ReportType, frame: ReportFrame, content: unknown): MeasureReport {
  const { definition, periodStart, periodEnd, date, guideline, stamp } = frame;
  return {
    resourceType: 'MeasureReport',
    id: stableUuid([
      'MeasureReport',
      type,
      definition.id,
      periodStart,
      periodEnd,
      date,
      guideline,
      JSON.stringify(content),
    ]),
    ...(stamp === undefined ? {} : { meta: traced(stamp, 'hypertension-measure-report') }),
    status: 'complete',
    type,
    measure: `${canonicalBase}/Measure/${definition.id}|${artefactVersion}`,
    date,
    reporter: { display: 'pregnancy-htn' },
    period: { start: periodStart, end: periodEnd },
    improvementNotation: {
      coding: [
        {
          system: 'http://terminology.hl7.org/CodeSystem/measure-improvement-notation',
          code: definition.improvementNotation,
        },
      ],
    },
  };
}

/** How many women could not be judged at all, as a population of our own; absent when there are none (F-Q12). */
function failures({ failed }: MeasureTotals): readonly MeasureReportGroupPopulation[] {
  if (failed === 0) return [];
  return [{ code: { coding: [{ system: codeSystems.measurePopulation, code: 'failed' }] }, count: failed }];
}

function groupOf(totals: MeasureTotals, frame: ReportFrame, score: ScoreOf): MeasureReportGroup {
  const stratifier = frame.definition.stratifiers.flatMap((id) => stratifierOf(id, totals, { frame, score }));
  return {
    population: [...populationIds(frame).map((id) => population(id, totals.counts)), ...failures(totals)],
    ...scored(score(totals.counts)),
    ...(stratifier.length === 0 ? {} : { stratifier }),
  };
}

function scored(score: number | undefined): Pick<MeasureReportGroup, 'measureScore'> {
  return score === undefined ? {} : { measureScore: { value: score } };
}

function populationConcept(id: PopulationId) {
  const system = id === 'data-missing' ? codeSystems.measurePopulation : populationSystem;
  return { coding: [{ system, code: id }] };
}

function population(id: PopulationId, counts: Counts): MeasureReportGroupPopulation {
  return { code: populationConcept(id), count: counts[id] };
}

function stratifierOf(
  id: StratifierId,
  totals: MeasureTotals,
  { frame, score }: { readonly frame: ReportFrame; readonly score: ScoreOf },
): readonly MeasureReportGroupStratifier[] {
  const strata = [...totals.strata[id]];
  if (strata.length === 0) return [];
  return [
    {
      code: [{ text: id }],
      stratum: strata.map(([name, counts]) => ({
        value: { text: name },
        population: populationIds(frame).map((each) => population(each, counts)),
        ...scored(score(counts)),
      })),
    },
  ];
}

function listId(id: PopulationId): string {
  return `list-${id}`;
}

function listOf(
  id: PopulationId,
  results: readonly PregnancyResult[],
): readonly { readonly id: PopulationId; readonly list: List }[] {
  const found = results.filter(({ counts }) => counts[id] > 0).flatMap(({ subject }) => subject ?? []);
  const subjects = [...new Set(found)];
  if (subjects.length === 0) return [];
  const entry = subjects.map((reference) => ({ item: toReference(reference) }));
  return [{ id, list: { resourceType: 'List', id: listId(id), status: 'current', mode: 'snapshot', entry } }];
}

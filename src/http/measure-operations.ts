// Measure/[id]/$evaluate-measure over a posted Bundle of many women.
import { evaluateMeasure, measurePeriod, scoreOf, type MeasureResults } from '../evaluate-measure.ts';
import { defaultGuidelineId, guidelineOf } from '../guidelines/registry.ts';
import { measureOf } from '../guidelines/measures.ts';
import {
  toIndividualReport,
  toSubjectListReport,
  toSummaryReport,
  type ReportFrame,
} from '../presenters/measure-report.ts';
import { stampOf } from '../opinions.ts';
import { receive } from '../receive.ts';
import type { Call } from './call.ts';
import { checkFormat, isStrict } from './fhir-negotiation.ts';
import { parameterOf, readOperation, type OperationInput } from './operation-input.ts';
import { fhirReply, type Reply } from './reply.ts';
import { refused } from './request-issues.ts';

/** Codes of the operation, and of MeasureReport, which differ; both are understood. */
const reportTypes = {
  subject: 'individual',
  individual: 'individual',
  'subject-list': 'subject-list',
  'patient-list': 'subject-list',
  population: 'summary',
  summary: 'summary',
} as const;
type ReportType = (typeof reportTypes)[keyof typeof reportTypes];

/**
 * `POST /fhir/Measure/{id}/$evaluate-measure`
 *
 * Given    call   path: id of a measure; body: Parameters with `data` (Bundle), `periodStart`, `periodEnd`, and optionally
 *                 `reportType`, `subject`, `guideline`; or the bare Bundle with the others in the query
 * Returns  one MeasureReport: of the population, with the list of women, or of one woman
 * Throws   RequestError 404 unknown measure; 400 no data, no period, a period that ends before it starts, an unknown
 *          report type or guideline; 422 a report about one woman without naming her
 * Source   FHIR R4 4.0.1 $evaluate-measure; F-Q08, F-Q09
 */
export async function measureReply(call: Call): Promise<Reply> {
  checkFormat(call);
  const definition = measureOf(call.parameter('id') ?? '');
  if (definition === undefined)
    throw refused(404, 'unknown-measure', 'not-found', 'http.id', 'There is no Measure of this id.');
  const asked = readOperation(await call.body(), ['data', 'bundle']);
  const period = readPeriod(call, asked);
  const type = readType(call, asked);
  const { facilityOffsetMinutes, defaultPressureUnit, site, guideline: own } = call.site?.options ?? {};
  const guideline = parameterOf(call, asked, 'guideline') ?? own ?? defaultGuidelineId;
  const rules = guidelineOf(guideline);
  if (rules === undefined)
    throw refused(
      400,
      'guideline-unknown',
      'not-found',
      'http.guideline',
      'There is no guideline of this id.',
    );
  const subject = parameterOf(call, asked, 'subject');
  const received = receive(asked.data, { isStrict: isStrict(call), site: call.site?.setup });
  const measured = evaluateMeasure(definition.id, received.input, {
    period,
    guideline: rules,
    ...(subject === undefined ? {} : { subject }),
    ...(facilityOffsetMinutes === undefined ? {} : { facilityOffsetMinutes }),
    ...(defaultPressureUnit === undefined ? {} : { defaultPressureUnit }),
    ...(site === undefined ? {} : { site }),
  });
  const frame = {
    definition,
    periodStart: period.startText,
    periodEnd: period.endText,
    date: new Date(call.now).toISOString(),
    guideline,
    stamp: stampOf(rules),
  };
  return fhirReply(toReport(type, measured, frame));
}

function toReport(type: ReportType, { results, totals }: MeasureResults, frame: ReportFrame) {
  switch (type) {
    case 'summary':
      return toSummaryReport(totals, frame, scoreOf);
    case 'subject-list':
      return toSubjectListReport(totals, results, { frame, score: scoreOf });
    case 'individual': {
      if (new Set(results.map(({ subject }) => subject)).size + totals.failed > 1)
        throw refused(
          422,
          'required',
          'required',
          'http.subject',
          'Name the woman: a report of the type subject is about one.',
        );
      return toIndividualReport(totals, results[0]?.subject, { frame, score: scoreOf });
    }
  }
}

function readType(call: Call, asked: OperationInput): ReportType {
  const said = parameterOf(call, asked, 'reportType') ?? 'population';
  const [, known] = Object.entries(reportTypes).find(([name]) => name === said) ?? [];
  if (known !== undefined) return known;
  throw refused(400, 'report-type', 'value', 'http.reportType', 'Use subject, subject-list or population.');
}

function readPeriod(call: Call, asked: OperationInput): Exclude<ReturnType<typeof measurePeriod>, string> {
  const text = (name: string): string => {
    const said = parameterOf(call, asked, name);
    if (said !== undefined) return said;
    throw refused(
      400,
      'required',
      'required',
      `http.${name}`,
      `\`${name}\` is required: a date such as 2026-01-01.`,
    );
  };
  const period = measurePeriod(
    text('periodStart'),
    text('periodEnd'),
    call.site?.options.facilityOffsetMinutes,
  );
  if (typeof period !== 'string') return period;
  const message = 'This is no date, or the period ends before it starts: write both as 2026-01-01.';
  throw refused(400, 'value', 'value', `http.${period}`, message);
}

// One woman under one guideline, and what must be said of her: for tables too large for a case file.
import type { FhirResource } from 'fhir/r4.js';
import { prepare } from '../../src/evaluate.ts';
import type { Assessment, Finding, Outcome } from '../../src/findings/finding.ts';
import type { Classification, Urgency } from '../../src/guidelines/guideline.ts';
import { timelineValues } from '../../src/guidelines/registry.ts';
import { applyRules } from '../../src/rules/apply-rules.ts';
import type { Timeline } from '../../src/timeline/timeline.ts';
import { guideline } from './assess.ts';
import { bundleOf } from './resources.ts';
import { timeline, type PlainTimeline } from './timeline-builder.ts';

export interface Probe {
  readonly title: string;
  readonly guideline: string;
  /** What was sent, or plain entries where the sending does not matter. */
  readonly woman: { readonly asOf: string; readonly sent: readonly FhirResource[] } | PlainTimeline;
  readonly outcomes?: Readonly<Record<string, Outcome>>;
  /** Questions that are met, and questions that are not, however they come out. */
  readonly met?: readonly string[];
  readonly unmet?: readonly string[];
  /** Sentences of findings, as a whole. */
  readonly says?: Readonly<Record<string, string>>;
  /** A limit that a finding cites, as "comparator value unit". */
  readonly cites?: Readonly<Record<string, string>>;
  readonly leads?: Classification;
  readonly lists?: readonly Classification[];
  readonly without?: readonly Classification[];
  readonly urgency?: Urgency;
}

/** Her timeline, as the engine or the builder makes it. */
export const timelineOf = ({ woman }: Probe): Timeline =>
  'sent' in woman ? prepare(bundleOf(woman.sent), { asOf: woman.asOf }).built.timeline : timeline(woman);

/** What is wrong with the answers to some probes. Women that several probes share are read once. */
export function faultsOfAll(probes: readonly Probe[]): readonly string[] {
  const timelines = new Map<Probe['woman'], Timeline>();
  return probes.flatMap((probe) => {
    const known = timelines.get(probe.woman) ?? timelineOf(probe);
    timelines.set(probe.woman, known);
    return faultsOf(probe, applyRules(known, guideline(probe.guideline), timelineValues).assessment);
  });
}

/** What is wrong with an answer; nothing when it is as the probe says. */
export function faultsOf(probe: Probe, assessment: Assessment): readonly string[] {
  const found = new Map(assessment.findings.map((finding) => [finding.question, finding]));
  const outcome = (id: string): string => found.get(id)?.outcome ?? 'never asked';
  const { classification, urgency } = assessment;
  const wrong = [
    ...Object.entries(probe.outcomes ?? {}).flatMap(([id, wanted]) => differing(id, outcome(id), wanted)),
    ...(probe.met ?? []).flatMap((id) => differing(id, outcome(id), 'met')),
    ...(probe.unmet ?? []).filter((id) => outcome(id) === 'met').map((id) => `${id} is met`),
    ...Object.entries(probe.says ?? {}).flatMap(([id, wanted]) =>
      differing(id, found.get(id)?.because ?? 'never asked', wanted),
    ),
    ...Object.entries(probe.cites ?? {})
      .filter(([id, limit]) => !limitsOf(found.get(id)).includes(limit))
      .map(([id, limit]) => `${id} does not cite ${limit}`),
    ...(probe.leads === undefined ? [] : differing('leading class', String(classification[0]), probe.leads)),
    ...(probe.lists ?? [])
      .filter((name) => !classification.includes(name))
      .map((name) => `${name} is not listed`),
    ...(probe.without ?? [])
      .filter((name) => classification.includes(name))
      .map((name) => `${name} is listed`),
    ...(probe.urgency === undefined ? [] : differing('urgency', urgency, probe.urgency)),
  ];
  return wrong.map((fault) => `${probe.guideline}, ${probe.title}: ${fault}`);
}

const differing = (what: string, is: string, wanted: string): readonly string[] =>
  is === wanted ? [] : [`${what} is "${is}", not "${wanted}"`];

const limitsOf = (finding: Finding | undefined): readonly string[] =>
  (finding?.thresholds ?? []).map(({ comparator, value, unit }) => `${comparator} ${String(value)} ${unit}`);

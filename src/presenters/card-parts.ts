// Pieces shared by every card: source, indicator, machine-readable reasons, markdown lists.
import type { Urgency } from '../guidelines/guideline.ts';
import type { Missing } from '../findings/finding.ts';
import type { Evaluation } from '../evaluation.ts';
import { isVerified } from './answer.ts';
import type { CardSource, Indicator } from './card-types.ts';
import { caution } from './caution.ts';
import { asOfWords, spokenTime } from './clock.ts';
import { evidenceReferences } from './class-findings.ts';
import { escapeMarkdown } from './markdown.ts';
import { newestData } from './newest-data.ts';
import { someMapped, someOf } from './some.ts';
import { codeSystems, extensionKey, neededByWords } from './vocabulary.ts';

export const topics = {
  assessment: 'Hypertension in pregnancy: assessment',
  'missing-data': 'Hypertension in pregnancy: measure or ask now',
  'data-quality': 'Hypertension in pregnancy: data not used',
} as const;
export type Topic = keyof typeof topics;

/** The guideline is the source of the advice; this service is not. */
export function cardSource({ guideline }: Evaluation, topic: Topic): CardSource {
  return {
    label: [guideline.title, ...editionWords(guideline)].join(', '),
    url: guideline.url,
    topic: { system: codeSystems.cardTopic, code: topic, display: topics[topic] },
  };
}

/** Edition and year, the year once. */
function editionWords({ edition, year }: Evaluation['guideline']): readonly string[] {
  if (edition === '') return [String(year)];
  return edition.includes(String(year)) ? [edition] : [edition, String(year)];
}

/** `critical` is kept for what cannot wait. */
export function indicatorOf(urgency: Urgency): Indicator {
  switch (urgency) {
    case 'emergency':
      return 'critical';
    case 'same-day':
    case 'within-48-hours':
      return 'warning';
    case 'within-7-days':
    case 'routine':
      return 'info';
  }
}

/** Why the card says what it says, for machines. */
export function cardExtension(
  evaluation: Evaluation,
  rules: readonly string[],
): Readonly<Record<string, unknown>> {
  const { assessment, stamp } = evaluation;
  return {
    [extensionKey]: {
      classification: [...assessment.classification],
      urgency: assessment.urgency,
      rules: someOf(rules),
      evidence: someOf(evidenceReferences(evaluation)),
      missing: someMapped(assessment.missing, (missing) => missing.id),
      thresholds: someOf(thresholdMarks(evaluation)),
      guideline: { id: stamp.id, version: stamp.version, fingerprint: stamp.fingerprint },
      asOf: evaluation.asOf,
    },
  };
}

function thresholdMarks({ assessment }: Evaluation) {
  const met = assessment.findings.filter((finding) => finding.outcome === 'met');
  const byId = new Map(
    met.flatMap((finding) => finding.thresholds.map((threshold) => [threshold.id, threshold])),
  );
  return [...byId.values()].map(({ id, citation }) => ({
    id,
    known: citation.known,
    verified: isVerified(citation.known),
  }));
}

/** A heading and its list; nothing when the list is empty. */
export function section(heading: string, lines: readonly string[], numbered = false): readonly string[] {
  if (lines.length === 0) return [];
  const items = lines.map((line, index) => `${numbered ? `${index + 1}.` : '-'} ${line}`);
  return [`**${heading}**`, '', ...items, ''];
}

/** The newest facts as markdown lines. */
export function newestLines(evaluation: Evaluation): readonly string[] {
  return newestData(evaluation).map((datum) =>
    escapeMarkdown(`${datum.what} ${datum.asSent}${datum.at === undefined ? '' : `, ${datum.at}`}`),
  );
}

export function missingLine(missing: Missing): string {
  const when = missing.at === undefined ? neededByWords[missing.by] : `by ${spokenTime(missing.at)}`;
  return escapeMarkdown(`${missing.what} (${when}): ${missing.how}`);
}

/** Guideline with version, what was not checked against print, and the caution. */
export function closingLines(evaluation: Evaluation): readonly string[] {
  const { stamp } = evaluation;
  const unchecked = thresholdMarks(evaluation).filter((mark) => mark.verified === false);
  const remark =
    unchecked.length === 0
      ? []
      : [`Not yet checked against the printed guideline: ${unchecked.map((mark) => mark.id).join(', ')}.`];
  const basis = `Rules: ${stamp.title} (${stamp.id}, version ${stamp.version}). As of ${asOfWords(evaluation.timeline)}.`;
  return [...[basis, ...remark].map(escapeMarkdown), '', escapeMarkdown(caution.slice(0, 3).join(' '))];
}

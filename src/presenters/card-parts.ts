// Pieces shared by every card: source, indicator, machine-readable reasons, markdown lists.
import type { Urgency } from '../guidelines/guideline.ts';
import type { Missing } from '../findings/finding.ts';
import type { Evaluation } from '../evaluation.ts';
import { english } from '../messages/en.ts';
import type { Heading, Messages, Topic } from '../messages/messages.ts';
import { fill, translated } from '../messages/say.ts';
import { isVerified } from './answer.ts';
import type { Telling } from './card-context.ts';
import type { CardSource, ChartGap, Indicator } from './card-types.ts';
import { markedUuid } from './card-uuid.ts';
import { asOfWords, spokenTime } from './clock.ts';
import { evidenceReferences } from './class-findings.ts';
import { escapeMarkdown } from './markdown.ts';
import { newestData } from './newest-data.ts';
import { someMapped, someOf } from './some.ts';
import { codeSystems, extensionKey } from './vocabulary.ts';

/** Subjects of cards, in English. */
export const { topics } = english;

/** The guideline is the source of the advice; this service is not. */
export function cardSource({ evaluation, messages }: Telling, topic: Topic): CardSource {
  const { guideline } = evaluation;
  return {
    label: [guideline.title, ...editionWords(guideline)].join(', '),
    url: guideline.url,
    topic: { system: codeSystems.cardTopic, code: topic, display: messages.topics[topic] },
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

/**
 * The uuid of a card: tells its rule, and is the same for the same advice on the same evidence.
 *
 * Given    rule    the one the card is counted for
 *          parts   what else makes two cards the same
 */
export function cardUuid(
  { evaluation }: Telling,
  rule: string,
  parts: readonly (string | readonly string[])[],
): string {
  const { stamp, subject } = evaluation;
  const mark = { kind: 'card', rule, guideline: stamp.id, version: stamp.fingerprint } as const;
  return markedUuid(mark, [stamp.fingerprint, subject ?? '', ...parts]);
}

/** Why the card says what it says, for machines; and in which language, to whom, on which data. */
export function cardExtension(
  { evaluation, messages, context }: Telling,
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
      language: messages.language,
      languageReview: messages.review,
      role: context.role,
      data: context.states,
      setAside: someOf(setAsideMarks(evaluation)),
      warnings: someOf(context.warnings),
    },
  };
}

const longestList = 20;

/** What was received and not used, whatever the reason; the first of them. */
function setAsideMarks({ account }: Evaluation) {
  return account.entries
    .flatMap((entry) =>
      entry.outcome === 'set-aside' ? [{ reference: entry.reference, code: entry.code }] : [],
    )
    .slice(0, longestList);
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
export function section(
  { messages }: { readonly messages: Messages },
  heading: Heading,
  lines: readonly string[],
  numbered = false,
): readonly string[] {
  if (lines.length === 0) return [];
  const items = lines.map((line, index) => `${numbered ? `${index + 1}.` : '-'} ${line}`);
  return [`**${messages.headings[heading]}**`, '', ...items, ''];
}

/** The newest facts as markdown lines. */
export function newestLines({ evaluation, messages }: Telling): readonly string[] {
  return newestData(evaluation, messages).map((datum) =>
    escapeMarkdown(`${datum.what} ${datum.asSent}${datum.at === undefined ? '' : `, ${datum.at}`}`),
  );
}

export function missingLine({ messages }: Telling, missing: Missing): string {
  const { phrases, neededByWords, months } = messages;
  const when =
    missing.at === undefined
      ? neededByWords[missing.by]
      : fill(phrases['by-clock'], { time: spokenTime(missing.at, months) });
  const what = translated(messages, missing.what);
  return escapeMarkdown(
    fill(phrases['missing-line'], { what, when, how: translated(messages, missing.how) }),
  );
}

/** What could not be seen of the chart, and why. */
export function gapLines({ gaps, messages }: Telling): readonly string[] {
  return gaps.map((gap) => escapeMarkdown(gapText(messages, gap)));
}

function gapText(messages: Messages, { what, why, isPartial }: ChartGap): string {
  const phrase = messages.phrases[isPartial === true ? 'gap-partial' : 'gap'];
  return fill(phrase, { what: translated(messages, what), why: messages.gapReasons[why] });
}

/** Guideline with version, what was not checked against print, and the caution. */
export function closingLines({ evaluation, messages }: Telling): readonly string[] {
  const { stamp, timeline } = evaluation;
  const { phrases, months, caution, review } = messages;
  const unchecked = thresholdMarks(evaluation)
    .filter((mark) => mark.verified === false)
    .map((mark) => mark.id);
  const { title, id, version } = stamp;
  const lines = [
    fill(phrases.rules, { title, id, version, time: asOfWords(timeline, months) }),
    ...(unchecked.length === 0 ? [] : [fill(phrases.unchecked, { ids: unchecked.join(', ') })]),
    ...(review === undefined ? [] : [`[${messages.language}: ${review}]`]),
  ];
  return [...lines.map(escapeMarkdown), '', escapeMarkdown(caution.slice(0, 3).join(' '))];
}

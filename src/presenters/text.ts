// The answer for a nurse-midwife at a terminal: what it is, what to do now, what is missing, why, and on whose word.
import type { Issue } from '../errors.ts';
import type { AccountEntry, Evaluation } from '../evaluation.ts';
import type { Missing } from '../findings/finding.ts';
import { english } from '../messages/en.ts';
import { isVerified } from './answer.ts';
import { medicineLines, preventionLines, qualityLines, riskLines, treatmentLines } from './care-lines.ts';
import { caution } from './caution.ts';
import { asOfWords, spokenTime } from './clock.ts';
import { newestData } from './newest-data.ts';
import { reasonsOf, stepsOf } from './reasons.ts';
import { differsLine } from './comparison.ts';
import { block, bullets, numbered, wrapped } from './text-layout.ts';
import { classWords, neededByWords, referralWords, urgencyWords } from './vocabulary.ts';
import { sentenceCase, whenInPregnancy } from './words.ts';

/**
 * The answer in plain words, at most 80 columns wide.
 *
 * Returns  lines joined by line feeds, one at the end.
 * Throws   never
 */
export function toText(evaluation: Evaluation): string {
  const { assessment } = evaluation;
  const lines = [
    ...headline(evaluation),
    ...block('Newest readings', bullets(newestLines(evaluation))),
    ...block('What to do, in this order', numbered(stepsOf(evaluation))),
    ...block(english.headings.later, bullets(stepsOf(evaluation, english, 'later'))),
    ...block(english.headings.tell, bullets(stepsOf(evaluation, english, 'tell'))),
    ...block('Missing', bullets(assessment.missing.map(missingLine))),
    ...careBlocks(evaluation),
    ...block('Why', bullets(reasonsOf(evaluation))),
    ...block(english.headings.risk, bullets(riskLines({ evaluation, messages: english }))),
    ...block('Guideline', [...guidelineLines(evaluation), ...differsLines(evaluation)]),
    ...block('Data', dataLines(evaluation)),
    ...block('Caution', bullets(caution)),
  ];
  return `${lines.join('\n').trimEnd()}\n`;
}

function careBlocks(evaluation: Evaluation): readonly string[] {
  const said = { evaluation, messages: english };
  const { headings } = english;
  return [
    ...block(headings.medicines, bullets(medicineLines(said))),
    ...block(headings.treatment, bullets(treatmentLines(said))),
    ...block(headings.prevention, bullets(preventionLines(said))),
    ...block(headings.quality, bullets(qualityLines(said))),
  ];
}

function headline(evaluation: Evaluation): readonly string[] {
  const { assessment, subject } = evaluation;
  const [leading = 'cannot-classify', ...others] = assessment.classification;
  const asOf = asOfWords(evaluation.timeline);
  const { referral } = assessment;
  return [
    ...wrapped(`${sentenceCase(urgencyWords[assessment.urgency])}: ${classWords[leading]}`),
    ...(others.length === 0 ? [] : wrapped(`Also: ${others.map((each) => classWords[each]).join('; ')}`)),
    ...(referral === undefined ? [] : wrapped(`Refer to: ${referralWords[referral.level]}`)),
    ...wrapped(
      `${subject ?? 'Woman not named'}; ${whenInPregnancy(evaluation.gestationalAge)}; as of ${asOf}`,
    ),
    '',
  ];
}

function newestLines(evaluation: Evaluation): readonly string[] {
  const data = newestData(evaluation);
  if (data.length === 0) return ['none was received that can be shown'];
  return data.map((datum) => `${datum.what} ${datum.asSent}${datum.at === undefined ? '' : `, ${datum.at}`}`);
}

function missingLine(missing: Missing): string {
  const when = missing.at === undefined ? neededByWords[missing.by] : `by ${spokenTime(missing.at)}`;
  return `${missing.what} (${when}): ${missing.how}`;
}

function guidelineLines({ stamp, assessment }: Evaluation): readonly string[] {
  const met = assessment.findings.filter((finding) => finding.outcome === 'met');
  const unchecked = new Set(
    met.flatMap((finding) =>
      finding.thresholds.filter(({ citation }) => isVerified(citation.known) === false).map(({ id }) => id),
    ),
  );
  return [
    ...wrapped(
      `${stamp.title} (${stamp.id}, version ${stamp.version}, ${stamp.fingerprint.slice(0, 12)})`,
      '  ',
    ),
    ...(unchecked.size === 0
      ? []
      : wrapped(`Not yet checked against the printed guideline: ${[...unchecked].join(', ')}`, '  ')),
  ];
}

function differsLines({ differs }: Evaluation): readonly string[] {
  const line = differsLine(differs);
  return line === undefined ? [] : wrapped(line, '  ');
}

function dataLines({ account }: Evaluation): readonly string[] {
  const { received, used, notNeeded, setAside } = account;
  const counts = `${received} received: ${used} used, ${notNeeded} not needed, ${setAside} set aside`;
  return [
    ...wrapped(counts, '  '),
    ...bullets(account.entries.flatMap(setAsideLine)),
    ...bullets(account.issues.map((issue) => `${placeOf(issue, account)}${issue.message} [${issue.code}]`)),
  ];
}

/** "Observation/bp-1 component[0].valueQuantity: "; the path alone where it lies in no resource. */
function placeOf({ expression }: Issue, { entries }: Evaluation['account']): string {
  if (expression === '') return '';
  const holder = entries
    .filter(({ path }) => expression === path || expression.startsWith(`${path}.`))
    .at(-1);
  if (holder === undefined) return `${expression}: `;
  const element = expression.slice(holder.path.length + 1);
  return element === '' ? `${holder.reference}: ` : `${holder.reference} ${element}: `;
}

function setAsideLine(entry: AccountEntry): readonly string[] {
  if (entry.outcome !== 'set-aside') return [];
  return [`set aside: ${entry.reference}: ${entry.message} [${entry.code}]`];
}

// One woman's part of the report.
import { prepare } from '../../evaluate.ts';
import { opinionOf } from '../../opinions.ts';
import { siteQualityRules } from '../../guidelines/quality-rules.ts';
import { copyForwardReport } from '../../rules/quality/digit-preference.ts';
import type { PressureReading } from '../../timeline/timeline.ts';
import { without } from '../assemble-woman.ts';
import type { AssessOptions, Visit, WomanHistory } from '../assess-woman.ts';
import type { ResultLine } from '../result-line.ts';
import { diagnosisGroups, recordedDisorders } from './diagnoses.ts';
import { countMeasures } from './count-measures.ts';
import { openCounter, type Counter, type Tally } from './tally.ts';

export interface CountedWoman {
  readonly input: readonly unknown[];
  readonly history: WomanHistory;
  readonly lines: readonly ResultLine[];
  readonly options: AssessOptions;
}

/**
 * The counts of one woman.
 *
 * Given    woman  her input, her answers, and the lines made of them
 * Returns  a tally; empty for a person without a sign of a pregnancy
 * Throws   RequestError as `evaluate` does
 */
export function countWoman(woman: CountedWoman): Tally {
  const counter = openCounter();
  counter.add(['persons']);
  if (woman.history.account === undefined) return counter.tally();
  counter.add(['women']);
  countVisits(counter, woman);
  countGuidelines(counter, woman.lines);
  countAgreement(counter, woman);
  countSite(counter, woman, countMeasures(counter, woman.history, woman.options));
  countCompleteness(counter, woman.history);
  return counter.tally();
}

function countVisits(counter: Counter, { lines }: CountedWoman): void {
  for (const { urgency, classification, period, cards, repeats } of lines) {
    const shown = cards.critical + cards.warning + cards.info;
    counter.add(['visits']);
    counter.add(['urgency', urgency]);
    counter.add(['class', classification[0] ?? 'none']);
    counter.add(['period', period]);
    counter.add(['cards', 'critical'], cards.critical);
    counter.add(['cards', 'warning'], cards.warning);
    counter.add(['cards', 'info'], cards.info);
    counter.add(['repeats'], repeats);
    if (shown > 0) counter.add(['visits-with-card']);
  }
}

function countGuidelines(counter: Counter, lines: readonly ResultLine[]): void {
  const changed = new Set<string>();
  for (const { classification, urgency, others = [] } of lines)
    for (const other of others) {
      const [own = 'none'] = classification;
      const [theirs = 'none'] = other.classification;
      counter.add(['compared', other.guideline]);
      if (own === theirs && urgency === other.urgency) continue;
      counter.add(['differs', other.guideline, own === theirs ? 'urgency' : 'class']);
      counter.add(['change', other.guideline, `${own} (${urgency})`, `${theirs} (${other.urgency})`]);
      changed.add(other.guideline);
    }
  for (const guideline of changed) counter.add(['women-differ', guideline]);
}

/**
 * Recorded diagnoses beside the answer given without them.
 *
 * Notes    1. The answer is taken from the chart without the recorded disorders: with them it would agree with itself.
 *          2. Lead time: from the first contact with a card of at least a warning to the day the diagnosis was
 *             recorded (else its onset); negative when the card came later.
 */
function countAgreement(counter: Counter, { input, history, lines, options }: CountedWoman): void {
  const last = history.visits.at(-1);
  if (last === undefined) return;
  const recorded = history.timeline.conditions.filter(
    ({ condition, certainty }) => recordedDisorders.has(condition) && certainty !== 'provisional',
  );
  const found = answerWithout(
    input,
    new Set(recorded.map(({ source }) => source.reference)),
    last,
    history.subject,
    options,
  );
  for (const group of diagnosisGroups) {
    const isRecorded = recorded.some(({ condition }) => group.recorded.has(condition));
    const isFound = found.some((each) => group.classes.has(each));
    counter.add(['agreement', group.id, `${isRecorded ? 'recorded' : 'not'}-${isFound ? 'found' : 'not'}`]);
  }
  const days = recorded.flatMap(({ recorded: at, onset }) => (at ?? onset)?.localDay ?? []);
  if (days.length === 0) return;
  const first = lines.find(({ cards }) => cards.critical + cards.warning > 0);
  const diagnosed = Math.min(...days);
  if (first === undefined) counter.add(['lead-without-card']);
  else counter.add(['lead-days', diagnosed - Math.floor(Date.parse(first.at) / millisecondsPerDay)]);
}

const millisecondsPerDay = 86_400_000;

function answerWithout(
  input: readonly unknown[],
  references: ReadonlySet<string>,
  { asOf, evaluation, opinion }: Visit,
  subject: string,
  { site }: AssessOptions,
): readonly string[] {
  if (references.size === 0) return evaluation.assessment.classification;
  const { built } = prepare(without(input, references), { ...site, subject, asOf });
  return opinionOf(built.timeline, opinion.guideline, site?.site).assessment.classification;
}

/** The readings of her site. */
function countSite(counter: Counter, { history, options }: CountedWoman, site: string): void {
  const end = history.visits.at(-1)?.asOf;
  if (end === undefined) return;
  const readings = history.timeline.pressures.filter(
    ({ at, asSent }) =>
      at.latest <= end && at.latest >= (options.from ?? -Infinity) && !asSent.includes('kPa'),
  );
  for (const reading of readings) {
    countReading(counter, ['digits', 'site', site], reading);
    if (reading.technique.observer !== undefined)
      countReading(counter, ['digits', 'observer', reading.technique.observer], reading);
  }
  const copies = copyForwardReport(
    [readings.map((reading) => ({ ...reading, day: reading.at.localDay }))],
    siteQualityRules,
  );
  counter.add(['copy-forward', site, 'women'], copies.women);
  counter.add(['copy-forward', site, 'repeated'], copies.withRepeatedValue);
}

function countReading(
  counter: Counter,
  name: readonly string[],
  { systolicMmHg, diastolicMmHg, technique }: PressureReading,
): void {
  const method = technique.method === 'oscillometry' ? 'automated' : 'manual';
  if (systolicMmHg !== undefined) counter.add([...name, method, 'systolic', systolicMmHg]);
  if (diastolicMmHg !== undefined) counter.add([...name, method, 'diastolic', diastolicMmHg]);
}

function countCompleteness(counter: Counter, { visits, timeline, account }: WomanHistory): void {
  for (const { evaluation, asOf } of visits) {
    const day = (list: readonly { readonly at?: { readonly latest: number } }[]): boolean =>
      list.some(({ at }) => at !== undefined && at.latest <= asOf && asOf - at.latest < millisecondsPerDay);
    const items: Readonly<Record<string, boolean>> = {
      'blood pressure': day(timeline.pressures),
      'urine protein': day(timeline.urineProteins),
      'any symptom asked': day(timeline.symptoms),
      'gestational age or birth known': evaluation.gestationalAge.period !== 'unknown',
    };
    for (const [item, is] of Object.entries(items)) counter.add(['complete', item, is ? 'yes' : 'no']);
  }
  for (const entry of account?.entries ?? [])
    counter.add(['resources', entry.outcome === 'set-aside' ? entry.code : entry.outcome]);
}

// The referral note as content, in the order in which the receiving team reads it. Wording only.
import type { Evaluation } from '../evaluation.ts';
import { english } from '../messages/en.ts';
import type { Medicine, Moment, PressureReading, Symptom } from '../timeline/timeline.ts';
import { caution } from './caution.ts';
import { asOfWords, spokenTime } from './clock.ts';
import { spokenValue } from './newest-data.ts';
import { reasonsOf } from './reasons.ts';
import { spokenUnits } from '../findings/limit-words.ts';
import { idSentence, idWords } from '../id-words.ts';
import { ageWords, sentenceCase, withCapitals } from './words.ts';

/** Who she is, as the caller knows her; the answer itself holds no names. */
export interface Person {
  readonly name?: string;
  readonly birthDate?: string;
  readonly identifier?: string;
}

export type NoteSectionId = 'situation' | 'background' | 'assessment' | 'recommendation';

export interface NotePart {
  readonly heading: string;
  readonly lines: readonly string[];
  /** Steps to tick. */
  readonly toTick?: true;
}

export interface NoteSection {
  readonly id: NoteSectionId;
  readonly title: string;
  readonly parts: readonly NotePart[];
}

export interface ReferralNote {
  readonly title: string;
  readonly person: Person;
  readonly asOf: string;
  readonly sections: readonly NoteSection[];
  readonly cautions: readonly string[];
  /** Rule set and version. */
  readonly madeWith: string;
}

/** A page holds so many; older ones are in the chart that travels with her. */
const mostReadings = 6;
const mostResults = 6;
const mostMissing = 5;

/**
 * The referral note of an answer.
 *
 * Given    evaluation   the answer
 *          person       name and number, where known
 * Returns  four sections, in SBAR order: who, how far, what is asked; her history; readings, urine, symptoms, class
 *          and urgency with reasons; treatment given and steps before transfer
 * Throws   never
 * Notes    1. At most six readings and six results, newest last: one page. It says how many are left out.
 *          2. Nothing that is missing is left blank: it says "not recorded".
 * Source   ours; the order is SBAR (situation, background, assessment, recommendation), common practice
 */
export function toReferralNote(evaluation: Evaluation, person: Person = {}): ReferralNote {
  const { stamp, timeline, assessment } = evaluation;
  const { referral } = assessment;
  const place = referral === undefined ? 'no referral is advised now' : english.referralWords[referral.level];
  return {
    title: `Referral note: ${place}`,
    person,
    asOf: asOfWords(timeline),
    sections: [
      situation(evaluation),
      background(evaluation),
      findings(evaluation),
      recommendation(evaluation),
    ],
    cautions: caution,
    madeWith: `${stamp.title} (${stamp.id}, version ${stamp.version}, ${stamp.fingerprint.slice(0, 12)})`,
  };
}

function situation(evaluation: Evaluation): NoteSection {
  const { assessment, gestationalAge } = evaluation;
  const { referral, classification, urgency } = assessment;
  const classes = sentenceCase(classification.map((each) => english.classWords[each]).join(', also '));
  return section('situation', 'Situation', [
    part('Why she is sent', [
      `${sentenceCase(english.urgencyWords[urgency])}. ${classes}.`,
      ...(referral === undefined ? [] : [referral.sentence]),
    ]),
    part('Gestation', [
      [
        ageWords(gestationalAge),
        gestationalAge.dueDate === undefined ? '' : `due ${spokenTime(gestationalAge.dueDate)}`,
      ]
        .filter((text) => text !== '')
        .join(', '),
    ]),
  ]);
}

function background({ timeline }: Evaluation): NoteSection {
  const { gravidity, parity } = timeline.woman;
  const { fetuses, birth } = timeline.pregnancy;
  const counts = [
    gravidity === undefined ? '' : `gravida ${gravidity.count}`,
    parity === undefined ? '' : `para ${parity.count}`,
    fetuses === undefined ? '' : `fetuses ${fetuses.count}`,
    birth === undefined ? '' : `gave birth ${spokenTime(birth.at.text)}`,
  ].filter((text) => text !== '');
  const conditions = timeline.conditions.filter(({ state }) => state === 'active');
  const taken = timeline.medicines.filter(({ status }) => status === 'active');
  return section('background', 'Background', [
    part('Pregnancies', counts.length === 0 ? [] : [counts.join(', ')]),
    part(
      'Problems',
      unique(conditions.filter((item) => item.allergicTo === undefined).map(({ asSent }) => asSent)),
    ),
    part(
      'Allergies',
      unique(conditions.filter((item) => item.allergicTo !== undefined).map(({ asSent }) => asSent)),
    ),
    part('Medicines in use', unique(taken.map((each) => medicineLine(each, 'since ')))),
  ]);
}

function findings(evaluation: Evaluation): NoteSection {
  const { timeline } = evaluation;
  const pressures = [...timeline.pressures, ...timeline.homePressures].sort(
    (a, b) => a.at.latest - b.at.latest,
  );
  const unusable = timeline.unusablePressures.map(
    ({ asSent, at, why }) => `${timed(asSent, at)} (not usable: ${idWords(why)})`,
  );
  return section('assessment', 'Assessment', [
    part('Blood pressure', [...newest(pressures.map(pressureLine), mostReadings), ...unusable.slice(-2)]),
    part(
      'Urine protein',
      newest(
        timeline.urineProteins.map(({ asSent, at }) => timed(asSent, at)),
        3,
      ),
    ),
    part(
      'Blood tests',
      newest(
        timeline.laboratory.map(({ analyte, asSent, at }) => `${idSentence(analyte)} ${timed(asSent, at)}`),
        mostResults,
      ),
    ),
    part('Symptoms', symptomLines(timeline.symptoms)),
    part('Reasons', first(reasonsOf(evaluation).map(spoken), mostResults)),
  ]);
}

function recommendation({ timeline, assessment }: Evaluation): NoteSection {
  const given = timeline.medicines.filter(({ status }) => status === 'given');
  const steps = assessment.actions.filter(({ kind }) => kind === 'before-transfer');
  return section('recommendation', 'Recommendation', [
    part(
      'Treatment given',
      newest(
        given.map((each) => medicineLine(each)),
        mostReadings,
      ),
    ),
    stepsPart(steps.map(({ sentence }) => spoken(sentence))),
    part(
      'Still missing',
      first(
        assessment.missing.map(({ what }) => sentenceCase(spoken(what))),
        mostMissing,
      ),
    ),
  ]);
}

function section(id: NoteSectionId, title: string, parts: readonly NotePart[]): NoteSection {
  return { id, title, parts };
}

function stepsPart(steps: readonly string[]): NotePart {
  const heading = 'Before and during transfer';
  return steps.length === 0
    ? { heading, lines: ['no step is named for her state'] }
    : { heading, lines: steps, toTick: true };
}

const notRecorded = 'not recorded';

function part(heading: string, lines: readonly string[]): NotePart {
  return { heading, lines: lines.length === 0 ? [notRecorded] : lines };
}

function newest(lines: readonly string[], most: number): readonly string[] {
  const left = lines.length - most;
  return left <= 0 ? lines : [`${left} earlier, in the chart`, ...lines.slice(-most)];
}

/** The weightiest, and how many are left out. */
function first(lines: readonly string[], most: number): readonly string[] {
  const left = lines.length - most;
  return left <= 0 ? lines : [...lines.slice(0, most), `${left} more, in the answer of the service`];
}

/** As sent; beside another unit also in mmHg. */
function pressureLine(reading: PressureReading): string {
  const { asSent, at, setting, systolicMmHg, diastolicMmHg } = reading;
  const half = (value: number | undefined): string => (value === undefined ? '-' : String(Math.round(value)));
  const same = /mm\[Hg\]|mmHg/.test(asSent) ? '' : ` (${half(systolicMmHg)}/${half(diastolicMmHg)} mmHg)`;
  return `${timed(`${asSent}${same}`, at)}${setting === 'home' ? ' at home' : ''}`;
}

function medicineLine({ asSent, start, route }: Medicine, before = ''): string {
  const words = [timedAt(spoken(asSent), start, before), ...(route === undefined ? [] : [route])];
  return words.join(', ');
}

/** Those present, newest of each; those asked for and absent in one line. */
function symptomLines(symptoms: readonly Symptom[]): readonly string[] {
  const latest = new Map(symptoms.map((each) => [each.symptom, each]));
  const there = [...latest.values()].filter(({ presence }) => presence === 'present');
  const absent = [...latest.values()].filter(({ presence }) => presence === 'absent');
  const name = ({ symptom }: Symptom): string => idWords(symptom);
  return [
    ...there.map((each) =>
      sentenceCase(
        [timedAt(name(each), each.at), each.severity ?? '', each.relieved ? 'relieved' : '']
          .filter((text) => text !== '')
          .join(', '),
      ),
    ),
    ...(absent.length === 0 ? [] : [`Asked and not there: ${absent.map(name).join(', ')}`]),
  ];
}

const timed = (asSent: string, at: Moment | undefined): string => timedAt(spoken(asSent), at);

const timedAt = (text: string, at: Moment | undefined, before = ''): string =>
  at === undefined ? `${text}, time not recorded` : `${text}, ${before}${spokenTime(at.text)}`;

const spoken = (text: string): string => withCapitals(spokenUnits(spokenValue(text)));

const unique = (lines: readonly string[]): readonly string[] => [...new Set(lines)];

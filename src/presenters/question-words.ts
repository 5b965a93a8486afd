// What a question counts in words, each line with number and unit. Wording only.
import type {
  Confirmation,
  HellpDefinition,
  OrganCriterion,
  PressureLimits,
  ProteinuriaCriteria,
  Question,
  SevereConfirmation,
} from '../guidelines/guideline.ts';
import { limitWords, quantityWords } from '../findings/limit-words.ts';
import { idWords, manyWords } from '../id-words.ts';
import { item, type ListItem } from './nested-list.ts';
import { sentenceCase } from './words.ts';

/** What a question counts, line by line. Driven by the options it has, so that a new check needs no wording here. */
export function questionItems(question: Question): readonly ListItem[] {
  if (question.check === 'proteinuria') return proteinItems(question.criteria);
  return [
    ...('limits' in question ? [item(pressureWords(question.limits))] : []),
    ...('severe' in question ? [item(`severe: ${pressureWords(question.severe)}`)] : []),
    ...('confirmation' in question ? [item(confirmationWords(question.confirmation))] : []),
    ...('severeConfirmation' in question
      ? severeItems(question.severeConfirmation, question.check.startsWith('severe-'))
      : []),
    ...('criteria' in question ? question.criteria.map((criterion) => item(criterionWords(criterion))) : []),
    ...('definition' in question ? hellpItems(question.definition) : []),
    ...('symptoms' in question ? [item(`one of: ${manyWords(question.symptoms)}`)] : []),
    ...('conditions' in question
      ? [item(`recorded, ${idWords(question.scope)}: ${manyWords(question.conditions)}`)]
      : []),
    ...('medicines' in question ? [item(`one of: ${manyWords(question.medicines)}`)] : []),
    ...('analyte' in question ? [item(`${idWords(question.analyte)} ${limitWords(question.limit)}`)] : []),
    ...windowItems(question),
  ];
}

function windowItems(question: Question): readonly ListItem[] {
  return [
    ...(question.check === 'days-after-birth' ? [item(daysWords(question))] : []),
    ...('freshWithin' in question ? [item(`not older than ${spanWords(question.freshWithin)}`)] : []),
    ...('medicines' in question && 'within' in question
      ? [item(`given within ${spanWords(question.within)}`)]
      : []),
    ...('doses' in question ? [item(doseWords(question.doses))] : []),
    ...('settledAfter' in question
      ? [item(`settled when lower readings go on for ${limitWords(question.settledAfter)}`)]
      : []),
    ...('after' in question ? [item(`for ${limitWords(question.after)}`)] : []),
  ];
}

const daysWords = ({ from, until }: Extract<Question, { check: 'days-after-birth' }>): string =>
  `days after birth: ${[from, until].flatMap((limit) => (limit === undefined ? [] : [limitWords(limit)])).join(' and ')}`;

type Doses = NonNullable<Extract<Question, { check: 'medicine-active' }>['doses']>;

const doseWords = ({ within, apart }: Doses): string =>
  apart === undefined
    ? `or given within ${spanWords(within)}`
    : `or given twice within ${spanWords(within)}, ${limitWords(apart)} apart`;

const spanWords = ({ value, unit }: { readonly value: number; readonly unit: string }): string =>
  quantityWords(value, unit);

export function pressureWords({ systolic, diastolic }: PressureLimits): string {
  return `systolic ${limitWords(systolic)} or diastolic ${limitWords(diastolic)}`;
}

function confirmationWords({ minimumInterval, between, sameArm }: Confirmation): string {
  const pair = between === 'occasions' ? 'two contacts' : 'two single readings';
  const arm = sameArm ? ', on the same arm' : '';
  if (minimumInterval === undefined)
    return `seen in ${pair}${arm}; this publication names no time between them, any later contact confirms`;
  return `seen in ${pair}, ${limitWords(minimumInterval)} apart${arm}`;
}

function severeItems(
  { minimumInterval, closedAfter, repeatWithin }: SevereConfirmation,
  inFull: boolean,
): readonly ListItem[] {
  const pair = item(`severe is confirmed by two severe readings ${limitWords(minimumInterval)} apart`);
  if (!inFull) return [pair];
  return [
    pair,
    item(
      `a severe reading is closed by a lower one taken ${limitWords(closedAfter)} later, with no drug for pressure in between and no danger symptom`,
    ),
    item(`the repeat is due within ${spanWords(repeatWithin)}`),
  ];
}

export function proteinItems(criteria: ProteinuriaCriteria): readonly ListItem[] {
  const each = (name: string, limits: ProteinuriaCriteria['excretion24h']): readonly ListItem[] =>
    limits.map((limit) => item(`${name} ${limitWords(limit)}`));
  return [
    ...(criteria.strip === undefined ? [] : [item(`strip ${limitWords(criteria.strip)}`)]),
    ...(criteria.stripAsksForRatio === undefined
      ? []
      : [
          item(
            `from strip ${quantityWords(criteria.stripAsksForRatio.value, '{grade}')} on a ratio is asked for`,
          ),
        ]),
    item(
      criteria.ungradedPositive === 'counts'
        ? 'a strip that is "positive" without a grade counts, and the grade is asked for'
        : 'a strip that is "positive" without a grade leaves the question open',
    ),
    ...each('protein/creatinine ratio', criteria.proteinCreatinineRatio),
    ...each('albumin/creatinine ratio', criteria.albuminCreatinineRatio),
    ...each('protein', criteria.excretion24h),
  ];
}

/** "blood: platelets below 150 × 10⁹/L" */
export function criterionWords(criterion: OrganCriterion): string {
  const organ = `${criterion.organ}: `;
  switch (criterion.kind) {
    case 'laboratory':
      return `${organ}${manyWords(criterion.analytes)} ${limitWords(criterion.limit)}${ageWords(criterion)}${unlessWords(criterion.unlessRecorded)}`;
    case 'multiple-of-upper-limit':
      return `${organ}${manyWords(criterion.analytes)} ${limitWords(criterion.limit)} times the laboratory's upper limit (${spanWords(criterion.assumedUpperLimit)} where it states none)`;
    case 'multiple-of-baseline':
      return `${organ}${manyWords(criterion.analytes)} ${limitWords(criterion.limit)} times an earlier value${unlessWords(criterion.unlessRecorded)}`;
    case 'symptom':
      return `${organ}${manyWords(criterion.symptoms)}`;
    case 'condition':
      return `${organ}${manyWords(criterion.conditions)}, recorded`;
  }
}

function ageWords({ fromAge, beforeAge }: Extract<OrganCriterion, { kind: 'laboratory' }>): string {
  if (fromAge !== undefined) return `, from day ${fromAge.value} of the pregnancy on`;
  return beforeAge === undefined ? '' : `, before day ${beforeAge.value} of the pregnancy`;
}

const unlessWords = (conditions: readonly string[] | undefined): string =>
  conditions === undefined || conditions.length === 0 ? '' : `, unless ${manyWords(conditions)} is recorded`;

function hellpItems({ tennessee, mississippi }: HellpDefinition): readonly ListItem[] {
  const { ldh, bilirubin, ast, platelets } = tennessee;
  return [
    item('Tennessee, all three:', [
      item(`LDH ${limitWords(ldh)} or bilirubin ${limitWords(bilirubin)}`),
      item(`AST ${limitWords(ast)}`),
      item(`platelets ${limitWords(platelets)}`),
    ]),
    item(
      'or Mississippi, all three of one class:',
      mississippi.map((row) =>
        item(
          `${sentenceCase(row.name)}: platelets ${limitWords(row.platelets)}, AST or ALT ${limitWords(row.transaminase)}, LDH ${limitWords(row.ldh)}`,
        ),
      ),
    ),
  ];
}

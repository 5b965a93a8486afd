// Which facts the questions of a guideline looked at, by the reference they came from.
import type { Finding } from '../findings/finding.ts';
import type { Guideline, Question } from '../guidelines/guideline.ts';
import type { Timeline } from '../timeline/timeline.ts';

type Looks = (question: Question) => boolean;

const checkIs = (...names: readonly Question['check'][]): Looks => {
  const wanted = new Set<string>(names);
  return (question) => wanted.has(question.check);
};

/**
 * The questions that looked at each reference.
 *
 * Given    timeline, guideline, findings   of one evaluation
 * Returns  questions whose evidence cites the reference; where none does, questions that considered facts of its kind
 * Throws   never
 */
export function factsUsed(
  timeline: Timeline,
  guideline: Guideline,
  findings: readonly Finding[],
): ReadonlyMap<string, readonly string[]> {
  const cited = new Map<string, string[]>();
  for (const finding of findings)
    for (const { reference } of finding.evidence) {
      const known = cited.get(reference);
      if (known === undefined) cited.set(reference, [finding.question]);
      else if (known.at(-1) !== finding.question) known.push(finding.question);
    }
  const used = new Map<string, readonly string[]>(cited);
  const consider = (references: readonly string[], looks: Looks): void => {
    const open = references.filter((reference) => !used.has(reference));
    const first = open.length === 0 ? undefined : guideline.questions.find(looks);
    if (first !== undefined) for (const reference of open) used.set(reference, [first.id]);
  };
  considerAll(timeline, consider);
  return used;
}

function considerAll(
  timeline: Timeline,
  consider: (references: readonly string[], looks: Looks) => void,
): void {
  const references = (facts: readonly { readonly source: { readonly reference: string } }[]): string[] =>
    facts.map((fact) => fact.source.reference);
  const several = (
    facts: readonly { readonly sources: readonly { readonly reference: string }[] }[],
  ): string[] => facts.flatMap((fact) => fact.sources.map((source) => source.reference));
  consider(several(timeline.pressures), checkIs('pressure-raised-open'));
  consider(
    several(timeline.meanPressures.filter((mean) => mean.setting === 'clinic')),
    checkIs('pressure-raised-open'),
  );
  consider(several([...timeline.homePressures, ...timeline.meanPressures]), checkIs('home-pressure'));
  consider(references(timeline.urineProteins), checkIs('proteinuria'));
  for (const result of timeline.laboratory)
    consider([result.source.reference], (question) => asksForAnalyte(question, result.analyte));
  for (const symptom of timeline.symptoms)
    consider([symptom.source.reference], (question) => asksForSymptom(question, symptom.symptom));
  for (const condition of timeline.conditions)
    consider(
      [condition.source.reference],
      (question) =>
        question.check === 'condition-recorded' && question.conditions.includes(condition.condition),
    );
  for (const medicine of timeline.medicines)
    consider(
      [medicine.source.reference],
      (question) => asksForMedicine(question) && question.medicines.includes(medicine.medicine),
    );
  const { dating, birth, assumedFrom20Weeks } = timeline.pregnancy;
  consider(
    references([
      ...(dating === undefined ? [] : [dating, ...dating.others]),
      ...[birth, assumedFrom20Weeks].filter((item) => item !== undefined),
    ]),
    checkIs('period-now'),
  );
}

type MedicineQuestion = Extract<Question, { readonly medicines: unknown }>;
const asksForMedicine = (question: Question): question is MedicineQuestion => 'medicines' in question;

const hellpAnalytes: ReadonlySet<string> = new Set(['platelets', 'ast', 'alt', 'ldh', 'bilirubin']);

function asksForAnalyte(question: Question, analyte: string): boolean {
  if (question.check === 'laboratory-reaches' || question.check === 'laboratory-on-medicine')
    return question.analyte === analyte;
  if (question.check === 'hellp') return hellpAnalytes.has(analyte);
  if (question.check !== 'organ-involvement') return false;
  return question.criteria.some(
    (criterion) => 'analytes' in criterion && criterion.analytes.some((item) => item === analyte),
  );
}

function asksForSymptom(question: Question, symptom: string): boolean {
  if (question.check === 'symptom-present') return question.symptoms.some((item) => item === symptom);
  if (question.check !== 'organ-involvement') return false;
  return question.criteria.some(
    (criterion) => criterion.kind === 'symptom' && criterion.symptoms.some((item) => item === symptom),
  );
}

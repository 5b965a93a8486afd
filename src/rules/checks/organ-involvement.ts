// Is an organ involved: blood, kidney, liver, brain, lung, placenta? By the criteria of a guideline.
import type { Evidence, Outcome } from '../../findings/finding.ts';
import type { OrganCriterion } from '../../guidelines/guideline.ts';
import { cannotTell, met, notApplicable, notMet, ofFact, type Answer } from '../answer.ts';
import type { View } from '../view.ts';
import { ofBaseline, ofLimit, ofUpperLimit } from './organ-laboratory.ts';
import { no, yes, type Judged, type OrganOptions } from './organ-verdict.ts';
import { isOfThisPregnancy } from './records.ts';
import { idSentence, idWords } from '../../id-words.ts';
import { presentSymptoms } from './symptoms.ts';

/**
 * Is an organ involved?
 *
 * Given    options.criteria   one is enough
 *          options.newOnset   a value already beyond the limit before 20 weeks is not new
 * Returns  met; not-met when every laboratory criterion has a value and none is met; cannot-tell when a test is
 *          missing; not-applicable when the guideline has no such criteria
 * Throws   never
 * Notes    1. The newest result of each analyte decides; a haemolysed sample counts and is to be repeated.
 *          2. A criterion that is not for her, or not for her gestational age, is not met; an adjunct is never asked for.
 * Source   the criteria come from the guideline
 */
export function organInvolvement(view: View, options: OrganOptions): Answer {
  if (options.criteria.length === 0) return notApplicable('This publication has no such criteria.');
  const judged = options.criteria.map((criterion) => judge(view, criterion, options));
  const positive = judged.filter((item) => item.outcome === 'met');
  if (positive.length > 0)
    return met(positive.map((item) => item.text).join(' '), {
      evidence: unique(positive.flatMap((item) => item.evidence)),
      thresholds: positive.flatMap((item) => item.thresholds),
    });
  const evidence = unique(judged.flatMap((item) => item.evidence));
  const thresholds = judged.flatMap((item) => item.thresholds);
  const wanting = [
    ...new Set(judged.filter((item) => item.outcome === 'cannot-tell').flatMap((item) => item.wanting)),
  ];
  if (wanting.length > 0)
    return cannotTell(`Not measured: ${wanting.map(idWords).join(', ')}.`, {
      evidence,
      thresholds,
      missing: { what: wanting.map(idWords).join(', ') },
    });
  const old = judged.filter((item) => item.text !== '').map((item) => item.text);
  return notMet(old.length > 0 ? old.join(' ') : 'No sign of organ involvement in what was measured.', {
    evidence,
    thresholds,
  });
}

function judge(view: View, criterion: OrganCriterion, options: OrganOptions): Judged {
  switch (criterion.kind) {
    case 'laboratory':
      return best(criterion.analytes, (analyte) => ofLimit(view, criterion, analyte, options));
    case 'multiple-of-upper-limit':
      return best(criterion.analytes, (analyte) => ofUpperLimit(view, criterion, analyte, options));
    case 'multiple-of-baseline':
      return best(criterion.analytes, (analyte) => ofBaseline(view, criterion, analyte, options));
    case 'symptom': {
      const evidence = presentSymptoms(view, criterion.symptoms, options.symptomsFreshWithin);
      return evidence.length > 0 ? yes(`${idSentence(criterion.id)}.`, evidence) : no();
    }
    case 'condition': {
      const found = view.timeline.conditions.filter(
        (item) => criterion.conditions.includes(item.condition) && isOfThisPregnancy(view, item),
      );
      return found.length > 0
        ? yes(
            `${idSentence(criterion.id)}.`,
            found.map((item) => ofFact(`condition, ${item.condition}`, item, item.recorded)),
          )
        : no();
    }
  }
}

/** Of several analytes one met is enough; one measured and negative answers for the others. */
function best<A extends string>(analytes: readonly A[], judgeOne: (analyte: A) => Judged): Judged {
  const judged = analytes.map(judgeOne);
  const order: readonly Outcome[] = ['met', 'not-met', 'cannot-tell'];
  for (const outcome of order) {
    const found = judged.find((item) => item.outcome === outcome);
    if (found !== undefined) return { ...found, evidence: judged.flatMap((item) => item.evidence) };
  }
  return no();
}

function unique(evidence: readonly Evidence[]): readonly Evidence[] {
  const seen = new Set<string>();
  return evidence.filter((item) => {
    const key = `${item.reference} ${item.what} ${item.asCompared ?? ''}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

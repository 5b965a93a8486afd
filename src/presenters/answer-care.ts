// Medicines, drugs named by the publication, prevention and measurement in the public answer.
import type { Assessment, MedicineNotice, PreventionAdvice, TreatmentOption } from '../findings/finding.ts';
import type { Answer, AnswerMedicine, AnswerPrevention, AnswerTreatment } from './answer-types.ts';
import { toCitation, toEvidence } from './answer.ts';
import { someMapped, someOf, someText } from './some.ts';

/** The members of the answer about care; those without content are undefined. */
export function toCare(
  assessment: Assessment,
): Pick<Answer, 'medicines' | 'treatment' | 'prevention' | 'quality'> {
  return {
    medicines: someMapped(assessment.medicines, toMedicine),
    treatment: someMapped(assessment.treatment, toTreatment),
    prevention: someMapped(assessment.prevention, toPrevention),
    quality: someMapped(assessment.quality, ({ rule, grade, sentence, evidence, source }) => ({
      rule,
      grade,
      sentence,
      evidence: someMapped(evidence, toEvidence),
      source: toCitation(source),
    })),
  };
}

function toMedicine(notice: MedicineNotice): AnswerMedicine {
  const { rule, medicine, severity, sentence } = notice;
  return {
    rule,
    medicine,
    severity,
    sentence,
    alternative: someText(notice.alternative),
    evidence: someMapped(notice.evidence, toEvidence),
    source: toCitation(notice.source),
  };
}

function toTreatment(option: TreatmentOption): AnswerTreatment {
  const { id, medicine, purpose, dose, offeredFirst } = option;
  return {
    id,
    medicine,
    purpose,
    dose,
    offeredFirst,
    against: someMapped(option.against, ({ sentence, evidence }) => ({
      sentence,
      evidence: someMapped(evidence, toEvidence),
    })),
    source: toCitation(option.source),
  };
}

function toPrevention(advice: PreventionAdvice): AnswerPrevention {
  const { id, outcome, sentence } = advice;
  return {
    id,
    outcome,
    sentence,
    found: someMapped(advice.found, ({ factor, level, evidence }) => ({
      factor,
      level,
      evidence: someMapped(evidence, toEvidence),
    })),
    absent: someOf(advice.absent),
    neverAsked: someOf(advice.neverAsked),
    dose: someText(advice.dose),
    window: someText(advice.window),
    source: toCitation(advice.source),
  };
}

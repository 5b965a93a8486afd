// After birth: when to start, step down or change a drug. Data; the start limit is the edition's.
import { nice133, ours } from '../citations.ts';
import { step } from '../action-rule.ts';
import type { Edition } from '../edition.ts';
import type { ActionRule } from '../guideline.ts';
import { decidedByPrescriber, figure, say } from '../sentences.ts';
import { afterBirth, knownAfterBirth } from '../states.ts';

const down = nice133('1.5.17', 'read');
const consider = {
  high: figure('step-down-consider-systolic', 140, 'mm[Hg]', down),
  low: figure('step-down-consider-diastolic', 90, 'mm[Hg]', down),
};
const reduce = {
  systolic: figure('step-down-reduce-systolic', 130, 'mm[Hg]', down),
  diastolic: figure('step-down-reduce-diastolic', 80, 'mm[Hg]', down),
};
const stopMethyldopa = figure('methyldopa-stop-after-birth', 2, 'd', nice133('1.3.18 and 1.5.18', 'read'));

/** Drugs after birth, as an edition has them. */
export function afterBirthDrugs(edition: Edition): readonly ActionRule[] {
  const { systolic, diastolic } = edition.afterBirthTreatment;
  return [
    step(
      'after-birth-start-drug',
      'treatment-option',
      82,
      say(`Treatment after birth starts from {systolic:bare}/{diastolic}. ${decidedByPrescriber}`, {
        systolic: figure(`${systolic.id}-quoted`, systolic.value, systolic.unit, systolic.citation),
        diastolic: figure(`${diastolic.id}-quoted`, diastolic.value, diastolic.unit, diastolic.citation),
      }),
      { all: [afterBirth, 'after-birth-treatment'] },
      systolic.citation,
    ),
    step(
      'after-birth-reduce-drug',
      'after-birth',
      83,
      say(
        `Below {systolic:bare}/{diastolic} on treatment: reduce the drug; below {high:bare}/{low} it may be considered. ${decidedByPrescriber}`,
        { ...reduce, ...consider },
      ),
      { all: [afterBirth, 'treated', 'after-birth-low'] },
      down,
    ),
    step(
      'after-birth-methyldopa',
      'medicine-safety',
      83,
      say(
        `Methyldopa is stopped within {days} after birth and replaced where a drug is still needed. ${decidedByPrescriber}`,
        {
          days: stopMethyldopa,
        },
      ),
      { all: [afterBirth, 'methyldopa-in-use'] },
      nice133('1.3.18 and 1.5.18', 'read'),
    ),
    step(
      'after-birth-feeding',
      'after-birth',
      88,
      'Ask how she feeds the baby before choosing a drug.',
      { all: [knownAfterBirth, { any: ['treated', 'after-birth-treatment'] }] },
      ours('some drugs are avoided while breast-feeding'),
    ),
  ];
}

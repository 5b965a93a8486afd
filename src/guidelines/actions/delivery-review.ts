// The timing of birth: only ever a prompt for a senior review, for every guideline alike. Data.
import { nice133 } from '../citations.ts';
import { needing, step } from '../action-rule.ts';
import type { ActionRule, Citation, Need } from '../guideline.ts';
import type { Said } from '../sentences.ts';
import { pregnant } from '../states.ts';

/** The sentence that opens every prompt; the service decides no birth. */
export const seniorReview = 'Senior review of the timing of birth; this service does not decide it.';

/** A prompt with the weeks a publication names. */
export const deliveryReview = (id: string, said: Said, when: Need, citation: Citation): ActionRule =>
  needing('operate', step(id, 'delivery-review', 75, said, { all: [pregnant, when] }, citation));

export const deliveryReviews: readonly ActionRule[] = [
  needing(
    'operate',
    step(
      'stabilise-then-birth',
      'delivery-review',
      74,
      `First stabilise her, then birth. ${seniorReview}`,
      { all: [pregnant, { any: ['class:eclampsia', 'class:hellp'] }] },
      nice133('1.8', 'read'),
    ),
  ),
  step(
    'no-steroids-for-hellp',
    'delivery-review',
    76,
    'Steroids are not given to treat HELLP; for the lungs of a preterm baby they are another question.',
    'class:hellp',
    nice133('1.8.10', 'read'),
  ),
];

// What to do: the steps common to every guideline, filled with the values of an edition, and its own.
import { afterBirthDrugs } from './actions/after-birth-drugs.ts';
import { afterBirthPlan } from './actions/after-birth-plan.ts';
import { beforeTransfer } from './actions/before-transfer.ts';
import { deliveryReviews } from './actions/delivery-review.ts';
import { followUp } from './actions/follow-up.ts';
import { investigations } from './actions/investigations.ts';
import { longTerm } from './actions/long-term.ts';
import { magnesiumWatch } from './actions/magnesium.ts';
import { measureActions } from './actions/measure.ts';
import { repeatActions } from './actions/repeat.ts';
import { tellTheWoman } from './actions/tell-the-woman.ts';
import { treatmentActions } from './actions/treatment.ts';
import type { Edition } from './edition.ts';
import type { ActionRule } from './guideline.ts';
import { measuringChecklist } from './measuring-checklist.ts';

/** Every action rule of an edition: the common ones, then its own. */
export const standardActionRules = (edition: Edition): readonly ActionRule[] => [
  ...repeatActions(edition),
  ...measuringChecklist,
  ...measureActions,
  ...beforeTransfer(edition),
  ...magnesiumWatch(edition),
  ...investigations,
  ...treatmentActions(edition),
  ...followUp,
  ...deliveryReviews,
  ...afterBirthPlan,
  ...afterBirthDrugs(edition),
  ...longTerm,
  ...tellTheWoman,
  ...edition.care.actions,
  ...edition.actions,
];

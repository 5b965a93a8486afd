// What the woman is told. Data.
import { commonPractice, nice133, ours } from '../citations.ts';
import { step } from '../action-rule.ts';
import type { ActionRule } from '../guideline.ts';
import { anyRaised, noEmergency, pregnant } from '../states.ts';

export const tellTheWoman: readonly ActionRule[] = [
  step(
    'danger-signs',
    'tell-the-woman',
    95,
    'Tell her to come at once, by day or night, with severe headache, blurred sight or flashes, pain under the ribs, vomiting, breathlessness, sudden swelling of face, hands or feet, fits, or bleeding.',
    {
      all: [{ any: [anyRaised, 'class:transient-hypertension', 'class:isolated-proteinuria'] }, noEmergency],
    },
    nice133('1.1, advice on symptoms of pre-eclampsia', 'read', 'fits and bleeding added by us'),
  ),
  step(
    'danger-signs-fetus',
    'tell-the-woman',
    96,
    'Tell her to come the same day when the baby moves less than usual.',
    { all: [{ any: ['now-from-20-weeks', 'now-unknown'] }, anyRaised, noEmergency] },
    nice133('1.6.8', 'read'),
  ),
  step(
    'why-she-goes',
    'tell-the-woman',
    97,
    'Tell her and her family why she is sent, where to, and that she goes now.',
    { all: [{ any: ['referral:hospital', 'referral:hospital-with-intensive-care'] }] },
    commonPractice('a referral is followed when it is understood'),
  ),
  step(
    'take-the-tablets',
    'tell-the-woman',
    98,
    'Tell her to go on with her tablets for pressure until she is told otherwise, and to bring them along.',
    { all: [pregnant, 'treated', { none: ['agent-to-avoid'] }, noEmergency] },
    ours('a drug stopped without a plan is a common cause of severe pressure'),
  ),
];

// What the woman is told, in words meant for her. Data.
import { commonPractice, nice133, ours } from '../citations.ts';
import { step } from '../action-rule.ts';
import type { ActionRule } from '../guideline.ts';
import { anyRaised, noEmergency, pregnant } from '../states.ts';

export const tellTheWoman: readonly ActionRule[] = [
  step(
    'danger-signs',
    'tell-the-woman',
    95,
    'Come at once, by day or night, if you have severe headache, blurred sight or flashes, pain under the ribs, vomiting, trouble breathing, sudden swelling of face, hands or feet, fits, or bleeding.',
    {
      all: [{ any: [anyRaised, 'class:transient-hypertension', 'class:isolated-proteinuria'] }, noEmergency],
    },
    nice133('1.1, advice on symptoms of pre-eclampsia', 'read', 'fits and bleeding added by us'),
  ),
  step(
    'danger-signs-fetus',
    'tell-the-woman',
    96,
    'Come the same day if your baby moves less than usual.',
    { all: [{ any: ['now-from-20-weeks', 'now-unknown'] }, anyRaised, noEmergency] },
    nice133('1.6.8', 'read'),
  ),
  step(
    'why-she-goes',
    'tell-the-woman',
    97,
    'You are sent to hospital because what was found today can become dangerous for you and your baby. Do not wait: go today, with someone beside you.',
    { any: ['referral:hospital', 'referral:hospital-with-intensive-care'] },
    commonPractice('a referral is followed when it is understood'),
  ),
  step(
    'take-the-tablets',
    'tell-the-woman',
    98,
    'Go on taking your tablets for pressure until you are told otherwise, and bring them with you.',
    { all: [pregnant, 'treated', { none: ['agent-to-avoid'] }, noEmergency] },
    ours('a drug stopped without a plan is a common cause of severe pressure'),
  ),
];

// Where she is sent, and how soon. Expectations: decisions 6 and 7, rule 50; what the urgency says, the sentence says.
import { describe, expect, it } from 'vitest';
import { guidelineIds } from '../../src/guidelines/registry.ts';
import { actionStates } from '../support/action-states.ts';
import { assess } from '../support/assess.ts';
import { afterPreEclampsia } from '../support/plain-stories.ts';

const settled = {
  ...afterPreEclampsia,
  pressures: [{ at: '2026-03-10T09:00:00Z', systolic: 128, diastolic: 80 }],
};

describe('the referral', () => {
  it.each(guidelineIds)('%s: never says "the same day" to a woman who may come later', (id) => {
    const wrong = actionStates.flatMap(([name, plain]) => {
      const { urgency, referral } = assess(plain, id);
      const mayWait = urgency !== 'emergency' && urgency !== 'same-day';
      return mayWait && referral?.sentence.includes('same day') === true ? [name] : [];
    });
    expect(wrong).toEqual([]);
  });

  it('after pre-eclampsia, settled, is to hospital within 48 hours', () => {
    const { urgency, referral } = assess(settled);
    expect([urgency, referral?.level, referral?.sentence]).toEqual([
      'within-48-hours',
      'hospital',
      'Referral to hospital, to be seen within 48 hours.',
    ]);
  });

  it('is the same day where the pressure after birth asks for it', () => {
    const raised = [{ at: '2026-03-10T09:00:00Z', systolic: 152, diastolic: 96 }];
    const { urgency, referral } = assess({ ...settled, pressures: raised });
    expect([urgency, referral?.sentence]).toEqual([
      'same-day',
      'Referral to hospital, to be seen the same day.',
    ]);
  });

  it('once the six weeks are over is none for pre-eclampsia on record alone', () => {
    const { urgency, referral } = assess({ ...settled, birth: '2026-01-20', symptoms: [] });
    expect([urgency, referral]).toEqual(['routine', undefined]);
  });
});

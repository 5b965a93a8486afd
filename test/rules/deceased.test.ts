import { expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import { toCards } from '../../src/presenters/cds-cards.ts';
import { bundleOf, pressure } from '../support/resources.ts';

const died = (extra: object) => {
  const bundle = bundleOf([pressure('2025-03-10T09:00:00Z', 172, 114)]);
  const entries = (bundle.entry ?? []).map((entry) =>
    entry.resource?.resourceType === 'Patient' ? { resource: { ...entry.resource, ...extra } } : entry,
  );
  return evaluate({ ...bundle, entry: entries }, { asOf: '2025-03-10T10:00:00Z' });
};

it('F-M03: nothing is advised for a woman recorded as deceased, and the account says why', () => {
  for (const extra of [{ deceasedBoolean: true }, { deceasedDateTime: '2025-03-10' }]) {
    const evaluation = died(extra);
    expect(evaluation.assessment.urgency).toBe('routine');
    expect(evaluation.assessment.urgencyBecause).toEqual([]);
    expect(evaluation.assessment.actions).toEqual([]);
    expect(evaluation.account.issues.map((issue) => issue.code)).toContain('woman-deceased');
    expect(toCards(evaluation).cards).toEqual([]);
  }
});

it('F-M03: a death after the moment of the answer is not yet known', () => {
  expect(died({ deceasedDateTime: '2025-04-01' }).assessment.urgency).toBe('emergency');
});

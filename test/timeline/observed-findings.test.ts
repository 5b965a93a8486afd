// Findings sent as observations: terminology.csv lists abruption, growth restriction and fetal death as such.
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import { bundleOf, gestationalAge, observation, pressure, snomed } from '../support/resources.ts';

const at = '2025-03-10T09:00:00Z';
const answer = (code: string, fields: object) =>
  evaluate(
    bundleOf([
      gestationalAge(at, 231),
      pressure(at, 148, 94),
      pressure('2025-03-10T13:30:00Z', 150, 96),
      observation(snomed(code), at, fields),
    ]),
    { asOf: '2025-03-10T14:00:00Z' },
  );

describe('a finding sent as an observation', () => {
  it('abruption is an emergency, as it is as a condition', () => {
    const { assessment, account } = answer('415105001', { valueBoolean: true });
    expect(assessment.urgency).toBe('emergency');
    expect(account.setAside).toBe(0);
  });

  it.each(['22033007', '276507005'])('%s with raised pressure is pre-eclampsia', (code) => {
    expect(answer(code, { valueBoolean: true }).assessment.classification[0]).toBe('pre-eclampsia');
    expect(answer(code, {}).assessment.classification[0]).toBe('pre-eclampsia');
  });

  it('said not to be there, it counts for nothing', () => {
    const { assessment, account } = answer('22033007', { valueBoolean: false });
    expect(assessment.classification[0]).toBe('gestational-hypertension');
    expect(account.notNeeded).toBe(1);
  });
});

// The public JSON answer.
import { describe, expect, it } from 'vitest';
import { toAnswer } from '../../src/presenters/answer.ts';
import { evaluationOf, normalEvaluation } from './evaluation-builder.ts';
import { emptyValues, throughJson } from './walk.ts';

describe('the JSON answer', () => {
  it('has its members in the published order', () => {
    expect(Object.keys(throughJson(toAnswer(evaluationOf())) as object)).toEqual([
      'classification',
      'urgency',
      'gestationalAge',
      'findings',
      'missing',
      'actions',
      'referral',
      'urgencyBecause',
      'guideline',
      'asOf',
      'subject',
      'account',
      'caution',
    ]);
  });

  it('T-02: holds no null and nothing empty, whatever is absent', () => {
    const bare = normalEvaluation({
      subject: undefined,
      account: { received: 0, used: 0, notNeeded: 0, setAside: 0, entries: [], issues: [] },
    });
    for (const evaluation of [evaluationOf(), normalEvaluation(), bare]) {
      expect(emptyValues(throughJson(toAnswer(evaluation)))).toEqual([]);
    }
  });

  it('marks a value from memory as not verified, one read as verified, and leaves the mark off our own choices', () => {
    const [severe, rule, platelets] = toAnswer(evaluationOf()).findings ?? [];
    expect(severe?.thresholds?.[0]?.citation).toMatchObject({ known: 'from-memory', verified: false });
    expect(rule?.source).toMatchObject({ known: 'read', verified: true });
    expect(throughJson(platelets?.source)).toEqual({
      publication: 'ours',
      section: 'reason',
      year: 2020,
      known: 'ours',
    });
  });

  it('keeps what was sent beside what was compared', () => {
    const evidence = toAnswer(evaluationOf()).findings?.[0]?.evidence?.[0];
    expect(evidence).toMatchObject({
      reference: 'Observation/bp-1',
      asSent: '168/112 mm[Hg]',
      asCompared: '168/112 mm[Hg]',
    });
  });

  it('counts every entry received once', () => {
    const { account } = toAnswer(evaluationOf());
    expect(account.used + account.notNeeded + account.setAside).toBe(account.received);
    expect(account.entries).toHaveLength(account.received);
  });

  it('R-13: is the same bytes for the same evaluation', () => {
    expect(JSON.stringify(toAnswer(evaluationOf()))).toBe(JSON.stringify(toAnswer(evaluationOf())));
  });
});

// A symptom is present, absent, or was never asked: which statement counts. Clinical rules 2.3; notes of the check.
import { describe, expect, it } from 'vitest';
import { presentSymptoms } from '../../../src/rules/checks/symptoms.ts';
import type { Symptom } from '../../../src/timeline/timeline.ts';
import { moment, symptom } from '../facts.ts';
import { ask, limit, told, viewOf } from './ask.ts';

type More = Partial<Extract<Parameters<typeof ask>[0], { check: 'symptom-present' }>>;
const present = (more: More, ...symptoms: readonly Symptom[]) =>
  ask(
    { check: 'symptom-present', symptoms: ['headache'], freshWithin: limit('<=', 1, 'd'), ...more },
    { symptoms },
  );
const outcome = (...symptoms: readonly Symptom[]) => present({}, ...symptoms).outcome;

const at = (when: string, presence: Symptom['presence'] = 'present'): Symptom => ({
  ...symptom('headache', presence),
  at: moment(when),
  asSent: `${presence} at ${when}`,
});
function undated(presence: Symptom['presence']): Symptom {
  const { at: _at, ...rest } = symptom('headache', presence);
  return rest;
}

describe('the newest statement', () => {
  it('decides, whatever the order of the record', () => {
    expect(outcome(at('08:00'), at('09:00', 'absent'))).toBe('not-met');
    expect(outcome(at('09:00', 'absent'), at('08:00'))).toBe('not-met');
    expect(outcome(at('08:00', 'absent'), at('09:00'))).toBe('met');
    expect(outcome(at('09:00'), at('08:00', 'absent'))).toBe('met');
  });

  it('of two at the same time is the one that says present', () => {
    expect(outcome(at('09:00'), at('09:00', 'absent'))).toBe('met');
    expect(outcome(at('09:00', 'absent'), at('09:00'))).toBe('met');
  });

  it('without a time is current when present, and the oldest when absent', () => {
    expect(outcome(undated('present'), at('09:00', 'absent'))).toBe('met');
    expect(outcome(at('09:00', 'absent'), undated('present'))).toBe('met');
    expect(outcome(undated('absent'), at('09:00'))).toBe('met');
    expect(outcome(at('09:00'), undated('absent'))).toBe('met');
    expect(outcome(undated('absent'))).toBe('not-met');
  });

  it('counts while it is fresh, up to the limit', () => {
    expect(outcome(at('2025-03-09T12:00:00Z'))).toBe('met');
    expect(outcome(at('2025-03-09T11:59:00Z'))).toBe('cannot-tell');
    expect(outcome(at('2025-03-09T12:00:00Z', 'absent'))).toBe('not-met');
    expect(outcome(at('2025-03-09T11:59:00Z', 'absent'))).toBe('cannot-tell');
  });
});

describe('a symptom', () => {
  it('called mild, or relieved, does not count; called severe or moderate it does', () => {
    expect(outcome({ ...at('09:00'), severity: 'mild' })).toBe('not-met');
    expect(outcome({ ...at('09:00'), severity: 'moderate' })).toBe('met');
    expect(outcome({ ...at('09:00'), relieved: true })).toBe('not-met');
  });

  it('that is over counts where that is asked, and one that was absent does not', () => {
    const over = { ...at('09:00'), relieved: true };
    expect(present({ evenWhenOver: true }, over).outcome).toBe('met');
    expect(present({ evenWhenOver: false }, over).outcome).toBe('not-met');
    expect(present({ evenWhenOver: true }, at('09:00', 'absent')).outcome).toBe('not-met');
  });

  it('of another part of the pregnancy does not count where the part is asked', () => {
    expect(present({ periods: ['from-20-weeks'] }, at('09:00')).outcome).toBe('met');
    expect(present({ periods: ['after-birth'] }, at('09:00')).outcome).toBe('cannot-tell');
    expect(present({ periods: ['from-20-weeks'] }, undated('present')).outcome).toBe('met');
    expect(present({ periods: ['after-birth'] }, undated('present')).outcome).toBe('cannot-tell');
  });

  it('of an earlier pregnancy does not count, however long statements are fresh', () => {
    const ever = { freshWithin: limit('<=', 1000, 'd') };
    expect(present(ever, at('2024-01-01T09:00:00Z')).outcome).toBe('cannot-tell');
    expect(present(ever, at('2024-10-01T09:00:00Z')).outcome).toBe('met');
  });
});

describe('of several symptoms', () => {
  const both = { symptoms: ['headache', 'visual-disturbance'] } as const;
  const eyes = (presence: Symptom['presence']) => ({
    ...symptom('visual-disturbance', presence),
    asSent: 'eyes',
  });

  it('one present is enough; each must be absent; what was not asked is named', () => {
    expect(told(present(both, at('09:00', 'absent'), eyes('present')))).toEqual({
      outcome: 'met',
      cited: ['eyes'],
      limits: [],
    });
    const absent = present(both, at('09:00', 'absent'), eyes('absent'));
    expect(told(absent)).toEqual({
      outcome: 'not-met',
      cited: ['absent at 09:00', 'eyes'],
      limits: [],
    });
    const open = present(both, at('09:00', 'absent'));
    expect(told(open)).toEqual({ outcome: 'cannot-tell', cited: ['absent at 09:00'], limits: [] });
    expect(open.missing?.what).toBe('visual disturbance');
    expect(present(both).missing?.what).toBe('headache, visual disturbance');
  });

  it('silence is "not recorded" for what is written down when it happens', () => {
    const answer = present({ ...both, whenUnasked: 'not-recorded' }, at('09:00', 'absent'));
    expect(told(answer)).toEqual({ outcome: 'not-met', cited: ['absent at 09:00'], limits: [] });
    expect(answer.because).toBe('Not recorded.');
  });

  it('others than those asked about say nothing', () => {
    expect(present({}, symptom('oedema')).outcome).toBe('cannot-tell');
  });
});

describe('danger symptoms beside a pressure', () => {
  const cited = (within: Parameters<typeof presentSymptoms>[2], ...symptoms: readonly Symptom[]) =>
    presentSymptoms(viewOf({ symptoms }), ['headache'], within).map(({ asSent }) => asSent);
  const old = at('2025-03-01T09:00:00Z');

  it('count whatever their age, unless an age is named', () => {
    expect(cited(undefined, old)).toEqual([old.asSent]);
    expect(cited(limit('<=', 1, 'd'), old)).toEqual([]);
    expect(cited(limit('<=', 1, 'd'), at('2025-03-09T12:00:00Z'))).toHaveLength(1);
    expect(cited(limit('<=', 1, 'd'), undated('present'))).toHaveLength(1);
  });

  it('must be present, strong, of this pregnancy, and among those asked about', () => {
    expect(cited(undefined, at('09:00', 'absent'))).toEqual([]);
    expect(cited(undefined, { ...at('09:00'), severity: 'mild' })).toEqual([]);
    expect(cited(undefined, at('2024-01-01T09:00:00Z'))).toEqual([]);
    expect(cited(undefined, symptom('oedema'))).toEqual([]);
  });
});

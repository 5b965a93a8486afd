// The reasons given beside an outcome: what is short of the interval, when to repeat, what stands open.
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { assess } from '../support/assess.ts';
import type { PlainTimeline } from '../support/timeline-builder.ts';

const at = (clock: string): string => `2025-03-10T${clock}:00Z`;

function finding(question: string, plain: Omit<PlainTimeline, 'asOf'>, guideline?: string): Finding {
  const { findings } = assess({ asOf: at('14:00'), gestation: '30+0', ...plain }, guideline);
  const found = findings.find((one) => one.question === question);
  if (found === undefined) throw new Error(`not asked: ${question}`);
  return found;
}

const repeatAt = (plain: Omit<PlainTimeline, 'asOf'>, guideline?: string): number | undefined => {
  const gap = assess({ asOf: at('14:00'), gestation: '30+0', ...plain }, guideline).missing.find(
    ({ id }) => id === 'second-raised-contact',
  );
  return gap?.at === undefined ? undefined : Date.parse(gap.at);
};

const raised = (clock: string) => ({ at: at(clock), systolic: 146, diastolic: 92 });
const normal = (clock: string) => ({ at: at(clock), systolic: 118, diastolic: 74 });

describe('an unconfirmed pressure', () => {
  it('says by how many minutes the pair is short (X2)', () => {
    const short = (second: string): string =>
      finding('confirmed-from-20-weeks', { pressures: [raised('09:00'), raised(second)] }).because;
    expect(short('12:59')).toMatch(/1 minute short of the interval/);
    expect(short('12:58')).toMatch(/2 minutes short of the interval/);
  });

  it('says that there is no second raised contact, and when one would confirm', () => {
    const found = finding('confirmed-from-20-weeks', { pressures: [raised('09:00')] });
    expect(found.because).toMatch(/no second raised contact/);
    expect(repeatAt({ pressures: [raised('09:00')] })).toBe(Date.parse(at('13:00')));
  });

  it('names no time where the publication has no interval (decision 16)', () => {
    const found = finding('confirmed-from-20-weeks', { pressures: [raised('09:00')] }, 'nice-2023');
    expect(found.outcome).toBe('cannot-tell');
    expect(repeatAt({ pressures: [raised('09:00')] }, 'nice-2023')).toBeUndefined();
  });

  it('counts from the first raised contact, a normal one before it aside', () => {
    expect(repeatAt({ pressures: [normal('08:00'), raised('09:00')] })).toBe(Date.parse(at('13:00')));
  });
});

describe('a drug between two contacts (rule 24)', () => {
  const labetalol = (start: string, status?: 'ordered' | 'given') => ({
    medicine: 'labetalol' as const,
    start: at(start),
    ...(status === undefined ? {} : { status }),
  });
  const outcome = (medicine: ReturnType<typeof labetalol>) =>
    finding('confirmed-from-20-weeks', {
      pressures: [raised('09:00'), normal('13:30')],
      medicines: [medicine],
    }).outcome;

  it('confirms when it was given from the first reading on and not after the second', () => {
    expect(outcome(labetalol('09:00', 'given'))).toBe('met');
    expect(outcome(labetalol('13:30', 'given'))).toBe('met');
  });

  it('does not when it came before or after, or was only ordered', () => {
    expect(outcome(labetalol('08:59', 'given'))).toBe('cannot-tell');
    expect(outcome(labetalol('13:31', 'given'))).toBe('cannot-tell');
    expect(outcome(labetalol('10:00', 'ordered'))).toBe('cannot-tell');
  });
});

describe('a medicine in use', () => {
  const treated = (medicine: Omit<NonNullable<PlainTimeline['medicines']>[number], 'medicine'>) =>
    finding('treated', { pressures: [normal('09:00')], medicines: [{ medicine: 'labetalol', ...medicine }] })
      .outcome;

  it('counts while it is taken', () => {
    expect(treated({ start: '2025-03-01' })).toBe('met');
    expect(treated({ start: '2025-03-01', end: '2025-04-01' })).toBe('met');
  });

  it('does not count once stopped, ended, given once or only ordered', () => {
    expect(treated({ start: '2025-03-01', status: 'stopped' })).toBe('not-met');
    expect(treated({ start: '2025-03-01', end: '2025-03-05' })).toBe('not-met');
    expect(treated({ start: '2025-03-01', status: 'given' })).toBe('not-met');
    expect(treated({ start: '2025-03-01', status: 'ordered' })).toBe('not-met');
  });

  it('says nothing about pressure when another reason is recorded', () => {
    const found = finding('treated', {
      pressures: [normal('09:00')],
      medicines: [{ medicine: 'labetalol', start: '2025-03-01' }],
      conditions: [{ condition: 'heart-failure' }],
    });
    expect([found.outcome, found.evidence.length]).toEqual(['not-met', 1]);
    expect(found.because).toMatch(/heart failure/);
  });

  it('without a recorded start does not date a hypertension of this pregnancy', () => {
    const plain = { pressures: [normal('09:00')], medicines: [{ medicine: 'labetalol' as const }] };
    expect(finding('treated-from-20-weeks', plain).outcome).toBe('not-met');
    expect(finding('treated', plain).outcome).toBe('met');
  });
});

describe('conditions in the record', () => {
  const recorded = (condition: { state?: 'active' | 'inactive'; at?: string }) =>
    finding('recorded-gestational', {
      pressures: [normal('09:00')],
      conditions: [{ condition: 'gestational-hypertension', ...condition }],
    }).outcome;

  it('count for this pregnancy when active and not older than it', () => {
    expect(recorded({ at: '2025-03-01' })).toBe('met');
    expect(recorded({})).toBe('met');
    expect(recorded({ at: '2023-03-01' })).toBe('not-met');
    expect(recorded({ at: '2025-03-01', state: 'inactive' })).toBe('not-met');
  });
});

describe('the part of the pregnancy', () => {
  const because = (plain: Omit<PlainTimeline, 'asOf'>): string =>
    assess({ asOf: at('14:00'), ...plain }).findings.find(({ question }) => question === 'now-from-20-weeks')
      ?.because ?? '';

  it('is said in weeks and days, in days after birth, or as not dated', () => {
    expect(because({ gestation: '30+2' })).toBe('30+2 weeks.');
    expect(because({ birth: '2025-03-07T08:00:00Z' })).toBe('Day 3 after birth.');
    expect(because({})).toBe('The pregnancy is not dated.');
    expect(because({ birth: '2025-01-01T08:00:00Z' })).toMatch(/More than six weeks after the birth/);
  });
});

describe('a symptom', () => {
  const outcome = (...symptoms: NonNullable<PlainTimeline['symptoms']>) =>
    finding('lung-oedema', { pressures: [normal('09:00')], symptoms }).outcome;
  const oedema = (presence: 'present' | 'absent', time?: string) => ({
    symptom: 'pulmonary-oedema' as const,
    presence,
    ...(time === undefined ? {} : { at: time }),
  });

  it('is as the newest statement says, whatever the order of the record', () => {
    expect(outcome(oedema('present', at('08:00')), oedema('absent', at('09:00')))).toBe('not-met');
    expect(outcome(oedema('absent', at('09:00')), oedema('present', at('08:00')))).toBe('not-met');
    expect(outcome(oedema('absent', at('08:00')), oedema('present', at('09:00')))).toBe('met');
    expect(outcome(oedema('present', at('09:00')), oedema('absent', at('08:00')))).toBe('met');
  });

  it('present and absent at one time is present', () => {
    expect(outcome(oedema('absent', at('09:00')), oedema('present', at('09:00')))).toBe('met');
    expect(outcome(oedema('present', at('09:00')), oedema('absent', at('09:00')))).toBe('met');
  });

  it('without a time counts when present', () => {
    expect(outcome(oedema('present'))).toBe('met');
  });

  it('is fresh for exactly seven days (168 h)', () => {
    expect(outcome(oedema('present', '2025-03-03T14:00:00Z'))).toBe('met');
    expect(outcome(oedema('present', '2025-03-03T13:59:00Z'))).toBe('not-met');
  });
});

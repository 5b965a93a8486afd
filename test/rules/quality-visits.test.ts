// Doubts from comparing readings: halves, arms, days, and what is too old to be told. Clinical rules section 3: Q11, Q12, Q14.
import { describe, expect, it } from 'vitest';
import type { Timeline } from '../../src/timeline/timeline.ts';
import { applied, reading } from './facts.ts';

const noticesOf = (facts: Partial<Timeline>) => applied(facts).assessment.quality;
const told = (rule: string, ...pressures: Timeline['pressures']) =>
  noticesOf({ pressures }).find((notice) => notice.rule === rule);

describe('two readings of one visit', () => {
  const differ = (...pressures: Timeline['pressures']) => told('readings-of-one-visit-differ', ...pressures);

  it('are compared in the halves that both have', () => {
    expect(differ(reading('09:00', 124, undefined), reading('09:02', 140, 78))?.evidence).toHaveLength(2);
    expect(differ(reading('09:00', 124, undefined), reading('09:02', 126, 98))).toBeUndefined();
    expect(differ(reading('09:00', undefined, 70), reading('09:02', 126, 98))).toBeDefined();
    expect(differ(reading('09:00', 124, undefined), reading('09:02', undefined, 98))).toBeUndefined();
  });

  it('of two arms are not two readings of one', () => {
    const left = reading('09:00', 124, 78, { arm: 'left' });
    expect(differ(left, reading('09:02', 140, 78, { arm: 'right' }))).toBeUndefined();
    expect(differ(left, reading('09:02', 140, 78, { arm: 'left' }))).toBeDefined();
  });

  it('are told of the newest visit only, and not of one long ago', () => {
    const apart = [reading('2025-03-08T09:00:00Z', 124, 78), reading('2025-03-08T09:02:00Z', 140, 78)];
    expect(differ(...apart)).toBeDefined();
    expect(differ(...apart, reading('09:00', 124, 78))).toBeUndefined();
    expect(
      differ(reading('2025-01-08T09:00:00Z', 124, 78), reading('2025-01-08T09:02:00Z', 140, 78)),
    ).toBeUndefined();
  });
});

describe('two visits', () => {
  it('on different arms cite every reading of both, the earlier first', () => {
    const notice = told(
      'arm-changed',
      reading('08:00', 124, 78, { arm: 'left' }),
      reading('11:00', 126, 78, { arm: 'right' }),
      reading('11:02', 128, 78, { arm: 'right' }),
    );
    expect(notice?.evidence.map(({ asSent }) => asSent)).toEqual([
      '124/78 mm[Hg]',
      '126/78 mm[Hg]',
      '128/78 mm[Hg]',
    ]);
  });

  it('with one arm in common, or an arm that nobody wrote down, say nothing', () => {
    const changed = (...pressures: Timeline['pressures']) => told('arm-changed', ...pressures);
    const left = reading('08:00', 124, 78, { arm: 'left' });
    expect(
      changed(left, reading('11:00', 126, 78, { arm: 'right' }), reading('11:02', 126, 78, { arm: 'left' })),
    ).toBeUndefined();
    expect(
      changed(left, reading('11:00', 126, 78, { arm: 'right' }), reading('11:02', 126, 78)),
    ).toBeUndefined();
    expect(changed(left)).toBeUndefined();
    expect(
      changed(
        reading('2025-01-08T09:00:00Z', 124, 78, { arm: 'left' }),
        reading('11:00', 126, 78, { arm: 'right' }),
      ),
    ).toBeUndefined();
  });
});

describe('both arms of a visit', () => {
  it('are told with their averages', () => {
    const notice = told(
      'arms-differ',
      reading('09:00', 124, 78, { arm: 'left' }),
      reading('09:01', 126, 80, { arm: 'left' }),
      reading('09:02', 138, 80, { arm: 'right' }),
    );
    expect(notice?.sentence).toContain('Left 125/79, right 138/80 mm[Hg].');
    expect(notice?.evidence).toHaveLength(3);
  });

  it('of the newest visit that has both decide, a later one with a single arm aside', () => {
    const both = (at: string, right: number) => [
      reading(`${at}T09:00:00Z`, 124, 78, { arm: 'left' }),
      reading(`${at}T09:02:00Z`, right, 78, { arm: 'right' }),
    ];
    const single = reading('09:00', 124, 78, { arm: 'left' });
    expect(told('arms-differ', ...both('2025-03-08', 138), single)).toBeDefined();
    expect(told('arms-differ', ...both('2025-03-07', 138), ...both('2025-03-08', 124))).toBeUndefined();
    expect(told('arms-differ', ...both('2025-01-08', 138))).toBeUndefined();
  });
});

describe('the same value at several visits', () => {
  const on = (day: string) => reading(`${day}T09:00:00Z`, 124, 78);

  it('names the value and the days, and no other reading', () => {
    const notice = told(
      'same-value-at-several-visits',
      on('2025-01-10'),
      reading('2025-02-01T09:00:00Z', 130, 80),
      on('2025-02-10'),
      on('2025-03-10'),
    );
    expect(notice?.sentence).toContain('124/78 mm[Hg] on 3 days.');
    expect(notice?.evidence).toHaveLength(3);
  });

  it('is not told once the last of them is long ago', () => {
    expect(
      told('same-value-at-several-visits', on('2025-01-10'), on('2025-01-20'), on('2025-02-01')),
    ).toBeUndefined();
  });
});

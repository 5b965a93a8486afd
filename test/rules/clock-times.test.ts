// The clock time of a step, in the zone of the reading it counts from. Intervals: clinical rules 1.1; decisions 10, 11, 16.
import { describe, expect, it } from 'vitest';
import type { Action } from '../../src/findings/finding.ts';
import { assess } from '../support/assess.ts';
import type { PlainTimeline } from '../support/timeline-builder.ts';

function step(id: string, plain: PlainTimeline, guideline?: string): Action | undefined {
  return assess(plain, guideline).actions.find((action) => action.id === id);
}
const woman = (asOf: string, ...pressures: NonNullable<PlainTimeline['pressures']>): PlainTimeline => ({
  asOf,
  gestation: '30+0',
  pressures,
});
const raised = (at: string) => ({ at, systolic: 146, diastolic: 92 });
const severe = (at: string) => ({ at, systolic: 172, diastolic: 114 });

describe('the repeat of a raised reading', () => {
  const said = (plain: PlainTimeline, guideline?: string) => {
    const found = step('repeat-raised-reading', plain, guideline);
    return [found?.time, found?.sentence];
  };

  it('is after four hours, told with the reading it counts from', () => {
    expect(said(woman('2025-03-10T10:00:00Z', raised('2025-03-10T09:10:00Z')))).toEqual([
      '2025-03-10T13:10:00Z',
      'Repeat the pressure after 13:10, which is 4 hours after the reading at 09:10.',
    ]);
  });

  it('is in the zone of that reading, and names the day where it is another', () => {
    expect(said(woman('2025-03-10T17:00:00Z', raised('2025-03-10T21:30:00+05:30')))).toEqual([
      '2025-03-11T01:30:00+05:30',
      'Repeat the pressure after 01:30 on 2025-03-11, which is 4 hours after the reading at 21:30.',
    ]);
  });

  it('counts from the first raised contact of this part of the pregnancy', () => {
    const plain = woman(
      '2025-03-10T14:00:00Z',
      { at: '2025-03-10T08:00:00Z', systolic: 118, diastolic: 74 },
      raised('2025-03-10T12:00:00Z'),
      raised('2025-03-10T13:00:00Z'),
    );
    expect(said(plain)[0]).toBe('2025-03-10T16:00:00Z');
    const earlier = { ...plain, gestation: '20+0', gestationAt: '2025-03-10T00:00:00Z' };
    const pressures = [raised('2025-03-08T12:00:00Z'), ...(plain.pressures ?? [])];
    expect(said({ ...earlier, pressures })[0]).toBe('2025-03-10T16:00:00Z');
  });

  it('after a reading with a date alone names the interval, not the clock', () => {
    expect(said(woman('2025-03-10T14:00:00Z', raised('2025-03-10')))).toEqual([
      undefined,
      'Repeat the pressure after 4 hours from the reading.',
    ]);
  });

  it('is fifteen minutes under SOGC, and has no interval under NICE', () => {
    const plain = woman('2025-03-10T09:15:00Z', raised('2025-03-10T09:10:00Z'));
    expect(said(plain, 'sogc-2022')[0]).toBe('2025-03-10T09:25:00Z');
    expect(said(plain, 'nice-2023')).toEqual([
      undefined,
      'Repeat the pressure the same day; this publication names no interval.',
    ]);
  });
});

describe('the repeat of a severe reading', () => {
  it.each(['frontline', 'acog-2020', 'isshp-2021', 'sogc-2022', 'who-2020', 'india-mohfw', 'nice-2023'])(
    '%s: before fifteen minutes have passed since the last severe one',
    (guideline) => {
      const plain = woman(
        '2025-03-10T09:14:00Z',
        raised('2025-03-10T08:00:00Z'),
        severe('2025-03-10T09:10:00Z'),
        severe('2025-03-10T09:12:00Z'),
      );
      const found = step('repeat-severe-reading', plain, guideline);
      expect([found?.time, found?.sentence]).toEqual([
        '2025-03-10T09:27:00Z',
        'Let her rest, check the cuff, and repeat the pressure before 09:27, which is 15 minutes after the reading at 09:12. She does not go home before it is repeated.',
      ]);
    },
  );

  it('counts from the severe reading, not from a lower one after it', () => {
    const plain = woman('2025-03-10T09:14:00Z', severe('2025-03-10T09:10:00Z'), {
      at: '2025-03-10T09:12:00Z',
      systolic: 150,
      diastolic: 96,
    });
    expect(step('repeat-severe-reading', plain)?.time).toBe('2025-03-10T09:25:00Z');
  });
});

it('steps come in their order', () => {
  const { actions } = assess(woman('2025-03-10T09:14:00Z', severe('2025-03-10T09:10:00Z')));
  expect(actions.map(({ order }) => order)).toEqual(actions.map(({ order }) => order).sort((a, b) => a - b));
  expect(actions[0]?.id).toBe('repeat-severe-reading');
});

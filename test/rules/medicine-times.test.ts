// When a medicine counts: ended, long enough, given lately, another product. Clinical rules 2.7, 2.9; case X38.
import { describe, expect, it } from 'vitest';
import { assess } from '../support/assess.ts';
import * as story from '../support/plain-stories.ts';
import type { PlainTimeline } from '../support/timeline-builder.ts';

type Medicine = NonNullable<PlainTimeline['medicines']>[number];
const notices = (medicines: readonly Medicine[], plain: PlainTimeline = story.gestational) =>
  assess({ ...plain, medicines }).medicines;
const rules = (...medicines: readonly Medicine[]) => notices(medicines).map(({ rule }) => rule);

it('counts to the moment of its end', () => {
  expect(rules({ medicine: 'atenolol', end: story.asOf })).toContain('atenolol-in-pregnancy');
  expect(rules({ medicine: 'atenolol', end: '2026-03-10T11:59:59Z' })).not.toContain('atenolol-in-pregnancy');
});

describe('magnesium for long (more than five days)', () => {
  const isLong = (start?: string) =>
    rules({ medicine: 'magnesium-sulfate', ...(start === undefined ? {} : { start }) }).includes(
      'magnesium-too-long',
    );
  it('counts from five days on to the second, where its beginning is known', () => {
    expect(isLong('2026-03-05T11:59:59Z')).toBe(true);
    expect(isLong('2026-03-05T12:00:00Z')).toBe(false);
    expect(isLong()).toBe(false);
  });
});

describe('a second load of magnesium (X38)', () => {
  const ordered: Medicine = {
    medicine: 'magnesium-sulfate',
    status: 'ordered',
    reference: 'MedicationRequest/new',
  };
  const given = (start?: string): Medicine => ({
    medicine: 'magnesium-sulfate',
    status: 'given',
    reference: 'MedicationAdministration/old',
    ...(start === undefined ? {} : { start }),
  });
  const isSecond = (...medicines: readonly Medicine[]) =>
    notices([ordered, ...medicines], story.severePreEclampsia).some(
      ({ rule }) => rule === 'second-magnesium-load',
    );

  it('is told within a day of the first, to the second', () => {
    expect(isSecond(given('2026-03-09T12:00:00Z'))).toBe(true);
    expect(isSecond(given('2026-03-09T11:59:59Z'))).toBe(false);
    expect(isSecond(given())).toBe(true);
  });

  it('is not told of the order itself', () => {
    expect(isSecond()).toBe(false);
    expect(isSecond({ ...given('2026-03-10T08:00:00Z'), reference: 'MedicationRequest/new' })).toBe(false);
  });
});

it('is named as sent, by its own name where nothing was', () => {
  expect(notices([{ medicine: 'atenolol', asSent: 'Tenormin 50 mg' }])[0]?.medicine).toBe('Tenormin 50 mg');
  expect(notices([{ medicine: 'ace-inhibitor', asSent: '' }])[0]?.medicine).toBe('ACE inhibitor');
});

describe('nifedipine beside magnesium (decision 28)', () => {
  const isTold = (status: NonNullable<Medicine['status']>) =>
    rules({ medicine: 'nifedipine' }, { medicine: 'magnesium-sulfate', status }).includes(
      'magnesium-with-calcium-blocker',
    );
  it('is told while it runs or is ordered, not once it is stopped', () => {
    expect([isTold('active'), isTold('ordered'), isTold('stopped')]).toEqual([true, true, false]);
  });
});

// Measures woman by woman. Expected populations follow the words of src/guidelines/measures.ts.
import { describe, expect, it } from 'vitest';
import type { MeasureId } from '../../src/guidelines/measures.ts';
import type { Json } from '../bundle/make.ts';
import { about, countsOf, dueDate, encounter, given, reading, severe, strip } from './make.ts';

describe('criteria, as ip, denominator, exclusion, exception, numerator, missing', () => {
  it.each<readonly [string, MeasureId, readonly Json[], readonly number[]]>([
    [
      'every contact has a pressure of the same day',
      'pressure-at-every-contact',
      [encounter('e1', '2026-03-01T08:00:00Z'), reading('a', '2026-03-01T09:00:00Z', 120, 70)],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'one contact without a pressure',
      'pressure-at-every-contact',
      [
        encounter('e1', '2026-03-01T08:00:00Z'),
        encounter('e2', '2026-04-01T08:00:00Z'),
        reading('a', '2026-03-01T09:00:00Z', 120, 70),
      ],
      [1, 1, 0, 0, 0, 0],
    ],
    [
      'a cancelled contact and a virtual one are none',
      'pressure-at-every-contact',
      [
        encounter('e1', '2026-03-01T08:00:00Z', { status: 'cancelled' }),
        encounter('e2', '2026-04-01T08:00:00Z', { class: { code: 'VR' } }),
        reading('a', '2026-03-01T09:00:00Z', 120, 70),
      ],
      [1, 0, 0, 0, 0, 0],
    ],
    [
      'urine on the day of the first raised pressure',
      'urine-protein-when-raised',
      [reading('a', severe, 150, 95), strip('u', '2026-03-01T11:00:00Z')],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'urine a day later',
      'urine-protein-when-raised',
      [reading('a', severe, 150, 95), strip('u', '2026-03-02T11:00:00Z')],
      [1, 1, 0, 0, 0, 0],
    ],
    [
      'urine in an unknown day of the month',
      'urine-protein-when-raised',
      [reading('a', severe, 150, 95), strip('u', '2026-03')],
      [1, 1, 0, 0, 0, 1],
    ],
    ['no raised pressure', 'urine-protein-when-raised', [reading('a', severe, 120, 70)], [1, 0, 0, 0, 0, 0]],
    [
      'severe repeated after exactly 15 minutes',
      'severe-pressure-repeated',
      [reading('a', severe, 170, 112), reading('b', '2026-03-01T10:15:00Z', 150, 90)],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'severe repeated after 16 minutes',
      'severe-pressure-repeated',
      [reading('a', severe, 170, 112), reading('b', '2026-03-01T10:16:00Z', 150, 90)],
      [1, 1, 0, 0, 0, 0],
    ],
    [
      'severe with a date only',
      'severe-pressure-repeated',
      [reading('a', '2026-03-01', 170, 112)],
      [1, 1, 1, 0, 0, 0],
    ],
    [
      'treated 60 minutes after the confirming reading',
      'severe-pressure-treated',
      [
        reading('a', severe, 170, 112),
        reading('b', '2026-03-01T10:15:00Z', 168, 110),
        given('m', '2026-03-01T11:15:00Z'),
      ],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'treated 61 minutes after it',
      'severe-pressure-treated',
      [
        reading('a', severe, 170, 112),
        reading('b', '2026-03-01T10:15:00Z', 168, 110),
        given('m', '2026-03-01T11:16:00Z'),
      ],
      [1, 1, 0, 0, 0, 0],
    ],
    [
      'treated before the confirming reading',
      'severe-pressure-treated',
      [
        reading('a', severe, 170, 112),
        given('m', '2026-03-01T10:05:00Z'),
        reading('b', '2026-03-01T10:15:00Z', 168, 110),
      ],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'raised and seen again on the seventh day',
      'raised-pressure-resolved',
      [reading('a', severe, 150, 95), reading('b', '2026-03-08T10:00:00Z', 130, 80)],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'raised and seen again later',
      'raised-pressure-resolved',
      [reading('a', severe, 150, 95), reading('b', '2026-03-08T10:01:00Z', 130, 80)],
      [1, 1, 0, 0, 0, 0],
    ],
    [
      'raised two days before the period ends',
      'raised-pressure-resolved',
      [reading('a', '2026-12-30T10:00:00Z', 150, 95)],
      [1, 1, 0, 1, 0, 0],
    ],
    [
      'the referral is there',
      'referral-made',
      [
        reading('a', severe, 170, 112),
        {
          resourceType: 'ServiceRequest',
          id: 's',
          status: 'active',
          intent: 'order',
          code: { coding: [{ system: 'http://snomed.info/sct', code: '310449005' }] },
          authoredOn: '2026-03-01T10:30:00Z',
          ...about,
        },
      ],
      [1, 1, 0, 0, 1, 0],
    ],
    ['no referral', 'referral-made', [reading('a', severe, 170, 112)], [1, 1, 0, 0, 0, 0]],
    [
      'nothing in the period',
      'referral-made',
      [reading('a', '2025-03-01T10:00:00Z', 170, 112)],
      [0, 0, 0, 0, 0, 0],
    ],
  ])('%s', (_what, measure, resources, expected) => {
    expect(countsOf(measure, [dueDate('2026-07-01'), ...resources]).slice(1)).toEqual(expected.slice(1));
    expect(countsOf(measure, resources)).toEqual(expected);
  });

  it('terminal digits count readings and values, averages and kPa left out', () => {
    expect(
      countsOf('terminal-digit-preference', [
        reading('a', severe, 150, 95),
        reading('b', '2026-03-02T10:00:00Z', 140, 90),
      ]),
    ).toEqual([2, 4, 0, 0, 3, 0]);
  });
});

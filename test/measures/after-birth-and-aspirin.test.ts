// Two measures limit by limit. Expected populations follow the words of src/guidelines/measures.ts.
import { describe, expect, it } from 'vitest';
import type { Json } from '../bundle/make.ts';
import { aspirin, born, countsOf, day, dueDate, reading, recorded } from './make.ts';

describe('pressure after birth and aspirin, as denominator, exclusion, exception, numerator', () => {
  /** Confirmed from 30 weeks on, born on 1 March: who is seen within 72 hours, and again on days 7 to 10. */
  const confirmed = [
    reading('c1', '2026-02-10T09:00:00Z', 148, 94),
    reading('c2', '2026-02-10T15:00:00Z', 150, 96),
    born('2026-03-01T10:00:00Z'),
  ];

  it.each<readonly [string, readonly Json[], readonly number[]]>([
    [
      'seen after exactly 72 hours and on day 7',
      [day('2026-03-04T10:00:00Z'), day('2026-03-08T09:00:00Z')],
      [1, 0, 0, 1],
    ],
    ['seen at once and on day 10', [day('2026-03-01T20:00:00Z'), day('2026-03-11T09:00:00Z')], [1, 0, 0, 1]],
    [
      'first seen a minute after 72 hours',
      [day('2026-03-04T10:01:00Z'), day('2026-03-08T09:00:00Z')],
      [1, 0, 0, 0],
    ],
    ['seen again on day 6 only', [day('2026-03-02T10:00:00Z'), day('2026-03-07T09:00:00Z')], [1, 0, 0, 0]],
    ['seen again on day 11 only', [day('2026-03-02T10:00:00Z'), day('2026-03-12T09:00:00Z')], [1, 0, 0, 0]],
    ['never seen again', [], [1, 0, 0, 0]],
  ])('after birth: %s', (_what, resources, expected) => {
    expect(
      countsOf('pressure-checked-after-birth', [dueDate('2026-04-20'), ...confirmed, ...resources]).slice(
        1,
        5,
      ),
    ).toEqual(expected);
  });

  it('after birth: not due where the tenth day lies beyond the period; nobody without hypertension or birth', () => {
    const late = [
      reading('c1', '2026-12-10T09:00:00Z', 148, 94),
      reading('c2', '2026-12-10T15:00:00Z', 150, 96),
      born('2026-12-28T10:00:00Z'),
    ];
    expect(countsOf('pressure-checked-after-birth', [dueDate('2027-01-20'), ...late]).slice(1, 5)).toEqual([
      1, 0, 1, 0,
    ]);
    expect(
      countsOf('pressure-checked-after-birth', [dueDate('2026-04-20'), ...confirmed.slice(0, 2)])[1],
    ).toBe(0);
    const normal = [reading('n', '2026-02-10T09:00:00Z', 110, 70), born('2026-03-01T10:00:00Z')];
    expect(countsOf('pressure-checked-after-birth', [dueDate('2026-04-20'), ...normal])[1]).toBe(0);
  });

  it.each<readonly [string, readonly Json[], readonly number[]]>([
    [
      'indicated by chronic hypertension, and in use',
      [recorded('37618003', 'Chronic hypertension in pregnancy'), aspirin('active')],
      [1, 0, 0, 1],
    ],
    [
      'indicated, and nothing on record',
      [recorded('37618003', 'Chronic hypertension in pregnancy')],
      [1, 0, 0, 0],
    ],
    [
      'indicated, and stopped',
      [recorded('37618003', 'Chronic hypertension in pregnancy'), aspirin('stopped')],
      [1, 0, 0, 0],
    ],
  ])('aspirin %s', (_what, resources, expected) => {
    const all = [dueDate('2026-09-01'), reading('n', '2026-03-01T09:00:00Z', 118, 72), ...resources];
    expect(countsOf('aspirin-offered', all).slice(1, 5)).toEqual(expected);
  });

  it('aspirin: where factors were never asked, whether she belongs is data missing', () => {
    const counts = countsOf('aspirin-offered', [
      dueDate('2026-09-01'),
      reading('n', '2026-03-01T09:00:00Z', 118, 72),
    ]);
    expect([counts[1], counts[4], counts[5]]).toEqual([0, 0, 1]);
  });
});

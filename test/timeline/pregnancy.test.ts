import type { FhirResource } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { momentAt } from '../../src/timeline/moment.ts';
import { placeOf } from '../../src/timeline/place.ts';
import {
  birth,
  dueDate,
  gestationalAge,
  lab,
  lastPeriod,
  loinc,
  observation,
  snomed,
} from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { pregnancyOf, day, date } from './dating-support.ts';
import { values } from './values.ts';

describe('which pregnancy is the current one', () => {
  it('is the latest begun; facts of an earlier one are history', () => {
    const result = built([
      lastPeriod(date(-60), date(-100)),
      dueDate('2024-01-10', '2024-06-01'),
      birth('2024-06-03'),
    ]);
    expect(result.timeline.pregnancy).toMatchObject({ dating: { startDay: day('2026-02-01') - 100 } });
    expect(result.timeline.pregnancy.birth).toBeUndefined();
    expect(result.timeline.woman.previousBirths).toMatchObject([{ at: { text: '2024-06-03' } }]);
    expect(codesOf(result)).toEqual(['previous-pregnancy']);
  });

  it.each([
    [-308, true],
    [-309, false],
  ])('a last period %i days ago without a birth: still dated %s', (offset, isDated) => {
    const { dating, remarks } = pregnancyOf([lastPeriod(date(-200), date(offset))]);
    expect(dating !== undefined).toBe(isDated);
    expect(remarks).toEqual(
      isDated ? [] : ['Birth not recorded: the last dated pregnancy would be 44 weeks.'],
    );
  });

  it('keeps the dating with a birth that belongs to it', () => {
    const { dating, birth: born } = pregnancyOf([
      lastPeriod(date(-200), date(-290)),
      birth(`${date(-10)}T04:00:00Z`),
    ]);
    expect(dating).toMatchObject({ startDay: day('2026-02-01') - 290 });
    expect(born).toMatchObject({ at: { precision: 'minute' } });
  });

  it.each([
    [139, false],
    [140, true],
    [308, true],
  ])('a birth on day %i of the dating belongs to it: %s', (age, belongs) => {
    const found = pregnancyOf([lastPeriod(date(-309), date(-310)), birth(date(age - 310))]);
    expect(found.birth !== undefined).toBe(belongs);
  });

  it('a birth later than 44 weeks of the dating is of an undated pregnancy', () => {
    const result = built([lastPeriod('2024-01-10', '2024-01-01'), birth(date(-5))]);
    expect(result.timeline.pregnancy).toMatchObject({ birth: { at: { text: date(-5) } } });
    expect(result.timeline.pregnancy.dating).toBeUndefined();
    expect(codesOf(result)).toEqual(['previous-pregnancy']);
  });

  it('a dating before a miscarriage is not used', () => {
    const loss: FhirResource = {
      resourceType: 'Condition',
      code: snomed('17369002'),
      subject: { reference: 'Patient/woman' },
      onsetDateTime: date(-20),
    };
    const lost = built([lastPeriod(date(-60), date(-90)), loss]);
    expect(lost.timeline.pregnancy.dating).toBeUndefined();
    expect(lost.timeline.pregnancy.remarks).toEqual([
      'A pregnancy loss is recorded: the dating before it is not used.',
    ]);
    const again = built([lastPeriod(date(-60), date(-90)), loss, lastPeriod(date(-1), date(-15))]);
    expect(again.timeline.pregnancy.dating).toMatchObject({
      startDay: day('2026-02-01') - 15,
      conflict: false,
    });
  });

  it('a birth long ago stays the birth, unless she is seen to be pregnant again', () => {
    const long = birth(date(-400));
    expect(pregnancyOf([long]).birth).toMatchObject({ at: { text: date(-400) } });
    const again = built([long, lab(date(-1), 'fundal-height', 30, 'cm')]).timeline;
    expect(again.pregnancy.birth).toBeUndefined();
    expect(again.pregnancy.assumedFrom20Weeks).toMatchObject({ asSent: 'fundal height 30 cm' });
    expect(again.pregnancy.remarks).toEqual(['Pregnant again since the last birth recorded: send a dating.']);
    expect(again.woman.previousBirths).toHaveLength(1);
  });

  it('a due date recorded now that lies before the last period is refused (rule 14)', () => {
    const result = built([lastPeriod(date(-50), date(-100)), dueDate(date(-50), date(-150))]);
    expect(codesOf(result)).toEqual(['value-out-of-range']);
  });

  it('a due date more than 40 weeks ahead is refused', () => {
    expect(codesOf(built([dueDate('2026-01-01', '2026-10-09')]))).toEqual(['value-out-of-range']);
    expect(codesOf(built([dueDate('2026-01-01', '2026-10-08')]))).toEqual([]);
  });

  it('an age stated after the birth is the age at the birth', () => {
    const found = pregnancyOf([birth(date(-10)), gestationalAge(date(-5), 266)]);
    expect(found.dating?.startDay).toBe(day('2026-02-01') - 10 - 266);
  });
});

describe('births', () => {
  it.each([
    [
      'a procedure',
      {
        resourceType: 'Procedure',
        status: 'completed',
        code: snomed('66348005'),
        performedDateTime: date(-3),
      },
    ],
    [
      'a condition',
      {
        resourceType: 'Condition',
        code: { coding: [{ system: 'http://hl7.org/fhir/sid/icd-10', code: 'O80.0' }] },
        onsetDateTime: date(-3),
      },
    ],
  ] as const)('are read from %s', (_, fields) => {
    const resource = { ...fields, subject: { reference: 'Patient/woman' } } as FhirResource;
    expect(pregnancyOf([resource]).birth).toMatchObject({ at: { text: date(-3) } });
  });

  it('told twice are one, with the finer time', () => {
    const result = built([birth(date(-3)), birth(`${date(-3)}T04:00:00Z`)]);
    expect(result.timeline.pregnancy.birth).toMatchObject({ at: { text: `${date(-3)}T04:00:00Z` } });
    expect(result.timeline.woman.previousBirths).toEqual([]);
    expect(result.notNeeded).toHaveLength(1);
  });

  it('without a value are not taken from the effective time', () => {
    expect(codesOf(built([observation(loinc('93857-1'), date(-3))]))).toEqual(['value-missing']);
  });
});

describe('an undated pregnancy', () => {
  it('with a uterus of 20 cm is assumed from 20 weeks from that day on', () => {
    const { pregnancy } = built([lab('2026-01-20', 'fundal-height', 20, 'cm')]).timeline;
    expect(pregnancy.assumedFrom20Weeks).toMatchObject({ asSent: 'fundal height 20 cm' });
    const periodOn = (text: string) => placeOf(momentAt(Date.parse(text), 0), pregnancy, values).period;
    expect(periodOn('2026-01-20T08:00:00Z')).toBe('from-20-weeks');
    expect(periodOn('2026-01-19T08:00:00Z')).toBe('unknown');
  });

  it('with a smaller one, or a dated one, is not', () => {
    expect(pregnancyOf([lab('2026-01-20', 'fundal-height', 19.5, 'cm')]).assumedFrom20Weeks).toBeUndefined();
    expect(
      pregnancyOf([lab('2026-01-20', 'fundal-height', 30, 'cm'), lastPeriod(date(-5), date(-100))])
        .assumedFrom20Weeks,
    ).toBeUndefined();
  });
});

describe('what is recorded twice', () => {
  it.each([
    [139, 0],
    [140, 1],
  ])('births %i days apart are two from 140 days on', (apart, earlier) => {
    const { timeline } = built([birth(date(-5)), birth(date(-5 - apart))]);
    expect(timeline.pregnancy.birth).toBeDefined();
    expect(timeline.woman.previousBirths).toHaveLength(earlier);
  });

  it('counts of one moment: the higher is used, whatever the order', () => {
    const parity = (value: number) => observation(loinc('11977-6'), date(-3), { valueInteger: value });
    for (const both of [
      [parity(1), parity(2)],
      [parity(2), parity(1)],
    ]) {
      const { timeline, notNeeded } = built(both);
      expect(timeline.woman.parity?.count).toBe(2);
      expect(notNeeded).toHaveLength(1);
    }
  });

  it('counts of two moments: the newer is used', () => {
    const parity = (at: number, value: number) =>
      observation(loinc('11977-6'), date(at), { valueInteger: value });
    expect(built([parity(-3, 1), parity(-2, 0)]).timeline.woman.parity?.count).toBe(0);
    expect(built([parity(-2, 0), parity(-3, 1)]).timeline.woman.parity?.count).toBe(0);
  });
});

// Expectations: clinical-rules.md 1.1 (start of a drug), 2.7 and 2.8; decision 28.
import { describe, expect, it } from 'vitest';
import { assess, guideline } from '../support/assess.ts';
import * as story from '../support/plain-stories.ts';
import type { PlainTimeline } from '../support/timeline-builder.ts';

const purposes = (plain: PlainTimeline, id?: string): readonly string[] => [
  ...new Set(assess(plain, id).treatment.map(({ purpose }) => purpose)),
];
const first = (plain: PlainTimeline, purpose: string): string | undefined =>
  assess(plain).treatment.find((option) => option.purpose === purpose && option.offeredFirst)?.id;
const option = (plain: PlainTimeline, id: string, edition?: string) =>
  assess(plain, edition).treatment.find((one) => one.id === id);
const withPressure = (systolic: number, diastolic: number): PlainTimeline => ({
  ...story.gestational,
  pressures: [
    { at: '2026-03-09T09:00:00Z', systolic, diastolic },
    { at: '2026-03-10T09:00:00Z', systolic, diastolic },
  ],
});

describe('options are shown', () => {
  it.each([
    ['severe pressure, confirmed', story.severe, 'acute-pressure'],
    ['severe pressure, not yet repeated', story.severeOnce, 'acute-pressure'],
    ['severe pre-eclampsia', story.severePreEclampsia, 'seizure'],
    ['eclampsia', story.eclampsia, 'seizure'],
    ['confirmed hypertension', story.gestational, 'maintenance'],
    ['chronic hypertension', story.chronic, 'maintenance'],
    ['undated hypertension', story.undated, 'maintenance'],
    [
      'hypertension after birth at the start of treatment',
      {
        ...story.afterPreEclampsia,
        pressures: [{ at: '2026-03-10T09:00:00Z', systolic: 150, diastolic: 90 }],
      },
      'maintenance',
    ],
  ])('%s', (_name, plain, purpose) => {
    expect(purposes(plain)).toContain(purpose);
  });

  it.each([
    ['normal pressure', story.normal],
    [
      'raised once',
      { ...story.gestational, pressures: [{ at: '2026-03-10T09:00:00Z', systolic: 148, diastolic: 94 }] },
    ],
    ['after birth below the start of treatment', story.afterBirth],
    ['nothing measured', { asOf: story.asOf, gestation: '30+0' }],
  ])('and not: %s', (_name, plain) => {
    expect(purposes(plain)).toEqual([]);
  });

  it('of maintenance not while severe pressure comes first', () => {
    expect(purposes(story.severe)).not.toContain('maintenance');
  });
});

describe('the start of a drug in non-severe gestational hypertension, by publication (1.1)', () => {
  it.each([
    ['nice-2023', 140, 90, true],
    ['isshp-2021', 140, 90, true],
    ['sogc-2022', 140, 90, true],
    ['acog-2020', 158, 108, false],
    ['india-mohfw', 150, 100, false],
    ['india-mohfw', 150, 101, true],
  ])('%s at %i/%i', (id, systolic, diastolic, isShown) => {
    expect(purposes(withPressure(systolic, diastolic), id)).toEqual(isShown ? ['maintenance'] : []);
  });

  it('ACOG in chronic hypertension from 140/90 (2022 advisory)', () => {
    expect(purposes(story.chronic, 'acog-2020')).toEqual(['maintenance']);
  });
});

describe('what is offered first', () => {
  it('is oral labetalol where nothing speaks against it (decision 28)', () => {
    expect(first(story.severe, 'acute-pressure')).toBe('labetalol-by-mouth');
    expect(first(story.gestational, 'maintenance')).toBe('labetalol-maintenance');
  });

  it.each(['asthma', 'heart-block', 'heart-failure', 'bradycardia'] as const)(
    'is nifedipine with %s',
    (condition) => {
      const plain = { ...story.severe, conditions: [{ condition }] };
      expect(first(plain, 'acute-pressure')).toBe('nifedipine-by-mouth');
      expect(option(plain, 'labetalol-by-mouth')?.against).toMatchObject([
        { evidence: [{ reference: 'Condition/0' }] },
      ]);
    },
  );

  it('is nifedipine with an allergy to labetalol', () => {
    const allergy = { condition: 'medicine-allergy', allergicTo: ['labetalol'] } as const;
    const plain = { ...story.severe, conditions: [allergy] };
    expect(first(plain, 'acute-pressure')).toBe('nifedipine-by-mouth');
    expect(option(plain, 'labetalol-by-mouth')?.against).toMatchObject([
      { sentence: 'An allergy to it is on record.', evidence: [{ reference: 'Condition/0' }] },
    ]);
    expect(first({ ...plain, conditions: [{ ...allergy, state: 'inactive' }] }, 'acute-pressure')).toBe(
      'labetalol-by-mouth',
    );
  });

  it('is enalapril after birth (NICE 1.9)', () => {
    const plain: PlainTimeline = {
      ...story.afterPreEclampsia,
      pressures: [{ at: '2026-03-10T09:00:00Z', systolic: 152, diastolic: 101 }],
    };
    expect(first(plain, 'maintenance')).toBe('enalapril-after-birth');
  });

  it('is never one of the magnesium regimens', () => {
    expect(first(story.eclampsia, 'seizure')).toBeUndefined();
  });

  it('is at most one of each purpose', () => {
    for (const plain of [story.severe, story.severePreEclampsia, story.gestational, story.eclampsia]) {
      const firsts = assess(plain).treatment.filter(({ offeredFirst }) => offeredFirst);
      expect(new Set(firsts.map(({ purpose }) => purpose)).size).toBe(firsts.length);
    }
  });
});

describe('a sentence that names drugs says what the record holds against them', () => {
  const step = (plain: PlainTimeline, id: string, edition?: string): string | undefined =>
    assess(plain, edition).actions.find((action) => action.id === id)?.sentence;
  const asthma = [{ condition: 'asthma' }] as const;
  const allergy = [{ condition: 'medicine-allergy', allergicTo: ['hydralazine'] }] as const;

  it.each([
    ['start-drug', story.gestational, asthma, 'frontline', 'Not labetalol: asthma is on record.'],
    ['start-drug', story.gestational, asthma, 'who-2020', 'Not a beta-blocker: asthma is on record.'],
    ['lower-severe-pressure', story.severe, asthma, 'nice-2023', 'Not labetalol: asthma is on record.'],
    [
      'lower-severe-pressure',
      story.severe,
      allergy,
      'nice-2023',
      'Not hydralazine: an allergy to it is on record.',
    ],
  ] as const)('%s', (id, plain, conditions, edition, words) => {
    expect(step({ ...plain, conditions }, id, edition)).toMatch(new RegExp(`${words}$`));
    expect(step(plain, id, edition)).not.toContain('Not ');
  });

  it.each(['ace-inhibitor', 'atenolol'] as const)('what is named instead of %s', (medicine) => {
    const { medicines } = assess({ ...story.normal, medicines: [{ medicine }], conditions: asthma });
    expect(medicines[0]?.alternative).toContain('methyldopa');
    expect(medicines[0]?.alternative).toMatch(/Not labetalol: asthma is on record\.$/);
  });
});

describe('what speaks against an option', () => {
  const running: PlainTimeline = {
    ...story.severePreEclampsia,
    medicines: [{ medicine: 'magnesium-sulfate', start: '2026-03-10T11:30:00Z' }],
  };

  it.each([
    ['given', { status: 'given' }, 'Magnesium was given or is running: no second loading dose.'],
    ['stopped', { status: 'stopped' }, 'Magnesium was given or is running: no second loading dose.'],
    ['ordered', { isOrder: true }, 'Magnesium is on order: if it was given, no second loading dose.'],
  ] as const)('is said of a second load: magnesium %s', (_name, how, sentence) => {
    const medicines = [{ medicine: 'magnesium-sulfate', start: '2026-03-10T11:30:00Z', ...how }] as const;
    const plain: PlainTimeline = { ...story.severePreEclampsia, medicines };
    expect(option(plain, 'magnesium-into-the-vein')?.against.map((one) => one.sentence)).toEqual([sentence]);
  });

  it('is said and hides nothing: nifedipine beside magnesium', () => {
    expect(option(running, 'nifedipine-by-mouth')?.against).toMatchObject([
      { evidence: [{ reference: 'MedicationStatement/0' }] },
    ]);
  });

  it('is magnesium that already runs (case X38)', () => {
    expect(option(running, 'magnesium-into-the-vein')?.against.map(({ sentence }) => sentence)).toContain(
      'Magnesium was given or is running: no second loading dose.',
    );
  });

  it('is depression with methyldopa', () => {
    const plain: PlainTimeline = { ...story.gestational, conditions: [{ condition: 'depression' }] };
    expect(option(plain, 'methyldopa-maintenance')?.against).toHaveLength(1);
  });

  it('is a site that cannot give it', () => {
    const health = { can: ['magnesium'], next: 'the district hospital' };
    const shown = assess(story.severe, undefined, health).treatment;
    expect(
      shown.find(({ id }) => id === 'labetalol-into-a-vein')?.against.map(({ sentence }) => sentence),
    ).toEqual(['Not at this site: at the district hospital.']);
  });
});

describe('reference doses', () => {
  it.each([
    ['labetalol-by-mouth', '200 mg by mouth, repeated after 1 hour where needed'],
    [
      'labetalol-into-a-vein',
      '20 mg over 2 minutes, then 40 mg and 80 mg at intervals of 10 minutes; at most 300 mg',
    ],
    ['nifedipine-retard-by-mouth', '10 mg by mouth, repeated after 1 hour where needed'],
    ['methyldopa-by-mouth-once', '1000 mg by mouth, once; slow, only where nothing faster is at hand'],
  ])('%s as in 2.8', (id, dose) => {
    expect(option(story.severe, id)?.dose).toBe(dose);
  });

  it('of ACOG magnesium are from memory (2.7)', () => {
    expect(option(story.eclampsia, 'magnesium-acog')).toMatchObject({
      dose: '4 to 6 g into a vein over 20 to 30 minutes, then 1 to 2 g per hour',
      source: { known: 'from-memory' },
    });
  });

  it('of WHO are shown under WHO only', () => {
    expect(option(story.severe, 'hydralazine-who', 'who-2020')?.dose).toBe(
      '5 mg into a vein every 5 minutes, or 12.5 mg into the muscle every 2 hours',
    );
    expect(option(story.severe, 'hydralazine-who')).toBeUndefined();
  });

  it('each have a name of their own', () => {
    const ids = (guideline().treatmentRules ?? []).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

// Aspirin and calcium by edition: who, how much, when. Expected from the table of the clinical rules 2.10.
import { describe, expect, it } from 'vitest';
import type { PreventionAdvice } from '../../src/findings/finding.ts';
import { assess } from '../support/assess.ts';
import type { PlainTimeline } from '../support/timeline-builder.ts';
import { everyEdition, type Edition } from './limits/limit-row.ts';

const asOf = '2025-03-10T15:00:00Z';
const pressures = [{ at: '2025-03-10T09:00:00Z', systolic: 112, diastolic: 70 }];
const woman = (plain: Partial<PlainTimeline>): PlainTimeline => ({
  asOf,
  gestation: '13+0',
  pressures,
  ...plain,
});

function advice(
  plain: PlainTimeline,
  edition: Edition,
  id: PreventionAdvice['id'] = 'aspirin',
): PreventionAdvice {
  const found = assess(plain, edition).prevention.find((one) => one.id === id);
  if (found === undefined) throw new Error('no advice');
  return found;
}

const weeks = (days: number): string => `${String(Math.floor(days / 7))}+${String(days % 7)}`;
const atHighRisk = (days: number): PlainTimeline =>
  woman({ gestation: weeks(days), conditions: [{ condition: 'diabetes' }] });

interface Scheme {
  readonly source: string;
  readonly editions: readonly Edition[];
  readonly dose: string;
  /** First day on which it may be begun, and the day from which it is too late; absent: any week. */
  readonly from: number;
  readonly until?: number;
  readonly ends: string;
}

const schemes: readonly Scheme[] = [
  {
    source: 'NICE R',
    editions: ['nice-2023'],
    dose: '75 to 150 mg a day',
    from: 84,
    ends: 'daily until birth',
  },
  {
    source: 'ACOG R S34, S40',
    editions: ['acog-2020'],
    dose: '81 mg a day',
    from: 84,
    until: 196,
    ends: 'daily until birth',
  },
  {
    source: 'dose NICE, window ACOG',
    editions: ['frontline'],
    dose: '75 to 150 mg a day',
    from: 84,
    until: 196,
    ends: 'daily until birth',
  },
  {
    source: 'WHO R S31; India as WHO',
    editions: ['who-2020', 'india-mohfw'],
    dose: '75 mg a day',
    from: 84,
    until: 140,
    ends: 'daily until birth',
  },
  {
    source: 'ISSHP R S39',
    editions: ['isshp-2021'],
    dose: '100 to 162 mg a day',
    from: 84,
    until: 112,
    ends: 'stopped at 36+0 weeks',
  },
  {
    source: 'SOGC R S36',
    editions: ['sogc-2022'],
    dose: '81 to 162 mg a day',
    from: 84,
    until: 112,
    ends: 'stopped at 36+0 weeks',
  },
];

describe('aspirin: dose and weeks', () => {
  it.each(schemes.flatMap((scheme) => scheme.editions.map((edition) => [edition, scheme] as const)))(
    '%s',
    (edition, { dose, from, until, ends }) => {
      expect(advice(atHighRisk(from), edition).dose).toContain(dose);
      expect(advice(atHighRisk(from), edition).window).toContain(ends);
      const sentence = (days: number): string => advice(atHighRisk(days), edition).sentence;
      expect(sentence(from - 1)).toContain('Its window has not opened yet.');
      expect(sentence(from)).toContain('Its window is open.');
      const last = until ?? 270;
      expect(sentence(last - 1)).toContain('Its window is open.');
      if (until === undefined) return;
      expect(sentence(until)).toContain('Its window to begin is over: ask a specialist.');
      expect(advice(atHighRisk(until), edition).dose).toBeUndefined();
    },
  );
});

type Conditions = NonNullable<PlainTimeline['conditions']>;
const on = (condition: Conditions[number]['condition'], rest: Partial<Conditions[number]> = {}) =>
  woman({ conditions: [{ condition, ...rest }] });
const mass = (value: number): Partial<PlainTimeline> => ({
  labs: [{ at: '2025-03-10T09:00:00Z', analyte: 'body-mass-index', value, unit: 'kg/m2' }],
});
/** Due on 15 September 2025 at 13+0: the age is counted to that day. */
const born = (year: number): Partial<PlainTimeline> => ({ born: `${String(year)}-06-01` });
const lastBirth = (day: string): Partial<PlainTimeline> => ({ previousBirths: [day] });

const widest: readonly Edition[] = ['frontline', 'acog-2020', 'isshp-2021', 'sogc-2022'];
const highForAll = [
  'history-of-pre-eclampsia',
  'history-of-eclampsia',
  'diabetes',
  'chronic-hypertension',
  'chronic-kidney-disease',
  'systemic-lupus-erythematosus',
  'antiphospholipid-syndrome',
] as const;

describe('aspirin: one high factor is enough', () => {
  it.each(highForAll)('%s, in every edition', (condition) => {
    expect(everyEdition.filter((edition) => advice(on(condition), edition).outcome === 'met')).toEqual(
      everyEdition,
    );
  });

  it.each([
    ['more than one fetus', woman({ fetuses: 2 }), [...widest, 'who-2020', 'india-mohfw']],
    ['one fetus', woman({ fetuses: 1 }), []],
    ['a multiple pregnancy on record', on('multiple-pregnancy'), [...widest, 'who-2020', 'india-mohfw']],
    [
      'gestational hypertension earlier',
      on('gestational-hypertension', { at: '2020-05-01', state: 'inactive' }),
      ['frontline', 'nice-2023'],
    ],
    [
      'hypertension of pregnancy earlier, its kind not said',
      on('hypertension-in-pregnancy-unspecified', { at: '2020-05-01', state: 'inactive' }),
      ['frontline', 'nice-2023'],
    ],
    ...(
      ['pre-eclampsia', 'pre-eclampsia-severe', 'superimposed-pre-eclampsia', 'hellp', 'eclampsia'] as const
    ).map(
      (condition) =>
        [
          `${condition} earlier`,
          on(condition, { at: '2020-05-01', state: 'inactive' }),
          everyEdition,
        ] as const,
    ),
  ] as const)('%s', (_factor, plain, editions) => {
    const met = everyEdition.filter((edition) => advice(plain, edition).outcome === 'met');
    expect(met).toEqual(everyEdition.filter((edition) => editions.some((one) => one === edition)));
  });
});

const withFamily = (rest: Partial<PlainTimeline>, family: boolean): PlainTimeline =>
  woman({
    ...rest,
    conditions: [
      ...(rest.conditions ?? []),
      ...(family ? [{ condition: 'family-history-of-pre-eclampsia' as const }] : []),
    ],
  });

describe('aspirin: more than one moderate factor, family history being the other', () => {
  it.each([
    ['first birth to come', { parity: 0 }, [...widest, 'nice-2023']],
    ['a birth before', { parity: 1 }, []],
    ['nulliparity on record', { conditions: [{ condition: 'nulliparity' }] }, [...widest, 'nice-2023']],
    ['39 years on the due date', born(1986), widest],
    ['40 years on the due date', born(1985), [...widest, 'nice-2023']],
    ['34 years on the due date', born(1991), []],
    ['35 years on the due date', born(1990), widest],
    ['age on record', { conditions: [{ condition: 'advanced-maternal-age' }] }, widest],
    ['body mass index 30', mass(30), []],
    ['body mass index 30.1', mass(30.1), widest],
    ['body mass index 34.9 (X40)', mass(34.9), widest],
    ['body mass index 35', mass(35), [...widest, 'nice-2023']],
    ['obesity on record', { conditions: [{ condition: 'obesity' }] }, widest],
    ['ten years since the last birth', lastBirth('2015-09-15'), []],
    ['ten years and a day', lastBirth('2015-09-14'), [...widest, 'nice-2023']],
    [
      'a poor outcome earlier',
      { conditions: [{ condition: 'poor-obstetric-history', state: 'inactive' }] },
      widest,
    ],
    ['assisted conception', { conditions: [{ condition: 'assisted-conception' }] }, widest],
    ['more than one fetus', { fetuses: 2 }, [...widest, 'nice-2023', 'who-2020', 'india-mohfw']],
  ] as const satisfies readonly (readonly [string, Partial<PlainTimeline>, readonly Edition[]])[])(
    '%s',
    (_factor, plain, editions) => {
      const met = (family: boolean) =>
        everyEdition.filter((edition) => advice(withFamily(plain, family), edition).outcome === 'met');
      expect(met(true)).toEqual(
        everyEdition.filter((edition) => (editions as readonly Edition[]).includes(edition)),
      );
      const alone: readonly Edition[] = 'fetuses' in plain ? [...widest, 'who-2020', 'india-mohfw'] : [];
      expect(met(false)).toEqual(everyEdition.filter((edition) => alone.includes(edition)));
    },
  );

  it('each that was found cites the fact it rests on', () => {
    const plain = withFamily({ parity: 0, fetuses: 2, ...mass(36), ...born(1980) }, true);
    for (const edition of everyEdition)
      for (const { factor, evidence } of advice(plain, edition).found)
        expect([factor, evidence.length]).toEqual([factor, 1]);
  });
});

describe('calcium (WHO R S9: 1.5 to 2 g, in three, apart from iron)', () => {
  it.each(['frontline', 'who-2020', 'isshp-2021', 'sogc-2022', 'india-mohfw'] as const)(
    '%s: where the diet is low',
    (edition) => {
      const { sentence, outcome } = advice(woman({}), edition, 'calcium');
      expect(outcome).toBe('cannot-tell');
      expect(sentence).toContain('1.5 to 2 g of elemental calcium a day in 3 parts, apart from iron');
    },
  );

  it.each(['nice-2023', 'acog-2020'] as const)('%s does not advise it', (edition) => {
    expect(advice(woman({}), edition, 'calcium').outcome).toBe('not-met');
  });
});

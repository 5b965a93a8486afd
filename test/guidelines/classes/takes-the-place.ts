// What a disorder takes the place of: the lesser finding is not listed beside it (sentences of the classes; decisions 1, 23, 25).
import type { FhirResource } from 'fhir/r4.js';
import type { Classification } from '../../../src/guidelines/guideline.ts';
import type { Probe } from '../../support/probe.ts';
import * as build from '../../support/resources.ts';
import { asOf, dated, everyEdition, except, thirtyWeeks, type Edition } from '../limits/limit-row.ts';

interface Ingredient {
  readonly named: Classification;
  readonly editions?: readonly Edition[];
  readonly given: readonly FhirResource[];
}
interface Group {
  readonly when: string;
  readonly base: readonly FhirResource[];
  /** What each disorder takes the place of. */
  readonly rows: readonly (readonly [disorder: Ingredient, lesser: readonly Ingredient[]])[];
}

const withHome: readonly Edition[] = ['frontline', 'isshp-2021', 'sogc-2022'];
const named = except('isshp-2021', 'nice-2023');
const at = (day: string, time: string): string => `2025-03-${day}T${time}:00Z`;
const normalNow = build.pressure(at('10', '13:30'), 118, 74);
const raisedPair = [build.pressure(at('05', '09:00'), 146, 92), build.pressure(at('05', '14:00'), 148, 94)];
const severePair = [build.pressure(at('05', '09:00'), 170, 112), build.pressure(at('05', '09:20'), 172, 114)];
/** Raised, and a lower reading too soon to answer it. */
const openThenLower = [build.pressure(at('10', '12:00'), 146, 92), normalNow];
const homeMean = (systolicMmHg: number, diastolicMmHg: number): FhirResource =>
  build.homeMean({
    from: at('03', '07:00'),
    to: at('09', '19:00'),
    systolicMmHg,
    diastolicMmHg,
    readings: 14,
  });
/** Taken, since nobody knows when. */
const undatedLabetalol: FhirResource = (() => {
  const { effectivePeriod: _begun, ...rest } = build.takes('labetalol', '2025-01-01');
  return rest;
})();

const normotensive: Ingredient = { named: 'normotensive', given: [normalNow] };
const transient: Ingredient = {
  named: 'transient-hypertension',
  given: [build.pressure(at('08', '09:00'), 146, 92), build.pressure(at('09', '09:00'), 118, 74), normalNow],
};
const protein: Ingredient = {
  named: 'isolated-proteinuria',
  given: [normalNow, build.strip(at('10', '13:30'), '2+')],
};
const masked: Ingredient = {
  named: 'masked-hypertension',
  editions: withHome,
  given: [normalNow, homeMean(142, 92)],
};
/** SOGC pairs readings 15 minutes apart, so that the lower one answers there. */
const unconfirmed: Ingredient = {
  named: 'raised-unconfirmed',
  editions: except('sogc-2022', 'nice-2023'),
  given: openThenLower,
};
const timing: Ingredient = { named: 'hypertension-timing-unknown', given: [normalNow, undatedLabetalol] };
const severeOnce: Ingredient = {
  named: 'severe-unconfirmed',
  given: [build.pressure(at('10', '14:30'), 172, 114)],
};
const imminent: Ingredient = {
  named: 'imminent-eclampsia',
  given: [build.pressure(at('08', '09:00'), 146, 92), build.symptom(at('10', '13:00'), 'headache', true)],
};
const gestational: Ingredient = { named: 'gestational-hypertension', given: [...raisedPair, normalNow] };
const severeRange: Ingredient = {
  named: 'gestational-hypertension-severe-range',
  given: [...severePair, normalNow],
};
const preEclampsia: Ingredient = {
  named: 'pre-eclampsia',
  given: [...raisedPair, build.ratio(at('05', '10:00'), 60, 'mg/mmol')],
};
const whiteCoat: Ingredient = {
  named: 'white-coat-hypertension',
  editions: withHome,
  given: [...raisedPair, homeMean(124, 76)],
};
const severeFeatures: Ingredient = {
  named: 'pre-eclampsia-severe-features',
  editions: ['frontline', 'acog-2020', 'sogc-2022', 'who-2020'],
  given: [...severePair, build.ratio(at('05', '10:00'), 60, 'mg/mmol')],
};

const recorded = (
  name: Classification,
  condition: Parameters<typeof build.condition>[0],
  editions = everyEdition,
): Ingredient => ({ named: name, editions, given: [build.condition(condition, '2025-03-05')] });

const lesser = [normotensive, transient, protein, masked, unconfirmed, timing];
const withoutTiming = lesser.filter((item) => item !== timing);

const groups: readonly Group[] = [
  {
    when: 'at 30+4',
    base: [thirtyWeeks],
    rows: [
      [recorded('eclampsia', 'eclampsia'), [...lesser, imminent, severeOnce]],
      [imminent, withoutTiming],
      [recorded('hellp', 'hellp'), lesser],
      [
        recorded('pre-eclampsia-severe-features', 'pre-eclampsia-severe', named),
        [...lesser, preEclampsia, gestational, severeRange, severeOnce],
      ],
      [
        recorded('superimposed-pre-eclampsia', 'superimposed-pre-eclampsia'),
        [
          ...lesser,
          preEclampsia,
          severeFeatures,
          gestational,
          severeRange,
          whiteCoat,
          recorded('chronic-hypertension', 'chronic-hypertension'),
        ],
      ],
      [
        {
          named: 'severe-unconfirmed',
          // Three minutes later a low one: the contact as a whole is not raised, and nothing is closed.
          given: [build.pressure(at('10', '14:00'), 172, 100), build.pressure(at('10', '14:03'), 100, 60)],
        },
        [normotensive, transient, protein, masked, timing],
      ],
      [
        recorded('pre-eclampsia', 'pre-eclampsia'),
        // Elsewhere the severe pressure makes it severe.
        [
          ...lesser,
          gestational,
          whiteCoat,
          { ...severeRange, editions: ['isshp-2021', 'nice-2023', 'india-mohfw'] },
        ],
      ],
      [{ ...severeRange, given: severePair }, [normotensive, masked, unconfirmed, timing, gestational]],
      [
        recorded('gestational-hypertension', 'gestational-hypertension'),
        [normotensive, transient, masked, unconfirmed, timing],
      ],
      [
        recorded('chronic-hypertension', 'chronic-hypertension'),
        [normotensive, transient, masked, unconfirmed, timing, gestational, severeRange],
      ],
      [{ ...timing, given: [undatedLabetalol] }, withoutTiming],
      [{ ...unconfirmed, given: [build.pressure(at('10', '12:00'), 146, 92)] }, [normotensive, protein]],
      [protein, [normotensive]],
      [transient, [normotensive]],
      [whiteCoat, [normotensive]],
      [masked, [normotensive]],
      [
        {
          named: 'cannot-classify',
          given: [
            build.condition('epilepsy', '2015-01-01'),
            build.symptom(at('10', '13:00'), 'seizure', true),
          ],
        },
        [normotensive, transient, protein, unconfirmed],
      ],
    ],
  },
  {
    when: 'at 16+4, raised with protein',
    base: [dated(116)],
    rows: [
      [
        {
          named: 'cannot-classify',
          given: [build.pressure(at('08', '09:00'), 146, 92), build.strip(at('10', '13:30'), '2+')],
        },
        [normotensive, protein, unconfirmed],
      ],
    ],
  },
  {
    when: 'six days after birth',
    base: [build.birth(at('04', '06:00'))],
    rows: [
      [
        {
          named: 'postpartum-pre-eclampsia',
          given: [build.condition('pre-eclampsia', '2025-03-01')],
        },
        [
          normotensive,
          transient,
          protein,
          unconfirmed,
          { named: 'postpartum-hypertension', given: raisedPair },
          { named: 'pre-eclampsia', given: [normalNow] },
          {
            named: 'gestational-hypertension',
            given: [build.condition('gestational-hypertension', '2025-02-20')],
          },
        ],
      ],
      [
        recorded('postpartum-hypertension', 'postpartum-hypertension'),
        [
          normotensive,
          protein,
          transient,
          unconfirmed,
          {
            named: 'gestational-hypertension',
            given: [build.condition('gestational-hypertension', '2025-02-20')],
          },
        ],
      ],
    ],
  },
  {
    when: 'seven weeks after birth',
    base: [build.birth('2025-01-20T06:00:00Z')],
    rows: [
      [
        {
          named: 'cannot-classify',
          editions: unconfirmed.editions ?? [],
          given: [build.pressure(at('10', '12:00'), 146, 92)],
        },
        [normotensive, transient, { ...unconfirmed, given: [normalNow] }],
      ],
    ],
  },
];

/** Alone the lesser finding is named; beside the disorder only the disorder is. */
function probesOf({ base, rows, when }: Group): readonly (readonly [string, readonly Probe[]])[] {
  return rows.map(([disorder, lessers]) => [
    `${disorder.named} ${when} takes the place of ${lessers.map(({ named: name }) => name).join(', ')}`,
    lessers.flatMap((item) =>
      everyEdition
        .filter((id) => [disorder, item].every(({ editions }) => (editions ?? everyEdition).includes(id)))
        .map((guideline) => ({
          title: `${disorder.named} beside ${item.named}`,
          guideline,
          woman: { asOf, sent: [...base, ...disorder.given, ...item.given] },
          lists: [disorder.named],
          without: [item.named],
        })),
    ),
  ]);
}

const alone: readonly Probe[] = [
  ...lesser,
  gestational,
  severeRange,
  preEclampsia,
  whiteCoat,
  severeFeatures,
  severeOnce,
].flatMap((item) =>
  (item.editions ?? everyEdition).map((guideline) => ({
    title: `${item.named} alone`,
    guideline,
    woman: { asOf, sent: [thirtyWeeks, ...item.given] },
    lists: [item.named],
  })),
);

export const placeProbes: readonly (readonly [title: string, probes: readonly Probe[]])[] = [
  ['each finding alone', alone],
  ...groups.flatMap(probesOf),
];

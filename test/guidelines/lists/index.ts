// Every name in a list of a question has a woman of her own; so has every name that is not in it.
import type { ConditionId, MedicineId, SymptomId } from '../../../src/guidelines/guideline.ts';
import type { Probe } from '../../support/probe.ts';
import type { PlainTimeline } from '../../support/timeline-builder.ts';
import { fetusLimits } from '../limits/cited-limits.ts';
import { everyEdition, type Edition } from '../limits/limit-row.ts';
import * as lists from './list-rows.ts';
import type { ListRow } from './list-rows.ts';

const asOf = '2025-03-10T15:00:00Z';
const morning = '2025-03-10T09:00:00Z';
const pregnant: PlainTimeline = { asOf, gestation: '30+4' };
const afterBirth: PlainTimeline = { asOf, birth: '2025-03-06T09:00:00Z' };
const early: PlainTimeline = { asOf, gestation: '16+0' };
const undated: PlainTimeline = { asOf };

/** One probe for each name and edition: met are the questions of the rows that look for it, unmet the others. */
function probes<Id extends string>(
  rows: readonly ListRow<Id>[],
  all: readonly Id[],
  woman: (name: Id) => PlainTimeline,
): readonly Probe[] {
  return everyEdition.flatMap((guideline) => {
    const own = rows.filter(({ editions }) => editions.includes(guideline));
    return all.map((name) => {
      const asked = own.filter(({ names, others = all }) => names.includes(name) || others.includes(name));
      const ids = (found: boolean): readonly string[] =>
        asked.filter(({ names }) => names.includes(name) === found).map(({ question }) => question);
      return { title: name, guideline, woman: woman(name), met: ids(true), unmet: ids(false) };
    });
  });
}

const renamed = <Id>(rows: readonly ListRow<Id>[], question: string): readonly ListRow<Id>[] =>
  rows.map((row) => ({ ...row, question }));

const withSymptom =
  (where: PlainTimeline) =>
  (symptom: SymptomId): PlainTimeline => ({ ...where, symptoms: [{ symptom, at: morning }] });
const withCondition =
  (where: PlainTimeline) =>
  (condition: ConditionId): PlainTimeline => ({ ...where, conditions: [{ condition }] });

const once = { at: morning, systolic: 172, diastolic: 114 };
const lower = { at: '2025-03-10T09:30:00Z', systolic: 150, diastolic: 96 };
const before = { at: '2025-03-08T09:00:00Z', systolic: 138, diastolic: 86 };
type Pressures = NonNullable<PlainTimeline['pressures']>;

/** Beside severe readings: `asked` is met for the danger symptoms, `denied` for the others. */
function beside(
  where: PlainTimeline,
  pressures: Pressures,
  asked: readonly string[],
  denied: readonly string[] = [],
  editions: readonly Edition[] = everyEdition,
): readonly Probe[] {
  const names = lists.dangerBesideSevere;
  const rest = lists.allSymptoms.filter((symptom) => !names.includes(symptom));
  const source = '2.1 rules 3 and 4, decision 11';
  return probes(
    [
      ...asked.map((question) => ({ source, editions, question, names })),
      ...denied.map((question) => ({ source, editions, question, names: rest })),
    ],
    lists.allSymptoms,
    (symptom) => ({ ...withSymptom(where)(symptom), pressures }),
  );
}

const allMedicines: readonly MedicineId[] = [
  ...new Set(lists.medicineRows.flatMap(({ names, others = [] }) => [...names, ...others])),
];
const pressureRow = (question: string, names: readonly MedicineId[]): ListRow<MedicineId> => ({
  source: '2.8, decision 26',
  editions: everyEdition,
  question,
  names,
});
const begun =
  (start: string, conditions: NonNullable<PlainTimeline['conditions']> = []) =>
  (medicine: MedicineId): PlainTimeline => ({ ...pregnant, conditions, medicines: [{ medicine, start }] });
const before20 = '2024-10-01';
const from20 = '2025-03-01';

export const listProbes: readonly (readonly [title: string, probes: readonly Probe[]])[] = [
  ['symptoms of the moment', probes(lists.symptomRows, lists.allSymptoms, withSymptom(pregnant))],
  ...(
    [
      ['from 20 weeks on', 'organ-from-20-weeks', pregnant],
      ['when undated', 'organ-from-20-weeks', undated],
      ['after birth', 'organ-after-birth', afterBirth],
    ] as const
  ).map(
    ([when, question, where]) =>
      [
        `symptoms that are signs of an organ, ${when}`,
        probes(renamed(lists.organSymptoms, question), lists.allSymptoms, withSymptom(where)),
      ] as const,
  ),
  ...(
    [
      ['from 20 weeks on', pregnant],
      ['when undated', undated],
      ['after birth', afterBirth],
    ] as const
  ).map(
    ([when, where]) =>
      [
        `symptoms that make it severe, ${when}`,
        probes(lists.severeSymptoms, lists.allSymptoms, withSymptom(where)),
      ] as const,
  ),
  [
    'symptoms are no sign of an organ before 20 weeks',
    probes(
      [{ source: '2.4 rule 34', editions: everyEdition, question: 'organ-before-20-weeks', names: [] }],
      lists.allSymptoms,
      withSymptom(early),
    ),
  ],
  [
    'a danger symptom confirms one severe reading from 20 weeks on, and leaves none open',
    beside(
      pregnant,
      [once],
      ['confirmed-from-20-weeks', 'severe-confirmed', 'severe-confirmed-any-time', 'severe-current'],
      ['severe-open'],
    ),
  ],
  [
    'a danger symptom confirms one severe reading before 20 weeks',
    beside(early, [once], ['confirmed-before-20-weeks', 'severe-confirmed-any-time']),
  ],
  [
    'a danger symptom confirms one severe reading after birth',
    beside(afterBirth, [once], ['confirmed-after-birth']),
  ],
  [
    'a danger symptom confirms one severe reading when undated',
    beside(undated, [once], ['confirmed-unknown']),
  ],
  [
    'a danger symptom keeps a lower reading from closing a severe one',
    beside(pregnant, [once, lower], [], ['severe-closed']),
  ],
  [
    'a danger symptom makes a sudden rise the loss of control',
    beside(pregnant, [before, once], ['control-lost'], [], ['frontline', 'acog-2020', 'sogc-2022']),
  ],
  ['conditions, as recorded', probes(lists.conditionRows, lists.allConditions, withCondition(pregnant))],
  ...(
    [
      ['before 20 weeks', 'organ-before-20-weeks', early],
      ['from 20 weeks on', 'organ-from-20-weeks', pregnant],
      ['after birth', 'organ-after-birth', afterBirth],
    ] as const
  ).map(
    ([when, question, where]) =>
      [
        `conditions that are signs of an organ, ${when}`,
        probes(renamed(lists.organConditions, question), lists.allConditions, withCondition(where)),
      ] as const,
  ),
  ['medicines in use', probes(lists.medicineRows, allMedicines, begun(from20))],
  [
    'medicines for pressure, in use since before 20 weeks',
    probes(
      [
        pressureRow('treated-before-20-weeks', lists.pressureMedicines),
        pressureRow('treated-from-20-weeks', []),
      ],
      lists.pressureMedicines,
      begun(before20),
    ),
  ],
  [
    'medicines for pressure, begun from 20 weeks on',
    probes(
      [
        pressureRow('treated-from-20-weeks', lists.pressureMedicines),
        pressureRow('treated-before-20-weeks', []),
      ],
      lists.pressureMedicines,
      begun(from20),
    ),
  ],
  ...(['heart-failure', 'chronic-kidney-disease'] as const).flatMap((condition) =>
    (
      [
        ['treated', from20],
        ['treated-before-20-weeks', before20],
        ['treated-from-20-weeks', from20],
      ] as const
    ).map(
      ([question, start]) =>
        [
          `medicines for pressure say nothing where ${condition} is the reason: ${question}`,
          probes([pressureRow(question, [])], lists.pressureMedicines, begun(start, [{ condition }])),
        ] as const,
    ),
  ),
  ['a multiple pregnancy is counted from two fetuses', fetusLimits],
  [
    'a medicine for pressure given before a lower reading confirms the raised one (2.3 rule 24)',
    probes(
      [pressureRow('confirmed-from-20-weeks', lists.pressureMedicines)],
      lists.pressureMedicines,
      (medicine) => ({
        ...pregnant,
        pressures: [
          { at: morning, systolic: 148, diastolic: 94 },
          { at: '2025-03-10T14:00:00Z', systolic: 128, diastolic: 80 },
        ],
        medicines: [{ medicine, status: 'given', start: '2025-03-10T10:00:00Z' }],
      }),
    ),
  ],
];

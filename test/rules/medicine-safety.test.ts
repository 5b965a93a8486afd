// Expectations: clinical-rules.md 2.5 rules 47 and 48, 2.7, 2.9, cases X38 and X39, decisions 27 and 28.
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/findings/finding.ts';
import type { MedicineId, MedicineRule } from '../../src/guidelines/guideline.ts';
import { medicineRules } from '../../src/guidelines/medicine-rules.ts';
import { questionsOf } from '../../src/rules/combine.ts';
import { judgeMedicine } from '../../src/rules/medicine-safety.ts';
import { assess, viewOf } from '../support/assess.ts';
import * as story from '../support/plain-stories.ts';
import type { PlainTimeline } from '../support/timeline-builder.ts';

type Medicines = NonNullable<PlainTimeline['medicines']>;
interface Row {
  readonly rule: string;
  readonly met: readonly PlainTimeline[];
  readonly notMet: readonly PlainTimeline[];
}

const taking = (plain: PlainTimeline, ...medicines: Medicines): PlainTimeline => ({ ...plain, medicines });
const having = (plain: PlainTimeline, ...conditions: NonNullable<PlainTimeline['conditions']>) => ({
  ...plain,
  conditions,
});
const feeling = (plain: PlainTimeline, ...symptoms: NonNullable<PlainTimeline['symptoms']>) => ({
  ...plain,
  symptoms: [...(plain.symptoms ?? []), ...symptoms],
});
const allergyTo = (medicine: MedicineId) =>
  ({ condition: 'medicine-allergy', allergicTo: [medicine] }) as const;
const ordered = 'ordered' as const;
const given = 'given' as const;
const running: Medicines[number] = { medicine: 'magnesium-sulfate', start: '2026-03-10T08:00:00Z' };
const weekLong: Medicines[number] = { medicine: 'magnesium-sulfate', start: '2026-03-04T08:00:00Z' };
const poorKidney = {
  ...story.gestational,
  labs: [{ at: '2026-03-10T09:00:00Z', analyte: 'creatinine', value: 95, unit: 'umol/L' }],
} as const satisfies PlainTimeline;
const fewPlatelets = {
  ...story.afterBirth,
  labs: [
    { at: '2026-03-10T09:00:00Z', analyte: 'creatinine', value: 60, unit: 'umol/L' },
    { at: '2026-03-10T09:00:00Z', analyte: 'platelets', value: 120, unit: '10*9/L' },
  ],
} as const satisfies PlainTimeline;

const rows: readonly Row[] = [
  {
    rule: 'renin-angiotensin-agent-in-pregnancy',
    met: [
      taking(story.normal, { medicine: 'ace-inhibitor' }),
      taking(story.undated, { medicine: 'angiotensin-receptor-blocker' }),
      taking(story.chronic, { medicine: 'renin-inhibitor', status: ordered }),
      taking(story.normal, { medicine: 'ace-inhibitor', status: given, start: '2026-03-04T08:00:00Z' }),
      taking(story.normal, { medicine: 'ace-inhibitor', status: given }),
    ],
    notMet: [
      taking(story.afterBirth, { medicine: 'ace-inhibitor' }),
      taking(story.normal, { medicine: 'ace-inhibitor', status: given, start: '2026-03-02T08:00:00Z' }),
    ],
  },
  {
    rule: 'atenolol-in-pregnancy',
    met: [taking(story.normal, { medicine: 'atenolol' })],
    notMet: [taking(story.afterBirth, { medicine: 'atenolol' })],
  },
  {
    rule: 'aldosterone-antagonist-in-pregnancy',
    met: [taking(story.normal, { medicine: 'aldosterone-antagonist' })],
    notMet: [taking(story.afterBirth, { medicine: 'aldosterone-antagonist' })],
  },
  {
    rule: 'statin-in-pregnancy',
    met: [taking(story.normal, { medicine: 'statin' })],
    notMet: [taking(story.afterBirth, { medicine: 'statin' })],
  },
  {
    rule: 'thiazide-in-pregnancy',
    met: [taking(story.normal, { medicine: 'thiazide' })],
    notMet: [taking(story.afterBirth, { medicine: 'thiazide' })],
  },
  {
    rule: 'diuretic-in-pre-eclampsia',
    met: [taking(story.preEclampsia, { medicine: 'loop-diuretic' })],
    notMet: [
      taking(story.gestational, { medicine: 'loop-diuretic' }),
      taking(feeling(story.preEclampsia, { symptom: 'pulmonary-oedema' }), { medicine: 'loop-diuretic' }),
    ],
  },
  {
    rule: 'sublingual-nifedipine',
    met: [
      taking(story.severe, { medicine: 'sublingual-nifedipine', status: given, start: story.asOf }),
      taking(story.normal, { medicine: 'sublingual-nifedipine', status: ordered }),
      taking(story.afterBirth, { medicine: 'sublingual-nifedipine' }),
    ],
    notMet: [taking({ asOf: story.asOf, birth: '2025-12-01' }, { medicine: 'sublingual-nifedipine' })],
  },
  {
    rule: 'magnesium-with-kidney-impairment',
    met: [
      taking(poorKidney, running),
      taking(having(story.gestational, { condition: 'chronic-kidney-disease' }), running),
      taking(feeling(story.gestational, { symptom: 'oliguria' }), { ...running, status: ordered }),
    ],
    notMet: [taking(story.gestational, running)],
  },
  {
    rule: 'second-magnesium-load',
    met: [
      taking(story.preEclampsia, running, { medicine: 'magnesium-sulfate', status: ordered }),
      taking(
        story.preEclampsia,
        { ...running, status: 'given' },
        { medicine: 'magnesium-sulfate', status: ordered },
      ),
    ],
    notMet: [
      taking(story.preEclampsia, { medicine: 'magnesium-sulfate', status: ordered }),
      taking(
        story.preEclampsia,
        { ...running, isOrder: true },
        { medicine: 'magnesium-sulfate', status: ordered },
      ),
      taking(
        story.preEclampsia,
        { ...weekLong, status: 'given' },
        { medicine: 'magnesium-sulfate', status: ordered },
      ),
    ],
  },
  {
    rule: 'second-magnesium-order',
    met: [
      taking(
        story.preEclampsia,
        { ...running, isOrder: true },
        { medicine: 'magnesium-sulfate', status: ordered },
      ),
    ],
    notMet: [taking(story.preEclampsia, { medicine: 'magnesium-sulfate', status: ordered })],
  },
  {
    rule: 'magnesium-with-calcium-blocker',
    met: [taking(story.preEclampsia, running, { medicine: 'nifedipine', status: ordered })],
    notMet: [taking(story.preEclampsia, { medicine: 'nifedipine' })],
  },
  {
    rule: 'magnesium-too-long',
    met: [taking(story.preEclampsia, weekLong)],
    notMet: [taking(story.afterBirth, weekLong)],
  },
  {
    rule: 'allergy-on-record',
    met: [
      taking(having(story.gestational, allergyTo('labetalol')), { medicine: 'labetalol', status: ordered }),
      taking(having(story.normal, allergyTo('aspirin')), { medicine: 'aspirin', status: ordered }),
      taking(having(story.afterBirth, allergyTo('ace-inhibitor')), { medicine: 'ace-inhibitor' }),
    ],
    notMet: [],
  },
  {
    rule: 'labetalol-contraindicated',
    met: (['asthma', 'heart-block', 'heart-failure', 'bradycardia'] as const).map((condition) =>
      taking(having(story.gestational, { condition }), { medicine: 'labetalol', status: ordered }),
    ),
    notMet: [
      taking(story.gestational, { medicine: 'labetalol' }),
      taking(having(story.gestational, { condition: 'asthma', state: 'inactive' }), {
        medicine: 'labetalol',
      }),
    ],
  },
  {
    rule: 'methyldopa-with-depression',
    met: [taking(having(story.gestational, { condition: 'depression' }), { medicine: 'methyldopa' })],
    notMet: [taking(story.gestational, { medicine: 'methyldopa' })],
  },
  {
    rule: 'ergometrine-with-hypertension',
    met: [
      taking(story.afterBirth, { medicine: 'ergometrine', status: ordered }),
      taking(story.afterBirth, { medicine: 'ergometrine', status: given, start: '2026-03-10T09:05:00Z' }),
      taking(story.preEclampsia, { medicine: 'ergometrine', status: ordered }),
    ],
    notMet: [taking(story.normal, { medicine: 'ergometrine', status: ordered })],
  },
  {
    rule: 'nsaid-from-20-weeks',
    met: [taking(story.normal, { medicine: 'nsaid' }), taking(story.undated, { medicine: 'nsaid' })],
    notMet: [taking(story.chronic, { medicine: 'nsaid' })],
  },
  {
    rule: 'nsaid-with-kidney-impairment',
    met: [taking(poorKidney, { medicine: 'nsaid' })],
    notMet: [taking(story.gestational, { medicine: 'nsaid' })],
  },
  {
    rule: 'nsaid-after-birth',
    met: [
      taking(fewPlatelets, { medicine: 'nsaid' }),
      taking(
        { ...story.afterBirth, pressures: [{ at: '2026-03-10T09:00:00Z', systolic: 152, diastolic: 96 }] },
        { medicine: 'nsaid', status: ordered },
      ),
    ],
    notMet: [taking(story.afterBirth, { medicine: 'nsaid' })],
  },
  {
    rule: 'receptor-blocker-while-breast-feeding',
    met: [taking(story.afterBirth, { medicine: 'angiotensin-receptor-blocker' })],
    notMet: [taking(story.normal, { medicine: 'angiotensin-receptor-blocker' })],
  },
  {
    rule: 'enalapril-captopril-after-birth',
    met: [taking(story.afterBirth, { medicine: 'enalapril' })],
    notMet: [taking(story.normal, { medicine: 'captopril' })],
  },
  {
    rule: 'other-ace-inhibitor-after-birth',
    met: [taking(story.afterBirth, { medicine: 'ace-inhibitor' })],
    notMet: [taking(story.normal, { medicine: 'ace-inhibitor' })],
  },
  {
    rule: 'diuretic-while-breast-feeding',
    met: [taking(story.afterBirth, { medicine: 'thiazide' })],
    notMet: [taking(story.gestational, { medicine: 'thiazide' })],
  },
  {
    rule: 'methyldopa-after-birth',
    met: [taking(story.afterBirth, { medicine: 'methyldopa' })],
    notMet: [taking(story.gestational, { medicine: 'methyldopa' })],
  },
  {
    rule: 'methyldopa-urgent',
    met: [taking(story.severe, { medicine: 'methyldopa', status: ordered })],
    notMet: [taking(story.gestational, { medicine: 'methyldopa', status: ordered })],
  },
];

const said = (plain: PlainTimeline, guideline?: string): readonly string[] =>
  assess(plain, guideline)
    .medicines.filter(({ rule, severity }) => severity === ruleOf(rule).severity)
    .map(({ rule }) => rule);

function ruleOf(id: string): MedicineRule {
  const rule = medicineRules.find((one) => one.id === id);
  if (rule === undefined) throw new Error(`No such rule: ${id}`);
  return rule;
}

/** Every question the rule rests on, answered alike. */
const allAnswered = (rule: MedicineRule, outcome: Outcome): ReadonlyMap<string, Outcome> =>
  new Map(questionsOf(rule.when).map((id) => [id, outcome]));

describe('each medicine rule', () => {
  it('has rows', () => {
    expect(rows.map(({ rule }) => rule).sort()).toEqual(medicineRules.map(({ id }) => id).sort());
  });

  it.each(rows)('$rule is said where it holds', ({ rule, met }) => {
    for (const plain of met) expect(said(plain)).toContain(rule);
  });

  it.each(rows)('$rule is silent where it does not', ({ rule, notMet }) => {
    for (const plain of notMet) expect(said(plain)).not.toContain(rule);
  });

  it.each(rows)('$rule cannot tell while nothing is known about the woman', ({ rule, met }) => {
    const [plain] = met;
    if (plain === undefined) throw new Error('a row is missing');
    expect(judgeMedicine(viewOf(plain), ruleOf(rule), allAnswered(ruleOf(rule), 'cannot-tell')).outcome).toBe(
      'cannot-tell',
    );
  });

  it.each(rows)('$rule does not apply without the medicine, or once it has stopped', ({ rule, met }) => {
    const [plain] = met;
    const stopped = (plain?.medicines ?? []).map((item) => ({ ...item, status: 'stopped' as const }));
    for (const medicines of [[], stopped])
      expect(judgeMedicine(viewOf({ ...story.normal, medicines }), ruleOf(rule), new Map()).outcome).toBe(
        'not-applicable',
      );
  });

  it('names an alternative with its source where it says avoid, or it is a matter of dose or statins', () => {
    const without = medicineRules.filter(
      (rule) => rule.severity === 'avoid' && rule.alternative === undefined,
    );
    expect(without.map(({ id }) => id)).toEqual([
      'statin-in-pregnancy',
      'second-magnesium-load',
      'allergy-on-record',
    ]);
  });
});

describe('medicine notices', () => {
  it('are the same under every guideline: a medicine is no more harmless elsewhere', () => {
    const plain = taking(story.gestational, { medicine: 'ace-inhibitor' });
    for (const id of ['acog-2020', 'nice-2023', 'india-mohfw', 'who-2020'])
      expect(said(plain, id)).toContain('renin-angiotensin-agent-in-pregnancy');
  });

  it('pass over enalapril when it is also an ACE inhibitor, after birth (decision 27)', () => {
    const enalapril = [
      { medicine: 'ace-inhibitor', reference: 'MedicationStatement/one' },
      { medicine: 'enalapril', reference: 'MedicationStatement/one' },
    ] as const;
    expect(said(taking(story.afterBirth, ...enalapril))).toEqual(['enalapril-captopril-after-birth']);
  });

  it('ask for kidney function where magnesium is in use and none is known', () => {
    const { medicines } = assess(taking({ ...story.gestational, labs: [] }, running));
    expect(medicines).toMatchObject([{ rule: 'magnesium-with-kidney-impairment', severity: 'note' }]);
  });

  it('show an alternative from memory as such', () => {
    const [notice] = assess(taking(story.normal, { medicine: 'nsaid' })).medicines;
    expect(notice?.source.known).toBe('from-memory');
    expect(notice?.alternative).toContain('from memory');
  });

  it('show the condition as evidence', () => {
    const [notice] = assess(
      taking(having(story.gestational, { condition: 'asthma' }), { medicine: 'labetalol' }),
    ).medicines;
    expect(notice?.evidence.map(({ reference }) => reference)).toEqual([
      'MedicationStatement/0',
      'Condition/0',
    ]);
  });

  it('make an agent to avoid in pregnancy a matter of the same day, at normal pressure (decision 7, case X39)', () => {
    expect(assess(taking(story.normal, { medicine: 'ace-inhibitor' })).urgency).toBe('same-day');
    expect(assess(taking(story.normal, { medicine: 'ace-inhibitor', status: ordered })).urgency).toBe(
      'routine',
    );
  });
});

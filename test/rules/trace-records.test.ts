// The trace of questions about the record, symptoms, protein and organs, whole.
import { describe, expect, it } from 'vitest';
import * as build from '../support/resources.ts';
import { at, pressure, thirtyWeeks, trace } from './trace.ts';

describe('records, symptoms and single values', () => {
  it('conditions and medicines cite each that counts', () => {
    const chronic = build.condition('chronic-hypertension', '2020-05-01');
    expect(trace('recorded-chronic', [chronic])).toMatchObject({
      outcome: 'met',
      because: 'Recorded: chronic hypertension.',
    });
    expect(trace('recorded-chronic', [chronic]).cited).toHaveLength(1);
    expect(trace('recorded-chronic', [])).toEqual({ outcome: 'not-met', because: 'Not recorded.' });
    const takes = build.takes('labetalol', '2025-03-01');
    expect(trace('treated', [takes])).toEqual({
      outcome: 'met',
      because: 'In use: labetalol.',
      cited: ['labetalol'],
    });
    expect(trace('treated', [takes, build.condition('chronic-kidney-disease', '2020-05-01')])).toEqual({
      outcome: 'not-met',
      because: 'Another reason is recorded: chronic kidney disease.',
      cited: ['labetalol'],
    });
  });

  it('medicines given once, stopped or over are not in use', () => {
    const { effectivePeriod: period = {}, ...takes } = build.takes('labetalol', '2025-03-01');
    const until = (end: string) => ({ ...takes, effectivePeriod: { ...period, end } });
    expect(trace('treated', [build.given('labetalol', at('09:00'))]).outcome).toBe('not-met');
    expect(trace('treated', [{ ...takes, status: 'stopped' }]).outcome).toBe('not-met');
    expect(trace('treated', [{ ...takes, status: 'intended' }]).outcome).toBe('not-met');
    expect(trace('treated', [until('2025-03-09')]).outcome).toBe('not-met');
    expect(trace('treated', [until('2025-03-12')]).outcome).toBe('met');
  });

  it('a saturation cites itself in the unit compared', () => {
    expect(trace('oxygen-below-94', [build.lab(at('09:00'), 'oxygen-saturation', 93, '%')])).toEqual({
      outcome: 'met',
      because: 'oxygen saturation 93 % at 2025-03-10T09:00:00Z.',
      cited: ['93 %'],
      limits: ['< 94'],
    });
    expect(trace('oxygen-below-94', [])).toEqual({
      outcome: 'cannot-tell',
      because: 'No recent oxygen saturation was received.',
      limits: ['< 94'],
    });
  });

  it('a fall of the platelets cites the highest and the newest', () => {
    const platelets = (day: string, value: number) =>
      build.lab(`2025-${day}T09:00:00Z`, 'platelets', value, '10*9/L');
    expect(
      trace('platelets-falling', [platelets('02-01', 220), platelets('02-10', 240), platelets('03-10', 155)]),
    ).toEqual({
      outcome: 'met',
      because: 'platelets 240 10*9/L at 2025-02-10T09:00:00Z, now 155 10*9/L.',
      cited: ['240 10*9/L', '155 10*9/L'],
      limits: ['>= 30'],
    });
    expect(trace('platelets-falling', [platelets('03-10', 155)])).toEqual({
      outcome: 'not-applicable',
      because: 'There are no two results to compare.',
      limits: ['>= 30'],
    });
    expect(trace('platelets-falling', [platelets('02-10', 155), platelets('03-10', 240)])).toMatchObject({
      outcome: 'not-met',
      cited: ['155 10*9/L', '240 10*9/L'],
    });
  });

  it('symptoms: present, denied, never asked', () => {
    const asked = (
      name: 'headache' | 'dyspnoea' | 'visual-disturbance' | 'epigastric-pain',
      present: boolean,
    ) => build.symptom(at('09:00'), name, present);
    expect(trace('danger-symptom', [asked('headache', true), asked('dyspnoea', false)])).toMatchObject({
      outcome: 'met',
      because: 'Present: headache.',
    });
    expect(trace('danger-symptom', build.noDangerSymptoms(at('09:00')))).toMatchObject({
      outcome: 'not-met',
      because: 'Asked, and not present.',
    });
    expect(trace('danger-symptom', [asked('headache', false), asked('dyspnoea', false)])).toMatchObject({
      outcome: 'cannot-tell',
      because: 'Not recorded: visual disturbance, epigastric pain.',
    });
    expect(trace('danger-symptom', [asked('headache', false), asked('dyspnoea', false)]).cited).toHaveLength(
      2,
    );
    expect(trace('chest-pain', [])).toEqual({ outcome: 'not-met', because: 'Not recorded.' });
  });

  it('of two statements the newer counts, and of one moment the one that says present', () => {
    const said = (clock: string, present: boolean) => build.symptom(at(clock), 'chest-pain', present);
    expect(trace('chest-pain', [said('09:00', true), said('10:00', false)]).outcome).toBe('not-met');
    expect(trace('chest-pain', [said('09:00', false), said('10:00', true)]).outcome).toBe('met');
    expect(trace('chest-pain', [said('09:00', true), said('09:00', false)]).outcome).toBe('met');
    expect(trace('chest-pain', [said('09:00', false), said('09:00', true)]).outcome).toBe('met');
  });

  it('a symptom without a time is of today when present, and belongs to this part of the pregnancy', () => {
    const undated = (present: boolean) => build.symptom(undefined, 'seizure', present);
    expect(trace('seizure', [undated(true)]).outcome).toBe('met');
    expect(trace('seizure', [undated(false)]).outcome).toBe('not-met');
    const early = [build.gestationalAge('2025-03-10T08:00:00Z', 120)];
    expect(trace('seizure', [undated(true)], 'frontline', early).outcome).toBe('not-met');
    expect(trace('seizure-any-time', [undated(true)], 'frontline', early).outcome).toBe('met');
  });

  it('a symptom of another part of the pregnancy does not belong to this one', () => {
    const twentyAndTwo = [build.gestationalAge('2025-03-10T08:00:00Z', 142)];
    const seizure = (day: string) => build.symptom(at('09:00', day), 'seizure', true);
    expect(trace('seizure', [seizure('05')], 'frontline', twentyAndTwo).outcome).toBe('not-met');
    expect(trace('seizure-any-time', [seizure('05')], 'frontline', twentyAndTwo).outcome).toBe('met');
    expect(trace('seizure', [seizure('09')], 'frontline', twentyAndTwo).outcome).toBe('met');
  });
});

describe('which part of the pregnancy it is', () => {
  it.each([
    ['30+4 weeks.', [thirtyWeeks]],
    ['Day 6 after birth.', [build.birth(at('06:00', '04'))]],
    ['The pregnancy is not dated.', []],
    [
      'Not dated; by the height of the fundus 20 weeks or more is assumed.',
      [build.lab(at('09:00'), 'fundal-height', 30, 'cm')],
    ],
    ['More than six weeks after the birth, and no newer pregnancy is dated.', [build.birth('2025-01-10')]],
  ])('%s', (words, when) => {
    expect(trace('now-from-20-weeks', [], 'frontline', when).because).toBe(words);
  });
});

it('another part of the pregnancy cites the dating as well', () => {
  expect(trace('now-before-20-weeks', []).cited).toHaveLength(1);
  expect(trace('now-from-20-weeks', []).cited).toHaveLength(1);
});

describe('protein', () => {
  it('of a strip says that others ask for more, of a ratio it does not', () => {
    const raised = [pressure('09:00', 146, 92), pressure('13:30', 148, 94)];
    const remark =
      'From 1+ a strip counts at the first level; ISSHP, ACOG and NICE ask for 2+ or a ratio: quantify.';
    expect(trace('protein-from-20-weeks', [...raised, build.strip(at('09:00'), '1+')])).toMatchObject({
      outcome: 'met',
      because: `urine protein, strip: 1+ at 2025-03-10T09:00:00Z. ${remark}`,
      limits: ['>= 1'],
    });
    expect(trace('protein-from-20-weeks', [...raised, build.ratio(at('09:00'), 60, 'mg/mmol')])).toEqual({
      outcome: 'met',
      because: 'urine protein/creatinine ratio: 60 mg/mmol at 2025-03-10T09:00:00Z.',
      cited: ['60 mg/mmol'],
      limits: ['>= 30'],
    });
    expect(
      trace('protein-from-20-weeks', [...raised, build.strip(at('09:00'), '1+')], 'nice-2023'),
    ).toMatchObject({
      outcome: 'cannot-tell',
      because: 'urine protein, strip: 1+ at 2025-03-10T09:00:00Z: a ratio is needed.',
      limits: ['>= 2'],
    });
  });

  it('below the limit, and too old for today, are said', () => {
    expect(
      trace('protein-now', [pressure('09:00', 146, 92), build.ratio(at('09:00'), 10, 'mg/mmol')]),
    ).toEqual({
      outcome: 'not-met',
      because: 'urine protein/creatinine ratio: 10 mg/mmol at 2025-03-10T09:00:00Z: below the limit.',
      cited: ['10 mg/mmol'],
      limits: ['>= 30'],
    });
    expect(
      trace('protein-now', [pressure('09:00', 146, 92), build.ratio('2025-02-20T09:00:00Z', 10, 'mg/mmol')])
        .because,
    ).toBe('urine protein/creatinine ratio: 10 mg/mmol at 2025-02-20T09:00:00Z, too old for today.');
  });

  it('is as old as it was when the pressure last rose, else as of today', () => {
    const strip = build.ratio('2025-03-01T09:00:00Z', 10, 'mg/mmol');
    expect(trace('protein-now', [pressure('09:00', 146, 92, '05'), strip]).outcome).toBe('not-met');
    expect(trace('protein-now', [pressure('09:00', 118, 74, '05'), strip]).outcome).toBe('cannot-tell');
    expect(
      trace('protein-now', [pressure('09:00', 146, 92, '05'), pressure('09:00', 146, 92), strip]).outcome,
    ).toBe('cannot-tell');
  });

  it('known before cites the baseline too', () => {
    const raised = [pressure('09:00', 146, 92), pressure('13:30', 148, 94)];
    const before = build.ratio('2024-11-01T09:00:00Z', 40, 'mg/mmol');
    expect(
      trace('protein-from-20-weeks', [before, ...raised, build.ratio(at('09:00'), 60, 'mg/mmol')]),
    ).toMatchObject({
      outcome: 'not-met',
      cited: ['40 mg/mmol', '60 mg/mmol'],
      limits: ['>= 30', '>= 2'],
    });
    expect(
      trace('protein-from-20-weeks', [
        build.condition('chronic-kidney-disease', '2020-01-01'),
        ...raised,
        build.ratio(at('09:00'), 60, 'mg/mmol'),
      ]).cited,
    ).toHaveLength(2);
  });
});

describe('organs', () => {
  it('a sign is named as a sentence', () => {
    const headache = build.symptom(at('09:00'), 'headache', true);
    expect(trace('organ-from-20-weeks', [headache], 'isshp-2021').because).toBe('Brain sign.');
    const growth = build.condition('fetal-growth-restriction', '2025-03-01');
    expect(trace('organ-from-20-weeks', [growth], 'isshp-2021').because).toBe('Placental sign.');
  });

  it('doubling by a recorded disease that is over is not explained', () => {
    const given = [
      build.lab('2024-10-14T09:00:00Z', 'creatinine', 0.5, 'mg/dL'),
      build.lab(at('09:00'), 'creatinine', 1, 'mg/dL'),
    ];
    const disease = build.condition('chronic-kidney-disease', '2020-01-01');
    const over = {
      ...disease,
      clinicalStatus: { coding: [{ ...disease.clinicalStatus?.coding?.[0], code: 'resolved' }] },
    };
    const text = 'Creatinine 2 times 0.5 mg/dL of 2024-10-14T09:00:00Z.';
    expect(trace('organ-from-20-weeks', [...given, over], 'acog-2020')).toMatchObject({
      because: text,
      cited: ['0.5 mg/dL', '1 mg/dL'],
      limits: ['>= 2'],
    });
    expect(trace('organ-from-20-weeks', [...given, disease], 'acog-2020').outcome).toBe('cannot-tell');
  });

  it('a growth-factor ratio of an undated pregnancy says nothing', () => {
    const ratio = [build.lab(at('09:00'), 'sflt1-plgf-ratio', 200, '1')];
    expect(trace('organ-from-20-weeks', ratio, 'isshp-2021').outcome).toBe('met');
    expect(trace('organ-from-20-weeks', ratio, 'isshp-2021', []).outcome).toBe('cannot-tell');
  });

  it('enzymes against the upper limit show the multiple', () => {
    expect(trace('organ-from-20-weeks', [build.lab(at('09:00'), 'alt', 80, 'U/L')], 'acog-2020')).toEqual({
      outcome: 'met',
      because: 'ALT 2 times the upper limit of 40 U/L.',
      cited: ['80 U/L'],
      limits: ['>= 2'],
    });
  });
});

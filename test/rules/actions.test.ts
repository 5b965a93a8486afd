// Expectations: clinical-rules.md 1.1, 2.1, 2.5, 2.6, 2.7, 2.11, 2.12, 2.13; case X10; decisions 6 and 28.
import { describe, expect, it } from 'vitest';
import { guidelineIds } from '../../src/guidelines/registry.ts';
import { questionsOf } from '../../src/rules/combine.ts';
import { chooseActions } from '../../src/rules/choose-actions.ts';
import { actionStates as states } from '../support/action-states.ts';
import { assess, guideline, viewOf } from '../support/assess.ts';
import * as story from '../support/plain-stories.ts';
import type { PlainTimeline } from '../support/timeline-builder.ts';

const idsOf = (plain: PlainTimeline): readonly string[] => assess(plain).actions.map((action) => action.id);
const sentence = (plain: PlainTimeline, action: string, id?: string): string | undefined =>
  assess(plain, id).actions.find((one) => one.id === action)?.sentence;

describe('what to do', () => {
  it.each(states)('%s', (_name, plain, expected, excluded) => {
    const ids = idsOf(plain);
    expect(expected.filter((id) => !ids.includes(id))).toEqual([]);
    expect(excluded.filter((id) => ids.includes(id))).toEqual([]);
  });

  it('has a state for every step of the first level', () => {
    const tried = new Set(states.flatMap(([, , expected]) => expected));
    // Shown by the check cases and by tests of their own subject.
    const elsewhere = new Set(['repeat-unusable-reading', 'platelets-falling']);
    const untried = guideline()
      .actionRules.filter(({ kind }) => kind !== 'measurement-quality')
      .map(({ id }) => id)
      .filter((id) => !tried.has(id) && !elsewhere.has(id));
    expect(untried).toEqual([]);
  });

  it('is nothing for a woman with normal pressure and a clean strip', () => {
    expect(idsOf(story.normal)).toEqual([]);
  });

  it.each(guidelineIds)('%s: is never guessed: open questions choose no step', (id) => {
    const { actionRules } = guideline(id);
    const open = new Map(
      actionRules.flatMap(({ when }) => questionsOf(when)).map((one) => [one, 'cannot-tell'] as const),
    );
    expect(chooseActions(viewOf(story.normal), guideline(id), open)).toEqual([]);
  });
});

describe('a repeat by the clock', () => {
  const once = (at: string, asOf: string, systolic = 150): PlainTimeline => ({
    asOf,
    gestation: '32+0',
    pressures: [{ at, systolic, diastolic: 95 }],
  });

  it.each([
    [
      'today, still to come',
      once('2026-03-10T09:00:00Z', '2026-03-10T09:10:00Z'),
      'Repeat the pressure after 13:00, which is 4 hours after the reading at 09:00.',
    ],
    [
      'tonight, due tomorrow',
      once('2026-03-10T22:00:00Z', '2026-03-10T22:10:00Z'),
      'Repeat the pressure after 02:00 on 2026-03-11, which is 4 hours after the reading at 22:00.',
    ],
    [
      'last night, still to come',
      once('2026-03-09T22:00:00Z', '2026-03-10T00:30:00Z'),
      'Repeat the pressure after 02:00, which is 4 hours after the reading at 22:00 on 2026-03-09.',
    ],
    [
      'at the very minute',
      once('2026-03-10T09:00:00Z', '2026-03-10T13:00:00Z'),
      'Repeat the pressure now: it was due after 13:00.',
    ],
    [
      'three weeks ago',
      once('2026-02-17T09:00:00Z', '2026-03-10T12:00:00Z'),
      'Repeat the pressure now: it was due after 13:00 on 2026-02-17.',
    ],
  ])('%s', (_name, plain, expected) => {
    expect(sentence(plain, 'repeat-raised-reading')).toBe(expected);
  });

  it('a severe reading of days ago is repeated now', () => {
    expect(
      sentence(once('2026-03-07T09:00:00Z', '2026-03-10T12:00:00Z', 170), 'repeat-severe-reading'),
    ).toContain('repeat the pressure now: it was due before 09:15 on 2026-03-07.');
  });

  it('nothing that waits four hours is said in an emergency of another cause', () => {
    const ids = idsOf({
      ...once('2026-03-10T09:00:00Z', '2026-03-10T09:10:00Z'),
      symptoms: [{ at: '2026-03-10T09:00:00Z', symptom: 'headache', presence: 'present' }],
    });
    expect(ids).not.toContain('repeat-raised-reading');
    expect(ids).not.toContain('rest-before-measuring');
    expect(ids[0]).toBe('call-ahead');
  });

  it('how to measure is said right after the repeat, before the steps of the transfer', () => {
    const ids = idsOf(once('2026-03-10T09:00:00Z', '2026-03-10T09:10:00Z', 170));
    expect(ids.slice(0, 5)).toEqual([
      'repeat-severe-reading',
      'rest-before-measuring',
      'place-the-cuff',
      'inflate-beyond-the-pulse',
      'call-ahead',
    ]);
  });
});

it('blood measured within the day is not asked for again; a day and a minute ago it is', () => {
  const tested = (at: string): PlainTimeline => ({
    ...story.gestational,
    labs: [
      { at, analyte: 'platelets', value: 240, unit: '10*9/L' },
      { at, analyte: 'creatinine', value: 60, unit: 'umol/L' },
      { at, analyte: 'alt', value: 18, unit: 'U/L' },
    ],
  });
  expect(idsOf(tested('2026-03-09T12:00:00Z'))).not.toContain('first-blood-tests');
  expect(idsOf(tested('2026-03-09T11:59:00Z'))).toContain('first-blood-tests');
  expect(idsOf({ ...tested(story.asOf), labs: tested(story.asOf).labs?.slice(0, 2) ?? [] })).toContain(
    'first-blood-tests',
  );
});

describe('the order before transfer (2.6)', () => {
  it('calls, frees the airway, gives magnesium, lowers the pressure, restricts fluids, travels, copies', () => {
    const steps = assess(story.severePreEclampsia).actions.filter(({ kind }) => kind === 'before-transfer');
    expect(steps.map(({ id }) => id)).toEqual([
      'call-ahead',
      'airway-and-left-side',
      'magnesium-loading',
      'magnesium-signs',
      'magnesium-antidote',
      'lower-severe-pressure',
      'catheter-and-fluids',
      'trained-escort',
      'copy-of-chart',
    ]);
  });
});

describe('figures by publication', () => {
  it.each([
    ['frontline', 'target-on-treatment', story.gestational, '135/85'],
    ['nice-2023', 'target-on-treatment', story.gestational, '135/85'],
    ['sogc-2022', 'target-on-treatment', story.gestational, 'diastolic of 85 mmHg'],
    ['acog-2020', 'target-on-treatment', story.chronic, 'below 140/90 mmHg'],
    ['acog-2020', 'lower-severe-pressure', story.severePreEclampsia, 'within 30 to 60 minutes'],
    ['nice-2023', 'lower-severe-pressure', story.severe, 'immediately'],
    ['sogc-2022', 'lower-severe-pressure', story.severe, 'below 160 and below 110 mmHg'],
    [
      'india-mohfw',
      'magnesium-loading',
      story.eclampsia,
      '10 g deep into the muscle, 5 g (10 mL of 50%) in each buttock',
    ],
    ['frontline', 'magnesium-loading', story.eclampsia, '4 g of 20% into a vein over 15 to 20 minutes'],
    ['nice-2023', 'magnesium-loading', story.eclampsia, '4 g into a vein over 5 to 15 minutes'],
    ['frontline', 'magnesium-signs', story.eclampsia, 'at least 16 per minute'],
    ['acog-2020', 'magnesium-signs', story.eclampsia, 'above 12 per minute'],
    ['frontline', 'catheter-and-fluids', story.eclampsia, '80 mL per hour'],
    [
      'nice-2023',
      'birth-pre-eclampsia',
      story.preEclampsia,
      '37+0 weeks birth is started within 24 to 48 hours',
    ],
    ['acog-2020', 'birth-severe', story.severePreEclampsia, '34+0 weeks'],
    ['isshp-2021', 'birth-gestational', story.gestational, 'up to 39+6 weeks'],
    [
      'acog-2020',
      'after-birth-acog-checks',
      story.afterBirth,
      '72 hours after birth, and again at 7 to 10 days',
    ],
    ['isshp-2021', 'after-birth-start-drug', story.afterBirth, '140/90 mmHg'],
    ['nice-2023', 'follow-gestational', story.gestational, '1 to 2 times a week'],
    [
      'nice-2023',
      'follow-pre-eclampsia',
      story.preEclampsia,
      'at least every 48 hours; blood 2 times a week',
    ],
  ])('%s, %s', (id, action, plain, words) => {
    expect(sentence(plain, action, id)).toContain(words);
  });

  it('the first dose of the Indian nurse-midwife is from memory', () => {
    const loading = assess(story.eclampsia, 'india-mohfw').actions.find(
      ({ id }) => id === 'magnesium-loading',
    );
    expect(loading?.source.known).toBe('from-memory');
  });

  it('the timing of birth is only ever a senior review', () => {
    for (const id of guidelineIds)
      for (const rule of guideline(id).actionRules.filter((one) => one.id.startsWith('birth-')))
        expect(rule.sentence).toContain('this service does not decide it');
  });
});

describe('the site', () => {
  it('of the first level does everything but operate: the timing of birth is for the next level', () => {
    expect(sentence(story.preEclampsia, 'birth-pre-eclampsia')).toMatch(/^At the next level: /);
    expect(sentence(story.severePreEclampsia, 'magnesium-loading')).toMatch(/^Magnesium sulfate/);
  });

  it('that cannot give magnesium has it given at the next', () => {
    const { actions } = assess(story.severePreEclampsia, undefined, {
      can: [],
      next: 'the district hospital',
    });
    const loading = actions.find(({ id }) => id === 'magnesium-loading');
    expect(loading?.sentence).toMatch(/^At the district hospital: Magnesium sulfate/);
  });

  it('that can operate reviews birth itself', () => {
    const { actions } = assess(story.preEclampsia, undefined, { can: ['operate'] });
    expect(actions.find(({ id }) => id === 'birth-pre-eclampsia')?.sentence).toMatch(/^Senior review/);
  });
});

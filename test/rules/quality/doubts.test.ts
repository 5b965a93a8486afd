// Each measurement rule with limits of its own: what raises the doubt, what is cited, what is too old. Clinical rules, section 3.
import { describe, expect, it } from 'vitest';
import type { QualityCheck } from '../../../src/guidelines/quality-rule.ts';
import type { Disturbance, Technique, Timeline } from '../../../src/timeline/timeline.ts';
import { limit, raisedLimits } from '../checks/ask.ts';
import { criteria } from '../checks/urine-question.ts';
import { condition, lab, moment, reading, strip, unusable } from '../facts.ts';
import { day, noticeOf, said } from './one-rule.ts';

const taken = (technique: Technique, at = '09:00') => reading(at, 120, 76, { technique });
const sent = '120/76';
const [justIn, tooOld, longAgo] = ['2025-03-09T12:00:00Z', '2025-03-09T11:59:00Z', '2024-01-01T09:00:00Z'];

describe('a notice', () => {
  it('is made of its rule, and is of recent measurements of this pregnancy', () => {
    const check = { check: 'rest', tooShort: limit('<', 5, 'min') } as const;
    const at = (when: string) => said(check, { pressures: [taken({ restMinutes: 1 }, when)] });
    expect([at(justIn), at(tooOld), at(longAgo)]).toEqual([`Doubtful. | ${sent}`, 'nothing', 'nothing']);
    const ofToday = { pressures: [taken({ restMinutes: 1 }, '09:00')] };
    expect([
      noticeOf(check, ofToday, day, 0),
      noticeOf(check, { pressures: [taken({ restMinutes: 1 }, '2025-03-09T23:00:00Z')] }, day, 0),
    ]).toMatchObject([{}, undefined]);
    expect(noticeOf(check, { pressures: [taken({ restMinutes: 1 })] })).toMatchObject({
      rule: 'rule',
      grade: 'ask',
      source: day.citation,
    });
    expect(said(check, { homePressures: [taken({ restMinutes: 1 })] })).toBe(`Doubtful. | ${sent}`);
  });
});

describe('a pressure that cannot be used', () => {
  const check = { check: 'unusable-pressure', why: ['unit-missing', 'faulty-form'] } as const;
  const of = (...unusablePressures: Timeline['unusablePressures']) => said(check, { unusablePressures });

  it('is told for the reasons asked, recent or undated', () => {
    expect(of(unusable('unit-missing', justIn))).toBe('Doubtful. | as sent');
    expect(of(unusable('unit-missing'))).toBe('Doubtful. | as sent');
    expect(of(unusable('unit-missing', tooOld))).toBe('nothing');
    expect(of(unusable('above-plausible-range', '09:00'))).toBe('nothing');
  });

  it('names what is to be mended, and when it was taken', () => {
    const fault = { element: 'value', message: 'Send a number.' };
    const faulty = {
      ...unusable('faulty-form', '09:00'),
      fault,
      sources: [{ reference: 'Observation/x', preliminary: false }],
    };
    expect(of(faulty, unusable('unit-missing'))).toBe(
      'Doubtful. Observation/x value: Send a number. | as sent | as sent',
    );
    const times = noticeOf(check, { unusablePressures: [faulty, unusable('unit-missing')] })?.evidence.map(
      ({ at }) => at,
    );
    expect(times).toEqual(['2025-03-10T09:00:00Z', undefined]);
  });
});

describe('the gap between the halves', () => {
  const check = {
    check: 'pulse-pressure',
    narrow: limit('<', 15, 'mm[Hg]'),
    wide: limit('>', 100, 'mm[Hg]'),
  } as const;
  it.each([
    [104, 90, true],
    [105, 90, false],
    [180, 80, false],
    [181, 80, true],
    [181, undefined, false],
    [undefined, 20, false],
  ])('%s/%s: %j', (systolic, diastolic, isDoubtful) => {
    expect(said(check, { pressures: [reading('09:00', systolic, diastolic)] }) !== 'nothing').toBe(
      isDoubtful,
    );
  });
});

describe('how it was taken', () => {
  const of = (check: QualityCheck, technique: Technique) =>
    said(check, { pressures: [taken({}), taken(technique)] }) === `Doubtful. | ${sent}`;
  const rest = { check: 'rest', tooShort: limit('<', 5, 'min') } as const;
  const position = { check: 'position', positions: ['supine'] } as const;

  it('rest, or something beside it', () => {
    expect([of(rest, { restMinutes: 4 }), of(rest, { restMinutes: 5 }), of(rest, {})]).toEqual([
      true,
      false,
      false,
    ]);
    const disturbances: readonly Disturbance[] = ['talking'];
    expect(of(rest, { restMinutes: 9, disturbances })).toBe(true);
    expect(of(rest, { disturbances })).toBe(true);
    expect(of(rest, { restMinutes: 9, disturbances: [] })).toBe(false);
  });

  it('a position that is among the doubtful ones', () => {
    expect([
      of(position, { position: 'supine' }),
      of(position, { position: 'sitting' }),
      of(position, {}),
    ]).toEqual([true, false, false]);
  });

  it('felt and not heard', () => {
    const palpated = { check: 'palpated' } as const;
    expect([of(palpated, { method: 'palpation' }), of(palpated, { method: 'auscultation' })]).toEqual([
      true,
      false,
    ]);
    const diastolic = reading('09:00', undefined, 76, { technique: { method: 'palpation' } });
    expect(said(palpated, { pressures: [diastolic] })).toBe('nothing');
  });

  it('at a time that is only a date, or none', () => {
    const exact = { check: 'time-not-exact' } as const;
    expect(said(exact, { pressures: [reading('2025-03-10', 120, 76), taken({})] })).toBe(
      `Doubtful. | ${sent}`,
    );
    expect(
      said(exact, { unusablePressures: [unusable('time-unusable'), unusable('unit-missing', '09:00')] }),
    ).toBe('Doubtful. | as sent');
  });
});

describe('a device near a limit', () => {
  const check = {
    check: 'automated-near-limit',
    limits: [raisedLimits],
    within: limit('<=', 5, 'mm[Hg]'),
    conditions: ['pre-eclampsia'],
    proteinuria: criteria,
  } as const;
  const near = (systolic?: number, diastolic?: number) =>
    reading('09:00', systolic, diastolic, { technique: { method: 'oscillometry' } });
  const of = (facts: Partial<Timeline>, pressure = near(138, 70)) =>
    said(check, { pressures: [pressure], ...facts }) !== 'nothing';
  const known = { conditions: [condition('pre-eclampsia')] };

  it('is doubtful where pre-eclampsia is on record in this pregnancy, or protein was found lately', () => {
    expect([of({}), of(known), of({ urineProteins: [strip('09:00', 1)] })]).toEqual([false, true, true]);
    expect(of({ conditions: [condition('asthma')] })).toBe(false);
    expect(of({ conditions: [{ ...condition('pre-eclampsia'), onset: moment(longAgo) }] })).toBe(false);
    expect(of({ conditions: [{ ...condition('pre-eclampsia'), state: 'inactive' }] })).toBe(false);
    expect([of({ urineProteins: [strip(tooOld, 1)] }), of({ urineProteins: [strip('09:00', 0)] })]).toEqual([
      false,
      false,
    ]);
  });

  it('in either half, on either side of the limit', () => {
    expect([134, 135, 145, 146].map((systolic) => of(known, near(systolic, 60)))).toEqual([
      false,
      true,
      true,
      false,
    ]);
    expect([84, 85, 95, 96].map((diastolic) => of(known, near(120, diastolic)))).toEqual([
      false,
      true,
      true,
      false,
    ]);
    expect([of(known, near(undefined, 88)), of(known, near(138))]).toEqual([true, true]);
    expect(of(known, reading('09:00', 138, 70))).toBe(false);
  });
});

describe('a preliminary value', () => {
  const preliminary = { reference: 'Observation/p', preliminary: true };
  const of = (facts: Partial<Timeline>) => said({ check: 'preliminary' }, facts);

  it('of each kind is told, while it is recent', () => {
    const final = { reference: 'Observation/f', preliminary: false };
    expect(of({ pressures: [{ ...taken({}), sources: [final, preliminary] }, taken({})] })).toBe(
      `Doubtful. | ${sent} | ${sent}`,
    );
    expect(of({ urineProteins: [{ ...strip('09:00', 1), source: preliminary }, strip('09:00', 2)] })).toBe(
      'Doubtful. | 1',
    );
    const count = lab('09:00', 'platelets', 200, '10*9/L');
    expect(of({ laboratory: [{ ...count, source: preliminary }, count] })).toBe('Doubtful. | 200 10*9/L');
    expect(of({ laboratory: [{ ...lab(tooOld, 'platelets', 200, '10*9/L'), source: preliminary }] })).toBe(
      'nothing',
    );
    expect(of({ urineProteins: [{ ...strip(tooOld, 1), source: preliminary }] })).toBe('nothing');
  });
});

// Contacts: which readings belong together, on which day it is, and what an unusable reading takes away. Decisions 5, 10, 11.
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { evaluate } from '../../src/evaluate.ts';
import * as build from '../support/resources.ts';

type Given = Parameters<typeof build.bundleOf>[0];
const asOf = '2025-03-10T15:00:00Z';
const thirtyWeeks = build.gestationalAge('2025-03-10T08:00:00Z', 210);
const at = (clock: string): string => `2025-03-10T${clock}:00Z`;

function finding(question: string, given: Given, moment = asOf): Finding | undefined {
  const { assessment } = evaluate(build.bundleOf(given), { asOf: moment });
  return assessment.findings.find((one) => one.question === question);
}
const outcome = (question: string, given: Given, moment?: string) =>
  finding(question, given, moment)?.outcome;
const undated = (systolic: number, diastolic: number) => {
  const { effectiveDateTime: _none, ...rest } = build.pressure(asOf, systolic, diastolic);
  return rest;
};

describe('readings of one contact', () => {
  const cited = (...given: Given) =>
    finding('raised-now', [thirtyWeeks, ...given])?.evidence.map(({ asCompared }) => asCompared);

  it('are those less than 30 minutes after the first, and give one value', () => {
    expect(cited(build.pressure(at('09:00'), 150, 96), build.pressure(at('09:29'), 146, 92))).toEqual([
      'visit value 148/94 mm[Hg]',
      'visit value 148/94 mm[Hg]',
    ]);
    expect(cited(build.pressure(at('09:00'), 150, 96), build.pressure(at('09:30'), 146, 92))).toEqual([
      '146/92 mm[Hg]',
    ]);
  });

  it('with a date alone belong to the same date, and to no clock time', () => {
    expect(cited(build.pressure('2025-03-10', 150, 96), build.pressure('2025-03-10', 146, 92))).toHaveLength(
      2,
    );
    expect(cited(build.pressure('2025-03-09', 150, 96), build.pressure('2025-03-10', 146, 92))).toHaveLength(
      1,
    );
    expect(
      outcome('confirmed-from-20-weeks', [
        thirtyWeeks,
        build.pressure('2025-03-10', 150, 96),
        build.pressure(at('14:00'), 146, 92),
      ]),
    ).toBe('cannot-tell');
  });

  it('two dates confirm when no time of day could bring them closer than the interval', () => {
    const pair = (first: string, second: string) =>
      outcome('confirmed-from-20-weeks', [
        thirtyWeeks,
        build.pressure(first, 150, 96),
        build.pressure(second, 146, 92),
      ]);
    expect(pair('2025-03-08', '2025-03-10')).toBe('met');
    expect(pair('2025-03-09', '2025-03-10')).toBe('cannot-tell');
  });

  it('do not reach across 20+0 weeks', () => {
    const given: Given = [
      build.gestationalAge('2025-03-10T00:00:00Z', 140),
      build.pressure('2025-03-09T23:50:00Z', 150, 96),
      build.pressure('2025-03-10T00:10:00Z', 146, 92),
    ];
    expect(finding('raised-now', given)?.evidence).toHaveLength(1);
  });
});

describe('the day it is', () => {
  // In India it is half past midnight: 20+0 weeks there, still 19+6 in Greenwich.
  const dated = build.gestationalAge('2025-03-10T09:00:00+05:30', 139);
  const late = '2025-03-10T19:00:00Z';

  it('is counted in the zone of the newest reading', () => {
    expect(
      outcome('now-from-20-weeks', [dated, build.pressure('2025-03-11T00:20:00+05:30', 118, 74)], late),
    ).toBe('met');
    expect(
      outcome('now-before-20-weeks', [dated, build.pressure('2025-03-10T18:50:00Z', 118, 74)], late),
    ).toBe('met');
  });

  it('is counted west of Greenwich as well', () => {
    const west = build.gestationalAge('2025-03-10T09:00:00-06:00', 139);
    expect(
      outcome(
        'now-before-20-weeks',
        [west, build.pressure('2025-03-10T21:50:00-06:00', 118, 74)],
        '2025-03-11T04:00:00Z',
      ),
    ).toBe('met');
  });

  it('gives the due date 280 days after the start', () => {
    const { gestationalAge } = evaluate(build.bundleOf([thirtyWeeks]), { asOf });
    expect([gestationalAge.text, gestationalAge.dueDate]).toEqual(['30+0', '2025-05-19']);
  });
});

describe('an unusable pressure beside a good one', () => {
  const good = build.pressure(at('09:00'), 118, 74);
  const normalNow = (...given: Given) => outcome('normal-now', [thirtyWeeks, ...given]);

  it('without a time takes the normal answer away when it is raised, not when it is below', () => {
    expect(normalNow(good)).toBe('met');
    expect(normalNow(good, undated(150, 96))).toBe('cannot-tell');
    expect(normalNow(good, undated(120, 76))).toBe('met');
  });

  it('without a time and with one half only takes it away', () => {
    const { component = [], ...rest } = undated(120, 76);
    expect(normalNow(good, { ...rest, component: component.slice(0, 1) })).toBe('cannot-tell');
    expect(normalNow(good, { ...rest, component: component.slice(1) })).toBe('cannot-tell');
  });

  it('with a time takes it away until a good reading follows', () => {
    const swapped = (clock: string) => build.pressure(at(clock), 74, 118);
    expect(normalNow(good, swapped('09:10'))).toBe('cannot-tell');
    expect(normalNow(good, swapped('08:50'))).toBe('met');
    expect(normalNow(good, swapped('09:05'), build.pressure(at('09:10'), 120, 76))).toBe('met');
    expect(normalNow(good, swapped('09:10'), build.pressure(at('09:10'), 120, 76))).toBe('cannot-tell');
  });

  it('is an emergency when a half is severe, same-day otherwise, and nothing once answered', () => {
    const level = (...given: Given) =>
      ['unusable-emergency', 'unusable-same-day'].map((id) => outcome(id, [thirtyWeeks, ...given]));
    expect(level(build.pressure(at('09:00'), 112, 172))).toEqual(['met', 'not-met']);
    expect(level(build.pressure(at('09:00'), 80, 120))).toEqual(['not-met', 'met']);
    expect(level(build.pressure(at('09:00'), 300, 90))).toEqual(['met', 'not-met']);
    expect(level(build.pressure(at('09:00'), 112, 172), good)).toEqual(['met', 'not-met']);
    expect(level(build.pressure(at('08:50'), 112, 172), good)).toEqual(['not-met', 'not-met']);
  });
});

describe('loss of control', () => {
  const severe = [build.pressure(at('09:00'), 172, 114), build.pressure(at('09:20'), 170, 112)];
  const before = (day: string, systolic: number, setting?: 'home') =>
    build.pressure(`2025-03-${day}T09:00:00Z`, systolic, 86, setting === undefined ? {} : { setting });
  const lost = (...given: Given) => finding('control-lost', [thirtyWeeks, ...given, ...severe]);

  it('is told from the newest of several lower readings', () => {
    expect(lost(before('04', 132), before('06', 136), before('08', 138))?.because).toMatch(
      /^138\/86 .* rose to 172\/114/,
    );
  });

  it('is told from readings of the clinic, not of the home', () => {
    expect(lost(before('08', 138))?.outcome).toBe('met');
    expect(lost(before('08', 138, 'home'))?.outcome).toBe('cannot-tell');
  });

  it('is not told where the reading before was severe too', () => {
    expect(lost(build.pressure('2025-03-08T09:00:00Z', 166, 104))?.outcome).toBe('cannot-tell');
    expect(lost()?.outcome).toBe('cannot-tell');
  });
});

describe('confirmed severe pressure', () => {
  const pair = [
    build.pressure('2025-03-08T09:00:00Z', 172, 114),
    build.pressure('2025-03-08T09:20:00Z', 170, 112),
  ];

  it('has settled only below both limits, both halves measured', () => {
    const current = (...given: Given) => outcome('severe-current', [thirtyWeeks, ...pair, ...given]);
    expect(current()).toBe('met');
    expect(current(build.pressure(at('09:00'), 128, 78))).toBe('not-met');
    expect(current(build.systolicOnly(at('09:00'), 128))).toBe('met');
  });

  it('belongs to the part of the pregnancy in which it was measured', () => {
    const early = build.gestationalAge('2025-03-10T08:00:00Z', 120);
    expect(outcome('severe-confirmed', [early, ...pair])).toBe('not-met');
    expect(outcome('severe-confirmed-any-time', [early, ...pair])).toBe('met');
  });
});

// Doubts from comparing readings, and cuffs against arms, with limits of their own. Clinical rules, section 3.
import { describe, expect, it } from 'vitest';
import type { QualityCheck } from '../../../src/guidelines/quality-rule.ts';
import { cuffFit } from '../../../src/rules/quality/cuff-size.ts';
import type { Timeline } from '../../../src/timeline/timeline.ts';
import { limit } from '../checks/ask.ts';
import { reading } from '../facts.ts';
import { said as saidOf } from './one-rule.ts';

const week = limit('<=', 7, 'd');
const said = (check: QualityCheck, ...pressures: Timeline['pressures']) => saidOf(check, { pressures }, week);
const left = (at: string, systolic?: number, diastolic?: number) =>
  reading(at, systolic, diastolic, { arm: 'left' });
const right = (at: string, systolic?: number, diastolic?: number) =>
  reading(at, systolic, diastolic, { arm: 'right' });

describe('two readings of one visit', () => {
  const check = { check: 'visit-difference', difference: limit('>', 10, 'mm[Hg]') } as const;
  const of = (...pressures: Timeline['pressures']) => said(check, ...pressures);

  it('differ in the larger of the two gaps, whichever is the higher', () => {
    expect(of(reading('09:00', 120, 70), reading('09:02', 130, 80))).toBe('nothing');
    expect(of(reading('09:00', 120, 70), reading('09:02', 131, 70))).toBe('Doubtful. | 120/70 | 131/70');
    expect(of(reading('09:00', 131, 70), reading('09:02', 120, 70))).toBe('Doubtful. | 131/70 | 120/70');
    expect(of(reading('09:00', 120, 70), reading('09:02', 120, 81))).toBe('Doubtful. | 120/70 | 120/81');
  });

  it('are two readings of one arm, no third, and halves that both have', () => {
    expect(of(left('09:00', 120, 70), right('09:01', 140, 70))).toBe('nothing');
    expect(of(right('09:00', 120, 70), left('09:01', 120, 70), left('09:02', 140, 70))).toBe(
      'Doubtful. | 120/70 | 140/70',
    );
    expect(of(reading('09:00', 120, 70), reading('09:01', 140, 70), reading('09:02', 130, 70))).toBe(
      'nothing',
    );
    expect(of(reading('09:00', 120, undefined), reading('09:01', undefined, 70))).toBe('nothing');
    expect(of(reading('09:00', 120, 70), reading('09:02', 140, undefined))).toBe(
      'Doubtful. | 120/70 | 140/-',
    );
    expect(of(reading('09:00', 120, undefined), reading('09:02', 140, 70))).toBe(
      'Doubtful. | 120/- | 140/70',
    );
    expect(of()).toBe('nothing');
  });
});

describe('arms', () => {
  const changed = { check: 'arm-changed' } as const;
  const differ = { check: 'arms-differ', over: limit('>', 10, 'mm[Hg]') } as const;
  const upTo = { ...differ, upTo: limit('<=', 20, 'mm[Hg]') } as const;

  it('of the two newest visits have none in common', () => {
    expect(said(changed, left('06:00', 120, 70), right('09:00', 122, 70))).toBe(
      'Doubtful. | 120/70 | 122/70',
    );
    expect(said(changed, right('03:00', 118, 70), left('06:00', 120, 70), left('09:00', 122, 70))).toBe(
      'nothing',
    );
    expect(said(changed, left('06:00', 120, 70), right('06:02', 121, 70), right('09:00', 122, 70))).toBe(
      'nothing',
    );
    expect(said(changed, reading('06:00', 120, 70), right('09:00', 122, 70))).toBe('nothing');
    expect(said(changed, left('06:00', 120, 70), reading('09:00', 122, 70))).toBe('nothing');
    expect(said(changed, right('09:00', 122, 70))).toBe('nothing');
    expect(said(changed, left('2025-03-01T09:00:00Z', 120, 70), right('09:00', 122, 70))).toBe('nothing');
  });

  it.each([
    [130, 'nothing', 'nothing'],
    [131, 'Doubtful. Left 120/70, right 131/70 mm[Hg].', 'Doubtful. Left 120/70, right 131/70 mm[Hg].'],
    [140, 'Doubtful. Left 120/70, right 140/70 mm[Hg].', 'Doubtful. Left 120/70, right 140/70 mm[Hg].'],
    [141, 'Doubtful. Left 120/70, right 141/70 mm[Hg].', 'nothing'],
  ])('of one visit, 120 and %i', (systolic, open, bounded) => {
    const pair = [left('09:00', 120, 70), right('09:01', systolic, 70)];
    expect(said(differ, ...pair).split(' | ')[0]).toBe(open);
    expect(said(upTo, ...pair).split(' | ')[0]).toBe(bounded);
  });

  it('are averaged as a visit is: three far apart without the first', () => {
    const three = [right('09:00', 160, 70), right('09:01', 138, 70), right('09:02', 136, 70)];
    expect(said(differ, left('09:03', 120, 70), ...three)).toContain('Left 120/70, right 137/70');
  });

  it('the newest visit with both decides, alone', () => {
    const before = [left('06:00', 120, 70), right('06:01', 140, 70)];
    expect(said(differ, ...before, left('09:00', 120, 70))).toBe(
      'Doubtful. Left 120/70, right 140/70 mm[Hg]. | 120/70 | 140/70',
    );
    expect(said(differ, ...before, left('09:00', 120, 70), right('09:01', 120, 70))).toBe('nothing');
    expect(said(differ, left('09:00', 120, undefined), right('09:01', undefined, 70))).toBe('nothing');
    expect(said(differ, left('09:00', 120, 70))).toBe('nothing');
  });
});

describe('the same value', () => {
  const check = { check: 'same-value', visits: limit('>=', 3, '1') } as const;
  const on = (day: string, diastolic?: number) => reading(`2025-${day}T09:00:00Z`, 124, diastolic ?? 78);

  it('on so many days, the newest of them recent, is told with its days', () => {
    const three = [on('01-10'), on('02-10'), on('03-10')];
    expect(said(check, ...three)).toBe('Doubtful. 124/78 mm[Hg] on 3 days. | 124/78 | 124/78 | 124/78');
    expect(said(check, on('01-10'), on('02-01', 80), on('02-10'), on('03-10'))).toContain(
      'on 3 days. | 124/78 | 124/78 | 124/78',
    );
    const otherSystolic = reading('2025-02-01T09:00:00Z', 130, 78);
    expect(said(check, otherSystolic, ...three)).toBe(said(check, ...three));
    expect(said(check, ...three.slice(1))).toBe('nothing');
    expect(said(check, on('01-10'), on('02-10'), on('03-01'))).toBe('nothing');
    expect(said(check, on('01-10'), on('02-10'), on('03-02'), on('03-10', 80))).toBe('nothing');
    expect(said(check, on('01-10'), on('02-10'), on('03-04'), on('03-10', 80))).toContain('on 3 days');
  });
});

describe('a cuff', () => {
  const sizes = [
    { name: 'small', words: ['small', 'small adult'], to: limit('<', 27, 'cm') },
    { name: 'adult', words: ['adult', 'standard'], from: limit('>=', 27, 'cm'), to: limit('<=', 34, 'cm') },
    { name: 'large', words: ['large adult'], from: limit('>=', 36, 'cm') },
  ];

  it.each([
    [26.4, 'Small', { fits: true }],
    [26.5, 'Small', { fits: false, fault: 'too-small', right: 'adult' }],
    [26.4, 'adult', { fits: false, fault: 'too-large', right: 'small' }],
    [34.4, 'Standard size cuff', { fits: true }],
    [34.5, 'Adult', { fits: false, fault: 'too-small' }],
    [35.5, 'Adult', { fits: false, fault: 'too-small', right: 'large' }],
    [30, 'Large adult cuff (blue, 32-42 cm)', { fits: false, fault: 'too-large', right: 'adult' }],
    [50, '  BP cuff, large-adult ', { fits: true }],
    [50, 'Large, adult', { fits: true }],
    [30, 'blue', undefined],
  ])('an arm of %d cm and "%s"', (arm, cuff, fit) => {
    expect(cuffFit(arm, cuff, sizes)).toStrictEqual(fit);
  });

  const check = {
    check: 'cuff-size',
    sizes,
    alternative: [{ name: 'adult', words: ['adult'], to: limit('<=', 38, 'cm') }],
  } as const;
  const worn = (at: string, armCircumferenceCm: number, cuff: string) =>
    reading(at, 120, 76, { technique: { armCircumferenceCm, cuff } });

  it('that does not fit is told with the size for her, and the older table that accepts it', () => {
    expect(said(check, worn('09:00', 37, 'Adult'))).toBe(
      'Doubtful. Arm 37 cm, cuff "Adult": too small, which reads high. Use the size "large". An older table accepts this cuff. | 120/76',
    );
    expect(said(check, worn('09:00', 35, 'Small'))).toBe(
      'Doubtful. Arm 35 cm, cuff "Small": too small, which reads high. | 120/76',
    );
    expect(
      said(
        check,
        worn('09:00', 30, 'Adult'),
        reading('10:00', 120, 76, { technique: { cuff: 'Adult' } }),
        reading('10:00', 120, 76, { technique: { armCircumferenceCm: 50 } }),
      ),
    ).toBe('nothing');
  });

  it('at several readings is said once', () => {
    const twice = said(
      check,
      worn('08:00', 35, 'Small'),
      worn('09:00', 35, 'Small'),
      worn('10:00', 30, 'Adult'),
    );
    expect(twice.split('Arm 35').length).toBe(2);
    expect(twice.split(' | ')).toHaveLength(3);
  });
});

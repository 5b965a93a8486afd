// HELLP by either set of criteria, with limits of its own: what fits, what is open, what stays. Clinical rules 1.3.
import { describe, expect, it } from 'vitest';
import type { Analyte, HellpDefinition } from '../../../src/guidelines/guideline.ts';
import type { LaboratoryResult, Timeline } from '../../../src/timeline/timeline.ts';
import { lab } from '../facts.ts';
import { ask, limit } from './ask.ts';

const platelets = (value: number) => limit('<=', value, '10*9/L');
const enzyme = (value: number) => limit('>=', value, 'U/L');
const definition: HellpDefinition = {
  tennessee: {
    ldh: enzyme(600),
    bilirubin: limit('>=', 20, 'umol/L'),
    ast: enzyme(70),
    platelets: platelets(100),
  },
  mississippi: [
    { name: 'class 1', platelets: platelets(50), transaminase: enzyme(70), ldh: enzyme(600) },
    { name: 'class 2', platelets: platelets(120), transaminase: enzyme(70), ldh: enzyme(600) },
  ],
};
const units: Partial<Record<Analyte, string>> = { platelets: '10*9/L', bilirubin: 'umol/L' };
const result = (analyte: Analyte, value: number, when = '09:00'): LaboratoryResult =>
  lab(when, analyte, value, units[analyte] ?? 'U/L');
const asked = (...laboratory: Timeline['laboratory']) =>
  ask({ check: 'hellp', definition, within: limit('<=', 2, 'd') }, { laboratory });
const said = (...laboratory: Timeline['laboratory']) => {
  const { outcome, because } = asked(...laboratory);
  return `${outcome}: ${because}`;
};

const low = result('platelets', 90);
const [ast, alt, ldh, bilirubin] = [
  result('ast', 80),
  result('alt', 80),
  result('ldh', 700),
  result('bilirubin', 25),
];

describe('what fits', () => {
  it.each([
    ['both sets', [low, ast, ldh], 'met: Mississippi class 2 and Tennessee triad.'],
    [
      'the worst class alone',
      [result('platelets', 40), ast, ldh],
      'met: Mississippi class 1 and Tennessee triad.',
    ],
    [
      'a class, with platelets above the triad',
      [result('platelets', 110), ast, ldh],
      'met: Mississippi class 2.',
    ],
    ['a class, by ALT alone', [low, alt, result('ast', 20), ldh], 'met: Mississippi class 2.'],
    ['the triad, by bilirubin', [low, ast, result('ldh', 500), bilirubin], 'met: Tennessee triad.'],
    ['the triad, LDH not measured', [low, ast, bilirubin], 'met: Tennessee triad.'],
  ] as const)('%s', (_, given, expected) => {
    expect(said(...given)).toBe(expected);
  });

  it('cites every result, and the limits of the sets that fit', () => {
    const { evidence = [], thresholds = [] } = asked(low, ast, result('ldh', 500), bilirubin);
    expect(evidence.map(({ asSent }) => asSent)).toEqual(['90 10*9/L', '80 U/L', '500 U/L', '25 umol/L']);
    expect(thresholds.map(({ id }) => id)).toEqual([
      '<= 100 10*9/L',
      '>= 70 U/L',
      '>= 600 U/L',
      '>= 20 umol/L',
    ]);
  });

  it('in a haemolysed sample asks for a repeat and is met all the same', () => {
    expect(said(low, ast, { ...ldh, haemolysed: true })).toContain(
      'The sample was haemolysed: repeat it now',
    );
    expect(said(low, ast, ldh)).not.toContain('haemolysed');
  });
});

describe('what does not fit, or is open', () => {
  it.each([
    ['nothing was measured', [], 'not-applicable: No laboratory values were received.'],
    ['platelets were not', [ast, ldh], 'cannot-tell: Platelets were not measured.'],
    ['platelets are normal', [result('platelets', 200)], 'not-met: The laboratory values do not fit.'],
    [
      'the enzymes are normal',
      [low, result('ast', 20), result('alt', 20), ldh],
      'not-met: The laboratory values do not fit.',
    ],
    [
      'neither LDH nor bilirubin is raised',
      [low, ast, result('ldh', 500), result('bilirubin', 5)],
      'not-met: The laboratory values do not fit.',
    ],
    [
      'the enzymes were not measured',
      [low, ldh],
      'cannot-tell: What was measured fits Mississippi class 2; not measured: AST, ALT.',
    ],
    [
      'bilirubin was not',
      [low, ast, result('ldh', 500)],
      'cannot-tell: What was measured fits Tennessee triad; not measured: bilirubin.',
    ],
    [
      'LDH was not',
      [low, ast],
      'cannot-tell: What was measured fits Mississippi class 2; not measured: LDH.',
    ],
    [
      'an enzyme is in another unit',
      [low, ldh, lab('09:00', 'ast', 2, 'ukat/L')],
      'cannot-tell: What was measured fits Mississippi class 2; not measured: AST, ALT.',
    ],
    [
      'one enzyme is normal and the other in another unit',
      [low, ldh, result('alt', 20), lab('09:00', 'ast', 2, 'ukat/L')],
      'cannot-tell: What was measured fits Mississippi class 2; not measured: AST, ALT.',
    ],
  ] as const)('%s', (_, given, expected) => {
    expect(said(...given)).toBe(expected);
  });

  it('says what is missing, and cites what is there', () => {
    expect(asked(low, ast).missing?.what).toBe('LDH');
    expect(asked(low, ast).evidence).toHaveLength(2);
    expect(asked(ast, ldh).missing?.what).toBe('platelets, liver enzymes, LDH');
    expect(asked(ast, ldh).evidence).toHaveLength(2);
    expect(asked(result('platelets', 200)).evidence).toHaveLength(1);
  });
});

describe('the times of the results', () => {
  it('belong together up to the span before the newest', () => {
    expect(said(low, ast, result('ldh', 700, '2025-03-08T09:00:00Z'))).toMatch(/^met/);
    expect(said(low, ast, result('ldh', 700, '2025-03-08T08:59:00Z'))).toMatch(/^cannot-tell/);
  });

  it('the newest of each counts', () => {
    const before = (analyte: Analyte, value: number) => result(analyte, value, '08:00');
    expect(said(before('platelets', 200), low, before('ast', 20), ast, before('ldh', 100), ldh)).toMatch(
      /^met/,
    );
  });

  const fitted = (when: string) => [
    result('platelets', 90, when),
    result('ast', 80, when),
    result('ldh', 700, when),
  ];
  const [p, a] = [(value: number) => result('platelets', value), (value: number) => result('ast', value)];
  const normal = result('ldh', 300);

  it('once fitted it stays while platelets or an enzyme fit the triad, and that is said', () => {
    const today = (...now: Timeline['laboratory']) => said(...fitted('2025-03-09T09:00:00Z'), ...now, normal);
    const stays = 'met: Mississippi class 2 and Tennessee triad. The newest values are not back to normal.';
    expect(today(p(95), a(20))).toBe(stays);
    expect(today(p(200), a(80))).toBe(stays);
    expect(today(p(200), a(20), result('alt', 80))).toBe(stays);
    expect(today(p(200), a(20))).toBe('not-met: The laboratory values do not fit.');
  });

  it.each([
    ['2025-03-08T12:00:00Z', 'met'],
    ['2025-03-08T11:59:00Z', 'not-met'],
  ])('once fitted at %s it is %s today', (when, outcome) => {
    expect(asked(...fitted(when), p(95), a(20), normal).outcome).toBe(outcome);
  });

  it('the newest moment at which it fitted is told', () => {
    const twice = [...fitted('2025-03-09T08:00:00Z'), result('platelets', 40, '2025-03-09T20:00:00Z')];
    expect(said(...twice, p(95), a(20), normal)).toMatch(/^met: Mississippi class 1/);
  });
});

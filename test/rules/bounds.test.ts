// A result that is only a bound ("<100") decides where every value it allows gives one answer. Limits: clinical rules 1.3.
import { describe, expect, it } from 'vitest';
import type { Analyte, Comparator } from '../../src/guidelines/guideline.ts';
import { assess } from '../support/assess.ts';

const asOf = '2025-03-10T15:00:00Z';
const at = '2025-03-10T09:00:00Z';
type Bound = readonly [analyte: Analyte, comparator: Comparator | undefined, value: number];
const units: Partial<Record<Analyte, string>> = {
  platelets: '10*9/L',
  creatinine: 'umol/L',
  ldh: 'U/L',
  alt: 'U/L',
  ast: 'U/L',
  'oxygen-saturation': '%',
};

function outcomeOf(question: string, guideline: string, bounds: readonly Bound[]): string | undefined {
  const labs = bounds.map(([analyte, comparator, value]) => ({
    at,
    analyte,
    value,
    unit: units[analyte] ?? '1',
    ...(comparator === undefined ? {} : { comparator }),
  }));
  const { findings } = assess({ asOf, gestation: '30+0', labs }, guideline);
  return findings.find((finding) => finding.question === question)?.outcome;
}

const normal: readonly Bound[] = [
  ['platelets', undefined, 250],
  ['creatinine', undefined, 60],
  ['alt', undefined, 20],
  ['ast', undefined, 20],
];
const beside = (bound: Bound): readonly Bound[] => [...normal.filter(([name]) => name !== bound[0]), bound];

describe('a bound as a sign of an organ', () => {
  it.each([
    ['isshp-2021', ['platelets', '<', 150], 'met'],
    ['isshp-2021', ['platelets', '<', 140], 'met'],
    ['isshp-2021', ['platelets', '<', 151], 'cannot-tell'],
    ['isshp-2021', ['platelets', '<=', 150], 'cannot-tell'],
    ['isshp-2021', ['platelets', '>', 150], 'not-met'],
    ['isshp-2021', ['platelets', '>', 140], 'cannot-tell'],
    ['isshp-2021', ['creatinine', '>=', 90], 'met'],
    ['isshp-2021', ['creatinine', '>', 80], 'cannot-tell'],
    ['isshp-2021', ['creatinine', '<', 90], 'not-met'],
    ['isshp-2021', ['alt', '>', 40], 'met'],
    ['isshp-2021', ['alt', '>=', 40], 'cannot-tell'],
    ['isshp-2021', ['alt', '<=', 40], 'not-met'],
    ['acog-2020', ['alt', '>=', 80], 'met'],
    ['acog-2020', ['alt', '>', 79], 'cannot-tell'],
    ['acog-2020', ['alt', '<', 80], 'not-met'],
  ] as const)('%s: %j is %s', (guideline, bound, outcome) => {
    const others = bound[0] === 'alt' ? beside(bound).filter(([name]) => name !== 'ast') : beside(bound);
    expect(outcomeOf('organ-from-20-weeks', guideline, others)).toBe(outcome);
  });

  it('names the test that is still open', () => {
    const labs = [
      { at, analyte: 'platelets' as const, value: 200, unit: '10*9/L', comparator: '<' as const },
      { at, analyte: 'creatinine' as const, value: 60, unit: 'umol/L' },
      { at, analyte: 'alt' as const, value: 20, unit: 'U/L' },
    ];
    const { findings } = assess({ asOf, gestation: '30+0', labs }, 'isshp-2021');
    const found = findings.find(({ question }) => question === 'organ-from-20-weeks');
    expect(found?.because).toBe('Not measured: platelets.');
    expect(found?.evidence.map(({ asSent }) => asSent)).toContain('200 10*9/L');
  });
});

describe('a bound in HELLP', () => {
  it.each([
    [
      [
        ['platelets', '<', 100],
        ['ast', '>', 70],
        ['ldh', '>', 600],
      ],
      'met',
    ],
    [
      [
        ['platelets', '<=', 150],
        ['ast', '>=', 40],
        ['ldh', '>=', 600],
      ],
      'met',
    ],
    [
      [
        ['platelets', undefined, 90],
        ['ast', undefined, 90],
        ['ldh', '>', 500],
      ],
      'cannot-tell',
    ],
    [
      [
        ['platelets', undefined, 90],
        ['ast', '>', 60],
        ['ldh', '<', 600],
      ],
      'cannot-tell',
    ],
    [
      [
        ['platelets', '>', 150],
        ['ast', undefined, 90],
        ['ldh', undefined, 700],
      ],
      'not-met',
    ],
    [
      [
        ['platelets', undefined, 90],
        ['ast', '<', 40],
        ['ldh', undefined, 700],
      ],
      'not-met',
    ],
  ] as const)('%j is %s', (bounds, outcome) => {
    expect(outcomeOf('hellp-criteria', 'frontline', bounds)).toBe(outcome);
  });

  it('waits for bilirubin where LDH speaks against the triad, for nothing else where platelets are normal', () => {
    const openTriad = [
      ['platelets', undefined, 90],
      ['ast', undefined, 90],
      ['ldh', undefined, 500],
    ] as const;
    expect(outcomeOf('hellp-criteria', 'frontline', openTriad)).toBe('cannot-tell');
    expect(outcomeOf('hellp-criteria', 'frontline', [['platelets', undefined, 250]])).toBe('not-met');
  });
});

describe('a bound of the saturation', () => {
  it.each([
    ['<', 90, 'met'],
    ['<', 92, 'cannot-tell'],
    ['>=', 90, 'not-met'],
    ['>', 88, 'cannot-tell'],
  ] as const)('%s %i against below 90 is %s', (comparator, value, outcome) => {
    expect(outcomeOf('oxygen-below-90', 'frontline', [['oxygen-saturation', comparator, value]])).toBe(
      outcome,
    );
  });
});

import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/findings/finding.ts';
import { combine, questionsOf } from '../../src/rules/combine.ts';

const ids: Readonly<Record<string, Outcome>> = {
  met: 'met',
  not: 'not-met',
  open: 'cannot-tell',
  other: 'not-applicable',
};
const outcome = (id: string): Outcome | undefined => ids[id];

describe('the table of all / any / none over four outcomes', () => {
  it.each([
    [['met', 'met'], 'met', 'met', 'not-met'],
    [['met', 'not'], 'not-met', 'met', 'not-met'],
    [['met', 'open'], 'cannot-tell', 'met', 'not-met'],
    [['met', 'other'], 'not-applicable', 'met', 'not-met'],
    [['not', 'open'], 'not-met', 'cannot-tell', 'cannot-tell'],
    [['not', 'not'], 'not-met', 'not-met', 'met'],
    [['open', 'other'], 'not-applicable', 'cannot-tell', 'cannot-tell'],
    [['other'], 'not-applicable', 'not-applicable', 'met'],
    [['not', 'other'], 'not-met', 'not-met', 'met'],
  ] as const)('%j: all is %s, any is %s, none is %s', (needs, all, any, none) => {
    expect(combine({ all: needs }, outcome)).toBe(all);
    expect(combine({ any: needs }, outcome)).toBe(any);
    expect(combine({ none: needs }, outcome)).toBe(none);
  });

  it('nests', () => {
    expect(combine({ all: ['met', { any: ['not', { none: ['not'] }] }] }, outcome)).toBe('met');
  });

  it('names a question nobody asked: a defect of the data', () => {
    expect(() => combine('nobody-asked', outcome)).toThrow('nobody-asked');
  });

  it('lists each question once', () => {
    expect(questionsOf({ all: ['met', { any: ['not', 'met'] }, { none: ['open'] }] })).toEqual([
      'met',
      'not',
      'open',
    ]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysInText, formatGestation } from '../../src/timeline/gestation-text.ts';

describe('gestational age in words', () => {
  it.each([
    ['31w4d', 221],
    ['31 W 4 D', 221],
    ['31+4', 221],
    ['31 + 4 weeks', 221],
    ['31 weeks and 4 days', 221],
    ['31 wk', 217],
    ['31', undefined],
    ['31+7', undefined],
    ['31.4', undefined],
    ['', undefined],
  ])('%j is %s days', (text, days) => {
    expect(daysInText(text)).toBe(days);
  });

  it('is read back as it is written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 320 }), (days) => {
        expect(daysInText(formatGestation(days))).toBe(days);
      }),
    );
  });
});

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
    [' 31+4 ', 221],
    ['31+4wk', 221],
    ['31+4 wks', 221],
    ['31+ 0', 217],
    ['9+6', 69],
    ['31w', 217],
    ['31 wks', 217],
    ['31 weeks.', 217],
    ['31 weeks, 4 days', 221],
    ['31 weeks & 4 d.', 221],
    ['31w 4', 221],
    ['31 weeks and 4 day', 221],
    ['1 week', 7],
    ['G 31+4', undefined],
    ['31+4 days', undefined],
    ['31+4 weeks or so', undefined],
    ['131+4', undefined],
    ['about 31 weeks', undefined],
    ['131 weeks', undefined],
    ['31 weeks 7 days', undefined],
    ['31 weeks 4 hours', undefined],
    ['31+', undefined],
    ['31 d', undefined],
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

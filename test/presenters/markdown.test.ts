// Text of a record made safe for a card.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeMarkdown, fitSummary } from '../../src/presenters/markdown.ts';

const anyText = fc.string({ unit: 'grapheme', maxLength: 300 });

describe('card text', () => {
  it('K-02: a summary stays under 140 characters, in code points and in UTF-16 units, on one line', () => {
    fc.assert(
      fc.property(fc.array(anyText, { minLength: 1 }), (sentences) => {
        const summary = fitSummary(sentences);
        expect(summary.length).toBeLessThan(140);
        expect(Array.from(summary).length).toBeLessThan(140);
        expect(summary).not.toMatch(/[\r\n\u2028\u2029]/);
        expect(() => encodeURIComponent(summary)).not.toThrow();
      }),
    );
  });

  it('K-02: a summary keeps the first sentence and drops the later ones that do not fit', () => {
    expect(fitSummary(['First.', 'x'.repeat(200), 'Last.'])).toBe('First. Last.');
    expect(fitSummary(['y'.repeat(200)])).toBe(`${'y'.repeat(138)}…`);
  });

  it('K-03: escaped text opens no HTML tag, no link, no image and no emphasis', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const escaped = escapeMarkdown(text);
        expect(escaped).not.toMatch(/[<>]/);
        expect(escaped.replace(/\\./g, '').replace(/&#?\w+;/g, '')).not.toMatch(/[*_`[\]~|\\]/);
        expect(escaped).not.toMatch(/:\/\/|^[-+#]/);
      }),
    );
  });

  it('K-03: a script in a name is shown, not run', () => {
    expect(escapeMarkdown('<script>x</script> *bold*')).toBe('&lt;script&gt;x&lt;/script&gt; \\*bold\\*');
  });
});

// Looking into received JSON without believing its shape.
import { describe, expect, it } from 'vitest';
import { codingsOf, fieldsOf, listOf, textOf, wordingOf } from '../../src/timeline/fields.ts';

describe('received JSON of any shape', () => {
  it('an object alone is a list of one; what is no object is left out', () => {
    expect(listOf({ a: 1 })).toEqual([{ a: 1 }]);
    expect(listOf([{ a: 1 }, 'x', null, [1]])).toEqual([{ a: 1 }]);
    expect(listOf('x')).toEqual([]);
    expect(fieldsOf([1])).toEqual({});
    expect(fieldsOf(null)).toEqual({});
  });

  it('a blank text is none, a text that begins with a blank is one', () => {
    expect([' ', '\t', '\u00a0', ''].map(textOf)).toEqual([undefined, undefined, undefined, undefined]);
    expect([' a', 'é', '~', '!'].map(textOf)).toEqual([' a', 'é', '~', '!']);
    expect(textOf(3)).toBeUndefined();
  });

  it('a coding keeps only its texts', () => {
    expect(
      codingsOf({
        coding: [
          { system: 3, code: 'a', display: ' ' },
          { system: 's', code: 4, display: 'd' },
        ],
      }),
    ).toEqual([{ code: 'a' }, { system: 's', display: 'd' }]);
    expect(codingsOf({ coding: [{ code: ' ' }] })).toEqual([{}]);
  });

  it('wording is the text, else the first display', () => {
    expect(wordingOf({ text: 'a', coding: [{ display: 'b' }] })).toBe('a');
    expect(wordingOf({ coding: [{ code: 'x' }, { display: 'b' }, { display: 'c' }] })).toBe('b');
    expect(wordingOf({ coding: [{ code: 'x' }] })).toBeUndefined();
  });
});

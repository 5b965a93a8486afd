// What `pregnancy-htn rules ID` and `GET /rules?id=ID` show for each kind of name that an answer gives.
import { describe, expect, it } from 'vitest';
import { readRulePage } from '../../src/http/rules-page.ts';
import { guidelineOf } from '../../src/guidelines/registry.ts';
import { pageNamed, ruleSectionIds } from '../../src/presenters/rule-lookup.ts';

const shown = (id?: string): string => pageNamed(readRulePage, id) ?? '';

describe('a name', () => {
  it('none is the whole page, and the two others have names', () => {
    expect(shown()).toBe(readRulePage('rules'));
    expect(shown('numbers')).toBe(readRulePage('numbers'));
    expect(shown('cases')).toBe(readRulePage('cases'));
  });

  it('of a class is its section, with or without the word that answers put before it', () => {
    expect(shown('pre-eclampsia').split('\n')[0]).toBe('### pre-eclampsia');
    expect(shown('class:pre-eclampsia')).toBe(shown('pre-eclampsia'));
    expect(shown('pre-eclampsia').match(/^### /gm)).toHaveLength(1);
  });

  it('of an urgency is its section', () => {
    expect(shown('urgency:seizure').split('\n')[0]).toBe('### urgency: seizure');
  });

  it('of a step is its row under its heading, and no other', () => {
    const lines = shown('six-week-review-due').trimEnd().split('\n');
    expect(lines[0]).toBe('### Steps: after birth');
    expect(lines.filter((line) => line.startsWith('| `'))).toHaveLength(1);
    expect(lines.at(-1)).toContain('is due');
  });

  it('of a limit is its line of the numbers', () => {
    expect(shown('frontline-raised-systolic')).toContain('at least 140 mmHg');
  });

  it('every step and class of the first level can be looked up by the name an answer gives', () => {
    const { actionRules, classRules } = guidelineOf('frontline') ?? { actionRules: [], classRules: [] };
    const names = [...actionRules.map(({ id }) => id), ...classRules.map(({ id }) => `class:${id}`)];
    expect(names.length).toBeGreaterThan(80);
    expect(names.filter((name) => shown(name) === '')).toEqual([]);
  });

  it('that is none gives nothing; neither does a part of a name, or a word of a sentence', () => {
    for (const id of ['six-week', 'pressure', '', '`', 'when'])
      expect(pageNamed(readRulePage, id)).toBeUndefined();
    expect(ruleSectionIds(readRulePage('rules'))).toContain('urgency:seizure');
  });
});

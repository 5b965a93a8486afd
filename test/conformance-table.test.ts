// The table of the CDS Hooks checklist in DEVELOPERS.md: complete and of today.
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { rows } from './conformance/check-service.mjs';
import { checklist, checklistWithTests, withTable } from './conformance/table.mjs';

it('DEVELOPERS.md shows the checklist with the tests of today (npm run conformance:table writes it)', () => {
  const text = readFileSync(new URL('../DEVELOPERS.md', import.meta.url), 'utf8');
  expect(withTable(text)).toBe(text);
});

it('every row has a test named after it or a check over HTTP, or says why not', () => {
  const open = checklistWithTests().filter(
    ({ files, isSeenOutside, withoutTest }) =>
      files.length === 0 && !isSeenOutside && withoutTest === undefined,
  );
  expect(open.map(({ id }) => id)).toEqual([]);
});

it('the checks over HTTP have the level and the words of the checklist', () => {
  const known = new Map(checklist.map(({ id, level, title }) => [id, `${level} ${title}`]));
  expect(rows.map(({ id, level, title }) => [id, `${level} ${title}`])).toEqual(
    rows.map(({ id }) => [id, known.get(id)]),
  );
});

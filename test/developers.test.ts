import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { sourceTree, withTree } from '../.ci/source-tree.mjs';

it('DEVELOPERS.md shows the tree of today, a remark for each file (npm run tree writes it)', () => {
  const text = readFileSync(new URL('../DEVELOPERS.md', import.meta.url), 'utf8');
  expect(withTree(text)).toBe(text);
});

it('every source file says at its head what it hands on', () => {
  const silent = sourceTree()
    .split('\n')
    .filter((line) => /\.\w+$/.test(line.trim()));
  expect(silent).toEqual([]);
});

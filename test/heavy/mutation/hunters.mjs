// The tests that hunt: those that say what the answer must be. Snapshots of our own output are not among them: recorded
// examples, RULES.md, fingerprints. Nor are tests that run a server or another process, which one process cannot repeat,
// nor the property tests, which would take most of a minute for each survivor.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './places.mjs';

const wholeFolders = ['rules', 'timeline', 'guidelines', 'measures'];
const ofTheEngine = ['real-data', 'trend', 'what-next'];

const under = (folder) =>
  readdirSync(join(root, 'test', folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .sort()
    .map((name) => `test/${folder}/${name.replace(/\.ts$/, '.js')}`);

/** Compiled test files; the case rows hunt beside them. */
export const hunters = () => [
  ...wholeFolders.flatMap(under),
  ...ofTheEngine.map((name) => `test/${name}.test.js`),
];

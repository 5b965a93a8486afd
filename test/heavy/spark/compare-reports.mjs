// Are two reports the same bytes? The page names the account of the lines, which Spark counts elsewhere: that line is
// left out. node compare-reports.mjs FOLDER OTHER
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const [folder, other] = process.argv.slice(2);
const names = (of) =>
  readdirSync(of)
    .filter((name) => /^(?:report|measure-)/.test(name))
    .sort();
const text = (of, name) =>
  readFileSync(join(of, name), 'utf8').replace(/\s*<p[^>]*>\s*\d+ lines read: [^<]*<\/p>/, '');

const all = [...new Set([...names(folder), ...names(other)])];
const different = all.filter((name) => {
  try {
    return text(folder, name) !== text(other, name);
  } catch {
    return true;
  }
});
if (all.length === 0) different.push('no report at all');
if (different.length > 0) console.error(`different: ${different.join(', ')}`);
process.exitCode = different.length === 0 ? 0 : 1;

// An invented export for the comparison: women over several files, in random order. node make-export.mjs FOLDER LINES
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { generate } from '../../bench/replay/generate.mjs';

const [folder, lines = '40000'] = process.argv.slice(2);
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const whole = join(folder, 'whole.ndjson');
generate(Number(lines), whole);
const text = readFileSync(whole, 'utf8').split('\n');
rmSync(whole);
const files = 4;
const size = Math.ceil(text.length / files);
for (let at = 0; at < files; at += 1)
  writeFileSync(
    join(folder, `Observation.${at}.ndjson`),
    `${text.slice(at * size, (at + 1) * size).join('\n')}\n`,
  );

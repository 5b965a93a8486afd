// An invented export for the comparison: women over several files, in random order, some lines naming their woman by
// an identifier only. node make-export.mjs FOLDER LINES
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { generate } from '../../bench/replay/generate.mjs';

const [folder, lines = '40000'] = process.argv.slice(2);
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const whole = join(folder, 'whole.ndjson');
generate(Number(lines), whole);
const text = readFileSync(whole, 'utf8')
  .trimEnd()
  .split('\n')
  .map((line, at) =>
    at % 7 > 0
      ? line
      : line.replace(
          /"reference":"Patient\/p(\d+)"/,
          '"identifier":{"system":"urn:example:card","value":"$1"}',
        ),
  );
for (let woman = 0; woman < Number(lines) / 40; woman += 1) {
  const identifier = [{ system: 'urn:example:card', value: String(woman) }];
  text.push(JSON.stringify({ resourceType: 'Patient', id: `p${woman}`, identifier, gender: 'female' }));
}
rmSync(whole);
const files = 4;
const size = Math.ceil(text.length / files);
for (let at = 0; at < files; at += 1)
  writeFileSync(
    join(folder, `Observation.${at}.ndjson`),
    `${text.slice(at * size, (at + 1) * size).join('\n')}\n`,
  );

// Prints the conformance checklist row by row for any CDS Hooks service: npm run test:conformance -- BASEURL
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { checkService } from './check-service.mjs';

const usage = `Usage: npm run test:conformance -- BASEURL [--json] [--key FILE]
  BASEURL   for example http://127.0.0.1:8080
  --json    the rows as JSON
  --key     JSON with iss, kid, alg (ES384, ES256, RS384, RS256) and jwk, the private key of a client it knows`;

function settings() {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { json: { type: 'boolean' }, key: { type: 'string' } },
    });
    return positionals.length === 1 && URL.canParse(positionals[0])
      ? { ...values, base: positionals[0] }
      : undefined;
  } catch {
    return undefined;
  }
}

function print(results) {
  for (const { id, level, title, state, reason } of results) {
    console.log(
      `${state.padEnd(12)} ${id}  ${level.padEnd(6)} ${title}${reason === undefined ? '' : ` (${reason})`}`,
    );
  }
  const count = (state) => results.filter((row) => row.state === state).length;
  console.log(
    `\n${count('pass')} pass, ${count('fail')} fail, ${count('not-testable')} not testable from here`,
  );
}

const chosen = settings();
if (chosen === undefined) {
  console.error(usage);
  process.exitCode = 2;
} else {
  const key = chosen.key === undefined ? undefined : JSON.parse(readFileSync(chosen.key, 'utf8'));
  const results = await checkService({ base: chosen.base, now: Date.now(), key });
  if (chosen.json) console.log(JSON.stringify(results, null, 2));
  else print(results);
  process.exitCode = results.some(({ level, state }) => level === 'SHALL' && state === 'fail') ? 1 : 0;
}

// Records the answer to each story: posts request.json to the address in story.md and writes response.json beside it.
// Run it with `npm run examples`, and read the difference before keeping it.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createApp } from '../dist/http/app.js';

const here = new URL('./', import.meta.url);
const server = createApp({ now: () => Date.now() }).listen(0, '127.0.0.1');
await new Promise((resolve) => server.once('listening', resolve));
const base = `http://127.0.0.1:${server.address().port}`;

const isStory = (name) => existsSync(new URL(`${name}/request.json`, here));

for (const name of readdirSync(here).filter(isStory).sort()) {
  const folder = new URL(`${name}/`, here);
  const told = readFileSync(new URL('story.md', folder), 'utf8');
  const address = /^POST (\S+)$/m.exec(told)?.[1];
  if (address === undefined) throw new Error(`${name}: story.md names no address`);
  const response = await fetch(`${base}${address}`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: readFileSync(new URL('request.json', folder)),
  });
  const body = await response.json();
  if (!response.ok) throw new Error(`${name}: answered ${response.status}`);
  writeFileSync(new URL('response.json', folder), `${JSON.stringify(body, null, 2)}\n`);
  console.log(`${name}: recorded`);
}
server.close();

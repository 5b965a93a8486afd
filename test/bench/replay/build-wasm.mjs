// scan.wat → src/replay/simd-module.ts: `npm install && node build-wasm.mjs` in this folder, after every change of scan.wat.
import { Buffer } from 'node:buffer';
import { readFileSync, writeFileSync } from 'node:fs';
import wabt from 'wabt';

const source = new URL('./scan.wat', import.meta.url);
const target = new URL('../../../src/replay/simd-module.ts', import.meta.url);
const { parseWat } = await wabt();
const module = parseWat('scan.wat', readFileSync(source), { simd: true });
const bytes = Buffer.from(module.toBinary({}).buffer);
const text = bytes.toString('base64').replace(/.{1,96}/g, (part) => `  '${part}',\n`);
writeFileSync(
  target,
  `// Generated from test/bench/replay/scan.wat by test/bench/replay/build-wasm.mjs. Do not edit.\nexport const simdModule: string = [\n${text}].join('');\n`,
);
console.log(`${bytes.length} bytes`);

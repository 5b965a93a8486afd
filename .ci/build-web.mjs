// Bundles the page: src/web to dist/web, with the five stories beside it, each file also compressed; and the shared look.
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { build, transform } from 'esbuild';
import { caution } from '../dist/presenters/caution.js';

const root = join(import.meta.dirname, '..');
const source = join(root, 'src', 'web');
const target = join(root, 'dist', 'web');
const look = join(root, 'src', 'look', 'look.css');

rmSync(target, { recursive: true, force: true });
mkdirSync(target, { recursive: true });
for (const entry of ['page', 'launch']) await bundle(entry);
mkdirSync(join(root, 'dist', 'look'), { recursive: true });
copyFileSync(look, join(root, 'dist', 'look', 'look.css'));
writeFileSync(join(target, 'page.css'), await styles());
for (const file of ['page.html', 'launch.html'])
  writeFileSync(join(target, file), withCaution(readFileSync(join(source, file), 'utf8')));
copyFileSync(join(source, 'vendor', 'fhir-client.js'), join(target, 'fhir-client.js'));
writeFileSync(join(target, 'stories.json'), JSON.stringify(stories()));
for (const file of readdirSync(target)) compress(join(target, file));

/** The caution stands in the page before any script runs. */
function withCaution(html) {
  return html
    .replace('<!-- caution -->', caution.map((line) => `<li>${line}</li>`).join(''))
    .replace('<!-- first caution -->', caution[0]);
}

/** The shared look, then what only the page has. */
async function styles() {
  const parts = ['frame', 'trend', 'note', 'requests'].map((name) => join(source, 'style', `${name}.css`));
  const text = [look, ...parts].map((path) => readFileSync(path, 'utf8')).join('\n');
  const { code } = await transform(text, { loader: 'css', minify: true });
  return code;
}

async function bundle(entry) {
  await build({
    entryPoints: [join(source, `${entry}.ts`)],
    outfile: join(target, `${entry}.js`),
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    logLevel: 'error',
  });
}

/** The stories of examples/, with the request line that story.md ends with. */
function stories() {
  const folder = join(root, 'examples');
  return readdirSync(folder)
    .filter(
      (name) => existsSync(join(folder, name, 'story.md')) && existsSync(join(folder, name, 'request.json')),
    )
    .sort()
    .map((id) => {
      const text = readFileSync(join(folder, id, 'story.md'), 'utf8');
      const request = JSON.parse(readFileSync(join(folder, id, 'request.json'), 'utf8'));
      const [, path = ''] = /^POST (\S+)$/m.exec(text) ?? [];
      const [, title = id] = /^# (.+)$/m.exec(text) ?? [];
      const [, body = ''] = /^# .+\n\n([\s\S]*?)\n```/.exec(text) ?? [];
      return { id, title, text: body.trim().replaceAll(/(?<!\n)\n(?!\n)/g, ' '), path, request };
    });
}

function compress(path) {
  const bytes = readFileSync(path);
  const quality = { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } };
  writeFileSync(`${path}.br`, brotliCompressSync(bytes, quality));
  writeFileSync(`${path}.gz`, gzipSync(bytes, { level: 9 }));
}

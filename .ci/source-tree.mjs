// Writes the tree of src into DEVELOPERS.md: each file with the remark at its head. Run by `npm run tree`.
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = new URL('../', import.meta.url);
const begin = '<!-- tree: begin -->';
const end = '<!-- tree: end -->';

/** The first comment line of a source file, without its mark. */
function remarkOf(path) {
  const head = readFileSync(path, 'utf8').split('\n').slice(0, 3);
  const line = head.find((text) => /^(\/\/|\/\*|<!--|#(?!!))\s/.test(text.trim())) ?? '';
  return line
    .trim()
    .replace(/^(\/\/|\/\*+|<!--|#)\s*/, '')
    .replace(/\s*(\*\/|-->)$/, '');
}

function lines(folder, indent) {
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  const files = entries
    .filter((entry) => entry.isFile() && /\.(ts|tsx|mjs|py|css|html|wat)$/.test(entry.name))
    .map(
      (entry) =>
        `${indent}${entry.name.padEnd(Math.max(1, 34 - indent.length))} ${remarkOf(new URL(entry.name, folder))}`,
    );
  const folders = entries
    .filter((entry) => entry.isDirectory())
    .flatMap((entry) => [
      `${indent}${entry.name}/`,
      ...lines(new URL(`${entry.name}/`, folder), `${indent}  `),
    ]);
  return [...files, ...folders];
}

/** The tree as text. */
export const sourceTree = () =>
  lines(new URL('src/', root), '')
    .map((line) => line.trimEnd())
    .join('\n');

/** DEVELOPERS.md with the tree of today. */
export function withTree(text) {
  const [before, rest] = text.split(begin);
  const after = rest?.split(end)[1];
  if (before === undefined || after === undefined)
    throw new Error('DEVELOPERS.md lacks the marks of the tree.');
  return `${before}${begin}\n\n\`\`\`text\n${sourceTree()}\n\`\`\`\n\n${end}${after}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const path = new URL('DEVELOPERS.md', root);
  writeFileSync(path, withTree(readFileSync(path, 'utf8')));
}

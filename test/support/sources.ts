// The source text of src and its import lines, for the architecture test.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';

const root = join(import.meta.dirname, '..', '..', 'src');

export interface SourceImport {
  readonly from: string;
  /** Path inside src, or the name of a package. */
  readonly to: string;
  readonly typeOnly: boolean;
}

export interface SourceFile {
  readonly path: string;
  readonly text: string;
  readonly imports: readonly SourceImport[];
}

const importLine = /(?:^|\n)\s*(?:import|export)\s+(type\s+)?(?:[^'";]*?\sfrom\s+)?'([^']+)'/g;
const dynamicImport = /\bimport\(\s*'([^']+)'\s*\)/g;

export function readSources(): SourceFile[] {
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts'))
    .map((path) => path.replaceAll('\\', '/'))
    .sort()
    .map((path) => {
      const text = readFileSync(join(root, path), 'utf8');
      return { path, text, imports: readImports(path, text) };
    });
}

function readImports(path: string, text: string): SourceImport[] {
  const found = [...text.matchAll(importLine)].map((match) => ({
    to: match[2] ?? '',
    typeOnly: match[1] !== undefined,
  }));
  const dynamic = [...text.matchAll(dynamicImport)].map((match) => ({ to: match[1] ?? '', typeOnly: false }));
  return [...found, ...dynamic].map(({ to, typeOnly }) => ({ from: path, to: resolve(path, to), typeOnly }));
}

function resolve(path: string, specifier: string): string {
  if (!specifier.startsWith('.')) return specifier;
  return relative(root, join(root, dirname(path), specifier)).replaceAll('\\', '/');
}

/** The text without comments and string contents, so that words in prose are not taken for code. */
export function codeOnly(text: string): string {
  return text
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/(^|[^:'"`])\/\/.*$/gm, '$1')
    .replace(/'(?:[^'\\\n]|\\.)*'/g, "''")
    .replace(/"(?:[^"\\\n]|\\.)*"/g, '""');
}

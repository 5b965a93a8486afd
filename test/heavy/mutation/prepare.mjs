// Lays out an instrumented, compiled copy of src and of the tests that are to find the mutants.
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import { root, work } from './places.mjs';

const ts = createRequire(join(root, 'package.json'))('typescript');
const silent = () => undefined;
const logger = {
  debug: silent,
  info: silent,
  warn: silent,
  trace: silent,
  isDebugEnabled: () => false,
  isTraceEnabled: () => false,
};

const filesUnder = (folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts') && !name.includes('heavy'));

/** Files that only write sentences and evidence; nothing is decided there. */
const wordingOnly = new Set(['src/rules/answer.ts']);

/** Wording is not behaviour: sentences are left alone. */
const excludedMutations = ['StringLiteral'];

/**
 * Given    folders  those whose files are mutated: `src/rules`
 *          tests    test files, without extension
 * Returns  the mutants, in order of id
 */
export async function prepare(folders) {
  rmSync(work, { recursive: true, force: true });
  mkdirSync(work, { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(work, 'node_modules'));
  for (const name of ['package.json', 'openapi.yaml']) cpSync(join(root, name), join(work, name));
  cpSync(join(root, 'test/cases'), join(work, 'test/cases'), { recursive: true });
  cpSync(join(root, 'test/data'), join(work, 'test/data'), { recursive: true });
  cpSync(join(root, 'examples'), join(work, 'examples'), { recursive: true });
  cpSync(join(import.meta.dirname, 'vitest-shim.mjs'), join(work, 'vitest-shim.mjs'));
  const sources = filesUnder('src');
  const mutated = sources.filter(
    (name) => folders.some((folder) => name.startsWith(folder)) && !wordingOnly.has(name),
  );
  const { files, mutants } = await new Instrumenter(logger).instrument(
    mutated.map((name) => ({ name, mutate: true, content: readFileSync(join(root, name), 'utf8') })),
    { excludedMutations, ignorers: [], plugins: null },
  );
  const instrumented = new Map(files.map(({ name, content }) => [name, content]));
  for (const name of [...sources, ...filesUnder('test')])
    compile(name, instrumented.get(name) ?? readFileSync(join(root, name), 'utf8'));
  cpJson('src');
  return mutants
    .filter(({ status }) => status !== 'Ignored')
    .map(({ id, fileName, mutatorName, replacement, location }) => ({
      id,
      file: relative(root, join(root, fileName)),
      line: location.start.line + 1,
      column: location.start.column + 1,
      mutatorName,
      replacement,
    }));
}

function cpJson(folder) {
  for (const name of readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }))
    if (name.endsWith('.json')) {
      mkdirSync(dirname(join(work, folder, name)), { recursive: true });
      cpSync(join(root, folder, name), join(work, folder, name));
    }
}

function compile(name, content) {
  const { outputText } = ts.transpileModule(content, {
    fileName: name,
    compilerOptions: {
      target: ts.ScriptTarget.ES2022,
      module: ts.ModuleKind.ESNext,
      verbatimModuleSyntax: true,
      rewriteRelativeImportExtensions: true,
    },
  });
  const target = join(work, name.replace(/\.ts$/, '.js'));
  mkdirSync(dirname(target), { recursive: true });
  const shim = relative(dirname(target), join(work, 'vitest-shim.mjs'));
  writeFileSync(target, outputText.replaceAll(/from ['"]vitest['"]/g, `from './${shim}'`));
}

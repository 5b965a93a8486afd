// Which files a replay reads: a folder, a Bulk Data manifest, single files, standard input.
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, dirname, join, relative, resolve } from 'node:path';

/** One file to read. */
export interface SourceFile {
  readonly path: string;
  /** How reports call it: relative to what was named on the command line. */
  readonly name: string;
  /** One resource on each line, or one JSON document over many lines. */
  readonly form: 'lines' | 'document';
  readonly isCompressed: boolean;
  readonly bytes: number;
  /** As the manifest says. */
  readonly declaredType?: string;
  readonly declaredCount?: number;
}

export interface Sources {
  readonly files: readonly SourceFile[];
  /** What is odd about the export as such; holds no clinical value. */
  readonly warnings: readonly string[];
  /** Exports that may overlap: a line may be the newer version of a line of another one. */
  readonly mayHoldVersions: boolean;
  /** `transactionTime` of the manifest: nothing later is in the export. */
  readonly transactionTime?: string;
}

/** A source that cannot be read at all; the message names it. */
export class UnreadableSource extends Error {}

export const standardInput = '-';

/**
 * The files behind the arguments of the command.
 *
 * Given    sources  folders, manifests, files (.ndjson, .jsonl, .json, each also .gz), or `-`
 * Returns  files sorted by name, so that the order of the arguments decides nothing
 * Throws   UnreadableSource for a source that does not exist
 * Notes    1. A folder with a `manifest.json` is read as the manifest says; without one, every such file in it.
 *          2. A manifest of 3.0 (`output`, `error`, `deleted`), of the 4.0 ballot (`outcome`, `outputFormat`) and of
 *             R4 (no `deleted`) alike. Files are looked for beside the manifest, by the end of their address.
 * Source   fhir.md F-K06, F-K09
 */
export function findSources(sources: readonly string[]): Sources {
  const found = sources.map(findSource);
  const manifests = found.filter(({ transactionTime }) => transactionTime !== undefined);
  const files = found
    .flatMap((each) => each.files)
    .filter(({ path }, at, all) => all.findIndex((other) => other.path === path) === at)
    .sort((a, b) => compare(a.name, b.name) || compare(a.path, b.path));
  const times = manifests.flatMap(({ transactionTime }) => transactionTime ?? []).sort();
  const latest = times.at(-1);
  return {
    files,
    warnings: found.flatMap(({ warnings }) => warnings),
    mayHoldVersions: manifests.length > 1,
    ...(latest === undefined ? {} : { transactionTime: latest }),
  };
}

const compare = (a: string, b: string): number => (a === b ? 0 : a < b ? -1 : 1);

type Found = Omit<Sources, 'mayHoldVersions'>;

function findSource(source: string): Found {
  if (source === standardInput)
    return {
      files: [{ path: source, name: 'stdin', form: 'lines', isCompressed: false, bytes: 0 }],
      warnings: [],
    };
  if (!existsSync(source)) throw new UnreadableSource(`There is no such file or folder: ${source}`);
  if (statSync(source).isDirectory()) return findFolder(source);
  const manifest = readManifest(source);
  return manifest ?? { files: [fileOf(source, basename(source))], warnings: [] };
}

function findFolder(folder: string): Found {
  const manifest = join(folder, 'manifest.json');
  if (existsSync(manifest)) {
    const found = readManifest(manifest);
    if (found !== undefined) return found;
  }
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(?:ndjson|jsonl|json)(?:\.gz)?$/i.test(name))
    .map((name) => fileOf(join(folder, name), name));
  return { files, warnings: files.length === 0 ? [`No NDJSON or JSON file in ${folder}`] : [] };
}

function fileOf(path: string, name: string): SourceFile {
  return {
    path: resolve(path),
    name: name.replaceAll('\\', '/'),
    form: /\.json(?:\.gz)?$/i.test(path) ? 'document' : 'lines',
    isCompressed: /\.gz$/i.test(path),
    bytes: statSync(path).size,
  };
}

function readManifest(path: string): Found | undefined {
  if (!/\.json$/i.test(path)) return undefined;
  const json = parsed(readFileSync(path, 'utf8'));
  const output = member(json, 'output');
  if (member(json, 'resourceType') !== undefined || !Array.isArray(output)) return undefined;
  const folder = dirname(path);
  const warnings: string[] = [];
  const lists: readonly (readonly [string, unknown])[] = [
    ['output', output],
    ['error', member(json, 'error')],
    ['outcome', member(json, 'outcome')],
    ['deleted', member(json, 'deleted')],
  ];
  const files = lists.flatMap(([list, items]) =>
    (Array.isArray(items) ? items : []).flatMap((item: unknown) =>
      declaredFile(folder, item, list, warnings),
    ),
  );
  if (Array.isArray(member(json, 'link')) && JSON.stringify(member(json, 'link')).includes('"next"'))
    warnings.push('The manifest has a next page; give its manifest too.');
  const time = member(json, 'transactionTime');
  return { files, warnings, transactionTime: typeof time === 'string' ? time : '' };
}

function declaredFile(folder: string, item: unknown, list: string, warnings: string[]): SourceFile[] {
  const url = member(item, 'url');
  if (typeof url !== 'string') {
    warnings.push(`An entry of ${list} in the manifest has no url.`);
    return [];
  }
  const path = besideManifest(folder, url);
  if (path === undefined) {
    warnings.push(`A file of the manifest is not there: ${basename(withoutQuery(url))}`);
    return [];
  }
  const type = member(item, 'type');
  const count = member(item, 'count');
  const file = fileOf(path, relative(folder, path));
  return [
    {
      ...file,
      form: 'lines',
      ...(typeof type === 'string' && list === 'output' ? { declaredType: type } : {}),
      ...(typeof count === 'number' ? { declaredCount: count } : {}),
    },
  ];
}

const withoutQuery = (url: string): string => url.replace(/[?#].*$/, '');

/** The longest end of the address that is a file beside the manifest, compressed or not. */
function besideManifest(folder: string, url: string): string | undefined {
  const parts = withoutQuery(url)
    .replace(/^[a-z]+:\/\/[^/]*/i, '')
    .split('/')
    .filter((part) => part !== '' && part !== '.' && part !== '..');
  for (let from = 0; from < parts.length; from += 1) {
    const path = join(folder, ...parts.slice(from));
    const found = [path, `${path}.gz`, `${path}.ndjson`].find(
      (each) => existsSync(each) && statSync(each).isFile(),
    );
    if (found !== undefined) return found;
  }
  return undefined;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return undefined;
  }
}

function member(value: unknown, name: string): unknown {
  if (typeof value !== 'object' || value === null) return undefined;
  return Object.getOwnPropertyDescriptor(value, name)?.value;
}

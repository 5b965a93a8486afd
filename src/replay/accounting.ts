// Where every line went: per file, lines read = used + not needed + set aside + rejected.
import type { AssessDone, ExtractDone } from './tasks.ts';
import type { SourceFile } from './find-sources.ts';

export interface FileAccount {
  readonly file: string;
  readonly bytes: number;
  /** Without blank ones. */
  readonly lines: number;
  readonly blankLines: number;
  readonly used: number;
  readonly notNeeded: number;
  readonly setAside: number;
  readonly rejected: number;
}

export interface NotedInFile {
  readonly file: string;
  readonly line: number;
  readonly fate: 'rejected' | 'set-aside';
  readonly reason: string;
}

export interface Accounting {
  readonly files: readonly FileAccount[];
  readonly total: Omit<FileAccount, 'file'>;
  readonly warnings: readonly string[];
}

/** A stretch of a file as it was read. */
export interface Stretch {
  readonly fileIndex: number;
  readonly done: ExtractDone;
}

/**
 * The account of a run.
 *
 * Given    files       in order
 *          stretches   of each file in the order of its bytes
 *          assessed    what became of kept lines
 *          warnings    about the export itself
 * Returns  sums per file and in total, and a warning where a file is not what its manifest says
 * Notes    1. Kept lines that belong to no woman alone (medicines, devices, deletions) count as used.
 */
export function accountFor(
  files: readonly SourceFile[],
  stretches: readonly Stretch[],
  assessed: readonly AssessDone[],
  warnings: readonly string[],
): Accounting {
  const accounts = files.map((file, index) => accountOf(file, index, stretches, assessed));
  return {
    files: accounts,
    total: accounts.reduce(added, { ...nothing }),
    warnings: [
      ...warnings,
      ...files.flatMap((file, index) => oddities(file, accounts[index], typesOf(stretches, index))),
    ],
  };
}

const nothing: Omit<FileAccount, 'file'> = {
  bytes: 0,
  lines: 0,
  blankLines: 0,
  used: 0,
  notNeeded: 0,
  setAside: 0,
  rejected: 0,
};

const added = (a: Omit<FileAccount, 'file'>, b: FileAccount): Omit<FileAccount, 'file'> => ({
  bytes: a.bytes + b.bytes,
  lines: a.lines + b.lines,
  blankLines: a.blankLines + b.blankLines,
  used: a.used + b.used,
  notNeeded: a.notNeeded + b.notNeeded,
  setAside: a.setAside + b.setAside,
  rejected: a.rejected + b.rejected,
});

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function accountOf(
  file: SourceFile,
  index: number,
  stretches: readonly Stretch[],
  assessed: readonly AssessDone[],
): FileAccount {
  const counts = stretches.filter(({ fileIndex }) => fileIndex === index).map(({ done }) => done.counts);
  const settled = assessed.flatMap(({ settled: all }) =>
    all.flatMap(([of, each]) => (of === index ? [each] : [])),
  );
  const kept = sum(counts.map((each) => each.kept));
  const notNeeded = sum(settled.map((each) => each.notNeeded));
  const setAside = sum(settled.map((each) => each.setAside));
  const blankLines = sum(counts.map((each) => each.blank));
  return {
    file: file.name,
    bytes: sum(counts.map((each) => each.bytes)),
    lines: sum(counts.map((each) => each.lines)) - blankLines,
    blankLines,
    used: kept - notNeeded - setAside,
    notNeeded: sum(counts.map((each) => each.notNeeded)) + notNeeded,
    setAside: sum(counts.map((each) => each.setAside)) + setAside,
    rejected: sum(counts.map((each) => each.rejected)),
  };
}

function typesOf(stretches: readonly Stretch[], index: number): readonly string[] {
  const own = stretches.filter(({ fileIndex }) => fileIndex === index);
  return [...new Set(own.flatMap(({ done }) => Object.keys(done.types)))].sort();
}

function oddities(
  file: SourceFile,
  account: FileAccount | undefined,
  types: readonly string[],
): readonly string[] {
  const others = file.declaredType === undefined ? [] : types.filter((type) => type !== file.declaredType);
  const count = file.declaredCount;
  return [
    ...(others.length === 0
      ? []
      : [`${file.name}: declared as ${String(file.declaredType)}, holds ${others.join(', ')} too.`]),
    ...(count === undefined || count === account?.lines
      ? []
      : [`${file.name}: the manifest says ${count} lines, ${String(account?.lines)} were read.`]),
  ];
}

/** Rejected and set aside lines with their number in the file, in the order of files and lines. */
export function notedLines(
  files: readonly SourceFile[],
  stretches: readonly Stretch[],
): readonly NotedInFile[] {
  return files.flatMap(({ name: file }, index) => {
    let before = 0;
    return stretches
      .filter(({ fileIndex }) => fileIndex === index)
      .flatMap(({ done }) => {
        const first = before;
        before += done.counts.lines;
        const noted = [
          ...done.rejected.map((each) => ({ ...each, fate: 'rejected' as const })),
          ...done.setAside.map((each) => ({ ...each, fate: 'set-aside' as const })),
        ];
        return noted
          .map(({ line, fate, reason }) => ({ file, line: first + line, fate, reason }))
          .sort((a, b) => a.line - b.line);
      });
  });
}

// Second stage: the lines of some women to their answers and their part of the report.
import type { AssessOptions } from './assess-woman.ts';
import { assessWoman } from './assess-woman.ts';
import { assembleWoman, type AssembledWoman, type SharedLines } from './assemble-woman.ts';
import { countWoman } from './report/count-woman.ts';
import { mergeReports, openCounter, type Tally } from './report/tally.ts';
import { toResultLines } from './result-line.ts';
import type { SpooledLine } from './spool.ts';

/** What became of kept lines, by file. */
export interface Settled {
  readonly used: number;
  readonly notNeeded: number;
  readonly setAside: number;
}

export interface AssessedWomen {
  /** JSON lines, by woman reference, then by time; each with its line end. */
  readonly results: readonly string[];
  readonly tally: Tally;
  readonly settled: ReadonlyMap<number, Settled>;
  /** Women who could not be judged at all: how many. */
  readonly failed: number;
}

/**
 * The answers about every woman of a group.
 *
 * Given    lines    kept lines of whole women, in any order
 *          shared   as `readShared` gives it
 *          options  guidelines, view, window
 * Returns  results sorted by woman, and the sums
 * Throws   never for what is in the lines: a woman who cannot be judged is counted as failed
 */
export function assessWomen(
  lines: readonly SpooledLine[],
  shared: SharedLines,
  options: AssessOptions,
): AssessedWomen {
  const women = new Map<string, SpooledLine[]>();
  for (const line of lines) {
    const own = women.get(line.key);
    if (own === undefined) women.set(line.key, [line]);
    else own.push(line);
  }
  const results: string[] = [];
  const tallies: Tally[] = [];
  const settled = openSettlement();
  let failed = 0;
  for (const key of [...women.keys()].sort()) {
    const woman = assembleWoman(key, women.get(key) ?? [], shared);
    for (const file of woman.dropped) settled.add(file, 'setAside');
    try {
      assessOne(woman, options, { results, tallies, settled });
    } catch {
      failed += 1;
      tallies.push({ failed: 1 });
      for (const file of woman.files) if (file !== undefined) settled.add(file, 'setAside');
    }
  }
  return { results, tally: mergeReports(tallies), settled: settled.counts(), failed };
}

interface Into {
  readonly results: string[];
  readonly tallies: Tally[];
  readonly settled: Settlement;
}

function assessOne(woman: AssembledWoman, options: AssessOptions, into: Into): void {
  const { subject, input, files } = woman;
  const history = assessWoman(input, subject, options);
  const lines = toResultLines(subject, history.visits);
  into.tallies.push(countWoman({ input, history, lines, options }));
  for (const line of lines) into.results.push(`${JSON.stringify(line)}\n`);
  const fates = fatesOf(history.account?.entries ?? []);
  files.forEach((file, at) => {
    if (file !== undefined) into.settled.add(file, fates.get(at) ?? 'notNeeded');
  });
}

type Fate = keyof Settled;
const ranking: readonly Fate[] = ['notNeeded', 'setAside', 'used'];
const fateOf = { used: 'used', 'not-needed': 'notNeeded', 'set-aside': 'setAside' } as const;

/** Of each line the best that became of a resource in it: used before set aside before not needed. */
function fatesOf(
  entries: readonly { readonly path: string; readonly outcome: keyof typeof fateOf }[],
): ReadonlyMap<number, Fate> {
  const fates = new Map<number, Fate>();
  for (const { path, outcome } of entries) {
    const at = Number(/^\[(\d+)\]/.exec(path)?.[1]);
    const fate = fateOf[outcome];
    if (ranking.indexOf(fate) >= ranking.indexOf(fates.get(at) ?? 'notNeeded')) fates.set(at, fate);
  }
  return fates;
}

interface Settlement {
  readonly add: (file: number, fate: Fate) => void;
  readonly counts: () => ReadonlyMap<number, Settled>;
}

function openSettlement(): Settlement {
  const counter = openCounter();
  const files = new Set<number>();
  return {
    add: (file, fate) => {
      if (file < 0) return;
      files.add(file);
      counter.add([file, fate]);
    },
    counts: () => {
      const tally = counter.tally();
      const count = (file: number, fate: Fate): number => tally[`${file}\t${fate}`] ?? 0;
      return new Map(
        [...files].map((file) => [
          file,
          {
            used: count(file, 'used'),
            notNeeded: count(file, 'notNeeded'),
            setAside: count(file, 'setAside'),
          },
        ]),
      );
    },
  };
}

// Rules of several guidelines laid together: those that read the same stand once. Wording only.
import type { Citation, Guideline } from '../guidelines/guideline.ts';
import { citationWords } from './rule-sources.ts';

/** A rule with the guidelines that say the same, each with its source. */
export interface SharedRule<T> {
  readonly rule: T;
  readonly guideline: Guideline;
  readonly whose: string;
  readonly sources: string;
}

export interface Cited {
  readonly citation: Citation;
}

/** Rules of one kind over all guidelines; those that read the same stand once, with the source of each guideline. */
export function sharedRules<T extends Cited>(
  guidelines: readonly Guideline[],
  rulesOf: (guideline: Guideline) => readonly T[],
  textOf: (rule: T, guideline: Guideline) => readonly string[],
): readonly SharedRule<T>[] {
  const found = new Map<string, { rule: T; of: { guideline: Guideline; source: string }[] }>();
  for (const guideline of guidelines)
    for (const rule of rulesOf(guideline)) {
      const key = JSON.stringify(textOf(rule, guideline));
      const group = found.get(key) ?? { rule, of: [] };
      group.of.push({ guideline, source: citationWords(rule.citation) });
      found.set(key, group);
    }
  return [...found.values()].flatMap(({ rule, of }) => {
    const guideline = of[0]?.guideline;
    if (guideline === undefined) return [];
    const whose =
      of.length === guidelines.length ? 'all' : of.map(({ guideline: each }) => each.id).join(', ');
    return [{ rule, guideline, whose, sources: sourceWords(of) }];
  });
}

/** One source where all share it; else each with the guidelines that rest on it. */
function sourceWords(of: readonly { readonly guideline: Guideline; readonly source: string }[]): string {
  const bySource = new Map<string, readonly string[]>();
  for (const { guideline, source } of of)
    bySource.set(source, [...(bySource.get(source) ?? []), guideline.id]);
  const [only] = bySource.keys();
  if (bySource.size === 1 && only !== undefined) return only;
  return [...bySource].map(([source, ids]) => `${ids.join(', ')}: ${source}`).join('. ');
}

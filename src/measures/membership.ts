// Who is in which population of a measure, and what populations add up to. Arithmetic only.

/** What the criteria of a measure say about one woman; undefined: the data do not tell. */
export interface Criteria {
  readonly initial: boolean;
  readonly denominator: boolean | undefined;
  readonly exclusion?: boolean;
  readonly exception?: boolean;
  readonly numerator: boolean | undefined;
}

/** How many are in each population: women, or for a ratio of readings whatever is counted. */
export interface Counts {
  readonly 'initial-population': number;
  readonly denominator: number;
  readonly 'denominator-exclusion': number;
  readonly 'denominator-exception': number;
  readonly numerator: number;
  /** In the initial population, and something needed to judge her is missing (F-Q04). */
  readonly 'data-missing': number;
}

export const noCounts: Counts = {
  'initial-population': 0,
  denominator: 0,
  'denominator-exclusion': 0,
  'denominator-exception': 0,
  numerator: 0,
  'data-missing': 0,
};

const one = (is: boolean): number => (is ? 1 : 0);

/**
 * The populations one woman is in.
 *
 * Given    criteria  as evaluated, however loosely they are written
 * Returns  counts of 0 or 1, nested: numerator within denominator within initial population
 * Throws   never
 * Notes    1. Unknown is never in the numerator; it counts as data missing.
 *          2. One who is excepted and meets the numerator stays; one who is excluded does not.
 * Source   Quality Measure IG, proportion measures; F-Q02 to F-Q04
 */
export function membershipOf(criteria: Criteria): Counts {
  const { initial, exclusion = false, exception = false, numerator } = criteria;
  const inDenominator = initial && criteria.denominator === true;
  const isExcluded = inDenominator && exclusion;
  const isCounted = inDenominator && !isExcluded;
  const inNumerator = isCounted && numerator === true;
  const isUnknown = criteria.denominator === undefined || (isCounted && numerator === undefined);
  return {
    'initial-population': one(initial),
    denominator: one(inDenominator),
    'denominator-exclusion': one(isExcluded),
    'denominator-exception': one(isCounted && exception && !inNumerator),
    numerator: one(inNumerator),
    'data-missing': one(initial && isUnknown),
  };
}

/** Addition, population by population: any order and any grouping give the same sum. */
export function addCounts(a: Counts, b: Counts): Counts {
  return {
    'initial-population': a['initial-population'] + b['initial-population'],
    denominator: a.denominator + b.denominator,
    'denominator-exclusion': a['denominator-exclusion'] + b['denominator-exclusion'],
    'denominator-exception': a['denominator-exception'] + b['denominator-exception'],
    numerator: a.numerator + b.numerator,
    'data-missing': a['data-missing'] + b['data-missing'],
  };
}

/** Numerator over those of the denominator neither excluded nor excepted; undefined when there are none (F-Q02). */
export function scoreOf(counts: Counts): number | undefined {
  const counted = counts.denominator - counts['denominator-exclusion'] - counts['denominator-exception'];
  return counted === 0 ? undefined : counts.numerator / counted;
}

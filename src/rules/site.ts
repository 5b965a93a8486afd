// What the place where she is seen can do.

export interface Site {
  /** Names of needs, as in the data: `magnesium`, `intravenous-drugs`, `laboratory`, `operate`, and so on. */
  readonly can: readonly string[];
  /** What the next level is called; default "the next level". */
  readonly next?: string;
}

/** A first-level site: everything the data asks for, except operating and intensive care. */
export const firstLevelSite: Site = {
  can: ['magnesium', 'intravenous-drugs', 'oxygen', 'catheter', 'laboratory', 'ultrasound', 'growth-factors'],
};

/** Can it be done here? A step without a need can be done anywhere. */
export const isPossibleAt = (site: Site, siteNeeds: string | undefined): boolean =>
  siteNeeds === undefined || site.can.includes(siteNeeds);

/** "At the next level: ..." before a step this site cannot do. */
export const atNextLevel = (site: Site, sentence: string): string =>
  `At ${site.next ?? 'the next level'}: ${sentence}`;

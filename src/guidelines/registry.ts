// The editions we know, by id.
import { acog2020Edition } from './acog-2020.ts';
import { buildGuideline } from './build-guideline.ts';
import type { Edition } from './edition.ts';
import { frontline } from './frontline.ts';
import type { Guideline } from './guideline.ts';
import { indiaMohfwEdition } from './india-mohfw.ts';
import { isshp2021Edition } from './isshp-2021.ts';
import { nice2023Edition } from './nice-2023.ts';
import { sogc2022Edition } from './sogc-2022.ts';
import { who2020Edition } from './who-2020.ts';

export { timelineValues } from './shared-values.ts';

/** In the order in which they are shown side by side. */
const editions: readonly Edition[] = [
  frontline,
  who2020Edition,
  isshp2021Edition,
  acog2020Edition,
  nice2023Edition,
  indiaMohfwEdition,
  sogc2022Edition,
];

const guidelines: ReadonlyMap<string, Guideline> = new Map(
  editions.map((edition) => [edition.id, buildGuideline(edition)]),
);

export const defaultGuidelineId = frontline.id;

export const guidelineIds: readonly string[] = [...guidelines.keys()];

/** The guideline of an id; undefined when there is none. */
export const guidelineOf = (id: string): Guideline | undefined => guidelines.get(id);

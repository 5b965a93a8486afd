// A stricter limit never yields a lower class, where that is well defined.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepare } from '../src/evaluate.ts';
import { acog2020Edition } from '../src/guidelines/acog-2020.ts';
import { buildGuideline } from '../src/guidelines/build-guideline.ts';
import type { Edition } from '../src/guidelines/edition.ts';
import { frontline } from '../src/guidelines/frontline.ts';
import type { OrganCriterion, Threshold } from '../src/guidelines/guideline.ts';
import { isshp2021Edition } from '../src/guidelines/isshp-2021.ts';
import { opinionOf } from '../src/opinions.ts';
import * as build from './support/resources.ts';
import { stories, storyAsOf, type Story } from './support/stories.ts';

const preEclampsia = new Set<string>([
  'eclampsia',
  'imminent-eclampsia',
  'hellp',
  'pre-eclampsia-severe-features',
  'superimposed-pre-eclampsia',
  'postpartum-pre-eclampsia',
  'pre-eclampsia',
]);

function namesPreEclampsia({ resources }: Story, edition: Edition): boolean {
  const { built } = prepare(build.bundleOf(resources), { asOf: storyAsOf });
  const { own } = opinionOf(built.timeline, buildGuideline(edition));
  return own.classification.some((item) => preEclampsia.has(item));
}

const withStrip = (edition: Edition, grade: number): Edition => ({
  ...edition,
  proteinuria: {
    ...edition.proteinuria,
    ...(edition.proteinuria.strip === undefined
      ? {}
      : { strip: { ...edition.proteinuria.strip, value: grade } }),
  },
});

const withPlatelets = (edition: Edition, value: number): Edition => ({
  ...edition,
  organs: edition.organs.map((criterion) => changed(criterion, value)),
});

/** Only the lower limit of platelets; other tests keep theirs. */
function changed(criterion: OrganCriterion, value: number): OrganCriterion {
  if (criterion.kind !== 'laboratory' || !criterion.analytes.includes('platelets')) return criterion;
  const limit: Threshold = { ...criterion.limit, value };
  return { ...criterion, limit };
}

const editions = fc.constantFrom(frontline, isshp2021Edition, acog2020Edition);

function neverRemoves(
  change: (edition: Edition, value: number) => Edition,
  values: fc.Arbitrary<{ readonly lenient: number; readonly strict: number }>,
): void {
  fc.assert(
    fc.property(stories, editions, values, (story, edition, { lenient, strict }) => {
      fc.pre(namesPreEclampsia(story, change(edition, lenient)));
      expect(namesPreEclampsia(story, change(edition, strict))).toBe(true);
    }),
    { numRuns: 100 },
  );
}

describe('a stricter limit never takes pre-eclampsia away', () => {
  it('counting a strip from a lower grade', () => {
    neverRemoves(
      withStrip,
      fc.constantFrom({ lenient: 2, strict: 1 }, { lenient: 2, strict: 0.5 }, { lenient: 1, strict: 0.5 }),
    );
  });

  it('counting platelets from a higher number', () => {
    neverRemoves(
      withPlatelets,
      fc
        .tuple(fc.integer({ min: 80, max: 200 }), fc.integer({ min: 0, max: 100 }))
        .map(([lenient, more]) => ({ lenient, strict: lenient + more })),
    );
  });
});

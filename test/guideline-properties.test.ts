// What holds for every guideline and every invented woman.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepare } from '../src/evaluate.ts';
import { buildGuideline } from '../src/guidelines/build-guideline.ts';
import type { Edition } from '../src/guidelines/edition.ts';
import { frontline } from '../src/guidelines/frontline.ts';
import { acog2020Edition } from '../src/guidelines/acog-2020.ts';
import { isshp2021Edition } from '../src/guidelines/isshp-2021.ts';
import { who2020Edition } from '../src/guidelines/who-2020.ts';
import { classifications, type Citation, type PressureLimits } from '../src/guidelines/guideline.ts';
import { guidelineIds, guidelineOf, timelineValues } from '../src/guidelines/registry.ts';
import { opinionOf, opinionsOf } from '../src/opinions.ts';
import { toAnswer } from '../src/presenters/answer.ts';
import { citationsIn } from '../src/presenters/rule-sources.ts';
import { applyRules } from '../src/rules/apply-rules.ts';
import type { Timeline } from '../src/timeline/timeline.ts';
import { evaluateSoundly } from './support/engine.ts';
import * as build from './support/resources.ts';
import { stories, storyAsOf, type Story } from './support/stories.ts';

const guidelines = guidelineIds.flatMap((id) => guidelineOf(id) ?? []);
const anyGuideline = fc.constantFrom(...guidelines);
const timelineOf = ({ resources }: Story): Timeline =>
  prepare(build.bundleOf(resources), { asOf: storyAsOf }).built.timeline;

describe("a guideline's own answer", () => {
  it('is the same alone, beside all others, and after any other has answered', () => {
    fc.assert(
      fc.property(stories, anyGuideline, anyGuideline, (story, guideline, other) => {
        const timeline = timelineOf(story);
        const alone = applyRules(timeline, guideline, timelineValues).assessment;
        applyRules(timeline, other, timelineValues);
        expect(opinionOf(timeline, guideline).own).toEqual(alone);
        const beside = opinionsOf(timeline).find(({ stamp }) => stamp.id === guideline.id);
        expect(beside?.own).toEqual(alone);
      }),
      { numRuns: 60 },
    );
  });
});

const keyOf = ({ publication, section, year }: Pick<Citation, 'publication' | 'section' | 'year'>): string =>
  [publication, section, String(year)].join(' | ');

/** Cited somewhere from memory, and nowhere as read. */
const fromMemory = new Set(
  citationsIn(guidelines)
    .filter(({ known }) => known === 'from-memory')
    .map(keyOf),
);
for (const citation of citationsIn(guidelines))
  if (citation.known !== 'from-memory') fromMemory.delete(keyOf(citation));

interface Printed {
  readonly publication: string;
  readonly section: string;
  readonly year: number;
  readonly verified?: unknown;
}

function isPrinted(value: object): value is Printed {
  return 'publication' in value && 'section' in value && 'year' in value;
}

/** Every citation printed anywhere in an answer. */
function printedIn(value: unknown): readonly Printed[] {
  if (typeof value !== 'object' || value === null) return [];
  const inside = Object.values(value).flatMap(printedIn);
  return isPrinted(value) ? [value, ...inside] : inside;
}

describe('a value from memory', () => {
  it('is marked as not verified wherever an answer prints its source', () => {
    let seen = 0;
    fc.assert(
      fc.property(stories, anyGuideline, ({ resources }, { id }) => {
        const answer = toAnswer(
          evaluateSoundly(build.bundleOf(resources), { asOf: storyAsOf, guideline: id }),
        );
        const uncertain = printedIn(answer).filter((citation) => fromMemory.has(keyOf(citation)));
        seen += uncertain.length;
        expect(uncertain.filter(({ verified }) => verified !== false)).toEqual([]);
      }),
      { numRuns: 80 },
    );
    expect(seen).toBeGreaterThan(0);
  });
});

const lowered = (limits: PressureLimits, by: number): PressureLimits => ({
  systolic: { ...limits.systolic, value: limits.systolic.value - by },
  diastolic: { ...limits.diastolic, value: limits.diastolic.value - by },
});

const leadingPlace = (timeline: Timeline, edition: Edition): number => {
  const { classification } = applyRules(timeline, buildGuideline(edition), timelineValues).assessment;
  return classifications.findIndex((item) => item === classification[0]);
};

describe('lower limits of raised pressure', () => {
  it('never give a lower leading class', () => {
    const editions = fc.constantFrom(frontline, isshp2021Edition, acog2020Edition, who2020Edition);
    fc.assert(
      fc.property(stories, editions, fc.integer({ min: 1, max: 15 }), (story, edition, by) => {
        const timeline = timelineOf(story);
        const strict = { ...edition, hypertension: lowered(edition.hypertension, by) };
        expect(leadingPlace(timeline, strict)).toBeLessThanOrEqual(leadingPlace(timeline, edition));
      }),
      { numRuns: 150 },
    );
  });
});

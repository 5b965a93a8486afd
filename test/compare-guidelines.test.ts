// One woman under every guideline, side by side; expected classes are those of the check cases.
import fc from 'fast-check';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compareGuidelines, differingGuidelines } from '../src/compare-guidelines.ts';
import { evaluate } from '../src/evaluate.ts';
import type { Comparison, Parting } from '../src/evaluation.ts';
import { guidelineIds } from '../src/guidelines/registry.ts';
import { differsLine, toComparisonAnswer, toComparisonText } from '../src/presenters/comparison.ts';
import { caseAsOf, caseBundle } from './support/case-bundle.ts';
import { readCaseFile } from './support/case-schema.ts';
import type { CaseRow } from './support/case-schema.ts';
import * as build from './support/resources.ts';
import { stories, storyAsOf } from './support/stories.ts';

const { rows } = readCaseFile(join(import.meta.dirname, 'cases', 'check-cases.json'));

function rowOf(id: string): CaseRow {
  const row = rows.find((each) => each.id === id);
  if (row === undefined) throw new Error(`There is no check case ${id}`);
  return row;
}

function compared(id: string): Comparison {
  const row = rowOf(id);
  return compareGuidelines(caseBundle(row.given), { asOf: row.asOf ?? caseAsOf(row.given) });
}

/** Leading class of each guideline the case names. */
function classesOf({ guidelines }: Comparison, ids: readonly string[]): Record<string, string | undefined> {
  return Object.fromEntries(
    ids.map((id) => [id, guidelines.find(({ stamp }) => stamp.id === id)?.classification[0]]),
  );
}

const sideBySide = ['A08', 'A09', 'A11', 'A12', 'A13', 'A15', 'A17', 'A30', 'A34'];

describe('the check cases side by side', () => {
  it.each(sideBySide)('%s: every guideline gives the class of the table', (id) => {
    const expected = Object.entries(rowOf(id).expect);
    expect(
      classesOf(
        compared(id),
        expected.map(([guideline]) => guideline),
      ),
    ).toEqual(
      Object.fromEntries(expected.map(([guideline, answer]) => [guideline, answer.classification?.[0]])),
    );
  });

  it('hold every registered guideline, in the order of the registry', () => {
    expect(compared('A13').guidelines.map(({ stamp }) => stamp.id)).toEqual(guidelineIds);
  });
});

function parting(id: string, question: string): Parting | undefined {
  return compared(id).partings.find((each) => each.question === question);
}

/** Limits shown for a guideline: "acog-strip >= 2 {grade} read". */
function limitsOf(part: Parting | undefined, guideline: string): readonly string[] {
  const answer = part?.answers.find((each) => each.guideline === guideline);
  return (answer?.thresholds ?? []).map(
    ({ id, comparator, value, unit, citation }) => `${id} ${comparator} ${value} ${unit} ${citation.known}`,
  );
}

describe('the reading on which guidelines part', () => {
  it('A09: a ratio of 31 mg/mmol, against 30 mg/mmol and 0.3 mg/mg (check cases A09, T 1.6)', () => {
    const part = parting('A09', 'protein-from-20-weeks');
    expect(limitsOf(part, 'isshp-2021')).toContain('isshp-protein-creatinine >= 30 mg/mmol read');
    expect(limitsOf(part, 'acog-2020')).toContain('acog-protein-creatinine >= 0.3 mg/mg read');
    expect(part?.answers.find(({ guideline }) => guideline === 'acog-2020')?.outcome).toBe('not-met');
  });

  it('A11 and A12: strip 1+ against 2+, a trace against the Indian deck (T 1.2)', () => {
    const one = parting('A11', 'protein-from-20-weeks');
    expect(limitsOf(one, 'nice-2023')).toEqual(['nice-strip >= 2 {grade} read']);
    expect(limitsOf(one, 'frontline')).toEqual(['frontline-strip >= 1 {grade} common-practice']);
    const trace = parting('A12', 'protein-from-20-weeks');
    expect(trace?.answers.filter(({ outcome }) => outcome === 'met').map((each) => each.guideline)).toEqual([
      'india-mohfw',
    ]);
  });

  it('A13: platelets 132, against below 150 and below 100 (T 1.3)', () => {
    const part = parting('A13', 'organ-from-20-weeks');
    expect(limitsOf(part, 'isshp-2021')).toEqual(['isshp-platelets < 150 10*9/L read']);
    expect(limitsOf(part, 'acog-2020')).toEqual(['acog-platelets < 100 10*9/L read']);
    const acog = part?.answers.find(({ guideline }) => guideline === 'acog-2020');
    expect(acog?.evidence.map(({ what, asCompared }) => [what, asCompared])).toEqual([
      ['platelets', '132 10*9/L'],
    ]);
  });

  it('A17: ALT 52, against above 40 and twice the upper limit (T 1.3)', () => {
    const part = parting('A17', 'organ-from-20-weeks');
    expect(limitsOf(part, 'isshp-2021')).toContain('isshp-transaminases > 40 U/L read');
    expect(limitsOf(part, 'acog-2020')).toEqual(['acog-transaminases >= 2 1 read']);
  });

  it('A08: no reading parts the classes, only the level at which a drug is started', () => {
    expect(compared('A08').partings.map(({ question }) => question)).toEqual(['start-drug']);
  });

  it('A01: nothing parts them, and the text says so', () => {
    expect(compared('A01').partings).toEqual([]);
    expect(toComparisonText(compared('A01'))).toContain('No question is answered differently');
  });
});

describe('the line in the default answer', () => {
  it('names who would differ, and the reading (A13)', () => {
    const differs = differingGuidelines(compared('A13').evaluation);
    expect(differs.find(({ id }) => id === 'acog-2020')).toEqual({
      id: 'acog-2020',
      classification: ['gestational-hypertension'],
      urgency: 'same-day',
      because: 'platelets 132 × 10⁹/L is not below 100 × 10⁹/L',
    });
    expect(differsLine(differs)).toContain(
      'acog-2020 would say gestational hypertension (same-day): platelets 132 × 10⁹/L is not below 100 × 10⁹/L',
    );
  });

  it('names the interval where the readings are too close (A04)', () => {
    const because = (id: string) =>
      compared('A04').evaluation.differs?.find((each) => each.id === id)?.because;
    expect(because('nice-2023')).toContain('no time between them');
    expect(because('sogc-2022')).toContain('at least 15 minutes apart');
  });

  it('is silent where every guideline agrees (A08, A30)', () => {
    expect(compared('A08').evaluation.differs).toEqual([]);
    expect(differsLine(compared('A30').evaluation.differs)).toBeUndefined();
  });

  it('is made only when asked for', () => {
    const { given } = rowOf('A13');
    const evaluation = evaluate(caseBundle(given), { asOf: caseAsOf(given) });
    expect(evaluation.differs).toBeUndefined();
    expect(differingGuidelines(evaluation)).toEqual(compared('A13').evaluation.differs);
  });
});

describe('the comparison as data and as text', () => {
  it('marks every limit as read or not verified', () => {
    const { partings = [] } = toComparisonAnswer(compared('A13'));
    const limits = partings.flatMap(({ answers }) => answers.flatMap((each) => each.thresholds ?? []));
    expect(limits.length).toBeGreaterThan(0);
    const verified = { read: true, 'from-memory': false, ours: undefined, 'common-practice': undefined };
    for (const { citation } of limits) expect(citation.verified).toBe(verified[citation.known]);
  });

  it('holds one line of the table for each guideline, at most 80 columns wide', () => {
    const text = toComparisonText(compared('A13'));
    for (const id of guidelineIds) expect(text).toContain(`  ${id}`);
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });
});

describe("each guideline's answer", () => {
  it('is independent of the others', () => {
    fc.assert(
      fc.property(stories, fc.constantFrom(...guidelineIds), ({ resources }, guideline) => {
        const bundle = build.bundleOf(resources);
        const alone = evaluate(bundle, { asOf: storyAsOf, guideline }).assessment;
        const row = compareGuidelines(bundle, { asOf: storyAsOf }).guidelines.find(
          ({ stamp }) => stamp.id === guideline,
        );
        expect([row?.classification, row?.urgency, row?.referral]).toEqual([
          alone.classification,
          alone.urgency,
          alone.referral,
        ]);
      }),
      { numRuns: 100 },
    );
  });

  it('is the same with and without the comparison', () => {
    fc.assert(
      fc.property(stories, fc.constantFrom(...guidelineIds), ({ resources }, guideline) => {
        const bundle = build.bundleOf(resources);
        const { differs, ...rest } = evaluate(bundle, { asOf: storyAsOf, guideline, compare: true });
        expect(differs).toBeDefined();
        expect(rest).toEqual(evaluate(bundle, { asOf: storyAsOf, guideline }));
      }),
      { numRuns: 50 },
    );
  });
});

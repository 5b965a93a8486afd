// The knowledge as data: every value cited, every id known, every rule with cases, RULES.md fresh.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../src/evaluate.ts';
import type { Threshold } from '../src/guidelines/guideline.ts';
import { timelineValues } from '../src/guidelines/registry.ts';
import { riskModels } from '../src/guidelines/risk-models.ts';
import { toAnswer } from '../src/presenters/answer.ts';
import { rulePageFiles } from '../src/presenters/rule-table.ts';
import { citationsIn, figuresIn, namesOf, thresholdsIn } from '../src/presenters/rule-sources.ts';
import { caseAsOf, caseBundle } from './support/case-bundle.ts';
import type { CaseRow } from './support/case-schema.ts';
import { everyCaseRow, guidelines, ruleCases, rulePages } from './support/rules-page.ts';
import { absentGroups, absentRows, knownGaps } from './support/case-coverage.ts';

const root = join(import.meta.dirname, '..');
const pages = rulePages(root);
const everything = [...guidelines, timelineValues, riskModels];
const numbers = [...thresholdsIn(everything), ...figuresIn(everything)];

describe('every value', () => {
  it('is there to be checked', () => {
    expect(numbers.length).toBeGreaterThan(150);
  });

  it('has a unit, a publication, a section and a year', () => {
    const bare = numbers.filter(
      ({ unit, citation }) =>
        unit === '' || citation.publication === '' || citation.section === '' || citation.year < 1950,
    );
    expect(bare.map(({ id }) => id)).toEqual([]);
  });

  it('that is ours or common practice says why', () => {
    const mute = citationsIn(everything).filter(
      ({ known, note = '' }) => (known === 'ours' || known === 'common-practice') && note === '',
    );
    expect(mute).toEqual([]);
  });

  it('of one id is one value, in every guideline', () => {
    const ids = numbers.map(({ id }) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });
});

const derived = /^(class|urgency|referral|prevention):(.+)$/;

function idsOf(kind: string): ReadonlySet<string> {
  return new Set(
    guidelines.flatMap((guideline): readonly string[] => {
      switch (kind) {
        case 'class':
          return guideline.classRules.map(({ id }) => id);
        case 'urgency':
          return guideline.urgencyRules.map(({ id }) => id);
        case 'referral':
          return guideline.referralRules.map(({ level }) => level);
        default:
          return (guideline.preventionRules ?? []).flatMap(({ id }) => [id, `${id}-due`, `${id}-unasked`]);
      }
    }),
  );
}

describe('every rule', () => {
  it.each(guidelines.map((guideline) => [guideline.id, guideline] as const))(
    '%s rests only on questions it asks, and on rules that some guideline has',
    (_id, guideline) => {
      const asked = new Set(guideline.questions.map(({ id }) => id));
      const rules = [
        ...guideline.classRules,
        ...guideline.urgencyRules,
        ...guideline.referralRules,
        ...guideline.actionRules,
        ...(guideline.medicineRules ?? []),
        ...(guideline.treatmentRules ?? []),
      ];
      const unknown = rules
        .flatMap(({ when }) => namesOf(when))
        .filter((name) => {
          const found = derived.exec(name);
          return found === null ? !asked.has(name) : !idsOf(found[1] ?? '').has(found[2] ?? '');
        });
      expect([...new Set(unknown)]).toEqual([]);
    },
  );

  it.each(guidelines.map((guideline) => [guideline.id, guideline] as const))(
    '%s gives each rule and each question one id of its own',
    (_id, { questions, classRules, urgencyRules, actionRules }) => {
      for (const list of [questions, classRules, urgencyRules, actionRules]) {
        const ids = list.map(({ id }) => id);
        expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
      }
    },
  );
});

describe('the cases', () => {
  it('leave no group of a class rule empty that is not listed as still absent', () => {
    const absent = absentGroups(guidelines[0], ruleCases(root));
    expect(absent.filter((gap) => !knownGaps.groups.includes(gap))).toEqual([]);
  });

  it('hold rows below, equal and above every pressure limit that is not listed as still absent', () => {
    const absent = absentRows(guidelines, everyCaseRow(root));
    expect(absent.filter((gap) => !knownGaps.rows.includes(gap))).toEqual([]);
  });
});

describe('a value from memory', () => {
  const fromMemory = new Set(
    thresholdsIn(guidelines)
      .filter(({ citation }) => citation.known === 'from-memory')
      .map(({ id }) => id),
  );

  it('exists, so that the next check has something to find', () => {
    expect(fromMemory.size).toBeGreaterThan(5);
  });

  it('is printed as not verified in every answer, under every guideline', () => {
    const unmarked = everyCaseRow(root).flatMap((row) =>
      guidelines.flatMap(({ id }) => printedLimits(row, id).filter((limit) => fromMemory.has(limit.id))),
    );
    expect(unmarked.length).toBeGreaterThan(0);
    expect(unmarked.filter(({ citation }) => citation.verified !== false)).toEqual([]);
  });
});

type Printed = Pick<Threshold, 'id'> & { readonly citation: { readonly verified?: boolean | undefined } };

function printedLimits(row: CaseRow, guideline: string): readonly Printed[] {
  const asOf = row.asOf ?? caseAsOf(row.given);
  const { findings = [] } = toAnswer(evaluate(caseBundle(row.given), { asOf, guideline }));
  return findings.flatMap(({ thresholds = [] }) => thresholds);
}

describe('the pages about the rules', () => {
  it.each(Object.entries(rulePageFiles))('%s are fresh: if this fails, run `npm run rules`', (name, file) => {
    const written = readFileSync(join(root, 'src', 'guidelines', file), 'utf8');
    expect(written === pages[name as keyof typeof pages]).toBe(true);
  });
});

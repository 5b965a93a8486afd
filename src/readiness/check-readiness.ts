// The readiness check: the flow run over an integrator's data, and what it had to say counted.
import { validateStrict } from '../bundle/strict/validate-strict.ts';
import type { Issue, SetAsideCode } from '../errors.ts';
import type { Prepared } from '../evaluate.ts';
import type { Evaluation } from '../evaluation.ts';
import type { SiteSetup } from '../site/site.ts';
import { adaptInput } from '../site/adapt-input.ts';
import type { Counted, ElementFound, Fault, OpenQuestion, Readiness } from './readiness.ts';
import { judgeEach, type Judged, type ReadinessOptions } from './judge-each.ts';
import { shapeOf } from './shapes.ts';

const mostExamples = 3;

/**
 * Would these data work?
 *
 * Given    input    as submitted
 *          options  as for `evaluate`; every woman is looked at unless one is named
 *          site     its own codes are read as ours first
 * Returns  counts with example places; never a clinical value
 * Throws   RequestError as `evaluate` does
 */
export function checkReadiness(input: unknown, options: ReadinessOptions, site?: SiteSetup): Readiness {
  const adapted = site === undefined ? { input, remarks: [] } : adaptInput(input, site);
  const women = judgeEach(adapted.input, options);
  const evaluations = women.map(({ evaluation }) => evaluation);
  const count = (outcome: 'used' | 'not-needed'): number =>
    new Set(
      evaluations.flatMap(({ account }) =>
        account.entries.filter((entry) => entry.outcome === outcome).map(({ path }) => path),
      ),
    ).size;
  return {
    women: women.length,
    classified: evaluations.filter(({ assessment }) => assessment.classification[0] !== 'cannot-classify')
      .length,
    received: evaluations[0]?.account.received ?? 0,
    used: count('used'),
    notNeeded: count('not-needed'),
    elements: elementsOf(women),
    setAside: setAsideOf(evaluations),
    neverAnswered: neverAnswered(evaluations),
    strict: faultsOf(validateStrict(input)),
    mapped: adapted.remarks.length,
  };
}

interface Named<Name extends string> {
  readonly name: Name;
  readonly example: string;
}

/** Counts by name, the most frequent first, with the first few places of each. */
function counted<Name extends string>(all: readonly Named<Name>[]): readonly Counted<Name>[] {
  const byName = new Map<Name, string[]>();
  for (const { name, example } of all) byName.set(name, [...(byName.get(name) ?? []), example]);
  return [...byName]
    .map(([name, places]) => ({ name, count: places.length, examples: places.slice(0, mostExamples) }))
    .sort((a, b) => b.count - a.count);
}

/** Elements the rules look at, in the order they are reported. */
const elements = [
  'blood pressure',
  'urine protein',
  'gestational age',
  'birth',
  'symptoms',
  'laboratory',
  'medicines',
  'conditions',
  'referrals',
  'contacts',
] as const;

function factsOf({ built, bundle }: Prepared): Readonly<Record<string, number>> {
  const { timeline } = built;
  return {
    'blood pressure':
      timeline.pressures.length + timeline.homePressures.length + timeline.meanPressures.length,
    'urine protein': timeline.urineProteins.length,
    'gestational age': timeline.pregnancy.dating === undefined ? 0 : 1,
    birth: timeline.pregnancy.birth === undefined ? 0 : 1,
    symptoms: timeline.symptoms.length,
    laboratory: timeline.laboratory.length,
    medicines: timeline.medicines.length,
    conditions: timeline.conditions.length,
    referrals: timeline.requests.length,
    contacts: bundle.usable.filter(({ resource }) => resource.resourceType === 'Encounter').length,
  };
}

function elementsOf(women: readonly Judged[]): readonly ElementFound[] {
  const sent = women.flatMap(({ prepared }) =>
    prepared.bundle.usable.flatMap(({ resource, path }) => {
      const shape = shapeOf(resource);
      return shape === undefined ? [] : [{ ...shape, path }];
    }),
  );
  const facts = women.map(({ prepared }) => factsOf(prepared));
  const found = elements.map((element): ElementFound => ({
    element,
    facts: facts.reduce((sum, each) => sum + (each[element] ?? 0), 0),
    shapes: counted(
      sent
        .filter((each) => each.element === element)
        .map(({ shape, path }) => ({ name: shape, example: path })),
    ),
  }));
  return found.flatMap((each) => (each.element === 'laboratory' ? [each, ...analytesOf(women)] : [each]));
}

/** Laboratory results by analyte, with the units they were sent in. */
function analytesOf(women: readonly Judged[]): readonly ElementFound[] {
  const results = women.flatMap(({ prepared }) => prepared.built.timeline.laboratory);
  const analytes = [...new Set(results.map(({ analyte }) => analyte))].sort();
  return analytes.map((analyte) => {
    const own = results.filter((result) => result.analyte === analyte);
    const shapes = counted(
      own.map(({ byUnit, source }) => ({ name: byUnit.sentUnit, example: source.reference })),
    );
    return { element: `laboratory: ${analyte}`, facts: own.length, shapes };
  });
}

function setAsideOf(evaluations: readonly Evaluation[]): Readiness['setAside'] {
  const seen = new Set<string>();
  const all = evaluations.flatMap(({ account }) =>
    account.entries.flatMap((entry) => {
      const isNew =
        entry.outcome === 'set-aside' && entry.code !== 'other-subject' && !seen.has(entry.expression);
      if (!isNew) return [];
      seen.add(entry.expression);
      return [{ name: entry.code, example: entry.expression, message: entry.message }];
    }),
  );
  return counted<SetAsideCode>(all).map((each) => ({
    ...each,
    message: all.find(({ name }) => name === each.name)?.message ?? '',
  }));
}

/** Open for at least one woman, and answered (met or not met) for none. */
function neverAnswered(evaluations: readonly Evaluation[]): readonly OpenQuestion[] {
  const findings = evaluations.flatMap(({ assessment }) => assessment.findings);
  const answered = new Set(
    findings
      .filter(({ outcome }) => outcome === 'met' || outcome === 'not-met')
      .map(({ question }) => question),
  );
  const open = findings.filter(
    ({ outcome, question }) => outcome === 'cannot-tell' && !answered.has(question),
  );
  return [...new Set(open.map(({ question }) => question))].flatMap((question) => {
    const all = open.filter((finding) => finding.question === question);
    const [first] = all;
    if (first === undefined) return [];
    const missing = first.missing?.what;
    return [{ question, asks: first.asks, ...(missing === undefined ? {} : { missing }), women: all.length }];
  });
}

function faultsOf(issues: readonly Issue[]): readonly Fault[] {
  return counted(issues.map(({ code, expression }) => ({ name: code, example: expression }))).flatMap(
    (each) => {
      const first = issues.find(({ code }) => code === each.name);
      return first === undefined ? [] : [{ ...each, severity: first.severity, message: first.message }];
    },
  );
}

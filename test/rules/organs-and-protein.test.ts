// What is new, what was there before 20 weeks, and what the sentences say of it. Clinical rules 1.2, 1.3, 2.4; X27; decisions 18, 19.
import type { Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import type { Finding } from '../../src/findings/finding.ts';
import * as build from '../support/resources.ts';

type Given = Parameters<typeof build.bundleOf>[0];
const asOf = '2025-03-10T15:00:00Z';
const at = '2025-03-10T09:00:00Z';
const noon = '2025-03-10T13:30:00Z';
const early = '2024-11-01T09:00:00Z';
const later = '2024-11-08T09:00:00Z';
const thirtyWeeks = build.gestationalAge('2025-03-10T08:00:00Z', 214);
const raised = [build.pressure(at, 146, 92), build.pressure(noon, 148, 94)];

function finding(question: string, given: Given, guideline = 'isshp-2021'): Finding | undefined {
  const { assessment } = evaluate(build.bundleOf(given), { asOf, guideline });
  return assessment.findings.find((one) => one.question === question);
}
const normal = [
  build.lab(at, 'creatinine', 60, 'umol/L'),
  build.lab(at, 'alt', 20, 'U/L'),
  build.lab(at, 'ast', 20, 'U/L'),
];
const platelets = (when: string, value: number) => build.lab(when, 'platelets', value, '10*9/L');
const bounded = (observation: Observation, comparator: '<' | '<=' | '>' | '>='): Observation => ({
  ...observation,
  ...(observation.valueQuantity === undefined
    ? {}
    : { valueQuantity: { ...observation.valueQuantity, comparator } }),
});

describe('a value beyond the limit before 20 weeks', () => {
  const organ = (...given: Given) => finding('organ-from-20-weeks', [thirtyWeeks, ...normal, ...given]);

  it('is not new, and that is said (X27)', () => {
    const found = organ(platelets(early, 140), platelets(at, 138));
    expect([found?.outcome, found?.because]).toEqual([
      'not-met',
      'Platelets was already beyond the limit before 20 weeks.',
    ]);
    expect(found?.evidence.map(({ asSent }) => asSent)).toContain('140 10*9/L');
  });

  it('is told from the newest of its own kind', () => {
    const other = build.lab(later, 'alt', 20, 'U/L');
    expect(organ(platelets(early, 140), other, platelets(at, 138))?.outcome).toBe('not-met');
    expect(organ(platelets(early, 140), platelets(later, 220), platelets(at, 138))?.outcome).toBe('met');
  });

  it('within it before makes it new', () => {
    expect(organ(platelets(early, 220), platelets(at, 138))?.outcome).toBe('met');
  });

  it('of everything measured and normal the sentence says that no sign was found', () => {
    expect(organ(platelets(at, 250))?.because).toBe('No sign of organ involvement in what was measured.');
  });

  it('of what was not measured the sentence names each test once', () => {
    expect(finding('organ-from-20-weeks', [thirtyWeeks], 'frontline')?.because).toBe(
      'Not measured: platelets, creatinine, ALT.',
    );
    expect(finding('organ-from-20-weeks', [thirtyWeeks, build.lab(at, 'ast', 20, 'U/L')])?.because).toBe(
      'Not measured: platelets, creatinine.',
    );
  });
});

describe('a haemolysed sample', () => {
  it('counts, and asks to be repeated (X29)', () => {
    const low = { ...platelets(at, 120), note: [{ text: 'haemolysed' }] };
    const found = finding('organ-from-20-weeks', [thirtyWeeks, low]);
    expect([found?.outcome, found?.because]).toEqual([
      'met',
      'Platelets 120 10*9/L (haemolysed sample: repeat now).',
    ]);
  });
});

describe('HELLP', () => {
  const asked = (...given: Given) => {
    const found = finding('hellp-criteria', [thirtyWeeks, ...given], 'frontline');
    return [found?.outcome, found?.because];
  };

  it('is no question where nothing was measured, and open where platelets were not', () => {
    expect(asked()).toEqual(['not-applicable', 'No laboratory values were received.']);
    expect(asked(build.lab(at, 'creatinine', 60, 'umol/L'))[0]).toBe('not-applicable');
    expect(asked(build.lab(at, 'ast', 90, 'U/L'))).toEqual(['cannot-tell', 'Platelets were not measured.']);
  });

  it('names what is still to be measured', () => {
    expect(asked(platelets(at, 80))).toEqual([
      'cannot-tell',
      'What was measured fits Mississippi class 2; not measured: AST, ALT, LDH.',
    ]);
    expect(asked(platelets(at, 80), build.lab(at, 'alt', 90, 'U/L'))[1]).toBe(
      'What was measured fits Mississippi class 2; not measured: LDH.',
    );
    expect(
      asked(platelets(at, 80), build.lab(at, 'ast', 90, 'U/L'), build.lab(at, 'ldh', 500, 'U/L'))[1],
    ).toBe('What was measured fits Tennessee triad; not measured: bilirubin.');
  });

  it('of a haemolysed sample is not put off (decision 20)', () => {
    const ldh = { ...build.lab(at, 'ldh', 700, 'U/L'), note: [{ text: 'haemolysed' }] };
    expect(asked(platelets(at, 80), build.lab(at, 'ast', 90, 'U/L'), ldh)).toEqual([
      'met',
      'Mississippi class 2 and Tennessee triad. The sample was haemolysed: repeat it now, and do not wait for it.',
    ]);
  });
});

describe('a ratio that is only a bound', () => {
  const protein = (guideline: string, value: number, comparator: '<' | '<=' | '>' | '>=', unit = 'mg/mmol') =>
    finding(
      'protein-from-20-weeks',
      [thirtyWeeks, ...raised, bounded(build.ratio(at, value, unit), comparator)],
      guideline,
    )?.outcome;

  it.each([
    ['isshp-2021', 30, '>=', 'met'],
    ['isshp-2021', 25, '>', 'cannot-tell'],
    ['isshp-2021', 30, '<', 'not-met'],
    ['isshp-2021', 40, '<', 'cannot-tell'],
    ['frontline', 30, '>=', 'met'],
    ['frontline', 30, '<', 'not-met'],
    // Below 0.3 mg/mg but perhaps not below 30 mg/mmol: open, whichever limit is asked first.
    ['frontline', 32, '<', 'cannot-tell'],
    ['frontline', 20, '>', 'cannot-tell'],
  ] as const)('%s: %i %s mg/mmol the other way round: %s', (guideline, value, comparator, outcome) => {
    expect(protein(guideline, value, comparator)).toBe(outcome);
  });
});

describe('protein known before 20 weeks', () => {
  const asked = (...given: Given) => {
    const found = finding('protein-from-20-weeks', [thirtyWeeks, ...raised, ...given]);
    return [found?.outcome, found?.because];
  };
  const ratio = (when: string, value: number, unit = 'mg/mmol') => build.ratio(when, value, unit);

  it('counts as new once it has doubled, and that is said', () => {
    expect(asked(ratio(early, 40), ratio(at, 90))).toEqual([
      'met',
      'urine protein/creatinine ratio: 90 mg/mmol at 2025-03-10T09:00:00Z. It has at least doubled since before 20 weeks.',
    ]);
    expect(asked(ratio(early, 40), ratio(at, 60))[1]).toContain(
      'Protein was there before 20 weeks and has not doubled.',
    );
  });

  it('is compared with the newest significant result of those weeks', () => {
    expect(asked(ratio(early, 60), ratio(later, 40), ratio(at, 90))[0]).toBe('met');
    expect(asked(ratio(early, 40), ratio(later, 60), ratio(at, 90))[0]).toBe('not-met');
    expect(asked(ratio(early, 40), ratio(later, 10), ratio(at, 90))[0]).toBe('met');
  });

  it('is compared in the unit in which it was known', () => {
    expect(asked(ratio(early, 0.4, 'mg/mg'), ratio(at, 80))[0]).toBe('not-met');
    expect(asked(ratio(early, 0.4, 'mg/mg'), ratio(at, 95))[0]).toBe('met');
  });

  it('of another kind cannot be compared', () => {
    const reason = 'Protein was known before 20 weeks and the two cannot be compared.';
    expect(asked(build.strip(early, '2+'), ratio(at, 90))[1]).toContain(reason);
    expect(asked(ratio(early, 40), build.strip(at, '3+'))[1]).toContain(reason);
    expect(asked(ratio(early, 40), build.protein24h(at, 900))[1]).toContain(reason);
    expect(asked(build.condition('chronic-kidney-disease', '2020-01-01'), ratio(at, 90))[1]).toContain(
      reason,
    );
  });

  it('not significant then is no baseline, nor is protein of an earlier pregnancy', () => {
    expect(asked(ratio(early, 10), ratio(at, 40))[0]).toBe('met');
    expect(asked(ratio('2022-11-01T09:00:00Z', 40), ratio(at, 50))[0]).toBe('met');
  });
});

describe('urine of another part of the pregnancy', () => {
  it('does not speak for this one', () => {
    const given = [thirtyWeeks, ...raised, build.strip(early, '3+')];
    expect(finding('protein-from-20-weeks', given)?.outcome).toBe('cannot-tell');
    const before = [thirtyWeeks, ...raised, build.strip('2022-11-01T09:00:00Z', '3+')];
    expect(finding('protein-now', before)?.outcome).toBe('cannot-tell');
  });

  it('is no question where no reading and no urine belong to it', () => {
    expect(finding('protein-after-birth', [thirtyWeeks, ...raised])?.outcome).toBe('not-applicable');
    expect(finding('protein-now', [thirtyWeeks, ...raised])?.because).toBe(
      'No urine protein result was received.',
    );
  });

  it('of a kind that decides nothing here is said to be so', () => {
    const found = finding(
      'protein-from-20-weeks',
      [thirtyWeeks, ...raised, build.albuminRatio(at, 20, 'mg/mmol')],
      'acog-2020',
    );
    expect([found?.outcome, found?.because, found?.evidence.length]).toEqual([
      'cannot-tell',
      'The urine results received are of a kind that decides nothing here.',
      1,
    ]);
  });

  it('the newest day decides today: an older positive falls away', () => {
    const protein = (...given: Given) => finding('protein-now', [thirtyWeeks, ...given])?.outcome;
    const lastWeek = '2025-03-04T09:00:00Z';
    expect(protein(build.strip(lastWeek, '3+'), build.strip(at, 'negative'))).toBe('not-met');
    expect(protein(build.strip(lastWeek, 'negative'), build.strip(at, '3+'))).toBe('met');
    expect(protein(build.strip(at, '3+'), build.strip(noon, 'negative'))).toBe('met');
  });

  it('a ratio of the same day takes the place of a strip, before or after it', () => {
    const protein = (...given: Given) =>
      finding('protein-from-20-weeks', [thirtyWeeks, ...raised, ...given])?.outcome;
    expect(protein(build.strip(noon, '3+'), build.ratio(at, 10, 'mg/mmol'))).toBe('not-met');
    expect(protein(build.strip(at, '3+'), build.ratio(noon, 10, 'mg/mmol'))).toBe('not-met');
    expect(protein(build.strip(noon, '3+'), build.ratio('2025-03-09T09:00:00Z', 10, 'mg/mmol'))).toBe('met');
    expect(protein(build.strip(at, '3+'), bounded(build.ratio(noon, 40, 'mg/mmol'), '<'))).toBe('met');
  });
});

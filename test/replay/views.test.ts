// At each contact the replay says what the service says: the same bytes.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FhirResource } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import { toAnswer } from '../../src/presenters/answer.ts';
import { toCards } from '../../src/presenters/cds-cards.ts';
import { assembleWoman, readShared } from '../../src/replay/assemble-woman.ts';
import { assessWoman, type AssessOptions } from '../../src/replay/assess-woman.ts';
import { openExtractor } from '../../src/replay/extract.ts';
import { pour } from '../../src/replay/read-source.ts';
import { openFastFilter } from '../../src/replay/simd-filter.ts';
import type { SpooledLine } from '../../src/replay/spool.ts';
import { readAttendances } from '../support/day-assessment.ts';
import { exportOf } from './clinic.ts';
import { about, folderOf, lines, pregnancy, remove, run } from './runs.ts';

const usual: AssessOptions = { guidelines: ['frontline'], every: 'visit', everyone: true };

/** The kept lines of some resources, as the first stage hands them on. */
function extracted(resources: readonly unknown[]): SpooledLine[] {
  const kept: SpooledLine[] = [];
  const extractor = openExtractor({
    filter: openFastFilter(),
    readsEveryLine: false,
    keep: (key, json) => kept.push({ key, file: 0, json }),
  });
  pour(Buffer.from(lines(resources)), extractor);
  extractor.end();
  return kept;
}

function historyOf(key: string, resources: readonly unknown[], options: AssessOptions = usual) {
  const kept = extracted(resources);
  const shared = readShared(kept.filter((line) => line.key === '*').map(({ json }) => json));
  const { input } = assembleWoman(
    key,
    kept.filter((line) => line.key === key),
    shared,
  );
  return { input, history: assessWoman(input, key, options) };
}

const women: readonly (readonly [string, readonly FhirResource[]])[] = [
  ['raised, then confirmed', pregnancy({ '2024-05-01': [[150, 95]], '2024-05-03': [[152, 96]] })],
  [
    'severe, twice in a visit',
    pregnancy({
      '2024-04-01': [[118, 70]],
      '2024-06-01': [
        [172, 112],
        [170, 111],
      ],
    }),
  ],
  [
    'raised before twenty weeks',
    pregnancy({ '2024-02-01': [[144, 92]], '2024-02-20': [[146, 93]], '2024-07-01': [[128, 84]] }),
  ],
];

describe('the view at each visit', () => {
  it.each(women)('is the answer of the service: %s', (_name, resources) => {
    const { input, history } = historyOf('Patient/ada', about('ada', resources));
    expect(history.visits.length).toBeGreaterThan(1);
    for (const { asOf, evaluation } of history.visits) {
      const live = evaluate(input, { asOf, guideline: 'frontline', subject: 'Patient/ada' });
      expect(JSON.stringify(toAnswer(evaluation))).toBe(JSON.stringify(toAnswer(live)));
    }
  });

  it('sees nothing of later visits', () => {
    const days = { '2024-05-01': [[150, 95]], '2024-05-03': [[172, 112]] } as const;
    const { history } = historyOf('Patient/ada', about('ada', pregnancy(days)));
    expect(history.visits.map(({ evaluation }) => evaluation.assessment.classification[0])).toEqual([
      'raised-unconfirmed',
      'severe-unconfirmed',
    ]);
  });

  it('is the answer of the service for every attendance of the clinic', () => {
    for (const attendance of readAttendances()) {
      const key = `Patient/line-${attendance.line}`;
      const { input, history } = historyOf(key, exportOf(attendance));
      for (const { asOf, evaluation } of history.visits) {
        const live = evaluate(input, { asOf, subject: key });
        expect(JSON.stringify(toAnswer(evaluation))).toBe(JSON.stringify(toAnswer(live)));
        expect(JSON.stringify(toCards(evaluation))).toBe(JSON.stringify(toCards(live)));
      }
    }
  });
});

it('the view of the end answers once, as of the last contact', () => {
  const resources = about('ada', women[0]?.[1] ?? []);
  const { history } = historyOf('Patient/ada', resources, { ...usual, every: 'end' });
  expect(history.visits.map(({ evaluation }) => evaluation.asOf)).toEqual(['2024-05-03T10:00:00.000Z']);
});

it('a window leaves out visits before and after it', () => {
  const resources = about('ada', women[2]?.[1] ?? []);
  const { history } = historyOf('Patient/ada', resources, {
    ...usual,
    from: Date.parse('2024-02-10T00:00:00Z'),
    to: Date.parse('2024-06-30T00:00:00Z'),
  });
  expect(history.visits.map(({ evaluation }) => evaluation.asOf)).toEqual(['2024-02-20T10:00:00.000Z']);
});

/** Everything that was decided; the account differs by what was left unread. */
function decided(input: unknown, asOf: number, subject: string): string {
  const { account: _account, ...answer } = toAnswer(evaluate(input, { asOf, subject }));
  return JSON.stringify(answer);
}

it('lines left unread change no answer: real bundles of several women', () => {
  const data = join(import.meta.dirname, '..', 'data');
  const bundles = ['cms1028-obstetric-part-a.bundles.ndjson', 'cms22-bp-screening.bundles.ndjson'].flatMap(
    (name) =>
      readFileSync(join(data, 'ecqm-test-bundles', name), 'utf8')
        .split('\n')
        .filter((line) => line !== '')
        .map((line) => JSON.parse(line) as { entry: { resource: FhirResource }[] }),
  );
  let compared = 0;
  for (const { entry } of bundles) {
    const resources = entry.map(({ resource }) => resource);
    const keys = new Set(
      extracted(resources)
        .map(({ key }) => key)
        .filter((key) => key.startsWith('Patient/')),
    );
    const [key] = keys;
    if (key === undefined || keys.size > 1) continue;
    const { history, input } = historyOf(key, resources);
    for (const { asOf } of history.visits) {
      expect(decided(input, asOf, key)).toBe(decided(resources, asOf, key));
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThan(10);
});

it('a result line names class, urgency, cards, what is missing, and the evidence', async () => {
  const folder = folderOf({ 'a.ndjson': lines(about('ada', women[0]?.[1] ?? [])) });
  const { results, files } = await run(folder, { guidelines: ['frontline', 'nice-2023'] });
  remove(folder);
  const [first] = results;
  expect(first).toMatchObject({
    woman: 'Patient/ada',
    at: '2024-05-01T10:00:00.000Z',
    guideline: 'frontline',
    classification: ['raised-unconfirmed'],
    urgency: 'same-day',
    period: 'from-20-weeks',
    reading: 'Observation/ada-2',
  });
  expect(first?.['evidence']).toContain('Observation/ada-2');
  expect(first?.['others']).toHaveLength(1);
  expect(files['changes.csv']).toMatch(/^woman,at,guideline/);
});

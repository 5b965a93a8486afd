// Pressures of which a half may be higher than its number, or was not heard: they raise alarms and never reassure.
import type { Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/index.ts';
import * as build from '../support/resources.ts';

const at = '2025-03-10T11:00:00Z';
const dated = build.observation(build.loinc('11778-8'), '2025-03-05T10:00:00Z', {
  valueDateTime: '2025-05-19',
});
const answerTo = (...resources: readonly Observation[]) =>
  evaluate(build.bundleOf([dated, build.strip(at, 'negative'), ...resources]), {
    asOf: '2025-03-10T12:00:00Z',
  });
const half = (code: string, value: number, comparator?: '>' | '>=') => ({
  code: build.loinc(code),
  valueQuantity: {
    ...build.quantity(value, 'mm[Hg]'),
    ...(comparator === undefined ? {} : { comparator }),
  },
});
const panel = (...component: readonly ReturnType<typeof half>[]): Observation =>
  build.observation(build.loinc('85354-9'), at, { component: [...component] });
const rulesOf = (answer: ReturnType<typeof answerTo>): readonly string[] =>
  (answer.quality ?? []).map(({ rule }) => rule);

describe('F-V04: "at least" is never dropped', () => {
  it.each([
    ['>130/85', panel(half('8480-6', 130, '>'), half('8462-4', 85))],
    ['120/>80', panel(half('8480-6', 120), half('8462-4', 80, '>'))],
    ['120/>=80', panel(half('8480-6', 120), half('8462-4', 80, '>='))],
  ])('%s cannot be called normal, and is repeated the same day', (shown, reading) => {
    const answer = answerTo(reading);
    expect(answer).toMatchObject({ classification: ['cannot-classify'], urgency: 'same-day' });
    expect(answer.actions?.map(({ id }) => id)).toContain('repeat-unusable-reading');
    expect(JSON.stringify(answer)).toContain(shown);
  });

  it('>155/85 is raised and may be severe', () => {
    const answer = answerTo(panel(half('8480-6', 155, '>'), half('8462-4', 85)));
    expect(answer).toMatchObject({ classification: ['raised-unconfirmed'], urgency: 'emergency' });
  });

  it('>=160/85 is severe', () => {
    const answer = answerTo(panel(half('8480-6', 160, '>='), half('8462-4', 85)));
    expect(answer).toMatchObject({ classification: ['severe-unconfirmed'], urgency: 'emergency' });
  });

  it('does not close a severe reading', () => {
    const severe = build.pressure('2025-03-10T10:00:00Z', 164, 100);
    const answer = answerTo(severe, panel(half('8480-6', 130, '>'), half('8462-4', 85)));
    expect(answer).toMatchObject({ classification: ['severe-unconfirmed'], urgency: 'emergency' });
  });

  it('is told with its place and its mend', () => {
    const { account } = answerTo(panel(half('8480-6', 130, '>'), half('8462-4', 85)));
    expect(account.issues).toEqual([
      expect.objectContaining({
        expression: 'Bundle.entry[3].resource.component[0].valueQuantity.comparator',
        message: 'Sent with >: the pressure was that or higher. Measure again and send the number.',
      }),
    ]);
  });
});

describe('Q8: a palpated pressure has no diastolic half', () => {
  const byMethod = (systolic: number, diastolic: number): Observation => ({
    ...build.pressure(at, systolic, diastolic),
    method: build.snomed('113011001'),
  });
  const byCode = (systolic: number, diastolic: number): Observation =>
    panel(half('8479-8', systolic), half('8462-4', diastolic));

  it.each([
    ['method', byMethod],
    ['code', byCode],
  ])('130/78 palpated by its %s is not called normal, and asks for a stethoscope', (_, sent) => {
    const answer = answerTo(sent(130, 78));
    expect(answer).toMatchObject({ classification: ['cannot-classify'], urgency: 'routine' });
    expect(rulesOf(answer)).toContain('systolic-palpated-only');
  });

  it.each([
    ['method', byMethod],
    ['code', byCode],
  ])('a raised half of one palpated by its %s keeps its urgency', (_, sent) => {
    expect(answerTo(sent(130, 95))).toMatchObject({ urgency: 'same-day' });
    expect(answerTo(sent(170, 78))).toMatchObject({
      classification: ['severe-unconfirmed'],
      urgency: 'emergency',
    });
  });

  it('a pressure that was heard in the same visit gives the diastolic', () => {
    const heard = build.pressure('2025-03-10T11:05:00Z', 118, 76);
    expect(answerTo(byMethod(130, 78), heard)).toMatchObject({
      classification: ['normotensive'],
      urgency: 'routine',
    });
  });

  it('does not close a severe reading', () => {
    const severe = build.pressure('2025-03-10T10:00:00Z', 164, 100);
    expect(answerTo(severe, byMethod(130, 78))).toMatchObject({
      classification: ['severe-unconfirmed'],
      urgency: 'emergency',
    });
  });
});

// Every list of a timeline is oldest first; facts of one time by what was sent, then by reference; undated ones last.
import type { FhirResource } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { sortFacts, sourceText } from '../../src/timeline/sort-facts.ts';
import type { Timeline } from '../../src/timeline/timeline.ts';
import {
  condition,
  homeMean,
  lab,
  pressure,
  snomed,
  strip,
  stripSign,
  symptom,
  takes,
  withoutUnit,
  woman,
} from '../support/resources.ts';
import { built } from './build.ts';
import { moment } from './received.ts';

const days = ['2026-01-30', '2026-01-28', '2026-01-31', '2026-01-29'];
const request = (authoredOn: string): FhirResource => ({
  resourceType: 'ServiceRequest',
  status: 'active',
  intent: 'order',
  subject: { reference: woman },
  authoredOn,
  code: snomed('183548008'),
});
const mean = (day: string): FhirResource =>
  homeMean({
    from: `${day}T07:00:00Z`,
    to: `${day}T20:00:00Z`,
    systolicMmHg: 138,
    diastolicMmHg: 87,
    readings: 2,
  });

type ListName = {
  [Name in keyof Timeline]: Timeline[Name] extends readonly unknown[] ? Name : never;
}[keyof Timeline];
type Row = readonly [ListName, (day: string) => FhirResource];

const lists: readonly Row[] = [
  ['pressures', (day) => pressure(day, 150, 95)],
  ['homePressures', (day) => pressure(day, 150, 95, { setting: 'home' })],
  ['meanPressures', mean],
  ['unusablePressures', (day) => withoutUnit(pressure(day, 150, 95))],
  ['urineProteins', (day) => strip(day, '1+')],
  ['urineSigns', (day) => stripSign(day, 'nitrite', 'positive')],
  ['laboratory', (day) => lab(day, 'platelets', 200, '10*9/L')],
  ['symptoms', (day) => symptom(day, 'headache', true)],
  ['conditions', (day) => condition('epilepsy', day)],
  ['medicines', (day) => takes('labetalol', day)],
  ['requests', request],
];

const referencesIn = (name: ListName, sent: readonly FhirResource[]): readonly (string | undefined)[] =>
  built(sent).timeline[name].map((fact) =>
    'sources' in fact ? fact.sources[0]?.reference : fact.source.reference,
  );
/** The later the day, the earlier the id: only the time can put them right. */
const idOn = (day: string) => String(40 - Number(day.slice(8)));
const named = (make: (day: string) => FhirResource) => (day: string) => ({
  ...make(day),
  id: `x${idOn(day)}`,
});
const endOf = (reference: string | undefined) => reference?.replace(/^\w+\/x/, '');

describe('the lists of a timeline', () => {
  it.each(lists)('%s are oldest first, whatever the order received', (name, make) => {
    const sorted = [...days].sort().map(idOn);
    expect(referencesIn(name, days.map(named(make))).map(endOf)).toEqual(sorted);
    expect(referencesIn(name, [...days].reverse().map(named(make))).map(endOf)).toEqual(sorted);
  });

  // copies of one observation are one; these may be recorded twice
  it.each(lists.filter(([name]) => ['conditions', 'medicines', 'requests'].includes(name)))(
    '%s of one time are ordered by reference',
    (name, make) => {
      const sent = ['c', 'a', 'b'].map((id) => ({ ...make('2026-01-30'), id: `x${id}` }));
      expect(referencesIn(name, sent).map(endOf)).toEqual(['a', 'b', 'c']);
    },
  );

  it.each<[ListName, readonly FhirResource[], readonly string[]]>([
    ['pressures', [pressure(days[0] ?? '', 150, 95), pressure(days[0] ?? '', 140, 95)], ['140/95', '150/95']],
    [
      'homePressures',
      [150, 140].map((systolic) => pressure('2026-01-30', systolic, 95, { setting: 'home' })),
      ['140/95', '150/95'],
    ],
    [
      'unusablePressures',
      [150, 140].map((systolic) => withoutUnit(pressure('2026-01-30', systolic, 95))),
      ['140/95', '150/95'],
    ],
    ['urineProteins', [strip('2026-01-30', 'trace'), strip('2026-01-30', '1+')], ['1+', 'trace']],
    [
      'urineSigns',
      [stripSign('2026-01-30', 'nitrite', 'positive'), stripSign('2026-01-30', 'nitrite', '1+')],
      ['1+', 'positive'],
    ],
  ])('%s of one time are ordered by what was sent', (name, sent, words) => {
    const found = built(sent).timeline[name].map((fact) => ('asSent' in fact ? fact.asSent : ''));
    expect(found.map((text) => text.replace(/ .*/, ''))).toEqual(words);
  });

  it('conditions count from their onset, else from when they were recorded', () => {
    const sent = [
      { ...condition('epilepsy', '2026-01-30'), id: 'xlate' },
      { ...condition('stroke', '2026-01-10'), id: 'xonset', recordedDate: '2026-01-31' },
    ];
    const { onsetDateTime: _, ...recorded } = condition('hellp', '2026-01-20');
    const { onsetDateTime: _none, recordedDate: _too, ...undated } = condition('eclampsia', '2026-01-01');
    const all = [{ ...undated, id: 'xundated' }, ...sent, { ...recorded, id: 'xrecorded' }];
    expect(referencesIn('conditions', all).map(endOf)).toEqual(['onset', 'recorded', 'late', 'undated']);
  });

  it('facts of one source and time stand by their name', () => {
    const several = { ...symptom('2026-01-30', 'headache', true), code: { text: 'nausea and vomiting' } };
    expect(built([several]).timeline.symptoms.map((fact) => fact.symptom)).toEqual(['nausea', 'vomiting']);
    const two = [symptom('2026-01-30', 'vomiting', true), symptom('2026-01-30', 'headache', true)];
    expect(built(two).timeline.symptoms.map((fact) => fact.symptom)).toEqual(['headache', 'vomiting']);
    const results = [lab('2026-01-30', 'urate', 300, 'umol/L'), lab('2026-01-30', 'alt', 20, 'U/L')];
    expect(built(results).timeline.laboratory.map(({ analyte }) => analyte)).toEqual(['alt', 'urate']);
    const taken = [takes('nifedipine', '2026-01-30'), takes('labetalol', '2026-01-30')];
    expect(built(taken).timeline.medicines.map(({ medicine }) => medicine)).toEqual([
      'labetalol',
      'nifedipine',
    ]);
  });
});

describe('sorting facts', () => {
  interface Fact {
    readonly day?: string;
    readonly text: string;
  }
  const order = (...facts: readonly Fact[]) =>
    sortFacts(
      facts,
      ({ day }) => (day === undefined ? undefined : moment(day)),
      ({ text }) => text,
    ).map(({ text }) => text);

  it.each<[string, readonly Fact[], readonly string[]]>([
    [
      'by time',
      [
        { day: '2026-01-02', text: 'a' },
        { day: '2026-01-01', text: 'b' },
      ],
      ['b', 'a'],
    ],
    ['undated last', [{ text: 'a' }, { day: '2026-01-01', text: 'b' }], ['b', 'a']],
    ['undated last, sent last', [{ day: '2026-01-01', text: 'b' }, { text: 'a' }], ['b', 'a']],
    ['undated by text', [{ text: 'c' }, { text: 'a' }, { text: 'b' }], ['a', 'b', 'c']],
    [
      'of one time by text',
      ['b', 'd', 'a', 'c'].map((text) => ({ day: '2026-01-01', text })),
      ['a', 'b', 'c', 'd'],
    ],
    [
      'a whole day after its first moment',
      [
        { day: '2026-01-01', text: 'a' },
        { day: '2026-01-01T00:00:00Z', text: 'b' },
      ],
      ['b', 'a'],
    ],
  ])('%s', (_, facts, expected) => {
    expect(order(...facts)).toEqual(expected);
  });

  it('by what was sent before the sources, all of which count', () => {
    const source = (reference: string) => ({ reference, preliminary: false });
    expect(sourceText({ asSent: 'x', source: source('A/1') })).toBe('x A/1');
    expect(sourceText({ asSent: 'x', sources: [source('A/1'), source('A/2')] })).toBe('x A/1 A/2');
  });
});

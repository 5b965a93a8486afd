// The answers beside the diagnoses in the record: how early, and how far they agree.
import { diagnosisGroups } from './diagnoses.ts';
import { hundredfold, proportionText, wilson } from './proportion.ts';
import type { Section } from './section.ts';
import { below, countOf, type Tally } from './tally.ts';

const leadBands: readonly (readonly [label: string, from: number, to: number])[] = [
  ['card after the diagnosis', -Infinity, -1],
  ['same day', 0, 0],
  ['1 to 7 days before', 1, 7],
  ['8 to 28 days before', 8, 28],
  ['more than 28 days before', 29, Infinity],
];

/** How long before the recorded diagnosis the first card would have come. */
export function leadTimeSection(tally: Tally, every: 'visit' | 'end'): Section {
  const days = [...below(tally, 'lead-days')].map(([day, women]) => ({ day: Number(day), women }));
  const rows = leadBands.map(([label, from, to]) => {
    const women = days
      .filter(({ day }) => day >= from && day <= to)
      .reduce((sum, each) => sum + each.women, 0);
    return { label, women };
  });
  const without = countOf(tally, 'lead-without-card');
  return {
    id: 'lead-time',
    title: 'Lead time from the first card to the recorded diagnosis',
    sentences: [
      'Women with a recorded hypertensive disorder that has a date. First card: the first of at least a warning.',
      ...(every === 'end'
        ? ['Judged at the end only: ask for --every visit to see when the first card came.']
        : []),
    ],
    tables: [
      {
        id: 'lead-time',
        title: 'Women by lead time',
        columns: ['first card', 'women'],
        rows: [...rows.map(({ label, women }) => [label, women]), ['no card', without]],
      },
    ],
    charts: [
      {
        table: 'lead-time',
        title: 'Lead time',
        unit: 'women',
        bars: [
          ...rows.map(({ label, women }) => ({ label, value: women })),
          { label: 'no card', value: without },
        ],
      },
    ],
  };
}

/** The answers beside the diagnoses in the record. */
export function agreementSection(tally: Tally): Section {
  const groups = diagnosisGroups.map(({ id, title }) => {
    const count = (name: string): number => countOf(tally, 'agreement', id, name);
    const both = count('recorded-found');
    const onlyRecorded = count('recorded-not');
    const onlyFound = count('not-found');
    return {
      title,
      both,
      onlyRecorded,
      onlyFound,
      neither: count('not-not'),
      sensitivity: wilson(both, both + onlyRecorded),
      predictive: wilson(both, both + onlyFound),
    };
  });
  return {
    id: 'agreement',
    title: 'Agreement with recorded diagnoses',
    sentences: [
      'How far the answer at the last visit and the diagnosis in the record agree. The record is no proof of what was true: diagnoses are missed, mistaken, and recorded late.',
      'Each woman was judged from her chart without the recorded disorders themselves. Intervals are 95 % Wilson score intervals.',
    ],
    tables: [
      {
        id: 'agreement',
        title: 'Confusion matrix, sensitivity and positive predictive value against the record',
        columns: [
          'group',
          'recorded and found',
          'recorded only',
          'found only',
          'neither',
          'sensitivity',
          'positive predictive value',
        ],
        rows: groups.map((group) => [
          group.title,
          group.both,
          group.onlyRecorded,
          group.onlyFound,
          group.neither,
          proportionText(group.sensitivity),
          proportionText(group.predictive),
        ]),
      },
    ],
    charts: [
      {
        table: 'agreement',
        title: 'Of women with the diagnosis in the record, share for whom the answer named it',
        unit: '%',
        bars: groups.map(({ title, sensitivity }) => ({
          label: title,
          value: hundredfold(sensitivity.share),
        })),
      },
    ],
  };
}

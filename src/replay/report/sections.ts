// The report in sections, made of a tally.
import { guidelineOf } from '../../guidelines/registry.ts';
import { measureDefinitions } from '../../guidelines/measures.ts';
import { urgencies } from '../../guidelines/guideline.ts';
import { hundredfold, percent, proportionText, wilson } from './proportion.ts';
import { agreementSection, leadTimeSection } from './diagnosis-sections.ts';
import { qualitySection } from './quality-section.ts';
import type { Section } from './section.ts';
import { below, countOf, type Tally } from './tally.ts';

export interface ReportFrame {
  /** The first one decides; the others are set beside it. */
  readonly guidelines: readonly string[];
  readonly every: 'visit' | 'end';
}

/**
 * All sections.
 *
 * Given    tally  sums over every woman
 *          frame  which guidelines, which view
 * Returns  in reading order; each with a table for every chart
 * Throws   never
 */
export function sectionsOf(tally: Tally, frame: ReportFrame): readonly Section[] {
  return [
    burdenSection(tally),
    leadTimeSection(tally, frame.every),
    agreementSection(tally),
    ...(frame.guidelines.length > 1 ? [guidelineSection(tally, frame)] : []),
    followUpSection(tally),
    qualitySection(tally, guidelineOf(frame.guidelines[0] ?? '')),
    completenessSection(tally),
  ];
}

const perHundred = (count: number, of: number): number =>
  of === 0 ? 0 : Math.round((count / of) * 1000) / 10;

function burdenSection(tally: Tally): Section {
  const visits = countOf(tally, 'visits');
  const kinds = ['critical', 'warning', 'info'].map((kind) => ({
    kind,
    count: countOf(tally, 'cards', kind),
  }));
  const byUrgency = urgencies.map((urgency) => ({ urgency, count: countOf(tally, 'urgency', urgency) }));
  const cards = kinds.reduce((sum, { count }) => sum + count, 0);
  return {
    id: 'burden',
    title: 'Alert burden',
    sentences: [
      `${visits} visits of ${countOf(tally, 'women')} women; at ${countOf(tally, 'visits-with-card')} of them at least one card would have been shown.`,
      `${cards} cards, ${countOf(tally, 'repeats')} of them shown with the same content at an earlier visit.`,
    ],
    tables: [
      {
        id: 'cards',
        title: 'Cards by indicator',
        columns: ['indicator', 'cards', 'per 100 visits'],
        rows: kinds.map(({ kind, count }) => [kind, count, perHundred(count, visits)]),
      },
      {
        id: 'urgency',
        title: 'Visits by urgency',
        columns: ['urgency', 'visits', 'per 100 visits'],
        rows: byUrgency.map(({ urgency, count }) => [urgency, count, perHundred(count, visits)]),
      },
      {
        id: 'classes',
        title: 'Visits by leading class',
        columns: ['class', 'visits', 'per 100 visits'],
        rows: [...below(tally, 'class')].map(([name, count]) => [name, count, perHundred(count, visits)]),
      },
    ],
    charts: [
      {
        table: 'cards',
        title: 'Cards by indicator',
        unit: 'cards per 100 visits',
        bars: kinds.map(({ kind, count }) => ({ label: kind, value: perHundred(count, visits) })),
      },
      {
        table: 'urgency',
        title: 'Visits by urgency',
        unit: 'per 100 visits',
        bars: byUrgency.map(({ urgency, count }) => ({ label: urgency, value: perHundred(count, visits) })),
      },
    ],
  };
}

function guidelineSection(tally: Tally, { guidelines }: ReportFrame): Section {
  const [leading = '', ...others] = guidelines;
  const visits = countOf(tally, 'visits');
  const rows = others.map((other) => ({
    other,
    classes: countOf(tally, 'differs', other, 'class'),
    urgency: countOf(tally, 'differs', other, 'urgency'),
    women: countOf(tally, 'women-differ', other),
  }));
  return {
    id: 'guidelines',
    title: `Guidelines beside ${leading}`,
    sentences: ['Who changes, and at which reading, stands in changes.csv.'],
    tables: [
      {
        id: 'guidelines',
        title: 'Visits answered otherwise',
        columns: ['guideline', 'visits', 'other leading class', 'same class, other urgency', 'women'],
        rows: rows.map(({ other, classes, urgency, women }) => [other, visits, classes, urgency, women]),
      },
      {
        id: 'guideline-changes',
        title: 'What becomes of what',
        columns: ['guideline', `under ${leading}`, 'under the other', 'visits'],
        rows: others.flatMap((other) =>
          [...below(tally, 'change', other).keys()].flatMap((from) =>
            [...below(tally, 'change', other, from)].map(([to, count]) => [other, from, to, count]),
          ),
        ),
      },
    ],
    charts: [
      {
        table: 'guidelines',
        title: 'Visits with another leading class',
        unit: 'per 100 visits',
        bars: rows.map(({ other, classes }) => ({ label: other, value: perHundred(classes, visits) })),
      },
    ],
  };
}

function followUpSection(tally: Tally): Section {
  const measures = measureDefinitions
    .filter(({ scoring }) => scoring === 'proportion')
    .map(({ id, title }) => {
      const count = (name: string): number => countOf(tally, 'measure', id, name);
      const counted = count('denominator') - count('denominator-exclusion') - count('denominator-exception');
      return {
        id,
        title,
        counted,
        done: wilson(count('numerator'), counted),
        missing: count('data-missing'),
      };
    });
  return {
    id: 'follow-up',
    title: 'Missed follow-up',
    sentences: [
      'Of those for whom a step was due, how many had it in the record. What was done and not written down counts as missed.',
    ],
    tables: [
      {
        id: 'follow-up',
        title: 'Steps due and found',
        columns: ['step', 'due', 'found', 'missed', 'share found (95 % interval)', 'data missing'],
        rows: measures.map(({ title, counted, done, missing }) => [
          title,
          counted,
          done.count,
          counted - done.count,
          proportionText(done),
          missing,
        ]),
      },
    ],
    charts: [
      {
        table: 'follow-up',
        title: 'Share of steps found in the record',
        unit: '%',
        bars: measures.map(({ title, done }) => ({ label: title, value: hundredfold(done.share) })),
      },
    ],
  };
}

function completenessSection(tally: Tally): Section {
  const items = [...below(tally, 'complete').keys()].map((item) => {
    const yes = countOf(tally, 'complete', item, 'yes');
    return { item, yes, of: yes + countOf(tally, 'complete', item, 'no') };
  });
  const fates = [...below(tally, 'resources')].sort(([, a], [, b]) => b - a);
  return {
    id: 'completeness',
    title: 'Completeness of the record',
    sentences: ['Recorded on the day of the visit; and what became of the resources of the women.'],
    tables: [
      {
        id: 'completeness',
        title: 'Visits with the item recorded',
        columns: ['item', 'visits with it', 'visits', 'share'],
        rows: items.map(({ item, yes, of }) => [item, yes, of, percent(of === 0 ? undefined : yes / of)]),
      },
      {
        id: 'resources',
        title: 'Resources used, not needed, or set aside and why',
        columns: ['fate', 'resources'],
        rows: fates.map(([fate, count]) => [fate, count]),
      },
    ],
    charts: [
      {
        table: 'completeness',
        title: 'Visits with the item recorded',
        unit: '%',
        bars: items.map(({ item, yes, of }) => ({ label: item, value: of === 0 ? 0 : (yes / of) * 100 })),
      },
    ],
  };
}

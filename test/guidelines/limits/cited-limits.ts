// Limits as the trace prints them: what people read beside an answer is the number of the source too.
import type { Probe } from '../../support/probe.ts';
import * as build from '../../support/resources.ts';
import { asOf, everyEdition, except, morning, thirtyWeeks, type Edition } from './limit-row.ts';

type Row = readonly [
  source: string,
  editions: readonly Edition[],
  given: Extract<Probe['woman'], { sent: unknown }>['sent'],
  question: string,
  cited: string,
];

const raised = [build.pressure(morning, 146, 92)];
const pair = [
  build.pressure('2025-03-10T09:00:00Z', 146, 92),
  build.pressure('2025-03-10T13:30:00Z', 148, 94),
];
const severe = [build.pressure(morning, 172, 114)];
const severePair = [...severe, build.pressure('2025-03-10T09:30:00Z', 172, 114)];
const closed = [...severe, build.pressure('2025-03-10T09:30:00Z', 150, 96)];
const strip = [build.strip(morning, 'negative')];

const rows: readonly Row[] = [
  ['1.1 confirmation', except('sogc-2022', 'nice-2023'), raised, 'confirmed-from-20-weeks', '>= 4 h'],
  ['1.1 confirmation', ['sogc-2022'], raised, 'confirmed-from-20-weeks', '>= 15 min'],
  ['2.1 rule 2: repeat within 15 min', everyEdition, severe, 'severe-open', '<= 15 min'],
  ['decision 11', except('sogc-2022'), severePair, 'severe-confirmed', '>= 5 min'],
  ['decision 11', ['sogc-2022'], severePair, 'severe-confirmed', '>= 15 min'],
  ['decision 11', everyEdition, closed, 'severe-closed', '>= 5 min'],
  ['settled a day later, ours', everyEdition, raised, 'settled', '>= 24 h'],
  ['decision 12', except('sogc-2022'), pair, 'pair-stale', '<= 168 h'],
  ['tested within the day, common practice', everyEdition, strip, 'urine-tested', '<= 24 h'],
];

export const citedLimits: readonly Probe[] = rows.flatMap(([source, editions, given, question, cited]) =>
  editions.map((guideline) => ({
    title: `${question} cites ${cited} (${source})`,
    guideline,
    woman: { asOf, sent: [thirtyWeeks, ...given] },
    cites: { [question]: cited },
  })),
);

/** A count of fetuses, from two on (decision 24; 2.4 rule 37). */
export const fetusLimits: readonly Probe[] = everyEdition.flatMap((guideline) =>
  [1, 2, 3].map((fetuses) => ({
    title: `fetuses recorded: ${String(fetuses)}`,
    guideline,
    woman: { asOf, gestation: '30+4', fetuses },
    outcomes: { 'several-fetuses': fetuses >= 2 ? ('met' as const) : ('not-met' as const) },
  })),
);

// Limits of HELLP (clinical rules 1.3, R S20; decision 20). A class of Mississippi is one of three; the triad stands beside it.
import type { Outcome } from '../../../src/findings/finding.ts';
import type { Probe } from '../../support/probe.ts';
import * as build from '../../support/resources.ts';
import { asOf, everyEdition, morning, thirtyWeeks } from './limit-row.ts';

interface Blood {
  readonly platelets: number;
  readonly ast?: number;
  readonly alt?: number;
  readonly ldh?: number;
  /** mg/dL. */
  readonly bilirubin?: number;
}
type Row = readonly [blood: Blood, said: string];

const [one, two, three, triad] = [
  'Mississippi class 1',
  'Mississippi class 2',
  'Mississippi class 3',
  'Tennessee triad',
];
const nothing = 'The laboratory values do not fit.';
const and = (a: string, b: string): string => `${a} and ${b}.`;

const rows: readonly Row[] = [
  // Platelets: class 1 to 50, class 2 to 100, class 3 to 150; the triad below 100.
  [{ platelets: 49.8, ast: 80, ldh: 700 }, and(one, triad)],
  [{ platelets: 50, ast: 80, ldh: 700 }, and(one, triad)],
  [{ platelets: 50.2, ast: 80, ldh: 700 }, and(two, triad)],
  [{ platelets: 99.5, ast: 80, ldh: 700 }, and(two, triad)],
  [{ platelets: 100, ast: 80, ldh: 700 }, `${two}.`],
  [{ platelets: 100.5, ast: 80, ldh: 700 }, `${three}.`],
  [{ platelets: 150, ast: 80, ldh: 700 }, `${three}.`],
  [{ platelets: 150.5, ast: 80, ldh: 700 }, nothing],
  // AST or ALT: classes 1 and 2 from 70, class 3 from 40; the triad AST from 70, ALT does not count.
  [{ platelets: 45, ast: 69.5, ldh: 700 }, `${three}.`],
  [{ platelets: 45, ast: 70, ldh: 700 }, and(one, triad)],
  [{ platelets: 45, ast: 30, alt: 70, ldh: 700 }, `${one}.`],
  [{ platelets: 80, ast: 69.5, ldh: 700 }, `${three}.`],
  [{ platelets: 80, ast: 70, ldh: 700 }, and(two, triad)],
  [{ platelets: 120, ast: 39.8, alt: 30, ldh: 700 }, nothing],
  [{ platelets: 120, ast: 40, alt: 30, ldh: 700 }, `${three}.`],
  [{ platelets: 120, ast: 30, alt: 40, ldh: 700 }, `${three}.`],
  // LDH: the classes from 600, the triad over 600.
  [{ platelets: 45, ast: 80, ldh: 597, bilirubin: 0.8 }, nothing],
  [{ platelets: 45, ast: 80, ldh: 600, bilirubin: 0.8 }, `${one}.`],
  [{ platelets: 45, ast: 80, ldh: 603, bilirubin: 0.8 }, and(one, triad)],
  [{ platelets: 80, ast: 80, ldh: 597, bilirubin: 0.8 }, nothing],
  [{ platelets: 80, ast: 80, ldh: 600, bilirubin: 0.8 }, `${two}.`],
  [{ platelets: 120, ast: 80, ldh: 597, bilirubin: 0.8 }, nothing],
  [{ platelets: 120, ast: 80, ldh: 600, bilirubin: 0.8 }, `${three}.`],
  // Bilirubin over 1.2 mg/dL instead of LDH, for the triad.
  [{ platelets: 80, ast: 80, ldh: 300, bilirubin: 1.19 }, nothing],
  [{ platelets: 80, ast: 80, ldh: 300, bilirubin: 1.2 }, nothing],
  [{ platelets: 80, ast: 80, ldh: 300, bilirubin: 1.21 }, `${triad}.`],
];

const outcomeOf = (said: string): Outcome => (said === nothing ? 'not-met' : 'met');
const units = { platelets: '10*9/L', ast: 'U/L', alt: 'U/L', ldh: 'U/L', bilirubin: 'mg/dL' } as const;

const womanOf = (blood: Blood): Probe['woman'] => ({
  asOf,
  sent: [
    thirtyWeeks,
    ...(Object.keys(units) as (keyof typeof units)[]).flatMap((name) => {
      const value = blood[name];
      return value === undefined ? [] : [build.lab(morning, name, value, units[name])];
    }),
  ],
});

export const hellpRows: readonly Probe[] = rows.flatMap(([blood, said]) =>
  everyEdition.map((guideline) => ({
    title: JSON.stringify(blood),
    guideline,
    woman: womanOf(blood),
    outcomes: { 'hellp-criteria': outcomeOf(said) },
    says: { 'hellp-criteria': said },
  })),
);

// How pressures were measured: terminal digits, avoided limits, copied values, per site and observer.
import type { Guideline } from '../../guidelines/guideline.ts';
import { siteQualityRules } from '../../guidelines/quality-rules.ts';
import { terminalZeros, thresholdAvoidance, type DigitShare } from '../../rules/quality/digit-preference.ts';
import { percent } from './proportion.ts';
import type { Chart, Section, Table } from './section.ts';
import { below, countOf, type Tally } from './tally.ts';

const methods = ['automated', 'manual'] as const;
const halves = ['systolic', 'diastolic'] as const;
const scopes = ['site', 'observer'] as const;

interface Group {
  readonly scope: string;
  readonly name: string;
  readonly method: (typeof methods)[number];
  readonly half: (typeof halves)[number];
  readonly values: readonly number[];
}

/** Measurement quality; `guideline` gives the limits that may be avoided. */
export function qualitySection(tally: Tally, guideline: Guideline | undefined): Section {
  const groups = groupsOf(tally);
  const ofSites = groups.filter(({ scope }) => scope === 'site');
  return {
    id: 'measurement-quality',
    title: 'Measurement quality',
    sentences: [
      `Terminal digits: chi-square of zeros against the share that honest measuring gives, one degree of freedom; "rounding suspected" from ${percent(siteQualityRules.terminalZero.manual.alertShare.value)} zeros by hand and ${percent(siteQualityRules.terminalZero.automated.alertShare.value)} by a device. Fewer than ${siteQualityRules.minimumReadings.value} readings say nothing.`,
      'Observers are shown as the record names them: this table is for training, not for ranking.',
    ],
    tables: [zerosTable(groups), digitsTable(ofSites), avoidanceTable(groups, guideline), copyTable(tally)],
    charts: [digitsChart(ofSites)],
  };
}

function groupsOf(tally: Tally): readonly Group[] {
  return scopes.flatMap((scope) =>
    [...below(tally, 'digits', scope).keys()].flatMap((name) =>
      methods.flatMap((method) =>
        halves.flatMap((half) => {
          const values = [...below(tally, 'digits', scope, name, method, half)].flatMap(([value, count]) =>
            Array.from({ length: count }, () => Number(value)),
          );
          return values.length === 0 ? [] : [{ scope, name, method, half, values }];
        }),
      ),
    ),
  );
}

const digitsOf = ({ values, method }: Group): DigitShare =>
  terminalZeros(values, siteQualityRules.terminalZero[method], siteQualityRules.minimumReadings);

const verdicts = {
  met: 'suspected',
  'not-met': 'not suspected',
  'cannot-tell': 'too few readings',
  'not-applicable': '-',
};

function zerosTable(groups: readonly Group[]): Table {
  return {
    id: 'terminal-zeros',
    title: 'Values that end in zero',
    columns: [
      'by',
      'name',
      'method',
      'half',
      'readings',
      'zeros',
      'share',
      'expected',
      'chi-square',
      'rounding',
    ],
    rows: groups.map((group) => {
      const { readings, zeros, share, expectedShare, chiSquare, outcome } = digitsOf(group);
      const { scope, name, method, half } = group;
      return [
        scope,
        name,
        method,
        half,
        readings,
        zeros,
        percent(share),
        percent(expectedShare),
        Number(chiSquare.toFixed(1)),
        verdicts[outcome],
      ];
    }),
  };
}

const digits = Array.from({ length: 10 }, (_, digit) => digit);
const countDigit = (groups: readonly Group[], digit: number): number =>
  groups.reduce(
    (sum, { values }) =>
      sum + values.filter((value) => Number.isInteger(value) && value % 10 === digit).length,
    0,
  );

function digitsTable(groups: readonly Group[]): Table {
  return {
    id: 'terminal-digits',
    title: 'Terminal digits of all readings',
    columns: ['digit', 'systolic', 'diastolic', '% of values'],
    rows: digits.map((digit) => [
      digit,
      ...halves.map((half) =>
        countDigit(
          groups.filter((group) => group.half === half),
          digit,
        ),
      ),
      Math.round(percentOfDigit(groups, digit) * 10) / 10,
    ]),
  };
}

/** Of every value that ends in some digit, how many in a hundred end in this one. */
function percentOfDigit(groups: readonly Group[], digit: number): number {
  const all = digits.reduce((sum, each) => sum + countDigit(groups, each), 0);
  return all === 0 ? 0 : (countDigit(groups, digit) / all) * 100;
}

function digitsChart(groups: readonly Group[]): Chart {
  return {
    table: 'terminal-digits',
    title: 'Terminal digits of systolic and diastolic values',
    unit: '% of values',
    bars: digits.map((digit) => ({
      label: String(digit),
      value: percentOfDigit(groups, digit),
      isMarked: digit === 0,
    })),
    reference: { label: 'each digit equally often', value: 10 },
  };
}

function avoidanceTable(groups: readonly Group[], guideline: Guideline | undefined): Table {
  const rows = groups.flatMap(({ scope, name, method, half, values }) => {
    if (guideline === undefined) return [];
    const readings = values.map((value) => ({
      ...(half === 'systolic' ? { systolicMmHg: value } : { diastolicMmHg: value }),
    }));
    const report = thresholdAvoidance(readings, guideline.chartLimits.hypertension, siteQualityRules).find(
      (each) => each.half === half,
    );
    if (report === undefined) return [];
    const { justBelow, justAtOrAbove, chiSquare, outcome } = report;
    return [
      [scope, name, method, half, justBelow, justAtOrAbove, Number(chiSquare.toFixed(1)), verdicts[outcome]],
    ];
  });
  return {
    id: 'threshold-avoidance',
    title: 'Values just below the limit of hypertension against those at it',
    columns: ['by', 'name', 'method', 'half', 'just below', 'at or just above', 'chi-square', 'avoidance'],
    rows,
  };
}

function copyTable(tally: Tally): Table {
  return {
    id: 'copy-forward',
    title: `Women with one value to the digit on at least ${siteQualityRules.copyForward.visits.value} days`,
    columns: ['site', 'women with so many days', 'with a repeated value'],
    rows: [...below(tally, 'copy-forward').keys()].map((site) => [
      site,
      countOf(tally, 'copy-forward', site, 'women'),
      countOf(tally, 'copy-forward', site, 'repeated'),
    ]),
  };
}

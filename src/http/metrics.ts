// Counters of this process, in the text form that collectors read. Kept in memory: a restart begins at zero.

const metrics = {
  pregnancy_htn_requests_total: 'Requests by route and status.',
  pregnancy_htn_cards_total: 'Cards handed out by rule, guideline and indicator.',
  pregnancy_htn_feedback_total:
    'Feedback by rule, guideline, outcome and override reason; duplicates not counted.',
  pregnancy_htn_feedback_duplicates_total: 'Feedback items ignored because they had been received before.',
  pregnancy_htn_accepted_suggestions_total: 'Suggestions reported as accepted, by rule.',
  pregnancy_htn_unknown_members_total: 'Members of CDS Hooks requests that were ignored.',
} as const;

export type MetricName = keyof typeof metrics;
export type Labels = Readonly<Record<string, string>>;

export interface Metrics {
  readonly count: (name: MetricName, labels?: Labels) => void;
  /** In the text exposition format, version 0.0.4. */
  readonly text: () => string;
}

/**
 * Counters, all at zero.
 *
 * Notes    1. One process each: a collector adds the processes of a cluster.
 *          2. Labels hold codes of ours only, never what a client wrote, so their number is bounded.
 */
export function createMetrics(): Metrics {
  const counts = new Map<MetricName, Map<string, number>>();
  return {
    count: (name, labels = {}) => {
      const series = counts.get(name) ?? new Map<string, number>();
      counts.set(name, series);
      const key = labelText(labels);
      series.set(key, (series.get(key) ?? 0) + 1);
    },
    text: () => exposition(counts),
  };
}

function exposition(counts: ReadonlyMap<MetricName, ReadonlyMap<string, number>>): string {
  const lines = Object.entries(metrics).flatMap(([name, help]) => {
    const series = [...counts].find(([known]) => known === name)?.[1] ?? new Map<string, number>();
    const values = [...series].sort(([a], [b]) => (a < b ? -1 : 1));
    return [
      `# HELP ${name} ${help}`,
      `# TYPE ${name} counter`,
      ...values.map(([labels, value]) => `${name}${labels} ${value}`),
    ];
  });
  return `${lines.join('\n')}\n`;
}

function labelText(labels: Labels): string {
  const pairs = Object.entries(labels).map(([name, value]) => `${name}="${escaped(value)}"`);
  return pairs.length === 0 ? '' : `{${pairs.join(',')}}`;
}

function escaped(value: string): string {
  return value.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replaceAll('\n', '\\n');
}

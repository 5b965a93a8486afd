// Visits at which another guideline would have answered otherwise, one line of CSV each.
import { openWholeFile } from '../write-file.ts';
import { csvRow } from './csv.ts';

export interface Changes {
  readonly line: (result: string) => void;
  readonly finish: () => void;
}

const columns = [
  'woman',
  'at',
  'guideline',
  'class',
  'urgency',
  'otherGuideline',
  'otherClass',
  'otherUrgency',
  'reading',
];

/** Takes result lines; without a path it takes nothing. */
export function openChanges(path: string | undefined): Changes {
  if (path === undefined) return { line: () => undefined, finish: () => undefined };
  const file = openWholeFile(path);
  file.write(csvRow(columns));
  return {
    line: (result) => {
      const value: unknown = JSON.parse(result);
      if (!isResult(value)) return;
      for (const other of value.others ?? []) {
        if (other.classification[0] === value.classification[0] && other.urgency === value.urgency) continue;
        file.write(
          csvRow([
            value.woman,
            value.at,
            value.guideline,
            value.classification[0] ?? '',
            value.urgency,
            other.guideline,
            other.classification[0] ?? '',
            other.urgency,
            value.reading ?? '',
          ]),
        );
      }
    },
    finish: () => file.finish(),
  };
}

interface Answered {
  readonly guideline: string;
  readonly classification: readonly string[];
  readonly urgency: string;
}
interface Result extends Answered {
  readonly woman: string;
  readonly at: string;
  readonly reading?: string;
  readonly others?: readonly Answered[];
}

/** Our own line: one member tells. */
const isResult = (value: unknown): value is Result =>
  typeof value === 'object' && value !== null && 'woman' in value;

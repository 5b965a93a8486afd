// Result lines as Parquet, for whoever reads columns: the same content as results.ndjson.
import { fileWriter, ParquetWriter } from 'hyparquet-writer';
import type { ResultLine } from './result-line.ts';
import { nameWhenWhole } from './write-file.ts';

export interface ResultTable {
  /** Takes one line of results.ndjson. */
  readonly line: (result: string) => void;
  readonly finish: () => void;
}

type SchemaElement = ConstructorParameters<typeof ParquetWriter>[0]['schema'][number];

const text = { type: 'BYTE_ARRAY', converted_type: 'UTF8' } as const;
const whole = { type: 'INT32' } as const;
const required = { repetition_type: 'REQUIRED' } as const;
const optional = { repetition_type: 'OPTIONAL' } as const;

const listOf = (name: string): readonly SchemaElement[] => [
  { name, ...required, num_children: 1, converted_type: 'LIST' },
  { name: 'list', repetition_type: 'REPEATED', num_children: 1 },
  { name: 'element', ...required, ...text },
];

interface Column {
  readonly name: string;
  readonly schema: readonly SchemaElement[];
  readonly value: (line: ResultLine) => unknown;
}

const columns: readonly Column[] = [
  one('woman', { ...required, ...text }, ({ woman }) => woman),
  one('at', { ...required, type: 'INT64', converted_type: 'TIMESTAMP_MILLIS' }, ({ at }) => new Date(at)),
  one('guideline', { ...required, ...text }, ({ guideline }) => guideline),
  { name: 'classification', schema: listOf('classification'), value: ({ classification }) => classification },
  one('urgency', { ...required, ...text }, ({ urgency }) => urgency),
  one('period', { ...required, ...text }, ({ period }) => period),
  one('gestationalAgeDays', { ...optional, ...whole }, ({ gestationalAgeDays }) => gestationalAgeDays),
  one('criticalCards', { ...required, ...whole }, ({ cards }) => cards.critical),
  one('warningCards', { ...required, ...whole }, ({ cards }) => cards.warning),
  one('infoCards', { ...required, ...whole }, ({ cards }) => cards.info),
  one('repeats', { ...required, ...whole }, ({ repeats }) => repeats),
  { name: 'missing', schema: listOf('missing'), value: ({ missing }) => missing },
  { name: 'evidence', schema: listOf('evidence'), value: ({ evidence }) => evidence },
  one('reading', { ...optional, ...text }, ({ reading }) => reading),
  one('others', { ...optional, ...text }, ({ others }) => others && JSON.stringify(others)),
];

function one(name: string, element: Omit<SchemaElement, 'name'>, value: Column['value']): Column {
  return { name, schema: [{ name, ...element }], value };
}

/** Lines of one row group: what is held in memory. */
const rowGroup = 50_000;

/**
 * Opens a table that gets its name when it is finished.
 *
 * Notes    1. The same lines give the same bytes.
 */
export function openResultTable(path: string): ResultTable {
  const file = nameWhenWhole(path);
  const writer = new ParquetWriter({
    writer: fileWriter(file.temporary),
    schema: [
      { name: 'results', num_children: columns.length },
      ...columns.flatMap(({ schema }) => [...schema]),
    ],
    createdBy: 'pregnancy-htn',
  });
  let held: ResultLine[] = [];
  const flush = (): void => {
    if (held.length === 0) return;
    const columnData = columns.map(({ name, value }) => ({ name, data: held.map(value) }));
    void writer.write({ columnData, rowGroupSize: rowGroup });
    held = [];
  };
  return {
    line: (result) => {
      const value: unknown = JSON.parse(result);
      if (isResult(value)) held.push(value);
      if (held.length === rowGroup) flush();
    },
    finish: () => {
      flush();
      void writer.finish();
      file.finish();
    },
  };
}

/** Our own line: one member tells. */
const isResult = (value: unknown): value is ResultLine =>
  typeof value === 'object' && value !== null && 'woman' in value;

// results.parquet, read with another library than the one that wrote it: the same as results.ndjson.
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { parquetReadObjects } from 'hyparquet';
import { expect, it } from 'vitest';
import { about, folderOf, lines, pregnancy, run } from './runs.ts';

const women = [
  ...about('ada', pregnancy({ '2024-05-01': [[150, 95]], '2024-05-03': [[152, 96]] })),
  ...about('eve', pregnancy({ '2024-05-02': [[118, 76]] })),
];

async function tableOf(files: Readonly<Record<string, string>>, guidelines: readonly string[]) {
  const folder = folderOf(files);
  const ran = await run(folder, { guidelines }, { parquet: true });
  const bytes = readFileSync(join(ran.out, 'results.parquet'));
  for (const each of [folder, ran.out]) rmSync(each, { recursive: true });
  return { bytes, ran };
}

it.each([[['frontline']], [['frontline', 'nice-2023']]])(
  'results.parquet holds what results.ndjson holds, under %s',
  async (guidelines) => {
    const { bytes, ran } = await tableOf({ 'a.ndjson': lines(women) }, guidelines);
    const rows = await parquetReadObjects({ file: new Uint8Array(bytes).buffer });
    const expected = ran.results.map(({ cards, at, others, gestationalAgeDays, reading, ...rest }) => {
      const { critical, warning, info } = cards as Record<string, number>;
      return {
        ...rest,
        at: new Date(String(at)),
        gestationalAgeDays: gestationalAgeDays ?? null,
        criticalCards: critical,
        warningCards: warning,
        infoCards: info,
        reading: reading ?? null,
        others: others === undefined ? null : JSON.stringify(others),
      };
    });
    expect(rows).toEqual(expected);
    expect(rows).toHaveLength(3);
  },
);

it('the same women give the same bytes of Parquet, in whatever order they come', async () => {
  const [one, other] = await Promise.all(
    [women, [...women].reverse()].map((each) => tableOf({ 'a.ndjson': lines(each) }, ['frontline'])),
  );
  expect(one?.bytes.equals(other?.bytes ?? Buffer.alloc(0))).toBe(true);
});

it('a run without any woman leaves an empty table', async () => {
  const { bytes } = await tableOf({ 'a.ndjson': '' }, ['frontline']);
  expect(await parquetReadObjects({ file: new Uint8Array(bytes).buffer })).toEqual([]);
});

// Files as exports and people leave them: each line is read, counted, and whose it is.
import { gzipSync } from 'node:zlib';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openExtractor } from '../../src/replay/extract.ts';
import { findSources } from '../../src/replay/find-sources.ts';
import { pour } from '../../src/replay/read-source.ts';
import { openFastFilter } from '../../src/replay/simd-filter.ts';
import { about, folderOf, lines, pregnancy, remove, run } from './runs.ts';

const ada = about('ada', pregnancy({ '2024-05-01': [[150, 95]], '2024-05-02': [[152, 96]] }));
const eve = about('eve', pregnancy({ '2024-05-01': [[118, 76]] }));

async function resultsOf(files: Readonly<Record<string, string | Uint8Array>>) {
  const folder = folderOf(files);
  const ran = await run(folder);
  remove(folder);
  return ran;
}

describe('line ends and odd lines', () => {
  const plain = lines([...ada, ...eve]);

  it.each([
    ['CRLF', plain.replaceAll('\n', '\r\n')],
    ['a byte order mark', `\uFEFF${plain}`],
    ['blank lines', plain.replaceAll('\n', '\n\n  \n')],
    ['no last line end', plain.trimEnd()],
  ])('%s changes no answer', async (_name, text) => {
    const usual = await resultsOf({ 'all.ndjson': plain });
    const odd = await resultsOf({ 'all.ndjson': text });
    expect(odd.files['results.ndjson']).toBe(usual.files['results.ndjson']);
    expect(odd.accounting.total.lines).toBe(usual.accounting.total.lines);
  });

  it('a bad line is noted with file, line and reason, and the run goes on', async () => {
    const ran = await resultsOf({
      'a.ndjson': `${lines(ada)}{"resourceType":"Observation",\n[1]\n{"a":1}\n${lines(eve)}`,
    });
    expect(
      ran.files['rejected.ndjson']
        ?.trim()
        .split('\n')
        .map((line) => JSON.parse(line) as unknown),
    ).toEqual([
      { file: 'a.ndjson', line: ada.length + 1, fate: 'rejected', reason: 'not-json' },
      { file: 'a.ndjson', line: ada.length + 2, fate: 'rejected', reason: 'not-an-object' },
      { file: 'a.ndjson', line: ada.length + 3, fate: 'rejected', reason: 'not-a-resource' },
    ]);
    expect(ran.results.map(({ woman }) => woman)).toContain('Patient/eve');
  });

  it('a line over the cap is rejected and the next one is read', () => {
    const kept: string[] = [];
    const extractor = openExtractor({
      filter: openFastFilter(),
      readsEveryLine: false,
      capBytes: 4096,
      keep: (key) => kept.push(key),
    });
    pour(Buffer.from(`{"resourceType":"Patient","id":"${'x'.repeat(9000)}`), extractor);
    pour(Buffer.from(`"}\n${lines(eve.slice(0, 1))}`), extractor);
    const { counts, rejected } = extractor.end();
    expect(rejected).toEqual([{ line: 1, reason: 'line-too-long' }]);
    expect(counts).toMatchObject({ lines: 2, kept: 1 });
    expect(kept).toEqual(['Patient/eve']);
  });
});

describe('accounting', () => {
  it('lines read are used, not needed, set aside and rejected, in every file', async () => {
    const ran = await resultsOf({
      'a.ndjson': `${lines(ada)}not json\n`,
      'b.ndjson': lines([
        ...eve,
        { resourceType: 'Claim', id: '1' },
        { resourceType: 'Condition', id: '2', code: { text: 'x' } },
      ]),
    });
    for (const { lines: read, used, notNeeded, setAside, rejected } of ran.accounting.files)
      expect(used + notNeeded + setAside + rejected).toBe(read);
    expect(ran.accounting.total).toMatchObject({ rejected: 1, setAside: 1, notNeeded: 1 });
  });
});

describe('sources', () => {
  it('gzip, one JSON document and NDJSON of bundles hold the same women', async () => {
    const bundle = {
      resourceType: 'Bundle',
      type: 'collection',
      entry: [...ada, ...eve].map((resource) => ({ resource })),
    };
    const usual = await resultsOf({ 'all.ndjson': lines([...ada, ...eve]) });
    const answers = (ran: typeof usual) =>
      ran.results.map(({ woman, at, classification }) => ({ woman, at, classification }));
    for (const files of [
      { 'all.ndjson.gz': gzipSync(lines([...ada, ...eve])) },
      { 'all.json': JSON.stringify(bundle, null, 2) },
      { 'all.json': JSON.stringify([...ada, ...eve]) },
      { 'all.ndjson': lines([bundle]) },
    ])
      expect(answers(await resultsOf(files))).toEqual(answers(usual));
  });

  it.each([
    [
      '3.0',
      {
        transactionTime: 't',
        request: 'r',
        requiresAccessToken: false,
        error: [{ type: 'OperationOutcome', url: 'https://x.org/e/errors.ndjson' }],
        deleted: [{ type: 'Bundle', url: 'https://x.org/e/deleted.ndjson' }],
      },
    ],
    [
      '4.0 ballot',
      {
        manifestType: 'bulk-export',
        transactionTime: 't',
        outputFormat: 'application/fhir+ndjson',
        outcome: [{ url: 'errors.ndjson' }],
        deleted: [{ url: 'deleted.ndjson' }],
      },
    ],
    ['R4', { transactionTime: 't', request: 'r', requiresAccessToken: false, error: [] }],
  ])('a manifest of %s names the files, and what is deleted is gone', async (_form, manifest) => {
    const gone = `Observation/${String(ada.at(-1)?.id)}`;
    const folder = folderOf({
      'manifest.json': JSON.stringify({
        ...manifest,
        output: [
          { type: 'Observation', url: 'https://x.org/e/all.ndjson?sig=1', count: 99 },
          { type: 'Patient', url: 'not-there.ndjson' },
        ],
      }),
      'all.ndjson': lines(ada),
      'errors.ndjson': lines([{ resourceType: 'OperationOutcome', issue: [] }]),
      'deleted.ndjson': lines([
        {
          resourceType: 'Bundle',
          type: 'transaction',
          entry: [{ request: { method: 'DELETE', url: gone } }],
        },
      ]),
      'unlisted.ndjson': lines(eve),
    });
    const ran = await run(folder);
    remove(folder);
    const isDeleted = 'deleted' in manifest;
    expect(ran.results.map(({ at }) => at)).toEqual(
      isDeleted ? ['2024-05-01T10:00:00.000Z'] : ['2024-05-01T10:00:00.000Z', '2024-05-02T10:00:00.000Z'],
    );
    expect(ran.accounting.warnings.join('\n')).toMatch(
      /not-there\.ndjson[^]*declared as Observation[^]*says 99 lines/,
    );
  });

  it('several exports are read line by line, as one may hold a newer version under another code', () => {
    const manifest = JSON.stringify({ transactionTime: 't', output: [{ type: 'Patient', url: 'p.ndjson' }] });
    const folder = folderOf({
      'a/manifest.json': manifest,
      'a/p.ndjson': '',
      'b/manifest.json': manifest,
      'b/p.ndjson': '',
    });
    expect(findSources([join(folder, 'a'), join(folder, 'b')]).mayHoldVersions).toBe(true);
    expect(findSources([join(folder, 'a')]).mayHoldVersions).toBe(false);
    remove(folder);
  });

  it('a bundle of a synthetic population, with addresses of its own, is about its patient', async () => {
    const text = readFileSync(
      join(import.meta.dirname, '..', 'data', 'synthea-bundles', 'patient-a.transaction.json'),
      'utf8',
    );
    const folder = folderOf({ 'patient.json': text });
    const ran = await run(folder, { everyone: true });
    remove(folder);
    expect(new Set(ran.results.map(({ woman }) => woman)).size).toBe(1);
    expect(ran.results.length).toBeGreaterThan(0);
  });
});

describe('women', () => {
  it('a woman spread over files is one woman: the second reading confirms the first', async () => {
    const ran = await resultsOf({ '1.ndjson': lines(ada.slice(0, 3)), '2.ndjson': lines(ada.slice(3)) });
    expect(ran.results.map(({ classification }) => (classification as string[])[0])).toEqual([
      'raised-unconfirmed',
      'gestational-hypertension',
    ]);
  });

  it('absolute references of the exporting server name the same woman', async () => {
    const absolute = lines(ada).replaceAll('"Patient/ada"', '"https://fhir.example.org/r4/Patient/ada"');
    const ran = await resultsOf({ 'a.ndjson': absolute });
    expect(ran.results.map(({ woman }) => woman)).toEqual(['Patient/ada', 'Patient/ada']);
    expect(ran.results.at(-1)?.['classification']).toEqual(['gestational-hypertension']);
  });

  describe('named by an identifier only', () => {
    const identifier = { system: 'https://clinic.example.org/card', value: '17' };
    const [patient, ...rest] = ada;
    const carrying = (id: string, of: unknown = patient) => ({
      ...(of as object),
      id,
      identifier: [identifier],
    });
    const named = rest.map((resource, at) =>
      at % 2 === 0 ? resource : { ...resource, subject: { type: 'Patient', identifier } },
    );

    it('is the woman whose Patient line carries it, in whatever file and order', async () => {
      const usual = await resultsOf({ 'a.ndjson': lines([carrying('ada'), ...rest]) });
      for (const files of [
        { 'a.ndjson': lines([carrying('ada'), ...named]) },
        { 'a.ndjson': lines(named), 'b.ndjson': lines([carrying('ada')]) },
      ]) {
        const ran = await resultsOf(files);
        expect(ran.files['results.ndjson']).toBe(usual.files['results.ndjson']);
        expect(ran.accounting.total).toMatchObject({ rejected: 0, setAside: 0 });
      }
    });

    it('is nobody known when two women carry it, or none does', async () => {
      const eve = about('eve', pregnancy({}));
      for (const others of [[patient], [carrying('ada'), carrying('eve', eve[0])]]) {
        const ran = await resultsOf({ 'a.ndjson': lines([...others, ...named]) });
        expect(ran.results.map(({ at, woman }) => `${String(woman)} ${String(at)}`)).not.toContain(
          'Patient/ada 2024-05-01T10:00:00.000Z',
        );
      }
    });
  });

  it('a medicine that stands in a line of its own reaches the woman who refers to it', async () => {
    const request = {
      resourceType: 'MedicationRequest',
      id: 'm',
      status: 'active',
      intent: 'order',
      subject: { reference: 'Patient/ada' },
      authoredOn: '2024-04-30',
      medicationReference: { reference: 'Medication/lisinopril' },
    };
    const medication = { resourceType: 'Medication', id: 'lisinopril', code: { text: 'lisinopril 10 mg' } };
    const ran = await resultsOf({ 'a.ndjson': lines([...ada, request]), 'b.ndjson': lines([medication]) });
    const without = await resultsOf({ 'a.ndjson': lines([...ada, request]) });
    expect(ran.files['results.ndjson']).not.toBe(without.files['results.ndjson']);
  });

  it('a person without a sign of a pregnancy is left out, unless everyone is asked for', async () => {
    const man = about('man', pregnancy({ '2024-05-01': [[150, 95]] })).filter((_, at) => at !== 1);
    const folder = folderOf({ 'a.ndjson': lines(man) });
    expect((await run(folder)).results).toEqual([]);
    expect((await run(folder, { everyone: true })).results).toHaveLength(1);
    remove(folder);
  });
});

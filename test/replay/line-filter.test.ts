// No line that could matter is skipped, however it is written.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openExtractor } from '../../src/replay/extract.ts';
import { openLineFilter, type LineFilter } from '../../src/replay/line-filter.ts';
import { pour } from '../../src/replay/read-source.ts';
import { openFastFilter } from '../../src/replay/simd-filter.ts';
import { wantedStrings } from '../../src/replay/wanted-strings.ts';
import { fieldsOf } from '../../src/timeline/fields.ts';
import { observationKindOf } from '../../src/timeline/observation-kind.ts';
import { diceArbitrary, observationAbout, throwing, writeJson } from './hostile-lines.ts';

const filters: readonly (readonly [string, LineFilter])[] = [
  ['plain', openLineFilter()],
  ['fast', openFastFilter()],
];

function keptLines(filter: LineFilter, text: string): number {
  let kept = 0;
  const extractor = openExtractor({ filter, readsEveryLine: false, keep: () => (kept += 1) });
  pour(Buffer.from(text), extractor);
  extractor.end();
  return kept;
}

const systems = [
  'http://loinc.org',
  'http://snomed.info/sct',
  'http://hl7.org/fhir/sid/icd-10',
  'http://hl7.org/fhir/sid/icd-10-cm',
  'http://id.who.int/icd/release/11/mms',
];
const { whole, beginnings } = wantedStrings();
const spellings = (text: string): readonly string[] => [
  text,
  text.toUpperCase(),
  ` ${text} `,
  `\t${text}\u00a0`,
  `${text}.`,
];
const isRead = (value: unknown): boolean => observationKindOf(fieldsOf(value)) !== undefined;

describe.each(filters)('the %s filter', (_name, filter) => {
  it('keeps every Observation that a reader of the timeline asks for, in hostile layouts', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...whole, ...beginnings.flatMap((code) => [code, `${code}9`, code.replace('.', '')])),
        fc.constantFrom(...systems, undefined),
        fc.constantFrom<'code' | 'component'>('code', 'component'),
        fc.nat({ max: 4 }),
        diceArbitrary,
        (text, system, place, spelling, dice) => {
          const written = spellings(text)[spelling] ?? text;
          const coding = {
            ...(system === undefined ? {} : { system }),
            version: '2.78',
            display: 'Ä',
            code: written,
          };
          for (const concept of [
            { coding: [coding] },
            { text: written },
            { coding: [{ code: 'none' }, coding] },
          ]) {
            const value = observationAbout(concept, place);
            if (!isRead(value)) continue;
            expect(keptLines(filter, `${writeJson(value, throwing(dice))}\n`)).toBe(1);
          }
        },
      ),
      { numRuns: 1500 },
    );
  });

  it('keeps a plain Observation under every wanted code', () => {
    for (const code of whole) {
      const value = observationAbout({ coding: [{ code }] }, 'code');
      if (isRead(value)) expect(keptLines(filter, JSON.stringify(value))).toBe(1);
    }
  });

  it('keeps what was entered in error: others may be derived from it', () => {
    const value = {
      resourceType: 'Observation',
      id: '1',
      status: 'entered-in-error',
      code: { text: 'x' },
      subject: { reference: 'Patient/1' },
    };
    expect(keptLines(filter, JSON.stringify(value))).toBe(1);
  });

  it('leaves an Observation of body weight unread', () => {
    const value = observationAbout(
      { coding: [{ system: 'http://loinc.org', code: '29463-7', display: 'Body weight' }] },
      'code',
    );
    const text = `${JSON.stringify(value)}\n`;
    expect(filter.scan(Buffer.from(text), Buffer.byteLength(text))).toBe(0);
  });

  it('finds codes of a site when it is told them', () => {
    const value = observationAbout({ coding: [{ system: 'urn:site', code: 'BP_SYS' }] }, 'code');
    const text = JSON.stringify(value);
    expect(openFastFilter(['BP_SYS']).scan(Buffer.from(text), Buffer.byteLength(text))).toBeGreaterThan(0);
    expect(openLineFilter(['BP_SYS']).scan(Buffer.from(text), Buffer.byteLength(text))).toBeGreaterThan(0);
  });

  it('covers LOINC parts of six digits', () => {
    const value = observationAbout({ coding: [{ system: 'http://loinc.org', code: '104850-3' }] }, 'code');
    const text = JSON.stringify(value);
    expect(openFastFilter(['104850-3']).scan(Buffer.from(text), Buffer.byteLength(text))).toBeGreaterThan(0);
  });
});

it('the fast filter names no place that the plain one does not', () => {
  fc.assert(
    fc.property(fc.constantFrom(...whole), diceArbitrary, (text, dice) => {
      const lines = [text, 'Body weight', '29463-7'].map((code) =>
        writeJson(observationAbout({ coding: [{ code }], text: code }, 'component'), throwing(dice)),
      );
      const bytes = Buffer.from(`${lines.join('\n')}\n`);
      const [plain, fast] = filters.map(([, filter]) => {
        const count = filter.scan(bytes, bytes.length);
        return [...filter.hits().subarray(0, count)];
      });
      expect(plain).toEqual(expect.arrayContaining(fast ?? []));
    }),
  );
});

// Site adaptation without code: maps, faults by line, and what the flow makes of them (F-S02, F-S03, F-T05).
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import { loadSite, zoneOffset } from '../../src/http/site-folder.ts';
import { toSuggestions } from '../../src/presenters/suggestions.ts';
import { receive, withReception } from '../../src/receive.ts';
import { lineOf } from '../../src/site/line-of.ts';
import { readSite, SiteError } from '../../src/site/read-site.ts';
import { bundle, patient, type Json } from '../bundle/make.ts';

const folder = new URL('../../examples/site-stillwater/', import.meta.url);
const site = loadSite(folder.pathname);
const local = (code: string): Json => ({
  coding: [{ system: 'https://stillwater.example/observations', code }],
});
const observation = (id: string, code: string, more: Json): Json => ({
  resourceType: 'Observation',
  id,
  status: 'final',
  code: local(code),
  subject: { reference: 'Patient/1' },
  effectiveDateTime: '2026-02-01T10:00:00',
  ...more,
});
const pressure = (id: string, systolic: number): Json =>
  observation(id, 'BP', {
    component: [
      { code: local('SYS'), valueQuantity: { value: systolic, unit: 'mm de Hg' } },
      { code: local('DIA'), valueQuantity: { value: 96, unit: 'mm de Hg' } },
    ],
  });

function assessed(input: unknown) {
  const received = receive(input, { isStrict: false, site: site.setup });
  return withReception(
    evaluate(received.input, { ...site.options, asOf: '2026-02-01T09:00:00Z', guideline: 'frontline' }),
    received,
  );
}

function faultsOf(files: Readonly<Record<string, string>>): string {
  try {
    readSite((file) => files[file]);
    return '';
  } catch (error) {
    return error instanceof SiteError ? error.message : String(error);
  }
}

describe('a site', () => {
  it('F-S02: reads local codes, units and strip words as ours, beside what was sent, and says so', () => {
    const { timeline, account } = assessed(
      bundle([patient(), pressure('a', 150), observation('b', 'U-PROT', { valueString: 'mbili' })]),
    );
    expect(
      timeline.pressures.map(({ systolicMmHg, diastolicMmHg }) => [systolicMmHg, diastolicMmHg]),
    ).toEqual([[150, 96]]);
    expect(timeline.urineProteins.map((urine) => urine.kind === 'strip' && urine.grade)).toEqual([2]);
    const mapped = account.issues.filter(({ code }) => code === 'mapped-by-site');
    expect(mapped.map(({ expression }) => expression)).toContain('Bundle.entry[1].resource.code.coding[0]');
    expect(mapped[0]?.message).toContain('https://stillwater.example/fhir/ConceptMap/local-codes|2026-01');
  });

  it('F-S03: a mapping that is inexact feeds no rule', () => {
    const input = bundle([
      patient(),
      observation('c', 'CREA', { valueQuantity: { value: 1.4, unit: 'mg/dL' } }),
    ]);
    expect(assessed(input).timeline.laboratory).toEqual([]);
  });

  it('keeps the input as it is where nothing is mapped, and never changes what was handed in', () => {
    const input = bundle([patient(), pressure('a', 150)]);
    const before = JSON.stringify(input);
    receive(input, { isStrict: false, site: site.setup });
    expect(JSON.stringify(input)).toBe(before);
    const plain = bundle([patient()]);
    expect(receive(plain, { isStrict: false, site: site.setup }).input).toBe(plain);
  });

  it('F-T05: a time without a zone is read in the zone of the site', () => {
    const { timeline } = assessed(bundle([patient(), pressure('a', 150)]));
    expect(timeline.pressures[0]?.at.earliest).toBe(Date.parse('2026-02-01T10:00:00+03:00'));
  });

  it('sends the referral to whom the site names', () => {
    const evaluation = assessed(bundle([patient(), pressure('a', 172)]));
    expect(toSuggestions(evaluation).referral?.performer?.[0]?.reference).toMatch(/^Organization\//);
  });

  it('counts offsets of a zone with summer time, in the repeated and the left-out hour too', () => {
    const berlin = zoneOffset('Europe/Berlin');
    const at = (text: string): number => berlin(Date.parse(`${text}Z`));
    // IANA: Europe/Berlin changes at 01:00 UTC on 2026-03-29 and 2026-10-25.
    expect([at('2026-01-15T12:00'), at('2026-07-15T12:00')]).toEqual([60, 120]);
    expect([at('2026-03-29T01:59'), at('2026-03-29T03:01')]).toEqual([60, 120]);
    expect([at('2026-10-25T01:59'), at('2026-10-25T02:30'), at('2026-10-25T03:01')]).toEqual([120, 120, 60]);
    expect(zoneOffset('Asia/Kathmandu')(0)).toBe(330);
  });
});

describe('faults of a site folder', () => {
  it.each([
    ['{\n  "name": "x",\n  "timeZone": "Mars/Olympus"\n}', /^site\.json:3: timeZone:/],
    ['{\n  "name": "x",\n  "guideline": "no-such"\n}', /^site\.json:3: guideline: known are/],
    ['{\n  "name": "x",\n\n  "colour": 1\n}', /^site\.json:4: colour:/],
    [
      '{\n  "name": "x",\n  "levels": [\n    { "id": "a", "title": "A", "can": [], "next": "b" }\n  ]\n}',
      /^site\.json:4: levels\.0\.next:/,
    ],
    ['{\n  "name": "x",\n  oops\n}', /^site\.json:\d+: it is not JSON/],
    ['{ "name": "x", "conceptMaps": { "codes": ["none.json"] } }', /^none\.json: the file is not there/],
  ])('names file, line and member', (text, expected) => {
    expect(faultsOf({ 'site.json': text })).toMatch(expected);
  });

  it('F-S02: a narrower mapping without a comment, and a code mapped twice differently, are faults', () => {
    const map = readFileSync(new URL('local-codes.json', folder), 'utf8');
    const siteJson = '{ "name": "x", "conceptMaps": { "codes": ["m.json"] } }';
    const bare = map.replace(', "comment": "Method not known: not used."', '');
    expect(faultsOf({ 'site.json': siteJson, 'm.json': bare })).toMatch(/^m\.json:18: .*cmd-1/);
    const twice = map.replace(
      '"code": "DIA", "target": [{ "code": "8462-4"',
      '"code": "SYS", "target": [{ "code": "8462-4"',
    );
    expect(faultsOf({ 'site.json': siteJson, 'm.json': twice })).toMatch(
      /^m\.json:\d+: this code is mapped twice/,
    );
  });

  it('finds the line of a member at any depth', () => {
    const text = '{\n "a": [\n  1,\n  { "b": 2,\n    "c": [3, 4] }\n ]\n}';
    expect([
      lineOf(text, ['a']),
      lineOf(text, ['a', 1]),
      lineOf(text, ['a', 1, 'c', 1]),
      lineOf(text, ['z']),
    ]).toEqual([2, 4, 5, 1]);
  });
});

// Expected: story.md of each story; the order of sections is SBAR.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { evaluateInFull, type Evaluation } from '../../src/index.ts';
import { toReferralDocument } from '../../src/presenters/referral-document.ts';
import { toReferralNote } from '../../src/presenters/referral-note.ts';

interface Prefetch {
  readonly prefetch: Readonly<Record<string, { readonly entry?: readonly unknown[] } | null>>;
}

function severe(): Evaluation {
  const file = new URL('../../examples/severe-with-headache/request.json', import.meta.url);
  const { prefetch } = JSON.parse(readFileSync(file, 'utf8')) as Prefetch;
  const entry = Object.values(prefetch).flatMap((each) =>
    each === null ? [] : (each.entry ?? [{ resource: each }]),
  );
  return evaluateInFull(
    { resourceType: 'Bundle', type: 'collection', entry },
    { asOf: '2025-03-11T08:10:00Z', subject: 'Patient/ilse' },
  );
}

const note = toReferralNote(severe(), { name: 'Ilse Marrow', birthDate: '1987-02-14' });
const partsOf = (id: string) => note.sections.find((each) => each.id === id)?.parts ?? [];
const lines = (id: string, heading: string) =>
  partsOf(id)
    .find((each) => each.heading === heading)
    ?.lines.join('\n') ?? '';

describe('the referral note', () => {
  it('is in SBAR order and says where she goes', () => {
    expect(note.sections.map(({ id }) => id)).toEqual([
      'situation',
      'background',
      'assessment',
      'recommendation',
    ]);
    expect(note.title).toContain('hospital');
  });

  it('gives readings, urine and symptoms with their times', () => {
    expect(lines('assessment', 'Blood pressure')).toContain('168/112 mmHg, 11 Mar 2025 08:05');
    expect(lines('assessment', 'Urine protein')).toMatch(/3\+, 11 Mar 2025 08:07/);
    expect(lines('assessment', 'Symptoms')).toContain('Headache, 11 Mar 2025');
  });

  it('says of what was not recorded that it was not, and never leaves it blank', () => {
    expect(lines('recommendation', 'Treatment given')).toBe('not recorded');
    expect(note.sections.flatMap(({ parts }) => parts).every((each) => each.lines.length > 0)).toBe(true);
  });

  it('has the steps before transfer as boxes to tick, and the cautions', () => {
    const steps = partsOf('recommendation').find(({ toTick }) => toTick === true);
    expect(steps?.lines[0]).toBe('Call the receiving hospital.');
    expect(note.cautions.join(' ')).toContain('No alert is not proof of health');
  });
});

describe('the referral document', () => {
  const bundle = toReferralDocument(severe(), note);
  const resources = (bundle.entry ?? []).map(({ resource }) => resource);

  it('begins with a preliminary Composition, as FHIR documents do', () => {
    expect([bundle.type, bundle.identifier?.system, resources[0]?.resourceType]).toEqual([
      'document',
      'urn:ietf:rfc:3986',
      'Composition',
    ]);
    expect(resources[0]).toMatchObject({ status: 'preliminary', title: note.title });
  });

  it('holds everything it refers to', () => {
    const urls = new Set((bundle.entry ?? []).map(({ fullUrl }) => fullUrl));
    const referred = [...JSON.stringify(resources[0]).matchAll(/"reference":"([^"]+)"/g)].map(
      ([, url]) => url,
    );
    expect(referred.length).toBeGreaterThan(2);
    expect(referred.filter((url) => !urls.has(url))).toEqual([]);
  });

  it('gives the diagnoses beside the referral as its reasons', () => {
    const urls = new Set((bundle.entry ?? []).map(({ fullUrl }) => fullUrl));
    const reasons = resources.flatMap((each) =>
      each?.resourceType === 'ServiceRequest' ? (each.reasonReference ?? []) : [],
    );
    expect(reasons.length).toBeGreaterThan(0);
    expect(reasons.filter(({ reference }) => !urls.has(reference))).toEqual([]);
  });

  it('escapes what stands in the narrative', () => {
    const spoilt = { ...note, cautions: ['<script>&'] };
    expect(JSON.stringify(toReferralDocument(severe(), spoilt))).toContain('&lt;script&gt;&amp;');
  });
});

// Expected: issue text "a second reading of 140/90 or more after 13:10"; clinical rules, decision 10: exactly 4 h 00 confirms.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { evaluateInFull } from '../src/index.ts';
import { whatNext, type NextReading } from '../src/what-next.ts';

function story(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`../examples/${name}/request.json`, import.meta.url), 'utf8'));
}

function nextOf(name: string, asOf: string, kind: NextReading['kind']): NextReading | undefined {
  return whatNext(evaluateInFull(story(name), { asOf })).find((each) => each.kind === kind);
}

const when = (next: NextReading | undefined): string => new Date(next?.from ?? 0).toISOString();

describe('what one more reading would change', () => {
  it('a second reading at the limit makes a first raised one gestational hypertension, four hours after it', () => {
    const next = nextOf('first-raised-reading', '2025-03-10T09:20:00Z', 'raised');
    expect([next?.systolicMmHg, next?.diastolicMmHg, next?.classification[0]]).toEqual([
      140,
      90,
      'gestational-hypertension',
    ]);
    expect(when(next)).toBe('2025-03-10T13:10:00.000Z');
  });

  it('one severe reading is an emergency at once', () => {
    const next = nextOf('first-raised-reading', '2025-03-10T09:20:00Z', 'severe');
    expect([next?.urgency, when(next)]).toEqual(['emergency', '2025-03-10T09:20:00.000Z']);
  });

  it('a reading below the limits is just below both', () => {
    const next = nextOf('first-raised-reading', '2025-03-10T09:20:00Z', 'below');
    expect([next?.systolicMmHg, next?.diastolicMmHg, next?.classification[0]]).toEqual([
      139,
      89,
      'transient-hypertension',
    ]);
  });

  it('a reading below the limits does not undo pre-eclampsia', () => {
    const next = nextOf('protein-and-pressure', '2025-03-10T13:40:00Z', 'below');
    expect([next?.changesClass, next?.classification[0]]).toEqual([false, 'pre-eclampsia']);
  });

  it('says what the engine says when the reading is really taken then', () => {
    const next = nextOf('first-raised-reading', '2025-03-10T09:20:00Z', 'raised');
    const taken = {
      resourceType: 'Observation',
      id: 'taken',
      status: 'final',
      code: { coding: [{ system: 'http://loinc.org', code: '85354-9' }] },
      subject: { reference: 'Patient/nadira' },
      effectiveDateTime: '2025-03-10T13:10:00Z',
      component: [
        ['8480-6', 140],
        ['8462-4', 90],
      ].map(([code, value]) => ({
        code: { coding: [{ system: 'http://loinc.org', code }] },
        valueQuantity: { value, system: 'http://unitsofmeasure.org', code: 'mm[Hg]' },
      })),
    };
    const bundle = story('first-raised-reading') as { entry: readonly { resource: { id: string } }[] };
    const input = { ...bundle, entry: [...bundle.entry, { resource: taken }] };
    const { assessment } = evaluateInFull(input, { asOf: '2025-03-10T13:10:00Z' });
    expect([assessment.classification, assessment.urgency]).toEqual([next?.classification, next?.urgency]);
  });
});

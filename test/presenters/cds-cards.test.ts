// CDS Hooks cards; test names carry the row ids of the conformance checklist.
import { describe, expect, it } from 'vitest';
import type { Card } from '../../src/presenters/card-types.ts';
import { toCards } from '../../src/presenters/cds-cards.ts';
import { extensionKey } from '../../src/presenters/vocabulary.ts';
import { assessment, cleanAccount, evaluationOf, normalEvaluation } from './evaluation-builder.ts';
import { clinicTime, reading, timelineOf } from './timeline-builder.ts';
import { resourceFaults } from '../support/fhir-schema.ts';
import { emptyValues, textsOf, throughJson } from './walk.ts';

const cards = toCards(evaluationOf()).cards;
const [first, second, third] = cards;

function suggestionsOf(card: Card | undefined) {
  return card?.suggestions ?? [];
}

const resources = cards
  .flatMap(suggestionsOf)
  .flatMap((suggestion) => suggestion.actions.map((action) => action.resource));

describe('cards', () => {
  it('K-14, K-15: are at most three, critical before warning before info', () => {
    expect(cards.map((card) => card.indicator)).toEqual(['critical', 'warning', 'info']);
  });

  it('K-01: carry a uuid that depends on the advice and its evidence, not on when it is asked for', () => {
    const later = toCards(evaluationOf({ asOf: '2026-11-24T04:30:00Z' })).cards;
    expect(later.map((card) => card.uuid)).toEqual(cards.map((card) => card.uuid));
    expect(new Set(cards.map((card) => card.uuid)).size).toBe(3);
    const other = toCards(evaluationOf({ subject: 'Patient/other' })).cards;
    expect(other[0]?.uuid).not.toBe(first?.uuid);
  });

  it('K-02: say in under 140 characters what it is, how urgent, and on which reading', () => {
    expect(first?.summary).toBe(
      'EMERGENCY, act now: imminent eclampsia. BP 168/112 mmHg, 24 Nov 2026 09:10. Refer now to a hospital able to operate.',
    );
    for (const card of cards) expect(card.summary.length).toBeLessThan(140);
  });

  it('K-03: hold no HTML, even when the record does', () => {
    const nasty = { ...reading('bp-1', '09:10', 168, 112), asSent: '<img src=x onerror=alert(1)> 168/112' };
    const detail =
      toCards(evaluationOf({ timeline: timelineOf({ pressures: [nasty] }) })).cards[0]?.detail ?? '';
    expect(detail).not.toMatch(/<[a-z]/i);
    expect(detail).toContain('&lt;img');
  });

  it('K-04: keep critical for an emergency', () => {
    const at = (urgency: typeof assessment.urgency) =>
      toCards(evaluationOf({ assessment: { ...assessment, urgency, missing: [] } })).cards[0]?.indicator;
    expect(at('same-day')).toBe('warning');
    expect(at('within-48-hours')).toBe('warning');
    expect(at('within-7-days')).toBe('info');
  });

  it('K-05, K-06, K-08: name the guideline with edition and year as source, with its page and a topic', () => {
    expect(first?.source).toEqual({
      label: 'Book of Examples, 2nd edition, 2020',
      url: 'https://example.org/book',
      topic: {
        system: 'https://pregnancy-htn.example/fhir/CodeSystem/card-topic',
        code: 'assessment',
        display: 'Hypertension in pregnancy: assessment',
      },
    });
  });

  it('K-09, K-10: have a selection behaviour exactly when they have suggestions', () => {
    for (const card of cards) {
      expect(card.selectionBehavior).toBe(card.suggestions === undefined ? undefined : 'at-most-one');
    }
    expect(suggestionsOf(first).length).toBe(3);
  });

  it('K-11: offer override reasons with code, system and display', () => {
    const reasons = first?.overrideReasons ?? [];
    expect(reasons.length).toBeGreaterThan(0);
    for (const reason of reasons) expect(Object.keys(reason).sort()).toEqual(['code', 'display', 'system']);
  });

  it('K-13, E-01, E-02: explain themselves to machines under one reverse-domain key', () => {
    const extension = throughJson(first?.extension) as Record<string, Record<string, unknown>>;
    expect(Object.keys(extension)).toEqual([extensionKey]);
    expect(extension[extensionKey]).toMatchObject({
      classification: ['imminent-eclampsia'],
      urgency: 'emergency',
      evidence: ['Observation/bp-1', 'Observation/headache'],
      missing: ['platelets', 'fetal-heart'],
      thresholds: [{ id: 'severe-systolic', known: 'from-memory', verified: false }],
    });
  });

  it('X-01: the same evaluation gives the same bytes, the full set each time', () => {
    expect(JSON.stringify(toCards(evaluationOf()))).toBe(JSON.stringify({ cards }));
  });

  it('X-02: state value and time of the newest datum, the last reading and not the highest', () => {
    const readings = [reading('bp-1', '09:10', 168, 112), reading('bp-2', '09:25', 158, 104)];
    const card = toCards(evaluationOf({ timeline: timelineOf({ pressures: readings }) })).cards[0];
    expect(card?.summary).toContain('BP 158/104 mmHg, 24 Nov 2026 09:25');
    expect(card?.detail).toContain('158/104 mmHg, 24 Nov 2026 09:25');
  });

  it('X-02: show a newest reading that could not be used, and say so', () => {
    const unusable = {
      why: 'unit-missing',
      at: clinicTime('09:28'),
      asSent: '170/115',
      sources: [],
    } as const;
    const card = toCards(evaluationOf({ timeline: timelineOf({ unusablePressures: [unusable] }) })).cards[0];
    expect(card?.summary).toContain('BP 170/115 (could not be used)');
  });

  it('T-02: hold no null and nothing empty', () => {
    expect(emptyValues(throughJson(toCards(evaluationOf())))).toEqual([]);
  });
});

describe('suggestions in cards', () => {
  it('A-01, A-02: have a label and a uuid of their own', () => {
    const uuids = cards.flatMap(suggestionsOf).map((suggestion) => suggestion.uuid);
    expect(new Set(uuids).size).toBe(uuids.length);
    for (const suggestion of suggestionsOf(first)) expect(suggestion.label).not.toBe('');
  });

  it('A-03: recommend at most one', () => {
    expect(suggestionsOf(first).filter((suggestion) => suggestion.isRecommended === true)).toHaveLength(1);
  });

  it('A-05: refer only to what the same suggestion creates, or to what was received', () => {
    for (const suggestion of suggestionsOf(first)) {
      const created = suggestion.actions.map(
        ({ resource }) => `${resource.resourceType}/${resource.id ?? ''}`,
      );
      const received = ['Patient/asha', 'Observation/bp-1', 'Observation/headache'];
      const references = textsOf(throughJson(suggestion.actions), 'reference');
      expect(references.filter((reference) => ![...created, ...received].includes(reference))).toEqual([]);
    }
  });

  it('A-06, Y-01: use neither action selection nor system actions', () => {
    expect(JSON.stringify({ cards })).not.toMatch(/actionSelectionBehavior|systemActions/);
  });

  it('A-07, A-08, A-09, T-04: create complete R4 resources, each described', () => {
    expect(resources.length).toBeGreaterThan(0);
    expect(resources.flatMap((resource) => resourceFaults(throughJson(resource)))).toEqual([]);
    for (const suggestion of suggestionsOf(first)) {
      for (const action of suggestion.actions)
        expect([action.type, action.description !== '']).toEqual(['create', true]);
    }
  });

  it('A-12: are left out when the chart holds diagnosis and referral already, and the card says so', () => {
    const source = { reference: 'Condition/old', preliminary: false };
    const condition = {
      condition: 'pre-eclampsia-severe',
      state: 'active',
      certainty: 'confirmed',
      codes: [],
      asSent: '',
      source,
    } as const;
    // 183452005: emergency hospital admission, terminology.csv section 8.
    const request = {
      codes: ['http://snomed.info/sct|183452005'],
      status: 'active',
      intent: 'order',
      source: { reference: 'ServiceRequest/old', preliminary: false },
    };
    const card = toCards(
      evaluationOf({ timeline: timelineOf({ conditions: [condition], requests: [request] }) }),
    ).cards[0];
    expect(card?.suggestions).toBeUndefined();
    expect(card?.selectionBehavior).toBeUndefined();
    expect(card?.detail).toContain('ServiceRequest/old');
  });
});

describe('silence', () => {
  it('S-01: nothing raised, nothing urgent missing, nothing lost: no card', () => {
    expect(toCards(normalEvaluation())).toEqual({ cards: [] });
  });

  it('an urgent open question is never silent', () => {
    const normal = normalEvaluation();
    const [platelets] = assessment.missing;
    const missing = platelets === undefined ? [] : [platelets];
    const open = toCards({ ...normal, assessment: { ...normal.assessment, missing } }).cards;
    expect(open.map((card) => card.summary)).toEqual([
      'Needed today: platelet count. BP 112/70 mmHg, 24 Nov 2026 09:10.',
    ]);
  });

  it('an entry that could not be read is never silent', () => {
    const [card, ...others] = toCards(normalEvaluation({ account: evaluationOf().account })).cards;
    expect(others).toEqual([]);
    expect(card?.summary).toContain('1 entry of the record could not be used.');
    expect(card?.detail).toContain('Observation/wrong-unit');
  });

  it('C-05: data that could not be had make no card of their own, and every card that is shown names them', () => {
    const gap = { key: 'symptoms', what: 'symptoms and danger signs', why: 'failed' } as const;
    const context = { gaps: [gap], states: { symptoms: 'failed' } } as const;
    expect(toCards(normalEvaluation(), context)).toEqual({ cards: [] });
    const shown = toCards(evaluationOf(), context).cards;
    expect(shown.length).toBeGreaterThan(0);
    for (const card of shown) {
      expect(card.detail).toContain('symptoms and danger signs: the record system could not read them');
      expect(card.extension).toMatchObject({ [extensionKey]: { data: { symptoms: 'failed' } } });
    }
  });

  it('R-11: an entry set aside that is no pressure and no urine result, or another woman’s, makes no card', () => {
    const aside = (code: 'other-subject' | 'unit-unknown', about?: 'blood-pressure') => ({
      ...cleanAccount,
      entries: [
        {
          path: 'Bundle.entry[0].resource',
          reference: 'Observation/x',
          resourceType: 'Observation',
          outcome: 'set-aside' as const,
          code,
          expression: 'Bundle.entry[0].resource',
          message: 'Not used.',
          ...(about === undefined ? {} : { about }),
        },
      ],
    });
    const cardsWith = (account: ReturnType<typeof aside>) => toCards(normalEvaluation({ account })).cards;
    expect(cardsWith(aside('other-subject', 'blood-pressure'))).toEqual([]);
    expect(cardsWith(aside('unit-unknown'))).toEqual([]);
    expect(cardsWith(aside('unit-unknown', 'blood-pressure'))).toHaveLength(1);
  });

  it('withdrawn entries and copies make no card', () => {
    const withdrawn = {
      ...cleanAccount,
      entries: [
        {
          path: 'Bundle.entry[0].resource',
          reference: 'Observation/x',
          resourceType: 'Observation',
          outcome: 'set-aside',
          code: 'entered-in-error',
          expression: 'Bundle.entry[0].resource.status',
          message: 'Withdrawn.',
        } as const,
      ],
    };
    expect(toCards(normalEvaluation({ account: withdrawn })).cards).toEqual([]);
  });

  it('the third card lists what was not used with the mend', () => {
    expect(third?.detail).toContain('The unit is not known: send UCUM.');
    expect(second?.detail).toContain('Send blood now.');
  });
});

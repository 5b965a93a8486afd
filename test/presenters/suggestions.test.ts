// Suggested Conditions and the proposed referral.
import { describe, expect, it } from 'vitest';
import { classifications, urgencies } from '../../src/guidelines/guideline.ts';
import { toSuggestions } from '../../src/presenters/suggestions.ts';
import { assessment, evaluationOf } from './evaluation-builder.ts';
import { timelineOf } from './timeline-builder.ts';
import { resourceFaults } from '../support/fhir-schema.ts';
import { throughJson } from './walk.ts';

const { conditions, referral } = toSuggestions(evaluationOf());

describe('the suggested Condition', () => {
  const condition = conditions[0]?.resource;

  it('is active, provisional, about her, recorded as of the answer, with its evidence', () => {
    expect(throughJson(condition)).toMatchObject({
      resourceType: 'Condition',
      clinicalStatus: { coding: [{ code: 'active' }] },
      verificationStatus: { coding: [{ code: 'provisional' }] },
      subject: { reference: 'Patient/asha' },
      recordedDate: '2026-11-24T04:00:00Z',
      evidence: [{ detail: [{ reference: 'Observation/bp-1' }, { reference: 'Observation/headache' }] }],
    });
  });

  it('carries a SNOMED CT and an ICD-10 code from O10 to O16', () => {
    const codes = condition?.code?.coding ?? [];
    expect(codes.some((coding) => coding.system === 'http://snomed.info/sct')).toBe(true);
    const icd = codes.find((coding) => coding.system === 'http://hl7.org/fhir/sid/icd-10');
    expect(icd?.code).toMatch(/^O1[0-6]/);
  });

  it('states the gestational age in its note', () => {
    expect(condition?.note?.[0]?.text).toContain('Gestational age 34+2 weeks.');
  });

  it('is valid R4 for every class and every part of the pregnancy', () => {
    for (const classification of classifications) {
      for (const period of ['before-20-weeks', 'from-20-weeks', 'after-birth', 'unknown'] as const) {
        const all = toSuggestions(
          evaluationOf({
            gestationalAge: { period, evidence: [], remarks: [] },
            assessment: { ...assessment, classification: [classification] },
          }),
        );
        const faults = [...all.conditions.map((each) => each.resource), all.referral].flatMap((each) =>
          resourceFaults(throughJson(each)),
        );
        expect(faults).toEqual([]);
      }
    }
  });

  it('is not proposed for a single raised reading, nor when nothing can be said', () => {
    for (const classification of ['raised-unconfirmed', 'cannot-classify', 'normotensive'] as const) {
      expect(
        toSuggestions(evaluationOf({ assessment: { ...assessment, classification: [classification] } }))
          .conditions,
      ).toEqual([]);
    }
  });

  it('A-12: is not proposed when the chart holds the same code active, dotted or not', () => {
    // O14.1 severe pre-eclampsia, terminology.csv section 6.
    const held = (code: string, state: 'active' | 'inactive') =>
      timelineOf({
        conditions: [
          {
            condition: 'diabetes',
            state,
            certainty: 'confirmed',
            codes: [`http://hl7.org/fhir/sid/icd-10|${code}`],
            asSent: code,
            source: { reference: 'Condition/old', preliminary: false },
          },
        ],
      });
    const proposed = (code: string, state: 'active' | 'inactive') =>
      toSuggestions(evaluationOf({ timeline: held(code, state) })).conditions.length;
    expect([proposed('O14.1', 'active'), proposed('O141', 'active'), proposed('O14.1', 'inactive')]).toEqual([
      0, 0, 1,
    ]);
  });

  it('F-O03: has an id that does not depend on the time of asking', () => {
    const later = toSuggestions(evaluationOf({ asOf: '2026-11-25T04:00:00Z' }));
    expect(later.conditions[0]?.resource.id).toBe(condition?.id);
  });
});

describe('the proposed referral', () => {
  it('is a draft proposal with priority, reasons, evidence, instruction and the steps before transfer in order', () => {
    expect(throughJson(referral)).toMatchObject({
      status: 'draft',
      intent: 'proposal',
      priority: 'stat',
      subject: { reference: 'Patient/asha' },
      authoredOn: '2026-11-24T04:00:00Z',
      occurrenceDateTime: '2026-11-24T09:30:00+05:30',
      reasonReference: [{ reference: `Condition/${conditions[0]?.resource.id ?? ''}` }],
      supportingInfo: [{ reference: 'Observation/bp-1' }, { reference: 'Observation/headache' }],
      patientInstruction: 'You need the hospital now.',
    });
    expect(referral?.note?.[0]?.text).toContain('1. Give the loading dose.\n2. Put up a line.');
  });

  it('takes its priority and due time from the urgency', () => {
    const of = (urgency: (typeof urgencies)[number]) => {
      const { referral: proposed } = toSuggestions(
        evaluationOf({
          assessment: {
            ...assessment,
            referral: {
              level: 'hospital',
              urgency,
              sentence: 'Refer.',
              source: { publication: 'Book', section: '1', year: 2020, known: 'read' },
            },
          },
        }),
      );
      return [proposed?.priority, proposed?.occurrenceDateTime ?? proposed?.occurrencePeriod?.end];
    };
    // 09:30 on 24 Nov at the clinic (+05:30); the length of each interval is its name.
    expect(urgencies.map(of)).toEqual([
      ['stat', '2026-11-24T09:30:00+05:30'],
      ['asap', '2026-11-24T23:59:59+05:30'],
      ['urgent', '2026-11-26T09:30:00+05:30'],
      ['routine', '2026-12-01T09:30:00+05:30'],
      ['routine', undefined],
    ]);
  });

  it('A-12: is not proposed while the chart holds an open one, and is when that one is completed', () => {
    const request = (status: string) =>
      timelineOf({
        requests: [
          {
            codes: ['http://snomed.info/sct|183452005'],
            status,
            intent: 'order',
            source: { reference: 'ServiceRequest/old', preliminary: false },
          },
        ],
      });
    expect(toSuggestions(evaluationOf({ timeline: request('active') })).heldReferral).toBe(
      'ServiceRequest/old',
    );
    expect(toSuggestions(evaluationOf({ timeline: request('completed') })).referral).toBeDefined();
  });
});

// Medicines, drugs named, prevention and quality in every form of the answer; and when a card is quiet.
import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/findings/finding.ts';
import { toAnswer } from '../../src/presenters/answer.ts';
import { toCards } from '../../src/presenters/cds-cards.ts';
import { toDetectedIssues } from '../../src/presenters/detected-issue.ts';
import { toFhirBundle } from '../../src/presenters/fhir-result.ts';
import { toText } from '../../src/presenters/text.ts';
import { resourceFaults } from '../support/fhir-schema.ts';
import { assessment, evaluationOf, ownCitation, readCitation } from './evaluation-builder.ts';
import { clinicTime, reading, timelineOf } from './timeline-builder.ts';
import { emptyValues, throughJson } from './walk.ts';

const medicine = { reference: 'MedicationRequest/m', what: 'medicine', asSent: 'Lisinopril' };
const pressure = { reference: 'Observation/bp-1', what: 'blood pressure', asSent: '168/112 mm[Hg]' };
const care: Pick<Assessment, 'medicines' | 'treatment' | 'prevention' | 'quality'> = {
  medicines: [
    {
      rule: 'renin-angiotensin-agent-in-pregnancy',
      medicine: 'lisinopril',
      severity: 'avoid',
      sentence: 'Not in pregnancy.',
      alternative: 'Named instead: another.',
      evidence: [medicine, pressure],
      source: readCitation,
    },
  ],
  treatment: [
    {
      id: 'labetalol',
      medicine: 'labetalol',
      purpose: 'acute-pressure',
      dose: '20 mg into a vein',
      against: [{ sentence: 'asthma is recorded', evidence: [pressure] }],
      offeredFirst: true,
      source: readCitation,
    },
  ],
  prevention: [
    {
      id: 'aspirin',
      outcome: 'met',
      sentence: 'Aspirin is indicated.',
      found: [{ factor: 'chronic hypertension', level: 'high', evidence: [pressure] }],
      absent: ['diabetes'],
      neverAsked: ['twins'],
      dose: 'a low dose',
      window: 'from early weeks',
      source: readCitation,
    },
    {
      id: 'calcium',
      outcome: 'not-met',
      sentence: 'Calcium is not indicated.',
      found: [],
      absent: [],
      neverAsked: [],
      source: readCitation,
    },
  ],
  quality: [
    {
      rule: 'cuff-too-small',
      grade: 'block',
      sentence: 'The cuff was too small.',
      evidence: [pressure],
      source: ownCitation,
    },
    { rule: 'rest-unknown', grade: 'ask', sentence: 'Was she rested?', evidence: [], source: ownCitation },
  ],
};
const evaluation = evaluationOf({ assessment: { ...assessment, ...care } });

describe('care in the answer', () => {
  it('the JSON answer carries medicines, treatment, prevention and quality, nothing empty', () => {
    const answer = throughJson(toAnswer(evaluation));
    expect(answer).toMatchObject({
      medicines: [{ rule: 'renin-angiotensin-agent-in-pregnancy', severity: 'avoid' }],
      treatment: [{ id: 'labetalol', dose: '20 mg into a vein', offeredFirst: true }],
      prevention: [{ id: 'aspirin', outcome: 'met', neverAsked: ['twins'] }, { id: 'calcium' }],
      quality: [{ rule: 'cuff-too-small', grade: 'block' }, { rule: 'rest-unknown' }],
    });
    expect(emptyValues(answer)).toEqual([]);
  });

  it('text and card say each in its place, and nothing about advice that does not apply', () => {
    const card = toCards(evaluation).cards[0]?.detail ?? '';
    for (const said of [toText(evaluation).replace(/\s+/g, ' '), card.replace(/\s+/g, ' ')]) {
      expect(said).toContain('Lisinopril: Not in pregnancy. Named instead: another.');
      expect(said).toContain('Labetalol: 20 mg into a vein (offered first). Think twice: asthma is recorded');
      expect(said).toContain(
        'Aspirin: Aspirin is indicated. A low dose. Window: from early weeks. Found: chronic hypertension. Asked and absent: diabetes. Never asked: twins.',
      );
      expect(said).toContain('The cuff was too small.');
      expect(said).not.toContain('Calcium is not indicated.');
    }
  });

  it('prevention that something speaks for and something against is said with what was found', () => {
    const [aspirin] = care.prevention;
    if (aspirin === undefined) throw new Error('no advice');
    const against = { ...aspirin, outcome: 'not-met', sentence: 'The record speaks against it.' } as const;
    const text = toText(evaluationOf({ assessment: { ...assessment, ...care, prevention: [against] } }));
    expect(text.replace(/\s+/g, ' ')).toContain('Aspirin: The record speaks against it.');
    expect(text).toContain('Found: chronic hypertension.');
  });

  it('the FHIR result holds a valid DetectedIssue for each medicine notice and each blocking measurement', () => {
    const issues = toDetectedIssues(evaluation);
    expect(issues.map(({ severity, detail }) => [severity, detail])).toEqual([
      ['high', 'lisinopril: Not in pregnancy. Named instead: another.'],
      ['moderate', 'The cuff was too small.'],
    ]);
    expect(issues[0]?.implicated).toEqual([{ reference: 'MedicationRequest/m' }]);
    expect(issues[0]?.evidence).toEqual([{ detail: [{ reference: 'Observation/bp-1' }] }]);
    expect(issues.flatMap((issue) => resourceFaults(throughJson(issue)))).toEqual([]);
    const types = (toFhirBundle(evaluation).entry ?? []).map(({ resource }) => resource?.resourceType);
    expect(types.filter((type) => type === 'DetectedIssue')).toHaveLength(2);
  });
});

describe('quiet when the chart shows the action', () => {
  const source = { reference: 'Condition/old', preliminary: false };
  const known = {
    condition: 'pre-eclampsia',
    state: 'active',
    certainty: 'provisional',
    codes: [],
    asSent: '',
    source,
  } as const;
  const request = (clock: string) => ({
    // 183452005: emergency hospital admission, terminology.csv section 8.
    codes: ['http://snomed.info/sct|183452005'],
    status: 'active',
    intent: 'order',
    at: clinicTime(clock),
    source: { reference: 'ServiceRequest/old', preliminary: false },
  });
  const cardsAt = (urgency: Assessment['urgency'], clock: string) =>
    toCards(
      evaluationOf({
        assessment: {
          ...assessment,
          classification: ['pre-eclampsia'],
          urgency,
          missing: [],
          ...(assessment.referral === undefined ? {} : { referral: { ...assessment.referral, urgency } }),
        },
        timeline: timelineOf({
          pressures: [reading('bp-1', '09:10', 150, 96)],
          conditions: [known],
          requests: [request(clock)],
        }),
        account: { ...evaluation.account, entries: [], received: 0, used: 0, notNeeded: 0, setAside: 0 },
      }),
    ).cards;

  it('A-12: diagnosis recorded and referral written after the newest pressure: no card', () => {
    expect(cardsAt('same-day', '09:20')).toEqual([]);
  });

  it('a pressure newer than the referral brings the card back', () => {
    expect(cardsAt('same-day', '09:00')).toHaveLength(1);
  });

  it('an emergency is never quiet', () => {
    expect(cardsAt('emergency', '09:20')).toHaveLength(1);
  });
});

describe('trend', () => {
  it('shows the last three readings with their change', () => {
    const pressures = [
      reading('a', '08:00', 140, 88),
      reading('b', '08:30', 150, 96),
      reading('c', '09:00', 158, 100),
      reading('d', '09:30', 146, 100),
    ];
    const [card] = toCards(evaluationOf({ timeline: timelineOf({ pressures }) })).cards;
    expect(card?.detail).toContain('24 Nov 2026 08:30: 150/96 mmHg');
    expect(card?.detail).not.toContain('140/88');
    expect(card?.detail).toContain('change from the first to the last of these: −4/+4 mmHg');
  });
});

// The answer for people at a terminal.
import { describe, expect, it } from 'vitest';
import { toText } from '../../src/presenters/text.ts';
import { evaluationOf, normalEvaluation } from './evaluation-builder.ts';
import { reading, timelineOf } from './timeline-builder.ts';

const text = toText(evaluationOf());
const lines = text.split('\n');

describe('the text answer', () => {
  it('fits a terminal of 80 columns', () => {
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
  });

  it('says first how urgent it is and what it is, in words', () => {
    expect(lines[0]).toBe('EMERGENCY, act now: imminent eclampsia');
    expect(lines[2]).toBe('Patient/asha; gestational age 34+2 weeks; as of 24 Nov 2026 09:30');
  });

  it('shows the newest reading with its time, as the clock at the clinic showed it', () => {
    expect(text).toContain('blood pressure 168/112 mmHg, 24 Nov 2026 09:10');
  });

  it('lists what to do in order, before what is missing, before why', () => {
    const places = [
      '1. Refer now to a hospital',
      '2. Call for help.',
      '3. Give the loading dose.',
      'platelet count (today)',
      'Severe pressure with a danger symptom.',
    ].map((part) => text.indexOf(part));
    expect(places.every((place) => place > 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  });

  it('names guideline, version, unchecked values, what was set aside with its reason, and the caution', () => {
    expect(text).toContain('Book of Examples (book-2020, version 1.2.3');
    expect(text).toContain('Not yet checked against the printed guideline: severe-systolic');
    expect(text.replace(/\s+/g, ' ')).toContain(
      'Observation/wrong-unit: The unit is not known: send UCUM. [unit-unknown]',
    );
    expect(text.replace(/\s+/g, ' ')).toContain('does not replace it');
  });

  it('names the resource and the place of an issue, or the path of one that lies in none', () => {
    const issue = {
      severity: 'warning',
      code: 'value-ambiguous',
      type: 'value',
      message: 'Send one.',
    } as const;
    const path = 'Bundle.entry[3].resource';
    const entry = {
      outcome: 'used',
      by: ['raised-now'],
      path,
      reference: 'Observation/bp-3',
      resourceType: 'Observation',
    } as const;
    const issues = [
      { ...issue, expression: `${path}.component[1].valueQuantity` },
      { ...issue, expression: 'Bundle.link' },
    ];
    const { account } = evaluationOf();
    const told = toText(evaluationOf({ account: { ...account, entries: [entry], issues } }));
    const words = told.replace(/\s+/g, ' ');
    expect(words).toContain('Observation/bp-3 component[1].valueQuantity: Send one. [value-ambiguous]');
    expect(words).toContain('Bundle.link: Send one. [value-ambiguous]');
  });

  it('lets no control character of a record through to the terminal', () => {
    const odd = { ...reading('bp-1', '09:10', 168, 112), asSent: '168/112\u001b[2J mm[Hg]' };
    expect(toText(evaluationOf({ timeline: timelineOf({ pressures: [odd] }) }))).not.toContain('\u001b');
  });

  it('carries the caution when all is well, too', () => {
    expect(toText(normalEvaluation())).toContain('No alert is not proof of health');
  });
});

describe('the newest data', () => {
  const symptom = {
    symptom: 'seizure',
    presence: 'present',
    relieved: false,
    source: { reference: 'Observation/fit', preliminary: false },
  } as const;
  const shown = (parts: Parameters<typeof timelineOf>[0]): string =>
    toText(evaluationOf({ timeline: timelineOf(parts) }));

  it('names a symptom that was answered with yes and no more', () => {
    expect(shown({ symptoms: [{ ...symptom, asSent: 'true' }] })).toContain('- symptom seizure');
    expect(shown({ symptoms: [{ ...symptom, asSent: 'Fit: true' }] })).toContain('- symptom Fit');
    expect(shown({ symptoms: [{ ...symptom, asSent: 'Fit: severe' }] })).toContain('- symptom Fit: severe');
  });

  it('shows an average taken at home, and not one of the clinic', () => {
    const { at } = reading('clinic', '09:10', 120, 80);
    const mean = {
      from: at,
      to: at,
      asSent: '142/90 mm[Hg]',
      sources: [],
      systolicMmHg: 142,
      diastolicMmHg: 90,
    };
    expect(shown({ meanPressures: [{ ...mean, setting: 'home' }] })).toContain(
      'blood pressure at home 142/90',
    );
    expect(shown({ meanPressures: [{ ...mean, setting: 'clinic' }] })).not.toContain('at home');
  });
});

// From answered questions to classes, urgency and referral: each step with rules of its own.
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/findings/finding.ts';
import type { ClassRule, Need, Urgency } from '../../src/guidelines/guideline.ts';
import { withoutAdvice } from '../../src/rules/after-death.ts';
import { combine, decisiveOf, lookUp, questionsOf } from '../../src/rules/combine.ts';
import { decideClasses } from '../../src/rules/decide-classes.ts';
import { chooseReferral, decideUrgency, isMoreUrgent } from '../../src/rules/decide-urgency.ts';
import { assess } from '../support/assess.ts';
import * as story from '../support/plain-stories.ts';
import { citation, classRule, finding, ids, threshold } from './rule-parts.ts';

const outcome = (id: string): Outcome | undefined => ids[id];
const answered = (more: Readonly<Record<string, Outcome>> = {}) =>
  new Map(Object.entries({ ...ids, ...more }));

describe('the questions that decide', () => {
  it.each<[Need, readonly string[]]>([
    ['met', ['met']],
    [{ all: ['met', 'not', 'open'] }, ['not']],
    [{ all: ['met', 'open', { any: ['open', 'not'] }] }, ['open']],
    [{ all: ['met', { any: ['not', 'met'] }] }, ['met']],
    [{ any: ['not', 'open', 'other'] }, ['open']],
    [{ any: ['not', { all: ['met', 'not'] }] }, ['not']],
    [{ none: ['not', 'other'] }, ['not']],
    [{ none: ['not', 'met'] }, ['met']],
    [{ none: ['not', 'open'] }, ['open']],
    [{ none: [{ any: ['not', 'met'] }] }, ['met']],
  ])('of %j are %j', (need, questions) => {
    expect(decisiveOf(need, outcome)).toEqual(questions);
  });

  it('each need lists its questions once, asked twice as well', () => {
    const need: Need = { all: ['met', { none: ['open', { any: ['met'] }] }] };
    expect([questionsOf(need), questionsOf(need), questionsOf('met')]).toEqual([
      ['met', 'open'],
      ['met', 'open'],
      ['met'],
    ]);
  });

  it('a defect never hides behind a part that decides already', () => {
    for (const need of [{ all: ['not', 'nobody'] }, { any: ['met', 'nobody'] }, { none: ['met', 'nobody'] }])
      expect(() => combine(need, outcome)).toThrow('nobody');
  });

  it('a rule this guideline does not have is not applicable; a question it does not have is a defect', () => {
    const look = lookUp(answered());
    for (const kind of ['class', 'urgency', 'referral', 'prevention'])
      expect(look(`${kind}:any`)).toBe('not-applicable');
    expect([look('any'), look('my-class:any'), look('met')]).toEqual([undefined, undefined, 'met']);
  });
});

const answers = ['met', 'not', 'open', 'other'].map((question) => finding(question));

describe('classes', () => {
  const decided = (...rules: readonly ClassRule[]) => {
    const outcomes = answered();
    return { ...decideClasses(rules, answers, outcomes), outcomes };
  };

  it('that hold are listed, the leading one first, whatever the order of the rules', () => {
    const { classification } = decided(
      classRule('a', 'normotensive', 'met'),
      classRule('b', 'hellp', 'met'),
      classRule('c', 'eclampsia', 'open'),
    );
    expect(classification).toEqual(['hellp', 'normotensive']);
    expect(decided(classRule('c', 'eclampsia', 'open')).classification).toEqual(['cannot-classify']);
  });

  it('that are superseded fall away, and count as not met afterwards', () => {
    const { classification, outcomes } = decided(
      classRule('a', 'pre-eclampsia', 'met', ['gestational-hypertension']),
      classRule('b', 'gestational-hypertension', 'met', ['normotensive']),
      classRule('c', 'normotensive', 'met'),
      classRule('d', 'hellp', 'not', ['pre-eclampsia']),
    );
    expect(classification).toEqual(['pre-eclampsia']);
    expect(['a', 'b', 'c', 'd'].map((id) => outcomes.get(`class:${id}`))).toEqual([
      'met',
      'not-met',
      'not-met',
      'not-met',
    ]);
  });

  it('may rest on an earlier one', () => {
    expect(
      decided(classRule('a', 'pre-eclampsia', 'met'), classRule('b', 'hellp', 'class:a')).classification,
    ).toEqual(['hellp', 'pre-eclampsia']);
  });

  it('that hold cite what decided; others give the reason alone', () => {
    const need: Need = { all: ['met', { any: ['met', 'not'] }] };
    const { findings } = decided(
      classRule('a', 'hellp', need),
      classRule('b', 'eclampsia', { all: ['met', 'not'] }),
    );
    expect(findings[0]).toEqual({
      question: 'class:a',
      asks: 'It is a.',
      outcome: 'met',
      because: 'because of met',
      evidence: answers[0]?.evidence,
      thresholds: [threshold],
      source: citation,
      restsOn: ['met', 'not'],
    });
    expect(findings[1]).toMatchObject({
      outcome: 'not-met',
      because: 'because of not',
      evidence: [],
      thresholds: [],
    });
  });

  it('decided by no question give their own sentence', () => {
    expect(decided(classRule('a', 'hellp', 'class:none')).findings[0]?.because).toBe('It is a.');
  });

  it('cite each limit and each reason once', () => {
    const twice = ['one', 'two'].map((question) =>
      finding(question, { because: 'the same', outcome: 'met' }),
    );
    const { findings } = decideClasses(
      [classRule('a', 'hellp', { all: ['one', 'two'] })],
      twice,
      new Map([
        ['one', 'met'],
        ['two', 'met'],
      ]),
    );
    expect(findings[0]).toMatchObject({ because: 'the same', thresholds: [threshold] });
    expect(findings[0]?.evidence).toHaveLength(2);
  });
});

describe('urgency and referral', () => {
  const rule = (id: string, urgency: Urgency, when: Need) => ({ id, urgency, sentence: id, when, citation });

  it('the most urgent rule that holds decides, and all that hold are told', () => {
    const outcomes = answered();
    const rules = [
      rule('a', 'same-day', 'met'),
      rule('b', 'emergency', 'met'),
      rule('c', 'emergency', 'open'),
      rule('d', 'within-7-days', { all: ['urgency:a'] }),
    ];
    const { urgency, because } = decideUrgency(rules, outcomes);
    expect([urgency, because.map((one) => one.rule)]).toEqual(['emergency', ['b', 'a', 'd']]);
    expect(outcomes.get('urgency:c')).toBe('cannot-tell');
    expect(decideUrgency(rules.slice(2, 3), outcomes)).toEqual({ urgency: 'routine', because: [] });
    expect([isMoreUrgent('emergency', 'routine'), isMoreUrgent('routine', 'routine')]).toEqual([true, false]);
  });

  it('the first referral that holds is chosen, and no other counts as met', () => {
    const outcomes = answered();
    const level = (name: 'hospital-with-intensive-care' | 'hospital' | 'clinic', when: Need) => ({
      level: name,
      when,
      sentence: name,
      citation,
    });
    const rules = [
      level('hospital-with-intensive-care', 'not'),
      level('hospital', 'met'),
      level('clinic', 'met'),
    ];
    expect(chooseReferral(rules, outcomes, 'same-day')).toEqual({
      level: 'hospital',
      urgency: 'same-day',
      sentence: 'hospital',
      source: citation,
    });
    expect(rules.map(({ level: name }) => outcomes.get(`referral:${name}`))).toEqual([
      'not-met',
      'met',
      'not-met',
    ]);
    expect(chooseReferral(rules.slice(0, 1), outcomes, 'same-day')).toBeUndefined();
  });
});

it('of a woman who died the trace stays, and nothing else', () => {
  const before = assess(story.severePreEclampsia);
  expect(withoutAdvice(before)).toEqual({
    classification: ['cannot-classify'],
    urgency: 'routine',
    urgencyBecause: [],
    findings: before.findings,
    missing: [],
    actions: [],
    medicines: [],
    treatment: [],
    prevention: [],
    quality: [],
  });
});

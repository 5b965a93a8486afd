// Drugs with rules of their own: which is offered first, and what the record holds against it. Clinical rules 2.7, 2.8; decision 28.
import { describe, expect, it } from 'vitest';
import type { TreatmentRule } from '../../src/guidelines/guideline.ts';
import { markedAgainst } from '../../src/rules/against.ts';
import type { Site } from '../../src/rules/site.ts';
import { chooseTreatments } from '../../src/rules/treatment-options.ts';
import type { KnownCondition, Medicine, Timeline } from '../../src/timeline/timeline.ts';
import { limit, viewOf } from './checks/ask.ts';
import { condition, medicine, moment } from './facts.ts';
import { allergy, citation, edition, outcomes, over } from './rule-parts.ts';

describe('a drug', () => {
  const rule: TreatmentRule = {
    id: 'one',
    medicine: 'labetalol by mouth',
    medicines: ['labetalol'],
    purpose: 'maintenance',
    when: 'met',
    dose: 'so much',
    figures: [],
    rank: 2,
    against: [],
    citation,
  };
  const options = (rules: readonly Partial<TreatmentRule>[], facts: Partial<Timeline> = {}, site?: Site) =>
    chooseTreatments(
      viewOf(facts),
      edition({ treatmentRules: rules.map((one) => ({ ...rule, ...one })) }),
      outcomes,
      site,
    );
  const firsts = (...given: Parameters<typeof options>) =>
    options(...given)
      .filter(({ offeredFirst }) => offeredFirst)
      .map(({ id }) => id);
  const sentence = 'Think twice.';
  const against = (reason: object, facts: Partial<Timeline> = {}) =>
    options([{ against: [{ sentence, ...reason }] }], facts)[0]?.against.map((one) => [
      one.sentence,
      one.evidence.length,
    ]);

  it('is offered when its state is met; the lowest rank of each purpose first', () => {
    const rules = [
      {},
      { id: 'two', rank: 1 },
      { id: 'three', rank: 1 },
      { id: 'other', purpose: 'seizure' as const },
      { id: 'no', when: 'not' },
    ];
    expect(options(rules).map(({ id }) => id)).toEqual(['one', 'two', 'three', 'other']);
    expect(firsts(rules)).toEqual(['two', 'other']);
    const { rank: _rank, ...unranked } = rule;
    expect(chooseTreatments(viewOf({}), edition({ treatmentRules: [unranked] }), outcomes)).toMatchObject([
      { offeredFirst: false },
    ]);
    const { treatmentRules: _none, ...bare } = edition({});
    expect(chooseTreatments(viewOf({}), bare, outcomes)).toEqual([]);
  });

  it('with something against it gives way to the next, and is shown', () => {
    const rules = [
      { against: [{ sentence, conditions: ['asthma'] as const }], rank: 1 },
      { id: 'two', rank: 2 },
    ];
    const facts = { conditions: [condition('asthma')] };
    expect([firsts(rules), firsts(rules, facts)]).toEqual([['one'], ['two']]);
    expect(options(rules, facts)[0]).toMatchObject({
      id: 'one',
      offeredFirst: false,
      against: [{ sentence }],
    });
  });

  it('has against it what is active on record, or a state', () => {
    const asthma = { conditions: ['asthma'] };
    expect(against(asthma, { conditions: [condition('asthma')] })).toEqual([[sentence, 1]]);
    expect(against(asthma, { conditions: [over('asthma'), condition('stroke')] })).toEqual([]);
    const toLabetalol = { allergyTo: ['labetalol'] };
    expect(against(toLabetalol, { conditions: [allergy(['labetalol', 'aspirin'])] })).toEqual([
      [sentence, 1],
    ]);
    expect(against(toLabetalol, { conditions: [allergy(['aspirin']), condition('asthma')] })).toEqual([]);
    expect(against(toLabetalol, { conditions: [{ ...allergy(['labetalol']), state: 'inactive' }] })).toEqual(
      [],
    );
    expect([
      against({ when: 'met' }),
      against({ when: 'not' }),
      against({ when: 'open' }),
      against({}),
    ]).toEqual([[[sentence, 0]], [], [], []]);
  });

  it('cites the onset of what is against it, or its record', () => {
    const [onset, recorded] = [moment('2010-01-01'), moment('2011-01-01')];
    const times = (more: Partial<KnownCondition>) =>
      options([{ against: [{ sentence, conditions: ['asthma'] }] }], {
        conditions: [{ ...condition('asthma'), ...more }],
      })[0]?.against.flatMap(({ evidence }) => evidence.map(({ at }) => at));
    expect([times({ onset, recorded }), times({ recorded }), times({})]).toEqual([
      ['2010-01-01'],
      ['2011-01-01'],
      [undefined],
    ]);
  });

  it('has against it a medicine in use, or given lately, each once', () => {
    const inUse = { medicines: ['nifedipine'] };
    const given = { given: { medicines: ['nifedipine'], within: limit('<=', 1, 'd') } };
    const taking = (item: Medicine) => ({ medicines: [item, medicine('aspirin', 'active')] });
    const running = medicine('nifedipine', 'active', '2025-03-01');
    const dose = medicine('nifedipine', 'given', '09:00');
    expect([against(inUse, taking(running)), against(inUse, taking(dose))]).toEqual([[[sentence, 1]], []]);
    expect(against(inUse, taking({ ...running, end: moment('11:00') }))).toEqual([]);
    expect([against(given, taking(running)), against(given, taking(dose))]).toEqual([
      [[sentence, 1]],
      [[sentence, 1]],
    ]);
    expect(against(given, taking(medicine('nifedipine', 'given', '2025-03-09T11:59:00Z')))).toEqual([]);
    expect(against({ ...inUse, ...given }, taking(running))).toEqual([[sentence, 1]]);
  });

  it('has against it a site that cannot give it', () => {
    const needy = [{ siteNeeds: 'operate' }];
    expect(options(needy)[0]?.against).toEqual([
      { sentence: 'Not at this site: at the next level.', evidence: [] },
    ]);
    expect(options(needy, {}, { can: [], next: 'the city' })[0]?.against[0]?.sentence).toBe(
      'Not at this site: at the city.',
    );
    expect(options(needy, {}, { can: ['operate'] })[0]?.against).toEqual([]);
  });

  it('named in a sentence is marked with each reason once, by whole words', () => {
    const rules = [
      {
        against: [{ sentence: 'Asthma is on record.', conditions: ['asthma'] as const }],
        alsoCalled: ['a beta-blocker'],
      },
      { id: 'two', against: [{ sentence: 'Asthma is on record.', conditions: ['asthma'] as const }] },
    ];
    const marked = (text: string, ...conditions: readonly KnownCondition[]) =>
      markedAgainst(
        viewOf({ conditions }),
        edition({ treatmentRules: rules.map((one) => ({ ...rule, ...one })) }),
        text,
      );
    const asthma = condition('asthma');
    expect(marked('Give Labetalol now.', asthma)).toBe(
      'Give Labetalol now. Not labetalol: asthma is on record.',
    );
    expect(marked('Give a beta-blocker.', asthma)).toBe(
      'Give a beta-blocker. Not a beta-blocker: asthma is on record.',
    );
    expect(marked('Give labetalolium.', asthma)).toBe('Give labetalolium.');
    expect(marked('Give labetalol.', condition('stroke'))).toBe('Give labetalol.');
    expect(marked('Give nothing.', asthma)).toBe('Give nothing.');
    const { treatmentRules: _none, ...bare } = edition({});
    expect(markedAgainst(viewOf({ conditions: [asthma] }), bare, 'Give labetalol.')).toBe('Give labetalol.');
  });
});

// Steps with rules of their own: which apply, where, and until what clock time. Clinical rules 2.5, 2.6; decision 6.
import { describe, expect, it } from 'vitest';
import type { ActionRule } from '../../src/guidelines/guideline.ts';
import { chooseActions } from '../../src/rules/choose-actions.ts';
import { firstLevelSite, isPossibleAt, type Site } from '../../src/rules/site.ts';
import type { Timeline } from '../../src/timeline/timeline.ts';
import { limit, viewOf } from './checks/ask.ts';
import { reading } from './facts.ts';
import { citation, edition, outcomes } from './rule-parts.ts';

describe('a step', () => {
  const action: ActionRule = {
    id: 'step',
    kind: 'measure',
    when: 'met',
    sentence: 'Do it.',
    order: 1,
    citation,
  };
  const steps = (rules: readonly Partial<ActionRule>[], facts: Partial<Timeline> = {}, site?: Site) =>
    chooseActions(
      viewOf(facts),
      edition({ actionRules: rules.map((rule) => ({ ...action, ...rule })) }),
      outcomes,
      site,
    );
  const sentences = (...given: Parameters<typeof steps>) => steps(...given).map(({ sentence }) => sentence);

  it('is taken when its state is met, in order', () => {
    const rules = [
      { id: 'late', order: 9 },
      { id: 'early', order: 2 },
      { id: 'no', when: 'not' },
      { id: 'perhaps', when: 'open' },
    ];
    expect(steps(rules).map(({ id }) => id)).toEqual(['early', 'late']);
    expect(steps([{}])).toEqual([
      { id: 'step', kind: 'measure', order: 1, source: citation, sentence: 'Do it.' },
    ]);
  });

  it('is put at the next level where the site cannot do it', () => {
    const needy = [{ siteNeeds: 'operate' }];
    expect(sentences(needy)).toEqual(['At the next level: Do it.']);
    expect(sentences(needy, {}, { can: [], next: 'the city' })).toEqual(['At the city: Do it.']);
    expect(sentences(needy, {}, { can: ['operate'] })).toEqual(['Do it.']);
    expect(sentences([{}], {}, { can: [] })).toEqual(['Do it.']);
  });

  it('the first level does what is asked of it, but operate', () => {
    const needs = [
      'magnesium',
      'intravenous-drugs',
      'oxygen',
      'catheter',
      'laboratory',
      'ultrasound',
      'growth-factors',
    ];
    expect(needs.filter((need) => !isPossibleAt(firstLevelSite, need))).toEqual([]);
    expect(isPossibleAt(firstLevelSite, 'operate')).toBe(false);
  });

  describe('by the clock', () => {
    const clocked = (
      value: number,
      unit: string,
      from: 'first-raised-occasion' | 'last-severe-reading' = 'first-raised-occasion',
    ) => [
      {
        sentence: 'Repeat after {time}.',
        clock: {
          from,
          add: limit('>=', value, unit),
          sense: 'after' as const,
          whenOver: 'Repeat now: due {time}.',
        },
      },
    ];
    const raised = (when: string) => reading(when, 150, 96);

    it.each([
      [4, 'h', 'Repeat after 15:00, which is 4 hours after the reading at 11:00.', '2025-03-10T15:00:00Z'],
      [2, 'h', 'Repeat after 13:00, which is 2 hours after the reading at 11:00.', '2025-03-10T13:00:00Z'],
      [
        90,
        'min',
        'Repeat after 12:30, which is 90 minutes after the reading at 11:00.',
        '2025-03-10T12:30:00Z',
      ],
      [
        1,
        'd',
        'Repeat after 11:00 on 2025-03-11, which is 1 day after the reading at 11:00.',
        '2025-03-11T11:00:00Z',
      ],
      [1, 'h', 'Repeat now: due 12:00.', '2025-03-10T12:00:00Z'],
    ])('%i %s later', (value, unit, sentence, time) => {
      expect(steps(clocked(value, unit), { pressures: [raised('11:00')] })).toMatchObject([
        { sentence, time },
      ]);
    });

    it('counts from the first raised contact of the part of the last one', () => {
      const pressures = [
        raised('2024-12-01T09:00:00Z'),
        reading('09:00', 120, 70),
        raised('10:00'),
        raised('11:00'),
      ];
      expect(sentences(clocked(4, 'h'), { pressures })[0]).toContain('the reading at 10:00');
    });

    it('or from the last severe reading, at home as well', () => {
      const homePressures = [reading('10:00', 165, 96), reading('11:00', 162, 96), raised('11:30')];
      expect(sentences(clocked(4, 'h', 'last-severe-reading'), { homePressures })[0]).toContain(
        'the reading at 11:00',
      );
      expect(sentences(clocked(4, 'h', 'last-severe-reading'), { pressures: [raised('11:00')] })).toEqual([
        'Repeat after 4 hours from the reading.',
      ]);
    });

    it('without a raised contact, or with a date alone, names the span', () => {
      expect(steps(clocked(4, 'h'), { pressures: [reading('11:00', 120, 70)] })).toEqual([
        {
          id: 'step',
          kind: 'measure',
          order: 1,
          source: citation,
          sentence: 'Repeat after 4 hours from the reading.',
        },
      ]);
      expect(sentences(clocked(1, 'wk'), { pressures: [raised('2025-03-10')] })).toEqual([
        'Repeat after 1 week from the reading.',
      ]);
    });

    it('is told in the zone of the reading', () => {
      const pressures = [raised('2025-03-10T16:30:00+05:30')];
      expect(steps(clocked(4, 'h'), { pressures })).toMatchObject([
        {
          sentence: 'Repeat after 20:30, which is 4 hours after the reading at 16:30.',
          time: '2025-03-10T20:30:00+05:30',
        },
      ]);
    });
  });
});

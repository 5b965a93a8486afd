// Notices about medicines with rules of their own: of what, beside what, for how long. Clinical rules 2.7, 2.9; case X38.
import { describe, expect, it } from 'vitest';
import type { MedicineRule } from '../../src/guidelines/guideline.ts';
import { judgeMedicine, judgeMedicines } from '../../src/rules/medicine-safety.ts';
import type { KnownCondition, Medicine } from '../../src/timeline/timeline.ts';
import { limit, viewOf } from './checks/ask.ts';
import { condition, medicine, moment } from './facts.ts';
import { allergy, citation, edition, outcomes, over } from './rule-parts.ts';

describe('a notice about a medicine', () => {
  const rule: MedicineRule = {
    id: 'rule',
    medicines: ['nsaid'],
    when: 'met',
    severity: 'avoid',
    sentence: 'Avoid it.',
    citation,
  };
  const notices = (
    more: Partial<MedicineRule>,
    medicines: readonly Medicine[],
    conditions: readonly KnownCondition[] = [],
  ) =>
    judgeMedicines(
      viewOf({ medicines, conditions }),
      edition({ medicineRules: [{ ...rule, ...more }] }),
      outcomes,
    );
  const isSaid = (...given: Parameters<typeof notices>) => notices(...given).length === 1;
  const taken = medicine('nsaid', 'active');
  const day = limit('<=', 1, 'd');
  const magnesium = (status: Medicine['status'], more: Partial<Medicine> = {}) => ({
    ...medicine('magnesium-sulfate', status, '09:00'),
    ...more,
  });

  it('is said of what is in use or ordered, and of doses only where they count', () => {
    const of = (item: Medicine, more: Partial<MedicineRule> = {}) => isSaid(more, [item]);
    expect([of(taken), of(medicine('nsaid', 'ordered')), of(medicine('aspirin', 'active'))]).toEqual([
      true,
      true,
      false,
    ]);
    expect([of(medicine('nsaid', 'stopped')), of({ ...taken, end: moment('11:00') })]).toEqual([
      false,
      false,
    ]);
    expect(of(medicine('nsaid', 'ordered'), { statuses: ['active'] })).toBe(false);
    const dose = medicine('nsaid', 'given', '09:00');
    expect([
      of(dose),
      of(dose, { givenWithin: day }),
      of(medicine('nsaid', 'given'), { givenWithin: day }),
    ]).toEqual([false, true, true]);
    expect(of(medicine('nsaid', 'given', '2025-03-09T11:59:00Z'), { givenWithin: day })).toBe(false);
    expect(of(medicine('nsaid', 'stopped', '09:00'), { givenWithin: day })).toBe(false);
  });

  it('as a note where her state cannot be told and there are words for it', () => {
    expect(notices({ when: 'open' }, [taken])).toEqual([]);
    expect(notices({ when: 'open', whenCannotTell: 'Ask.' }, [taken])).toMatchObject([
      { severity: 'note', sentence: 'Ask.' },
    ]);
    expect(notices({ when: 'not', whenCannotTell: 'Ask.' }, [taken])).toEqual([]);
    const { medicineRules: _none, ...bare } = edition({});
    expect(judgeMedicines(viewOf({ medicines: [taken] }), bare, outcomes)).toEqual([]);
  });

  it('needs its condition, its allergy and its time', () => {
    const asthma = { conditions: ['asthma'] } as const;
    expect([
      isSaid(asthma, [taken], [condition('asthma')]),
      isSaid(asthma, [taken], [over('asthma')]),
      isSaid(asthma, [taken]),
    ]).toEqual([true, false, false]);
    const ofAllergy = { ofAllergy: true } as const;
    expect([
      isSaid(ofAllergy, [taken], [allergy(['nsaid'])]),
      isSaid(ofAllergy, [taken], [allergy(['aspirin'])]),
    ]).toEqual([true, false]);
    const two = [taken, medicine('aspirin', 'active')];
    const [noted] = notices({ ...ofAllergy, medicines: ['nsaid', 'aspirin'] }, two, [allergy(['aspirin'])]);
    expect([noted?.medicine, noted?.evidence.map(({ asSent }) => asSent)]).toEqual([
      'aspirin',
      ['aspirin', 'medicine-allergy'],
    ]);
    const long = { longerThan: limit('>', 5, 'd') };
    const since = (start?: string) => isSaid(long, [medicine('nsaid', 'active', start)]);
    expect([since('2025-03-05T11:59:00Z'), since('2025-03-05T12:00:00Z'), since()]).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('is not met where what it needs beside the medicine is not there', () => {
    const judged = judgeMedicine(
      viewOf({ medicines: [taken] }),
      { ...rule, conditions: ['asthma'] },
      outcomes,
    );
    expect(judged).toEqual({ outcome: 'not-met', medicines: [taken], evidence: judged.evidence });
    expect(judged.evidence.map(({ asSent }) => asSent)).toEqual(['nsaid']);
    expect(judgeMedicine(viewOf({}), rule, outcomes)).toEqual({
      outcome: 'not-applicable',
      medicines: [],
      evidence: [],
    });
  });

  it('passes over a product that counts as another', () => {
    const except = { except: ['statin'] } as const;
    const also: Medicine = { ...medicine('statin', 'active'), source: taken.source };
    expect([
      isSaid(except, [taken, also]),
      isSaid(except, [taken, medicine('statin', 'active')]),
      isSaid({}, [taken, also]),
    ]).toEqual([false, true, true]);
  });

  it.each<[string, Medicine, boolean]>([
    ['in use', magnesium('active'), true],
    ['in use by an order', magnesium('active', { isOrder: true }), true],
    ['given lately', magnesium('given'), false],
    ['another', medicine('aspirin', 'active'), false],
  ])('needs another medicine beside it: %s', (_, other, expected) => {
    const beside = { alongside: { medicines: ['magnesium-sulfate'], statuses: ['active'] } } as const;
    expect(isSaid(beside, [taken, other])).toBe(expected);
  });

  it.each<[string, Partial<Medicine>, boolean, boolean]>([
    ['an order in force', { isOrder: true }, true, false],
    ['an order whose time is over', { isOrder: true, end: moment('11:00') }, false, false],
    ['a proposal', { isOrder: true, status: 'ordered' }, false, false],
    ['a record of use', {}, false, true],
    ['a dose', { status: 'given' }, false, true],
    ['an old dose', { status: 'given', start: moment('2025-03-09T11:59:00Z') }, false, false],
  ])('tells an order in force from a dose: %s', (_, more, isOrder, isGiven) => {
    const other = magnesium('active', more);
    const beside = (status: 'order-in-force' | 'given') =>
      isSaid({ alongside: { medicines: ['magnesium-sulfate'], statuses: [status], within: day } }, [
        taken,
        other,
      ]);
    expect([beside('order-in-force'), beside('given')]).toEqual([isOrder, isGiven]);
  });

  it('the other medicine is not the product itself, and doses count only within a time', () => {
    const given = { medicines: ['nsaid', 'magnesium-sulfate'], statuses: ['given', 'active'] } as const;
    expect(isSaid({ alongside: given }, [taken])).toBe(false);
    expect(isSaid({ alongside: given }, [taken, medicine('nsaid', 'active')])).toBe(true);
    expect(isSaid({ alongside: given }, [taken, magnesium('given')])).toBe(false);
  });

  it('names each medicine once as it was sent, cites all, and its alternative with its source', () => {
    const twice = [
      { ...taken, asSent: 'Brand' },
      { ...medicine('nsaid', 'ordered'), asSent: 'Brand' },
      { ...medicine('nsaid', 'active'), asSent: '' },
    ];
    const alternative = { sentence: 'Paracetamol.', citation: { ...citation, known: 'read' as const } };
    const [notice] = notices({ alternative }, twice);
    expect(notice).toMatchObject({
      rule: 'rule',
      medicine: 'Brand, NSAID',
      severity: 'avoid',
      alternative: 'Paracetamol. (test, 2026)',
    });
    expect(notice?.evidence).toHaveLength(3);
    const remembered = { ...alternative, citation: { ...citation, known: 'from-memory' as const } };
    expect(notices({ alternative: remembered }, [taken])[0]?.alternative).toBe(
      'Paracetamol. (test, 2026, from memory)',
    );
    expect(notices({}, [taken])[0]).not.toHaveProperty('alternative');
  });
});

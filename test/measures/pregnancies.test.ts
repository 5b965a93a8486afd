// Whom a measure counts: each pregnancy once, seen at its own time.
import { describe, expect, it } from 'vitest';
import { patient, type Json } from '../bundle/make.ts';
import { born, countsOf, dueDate, measured, reading } from './make.ts';

describe('pregnancies', () => {
  describe('a pregnancy is seen at its own time, not at the end of the period', () => {
    const spring = [
      reading('s1', '2026-02-10T09:00:00Z', 148, 94),
      reading('s2', '2026-02-10T15:00:00Z', 150, 96),
    ];
    const classOf = (resources: readonly Json[]) => [
      ...measured('referral-made', [patient(), dueDate('2026-03-20'), ...resources]).totals.strata[
        'guideline-class'
      ].keys(),
    ];

    it('counts the referral of the spring at the end of the year, after the birth', () => {
      const resources = [dueDate('2026-03-20'), ...spring, born('2026-03-10T10:00:00Z')];
      expect(countsOf('referral-made', resources)).toEqual([1, 1, 0, 0, 0, 0]);
    });

    it('knows the class where no birth was recorded and the due date is long past', () => {
      expect(classOf(spring)).toEqual(['gestational-hypertension']);
    });

    it('names the most severe class it had', () => {
      const settled = [
        reading('s3', '2026-02-20T09:00:00Z', 118, 72),
        reading('s4', '2026-02-27T09:00:00Z', 116, 70),
      ];
      expect(classOf([...spring, ...settled])).toEqual(['gestational-hypertension']);
    });
  });

  it('two pregnancies in one period count as two, each with its own readings', () => {
    const first = [
      { ...dueDate('2026-02-20'), id: 'due-1', effectiveDateTime: '2025-08-01T09:00:00Z' },
      reading('p1', '2026-01-10T09:00:00Z', 148, 94),
      born('2026-02-10T10:00:00Z'),
    ];
    const second = [
      { ...dueDate('2027-03-20'), id: 'due-2', effectiveDateTime: '2026-09-01T09:00:00Z' },
      reading('p2', '2026-11-10T09:00:00Z', 118, 72),
    ];
    expect(countsOf('urine-protein-when-raised', [...first, ...second])).toEqual([2, 1, 0, 0, 0, 0]);
    expect(countsOf('terminal-digit-preference', [...first, ...second])[0]).toBe(2);
    const { results } = measured('urine-protein-when-raised', [patient(), ...first, ...second]);
    expect(results.map(({ counts }) => counts.denominator)).toEqual([0, 1]);
  });
});

// Self-describing uuids; test names carry the row ids of the conformance checklist.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { classifications } from '../../src/guidelines/guideline.ts';
import { medicineRules } from '../../src/guidelines/medicine-rules.ts';
import { guidelineIds, guidelineOf } from '../../src/guidelines/registry.ts';
import { guidelineNumbers, ruleNumbers } from '../../src/presenters/card-rules.ts';
import { markedUuid, readMark } from '../../src/presenters/card-uuid.ts';

const marks = fc.record({
  kind: fc.constantFrom('card' as const, 'suggestion' as const),
  rule: fc.constantFrom(...ruleNumbers),
  guideline: fc.constantFrom(...guidelineNumbers),
  version: fc.stringMatching(/^[0-9a-f]{64}$/),
});

describe('card uuids', () => {
  it('B-12, K-01: are UUIDs of version 8 that tell kind, rule, guideline and version', () => {
    fc.assert(
      fc.property(marks, fc.array(fc.string()), (mark, parts) => {
        const uuid = markedUuid(mark, parts);
        expect(uuid).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
        expect(readMark(uuid)).toEqual({ ...mark, version: mark.version.slice(0, 4) });
        expect(readMark(`urn:uuid:${uuid.toUpperCase()}`)).toEqual(readMark(uuid));
      }),
    );
  });

  it('are the same for the same advice, and differ with what it rests on', () => {
    const mark = { kind: 'card', rule: 'contact', guideline: 'frontline', version: 'abcd' } as const;
    expect(markedUuid(mark, ['a'])).toBe(markedUuid(mark, ['a']));
    expect(markedUuid(mark, ['a'])).not.toBe(markedUuid(mark, ['b']));
  });

  it('any other uuid, or one with a digit changed, tells nothing', () => {
    fc.assert(fc.property(fc.uuid(), (uuid) => readMark(uuid) === undefined));
    const uuid = markedUuid({ kind: 'card', rule: 'contact', guideline: 'other', version: '0000' }, []);
    const changed = `${uuid.slice(0, 9)}${uuid.slice(9, 10) === 'f' ? '0' : 'f'}${uuid.slice(10)}`;
    expect([readMark(changed), readMark(''), readMark('text')]).toEqual([undefined, undefined, undefined]);
  });

  it('every class, gap, medicine rule and guideline has a number of its own', () => {
    const gaps = guidelineIds.flatMap((id) =>
      (guidelineOf(id)?.questions ?? []).flatMap(({ whenCannotTell }) => whenCannotTell?.id ?? []),
    );
    const wanted = [
      ...classifications.map((each) => `class:${each}`),
      ...gaps.map((each) => `missing:${each}`),
      ...medicineRules.map(({ id }) => `medicine:${id}`),
    ];
    expect([...new Set(wanted)].filter((rule) => !ruleNumbers.includes(rule))).toEqual([]);
    expect(guidelineIds.filter((id) => !guidelineNumbers.includes(id))).toEqual([]);
    expect(new Set(ruleNumbers).size).toBe(ruleNumbers.length);
  });
});

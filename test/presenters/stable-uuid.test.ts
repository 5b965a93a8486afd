// Identifiers that depend on what is said.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stableUuid } from '../../src/presenters/stable-uuid.ts';

describe('stable uuids', () => {
  it('K-01: are UUIDs of version 8 and the RFC variant', () => {
    fc.assert(
      fc.property(fc.array(fc.string()), (parts) => {
        expect(stableUuid(parts)).toMatch(
          /^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
        );
      }),
    );
  });

  it('are the same for the same parts and differ when one part differs', () => {
    expect(stableUuid(['a', ['b', 'c']])).toBe(stableUuid(['a', ['b', 'c']]));
    expect(stableUuid(['a', ['b', 'c']])).not.toBe(stableUuid(['a', 'b', 'c']));
    expect(stableUuid(['ab', 'c'])).not.toBe(stableUuid(['a', 'bc']));
  });

  it('take their hex digits from SHA-256', () => {
    // FIPS 180-4: SHA-256 of the two bytes "[]" is 4f53cda18c2baa0c0354bb5f9a3ecbe5ed12ab4d8e11ba873c2f11161202b945.
    expect(stableUuid([])).toBe('4f53cda1-8c2b-8a0c-8354-bb5f9a3ecbe5');
  });
});

// The readiness check: what an integrator is told about the data.
import { describe, expect, it } from 'vitest';
import { checkText } from '../../src/cli/check.ts';
import type { Readiness } from '../../src/readiness/readiness.ts';
import { bundle, half, laboratory, patient, pressure, type Json } from '../bundle/make.ts';

const now = Date.parse('2026-02-02T00:00:00Z');
const check = (input: unknown, format: 'text' | 'json' = 'json') =>
  checkText(JSON.stringify(input), { format }, { now });
const readinessOf = (input: unknown): Readiness => JSON.parse(check(input).output) as Readiness;
const shapesOf = ({ elements }: Readiness, element: string) =>
  elements.find((each) => each.element === element)?.shapes.map(({ name, count }) => `${count} ${name}`);

const mixed: Json = bundle([
  patient(),
  pressure('a'),
  pressure('b', {
    effectiveDateTime: '2026-02-01T15:00:00Z',
    component: [half('8480-6', 118), half('8462-4', 76)],
  }),
  pressure('c', {
    component: undefined,
    code: { coding: [{ system: 'http://loinc.org', code: '8480-6' }] },
    valueQuantity: { value: 120, unit: 'mmHg' },
    effectiveDateTime: '2026-01-01T10:00:00Z',
  }),
  pressure('d', { effectiveDateTime: '2026-02-31' }),
  laboratory('e', '777-3'),
]);

describe('check', () => {
  it('names each data element with the shapes it was sent in, and those that are not there', () => {
    const readiness = readinessOf(mixed);
    expect(shapesOf(readiness, 'blood pressure')).toEqual([
      '3 panel with 2 components, UCUM mm[Hg]',
      '1 stand-alone half, unit text mmHg',
    ]);
    expect(shapesOf(readiness, 'laboratory: platelets')).toEqual(['1 10*3/uL']);
    expect(shapesOf(readiness, 'urine protein')).toEqual([]);
  });

  it('counts what was set aside by reason, with places, and names what breaks R4', () => {
    const readiness = readinessOf(mixed);
    expect(readiness.setAside.map(({ name, count, examples }) => [name, count, examples])).toEqual([
      ['time-invalid', 1, ['Bundle.entry[4].resource.effectiveDateTime']],
    ]);
    expect(readiness.strict.map(({ name, severity }) => `${severity} ${name}`)).toContain(
      'error no-such-day',
    );
    expect([readiness.received, readiness.women]).toEqual([6, 1]);
  });

  it('names questions that no woman of the input can have answered, and what they wait for', () => {
    const open = readinessOf(mixed).neverAnswered;
    expect(open.map(({ question }) => question)).toContain('protein-now');
    expect(open.find(({ question }) => question === 'protein-now')?.missing).toContain('urine protein');
  });

  it('tells by its exit code: ready, findings, cannot classify, not readable', () => {
    const sound = bundle([
      patient(),
      pressure('b', { component: [half('8480-6', 118), half('8462-4', 76)] }),
    ]);
    expect(check(sound).exitCode).toBe(0);
    expect(check({ ...sound, total: 3 }).exitCode).toBe(5);
    expect(check(bundle([patient()])).exitCode).toBe(4);
    expect(checkText('{', { format: 'text' }, { now }).exitCode).toBe(3);
    expect(checkText(JSON.stringify(sound), { format: 'text', guideline: 'none' }, { now }).exitCode).toBe(2);
  });

  it('the text says the same, and holds no clinical value', () => {
    const { output } = check(mixed, 'text');
    expect(output).toContain('6 resources received about 1 woman');
    expect(output).toContain('urine protein: none found');
    expect(output).not.toMatch(/\b(152|118|240)\b/);
  });
});

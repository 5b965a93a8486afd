// What the codes of a pressure say beside its numbers: how it was taken, and that it is one.
import { describe, expect, it } from 'vitest';
import { isPressure } from '../../src/timeline/pressure-panel.ts';
import { loinc, pressure, snomed } from '../support/resources.ts';
import { built } from './build.ts';
import { at, diastolic, panel, pressures, systolic } from './pressure-support.ts';

describe('what a code of a reading says of how it was taken', () => {
  const part = (code: string, value: number) => ({ ...systolic(value), code: loinc(code) });
  it.each([
    ['first', [part('8459-0', 150), diastolic(95)]],
    ['last', [diastolic(95), part('8459-0', 150)]],
  ])('counts for the whole, where it stands %s', (_, component) => {
    expect(pressures([panel(component)])).toMatchObject([
      { systolicMmHg: 150, diastolicMmHg: 95, technique: { position: 'sitting' } },
    ]);
  });

  it('of palpation or of home counts likewise, where it stands last', () => {
    expect(pressures([panel([diastolic(95), part('8479-8', 150)])])[0]?.technique.method).toBe('palpation');
    const home = { ...part('x', 138), code: snomed('413606001') };
    const { meanPressures } = built([panel([part('96609-3', 87), home])]).timeline;
    expect(meanPressures).toMatchObject([{ systolicMmHg: 138, diastolicMmHg: 87, setting: 'home' }]);
  });

  it('gives way to what is recorded', () => {
    const supine = { method: snomed('40199007') };
    expect(pressures([panel([part('8459-0', 150)], supine)])[0]?.technique.position).toBe('supine');
  });

  it('is nothing where no code says anything', () => {
    expect(pressures([pressure(at, 150, 95)])[0]?.technique).toEqual({});
  });
});

describe('an observation is of a pressure', () => {
  const other = { code: loinc('8867-4') };
  it.each([
    ['by its code', { code: loinc('8480-6') }, true],
    ['by the code of a panel', { code: loinc('85354-9') }, true],
    ['by one component among others', { code: {}, component: [other, { code: loinc('8480-6') }] }, true],
    ['not by other components', { code: {}, component: [other] }, false],
    ['not by nothing', {}, false],
  ])('%s: %j %s', (_, fields, expected) => {
    expect(isPressure(fields)).toBe(expected);
  });
});

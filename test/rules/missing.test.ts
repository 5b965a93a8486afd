// What is asked for: only gaps that keep a class open, most urgent first, quiet when nothing hurries.
import { describe, expect, it } from 'vitest';
import { urgencies } from '../../src/guidelines/guideline.ts';
import { assess } from '../support/assess.ts';
import type { PlainTimeline } from '../support/timeline-builder.ts';

const at = (clock: string): string => `2025-03-10T${clock}:00Z`;
const missingOf = (plain: Omit<PlainTimeline, 'asOf'>) => assess({ asOf: at('14:00'), ...plain }).missing;
const normal = [{ at: at('09:00'), systolic: 118, diastolic: 74 }];
const raised = [{ at: at('09:00'), systolic: 144, diastolic: 92 }];
const negative = [{ at: at('09:00'), grade: 0 as const }];
const asked = (['headache', 'visual-disturbance', 'epigastric-pain', 'dyspnoea'] as const).map((symptom) => ({
  symptom,
  presence: 'absent' as const,
  at: at('09:00'),
}));

describe('what is missing', () => {
  it('is nothing about urine once it was tested, and is urine when not', () => {
    const tested = missingOf({ gestation: '30+0', pressures: raised, strips: negative, symptoms: asked });
    const untested = missingOf({ gestation: '30+0', pressures: normal, symptoms: asked });
    expect(tested.map(({ id }) => id)).not.toContain('urine-protein');
    expect(untested.map(({ id }) => id)).toContain('urine-protein');
  });

  it('can wait when only quiet classes are open and nothing else was found', () => {
    const gaps = missingOf({ gestation: '30+0', pressures: normal, symptoms: asked });
    expect(gaps.find(({ id }) => id === 'urine-protein')?.by).toBe('routine');
  });

  it('cannot wait when the pressure is raised', () => {
    const gaps = missingOf({ gestation: '30+0', pressures: raised, strips: negative });
    expect(gaps.find(({ id }) => id === 'danger-symptoms')?.by).toBe('same-day');
    expect(gaps.find(({ id }) => id === 'second-raised-contact')?.by).toBe('same-day');
  });

  it('is the visits to come once the repeat was below the limits, and the repeat as long as it was too soon', () => {
    const gap = (clock: string) => {
      const repeat = [...raised, { at: at(clock), systolic: 122, diastolic: 76 }];
      const gaps = missingOf({ gestation: '30+0', pressures: repeat, strips: negative, symptoms: asked });
      return gaps.find(({ id }) => id === 'second-raised-contact');
    };
    expect(gap('13:00')).toMatchObject({ what: 'the pressure of the visits to come', by: 'within-7-days' });
    expect(gap('13:00')).not.toHaveProperty('at');
    expect(gap('12:59')).toMatchObject({
      what: 'a second blood pressure after the interval',
      at: at('13:00'),
    });
  });

  it('names the classes that it could change', () => {
    const gap = missingOf({ gestation: '30+0', pressures: raised, strips: negative, symptoms: asked }).find(
      ({ id }) => id === 'second-raised-contact',
    );
    expect(gap?.couldChange).toContain('gestational-hypertension');
    expect(gap?.couldChange).not.toContain('normotensive');
  });

  it('leaves home readings aside in an emergency, and asks for them otherwise', () => {
    const severe = [
      { at: at('09:00'), systolic: 166, diastolic: 112 },
      { at: at('13:30'), systolic: 168, diastolic: 110 },
    ];
    const mild = severe.map((reading) => ({ ...reading, systolic: 148, diastolic: 94 }));
    const ids = (pressures: typeof severe) =>
      missingOf({ gestation: '30+0', pressures, strips: negative }).map(({ id }) => id);
    expect(ids(severe)).not.toContain('home-pressure');
    expect(ids(mild)).toContain('home-pressure');
  });

  it('names the dating where the length of the pregnancy is not known', () => {
    const by = (pressures: typeof raised) =>
      missingOf({ pressures, strips: negative, symptoms: asked }).find(({ id }) => id === 'gestational-age')
        ?.by;
    expect(by(raised)).toBe('same-day');
    expect(by(normal)).toBe('routine');
  });

  it('comes most urgent first', () => {
    const order = missingOf({ gestation: '30+0' }).map(({ by }) => urgencies.indexOf(by));
    expect(order.length).toBeGreaterThan(1);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });
});

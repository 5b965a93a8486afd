// Doses given or perhaps given, a value taken since, blood tested lately, and the part of the pregnancy now.
import { describe, expect, it } from 'vitest';
import { timelineValues } from '../../../src/guidelines/registry.ts';
import { milliseconds } from '../../../src/rules/compare.ts';
import type { Medicine, Timeline } from '../../../src/timeline/timeline.ts';
import { asOf, lab, medicine, moment } from '../facts.ts';
import { ask, limit, told } from './ask.ts';

const within = limit('<=', 1, 'd');
const medicines = ['magnesium-sulfate', 'labetalol'] as const;
const magnesium = (status: Medicine['status'], start?: string, more: Partial<Medicine> = {}): Medicine => ({
  ...medicine('magnesium-sulfate', status, start),
  ...more,
});
const [justIn, tooOld] = ['2025-03-09T12:00:00Z', '2025-03-09T11:59:00Z'];

describe('given or running', () => {
  const given = (...items: readonly Medicine[]) =>
    told(ask({ check: 'medicine-given', medicines, within }, { medicines: items }));
  const perhaps = (...items: readonly Medicine[]) =>
    told(ask({ check: 'medicine-perhaps-given', medicines, within }, { medicines: items }));
  const both = (...items: readonly Medicine[]) => [given(...items).outcome, perhaps(...items).outcome];

  it.each<[string, Medicine, string, string]>([
    ['a dose inside the time', magnesium('given', justIn), 'met', 'not-met'],
    ['a dose before it', magnesium('given', tooOld), 'not-met', 'not-met'],
    ['a dose without its time', magnesium('given'), 'not-met', 'met'],
    ['a dose of the whole day before', magnesium('given', '2025-03-09'), 'met', 'not-met'],
    ['a course that is running', magnesium('active', '2025-03-01'), 'met', 'not-met'],
    [
      'a course whose end is now',
      magnesium('active', '2025-03-01', { end: moment('12:00') }),
      'met',
      'not-met',
    ],
    [
      'a course whose end has come',
      magnesium('active', '2025-03-01', { end: moment('11:59') }),
      'not-met',
      'not-met',
    ],
    [
      'a course stopped inside the time',
      magnesium('stopped', '2025-03-01', { end: moment(justIn) }),
      'met',
      'not-met',
    ],
    [
      'a course stopped before it',
      magnesium('stopped', '2025-03-01', { end: moment(tooOld) }),
      'not-met',
      'not-met',
    ],
    ['a course stopped, nobody knows when', magnesium('stopped'), 'not-met', 'not-met'],
    ['a proposal', magnesium('ordered', '09:00'), 'not-met', 'not-met'],
    ['an order in force', magnesium('active', '09:00', { isOrder: true }), 'not-met', 'met'],
    [
      'an order whose time is over',
      magnesium('active', '09:00', { isOrder: true, end: moment('11:00') }),
      'not-met',
      'not-met',
    ],
    ['a dose of tomorrow', magnesium('given', '2025-03-11T12:00:00Z'), 'not-met', 'not-met'],
    ['another medicine', medicine('aspirin', 'active'), 'not-met', 'not-met'],
  ])('%s', (_, item, isGiven, isPerhaps) => {
    expect(both(item)).toEqual([isGiven, isPerhaps]);
  });

  it('a dose of a moment ahead counts within what clocks may differ', () => {
    const ahead = asOf + milliseconds(timelineValues.futureTolerance);
    const at = (time: number) => given(magnesium('given', new Date(time).toISOString())).outcome;
    expect([at(ahead), at(ahead + 1000)]).toEqual(['met', 'not-met']);
  });

  it('names each medicine once, and cites every dose', () => {
    const three = [
      magnesium('given', '08:00'),
      magnesium('given', '09:00'),
      medicine('labetalol', 'given', '09:00'),
    ];
    const { because } = ask({ check: 'medicine-given', medicines, within }, { medicines: three });
    expect(because).toBe('Given or running: magnesium sulfate, labetalol.');
    expect(given(...three)).toEqual({
      outcome: 'met',
      cited: ['magnesium-sulfate', 'magnesium-sulfate', 'labetalol'],
      limits: ['<= 1 d'],
    });
    expect(given()).toEqual({ outcome: 'not-met', cited: [], limits: ['<= 1 d'] });
  });
});

describe('a value since a medicine was given', () => {
  const since = (items: readonly Medicine[], ...laboratory: Timeline['laboratory']) =>
    told(
      ask(
        {
          check: 'laboratory-on-medicine',
          analyte: 'magnesium',
          limit: limit('>=', 3.5, 'mmol/L'),
          medicines,
          within,
        },
        { medicines: items, laboratory },
      ),
    );
  const level = (when: string, value: number, comparator?: '<') =>
    lab(when, 'magnesium', value, 'mmol/L', comparator);
  const running = magnesium('active', '06:00');
  const limits = ['>= 3.5 mmol/L'];

  it('does not apply where none was given', () => {
    expect(since([], level('09:00', 4))).toEqual({ outcome: 'not-applicable', cited: [], limits });
  });

  it('is the newest since the first dose, at the limit and beyond', () => {
    const cited = (value: string) => [value, 'magnesium-sulfate'];
    expect(since([running], level('09:00', 3.5))).toEqual({
      outcome: 'met',
      cited: cited('3.5 mmol/L'),
      limits,
    });
    expect(since([running], level('08:00', 4), level('09:00', 3))).toEqual({
      outcome: 'not-met',
      cited: cited('3 mmol/L'),
      limits,
    });
    expect(since([running], level('09:00', 4, '<')).outcome).toBe('met');
    expect(since([running], level('09:00', 3, '<')).outcome).toBe('not-met');
  });

  it('before the first dose, or before the time that a dose counts, is none', () => {
    const none = { outcome: 'not-met', cited: ['magnesium-sulfate'], limits };
    expect(since([running], level('05:59', 4))).toEqual(none);
    expect(since([running], level('06:00', 4)).outcome).toBe('met');
    const old = magnesium('active', '2025-03-01');
    expect(since([old], level(tooOld, 4))).toEqual(none);
    expect(since([old], level(justIn, 4)).outcome).toBe('met');
    expect(since([magnesium('active')], level(justIn, 4)).outcome).toBe('met');
    expect(since([running], lab('09:00', 'magnesium', 9, 'mg/dL'))).toEqual(none);
    expect(since([running])).toEqual(none);
  });

  it('counts from the first of several doses', () => {
    const doses = [magnesium('given', '09:00'), magnesium('given', '06:00')];
    expect(since(doses, level('07:00', 4)).outcome).toBe('met');
  });
});

describe('blood tested', () => {
  const tested = (...laboratory: Timeline['laboratory']) =>
    ask(
      { check: 'blood-tested', groups: [['platelets'], ['alt', 'ast']], freshWithin: within },
      { laboratory },
    );
  const platelets = (when: string) => lab(when, 'platelets', 200, '10*9/L');
  const enzyme = (name: 'alt' | 'ast', when: string) => lab(when, name, 20, 'U/L');

  it('is met by one of each group, up to the limit', () => {
    expect(told(tested(platelets(justIn), enzyme('ast', '09:00')))).toEqual({
      outcome: 'met',
      cited: ['200 10*9/L', '20 U/L'],
      limits: ['<= 1 d'],
    });
    expect(tested(platelets('09:00'), enzyme('alt', tooOld), enzyme('ast', '09:00')).outcome).toBe('met');
  });

  it('names the groups that are wanting, and cites the rest', () => {
    const partly = tested(platelets('09:00'), enzyme('alt', tooOld));
    expect(told(partly)).toEqual({ outcome: 'not-met', cited: ['200 10*9/L'], limits: ['<= 1 d'] });
    expect(partly.because).toBe('Not measured within the last day: ALT or AST.');
    expect(tested().because).toBe('Not measured within the last day: platelets, ALT or AST.');
  });
});

describe('the part of the pregnancy now', () => {
  const source = { reference: 'Observation/one', preliminary: false };
  const now = (
    period: 'from-20-weeks' | 'after-birth' | 'unknown',
    facts: Partial<Timeline>,
    days?: number,
  ) => ask({ check: 'period-now', period }, facts, days);
  const born = (at: string) => ({
    pregnancy: { remarks: [], birth: { at: moment(at), asSent: `born ${at}`, source } },
  });

  it('is met in that part, and does not apply in another', () => {
    expect(now('from-20-weeks', {}, 140)).toMatchObject({ outcome: 'met', because: '20+0 weeks.' });
    expect(now('from-20-weeks', {}, 139)).toMatchObject({
      outcome: 'not-applicable',
      because: '19+6 weeks.',
    });
    expect(now('after-birth', {}, 140).outcome).toBe('not-applicable');
    expect(told(now('from-20-weeks', {})).cited).toEqual(['dated']);
  });

  it('undated is a part of its own, in which the dating is missing', () => {
    const undated = { pregnancy: { remarks: [] } };
    expect(now('unknown', undated)).toEqual({
      outcome: 'met',
      because: 'The pregnancy is not dated.',
      evidence: [],
      missing: {},
    });
    expect(now('from-20-weeks', {}).missing).toBeUndefined();
  });

  it('may be assumed from the height of the fundus, and that is said', () => {
    const assumed = { pregnancy: { remarks: [], assumedFrom20Weeks: { asSent: '28 cm', source } } };
    expect(now('from-20-weeks', assumed)).toMatchObject({
      outcome: 'met',
      because: 'Not dated; by the height of the fundus 20 weeks or more is assumed.',
    });
    expect(told(now('from-20-weeks', assumed)).cited).toEqual(['28 cm']);
  });

  it('after the birth is counted in days, up to six weeks', () => {
    expect(now('after-birth', born('2025-03-06'))).toMatchObject({
      outcome: 'met',
      because: 'Day 4 after birth.',
    });
    expect(told(now('after-birth', born('2025-03-06'))).cited).toEqual(['born 2025-03-06']);
    const later = now('unknown', born('2025-01-01'));
    expect(later.outcome).toBe('not-applicable');
    expect(later.because).toMatch(/^More than six weeks after the birth/);
  });

  it('cites the other datings too', () => {
    const dating = { startDay: moment('2024-08-12').localDay, asSent: 'scan', source, remarks: [] };
    const others = [{ method: 'last-period', startDay: dating.startDay, asSent: 'period', source }] as const;
    const pregnancy = {
      remarks: [],
      dating: { ...dating, method: 'ultrasound' as const, conflict: false, others },
    };
    expect(told(now('from-20-weeks', { pregnancy })).cited).toEqual(['scan', 'period']);
  });
});

// Where readers say what was not used: each resource ends once, and an issue is said once for its place.
import { describe, expect, it } from 'vitest';
import { openCollector } from '../../src/timeline/collector.ts';
import { condition, lastPeriod, loinc, pressure } from '../support/resources.ts';
import { received } from './received.ts';

const at = '2026-02-01T10:00:00Z';

describe('the collector', () => {
  const one = received(pressure(at, 150, 95));
  const why = { kind: 'unusable', code: 'value-missing', element: 'value', message: 'm' } as const;

  it('keeps the first thing said of a resource', () => {
    const first = openCollector();
    first.say.setAside(one, why);
    first.say.setAside(one, { ...why, code: 'time-missing' });
    first.say.notNeeded(one, 'x');
    expect([first.setAside.map(({ code }) => code), first.notNeeded]).toEqual([['value-missing'], []]);
    const other = openCollector();
    other.say.notNeeded(one, 'x');
    other.say.notNeeded(one, 'y');
    other.say.setAside(one, why);
    expect([other.notNeeded.map((each) => each.why), other.setAside]).toEqual([['x'], []]);
  });

  it('says each issue once for its place, and names the resource where no element is at fault', () => {
    const { say, issues, setAside } = openCollector();
    const issue = { severity: 'warning', code: 'a', type: 'value', element: 'x', message: 'm' } as const;
    say.issue(one, issue);
    say.issue(one, { ...issue, message: 'again' });
    say.issue(one, { ...issue, element: 'y' });
    say.issue(one, { ...issue, code: 'b' });
    expect(issues.map(({ code, expression }) => `${code} ${expression}`)).toEqual([
      'a Bundle.entry[0].resource.x',
      'a Bundle.entry[0].resource.y',
      'b Bundle.entry[0].resource.x',
    ]);
    say.setAside(one, { ...why, element: '' });
    expect(setAside).toMatchObject([{ expression: 'Bundle.entry[0].resource', about: 'blood-pressure' }]);
  });

  it('says what an observation was about, and nothing of another resource with such a code', () => {
    const { say, setAside } = openCollector();
    const coded = { ...condition('epilepsy', at), code: loinc('85354-9') };
    say.setAside({ ...received(coded), index: 1 }, why);
    say.setAside({ ...received(lastPeriod(at, at)), index: 2 }, why);
    expect(setAside.map((each) => each.about)).toEqual([undefined, undefined]);
  });
});

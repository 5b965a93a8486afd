// A pressure dated after now: rule Q13 blocks it for intervals; decision 5, blocked readings do not lower urgency. Asked
// about an earlier moment, what came later is not seen, for later facts must not change earlier answers.
import { describe, expect, it } from 'vitest';
import { assessText } from '../src/cli/assess.ts';
import { evaluate } from '../src/index.ts';
import { client, now as serverNow } from './http/client.ts';
import * as build from './support/resources.ts';

const now = serverNow;
const minutesAhead = (minutes: number): string => new Date(now + minutes * 60_000).toISOString();
const bundleWith = (systolic: number, diastolic: number, minutes = 20) =>
  build.bundleOf(
    [
      build.gestationalAge(minutesAhead(-60), 210),
      build.noDangerSymptoms(minutesAhead(-60)),
      build.strip(minutesAhead(-60), 'negative'),
      build.pressure(minutesAhead(minutes), systolic, diastolic),
    ].flat(),
  );
const answered = (systolic: number, diastolic: number, rest: { asOfIsNow?: true } = { asOfIsNow: true }) =>
  evaluate(bundleWith(systolic, diastolic), { asOf: now, ...rest });

describe('a pressure dated after now', () => {
  it.each([
    [172, 112, 'emergency'],
    [146, 92, 'same-day'],
    [118, 74, 'routine'],
  ])('%i/%i is %s', (systolic, diastolic, urgency) => {
    expect(answered(systolic, diastolic).urgency).toBe(urgency);
  });

  it('never classifies, is asked for again, and is accounted for with the mend', () => {
    const answer = answered(172, 112);
    expect(answer.classification[0]).toBe('cannot-classify');
    expect(answer.actions?.map(({ id }) => id)).toContain('repeat-unusable-reading');
    expect(JSON.stringify(answer.account)).toContain('compare the clock and the time zone of the sender');
    expect(answer.quality?.map(({ rule }) => rule)).toContain('time-not-exact');
  });

  it('is unseen by a question about that earlier moment', () => {
    expect(answered(172, 112, {}).urgency).toBe('routine');
  });

  it('is an emergency at every door that was given no moment, and unseen by each that was', async () => {
    const bundle = bundleWith(172, 112);
    const urgencyAt = async (query: string): Promise<string> => {
      const response = await client().post(`/fhir/$assess-hypertension${query}`).send(bundle);
      return JSON.stringify(response.body);
    };
    expect(await urgencyAt('')).toContain('repeat now');
    expect(await urgencyAt(`?asOf=${new Date(now).toISOString()}`)).not.toContain('repeat now');
    const text = JSON.stringify(bundle);
    expect(assessText(text, { format: 'text' }, now).output).toContain('EMERGENCY');
    const asked = { format: 'text', asOf: new Date(now).toISOString() } as const;
    expect(assessText(text, asked, now).output).not.toContain('EMERGENCY');
  });
});

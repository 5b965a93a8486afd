// Feedback; test names carry the row ids of the conformance checklist.
import { describe, expect, it } from 'vitest';
import { client, firstIssue, issuesOf, servicePath } from './client.ts';

const post = (body: object) => client().post(`${servicePath}/feedback`).send(body);
const item = {
  card: 'f6b95768-b1c8-40dc-8385-bf3504b82ffb',
  outcome: 'accepted',
  acceptedSuggestions: [{ id: '01f15c0c-0b51-4a4c-a3fc-8a3a0f3ad8a5' }],
  outcomeTimestamp: '2026-11-24T10:05:31Z',
};

describe('feedback', () => {
  it('B-01, B-11: is taken with 200 and an empty body, also for a card we do not know', async () => {
    const response = await post({
      feedback: [item, { ...item, outcome: 'overridden', acceptedSuggestions: undefined }],
    });
    expect([response.status, response.text]).toEqual([200, '']);
  });

  it('B-02: needs a list under `feedback`', async () => {
    const response = await post({});
    expect([response.status, firstIssue(response)]).toEqual([400, 'error/required feedback']);
  });

  it('B-03 to B-07: names each bad item and member', async () => {
    const bad = [
      { ...item, card: '' },
      { ...item, outcome: 'ignored' },
      { ...item, acceptedSuggestions: undefined },
      { ...item, outcomeTimestamp: '2026-11-24T10:05:31' },
    ];
    const places = issuesOf(await post({ feedback: bad })).map((issue) => issue.expression?.[0]);
    expect(places).toEqual([
      'feedback[0].card',
      'feedback[1].outcome',
      'feedback[2].acceptedSuggestions',
      'feedback[3].outcomeTimestamp',
    ]);
  });
});

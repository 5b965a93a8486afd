// Feedback; test names carry the row ids of the conformance checklist.
import { describe, expect, it } from 'vitest';
import { cardsOf, client, firstIssue, hookRequest, issuesOf, servicePath } from './client.ts';

const item = {
  card: 'f6b95768-b1c8-40dc-8385-bf3504b82ffb',
  outcome: 'accepted',
  acceptedSuggestions: [{ id: '01f15c0c-0b51-4a4c-a3fc-8a3a0f3ad8a5' }],
  outcomeTimestamp: '2026-11-24T10:05:31Z',
};
const ignored = { ...item, outcome: 'overridden', acceptedSuggestions: undefined };
const post = (body: object) => client().post(`${servicePath}/feedback`).send(body);
const local = 'https://pregnancy-htn.example/fhir/CodeSystem/override-reason';

/** One service that lives through several calls, with what it logged and forwarded. */
function service() {
  const lines: string[] = [];
  const forwarded: object[] = [];
  const agent = client({
    log: (line) => void lines.push(line),
    forwardFeedback: (event) => void forwarded.push(event),
  });
  const send = (...feedback: readonly object[]) => agent.post(`${servicePath}/feedback`).send({ feedback });
  const counted = async () =>
    (await agent.get('/metrics')).text
      .split('\n')
      .filter((line) => line.startsWith('pregnancy_htn_feedback_total{'));
  const logged = () => lines.filter((line) => line.includes('"event":"feedback"'));
  return { agent, send, counted, logged, forwarded };
}

async function shownCard(agent: ReturnType<typeof client>) {
  const [card] = cardsOf(await agent.post(servicePath).send(hookRequest()));
  return card?.uuid ?? '';
}

describe('feedback', () => {
  it('B-01, B-11: is taken with 200 and an empty body, also for a card we do not know', async () => {
    const response = await post({ feedback: [item, ignored] });
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
      { ...item, acceptedSuggestions: [{}] },
      { ...ignored, overrideReason: {} },
      { ...ignored, overrideReason: { reason: { code: 'already-done' } } },
      { ...item, outcomeTimestamp: '2026-11-24T10:05:31' },
      { ...item, outcomeTimestamp: '2026-13-24T10:05:31Z' },
    ];
    const places = issuesOf(await post({ feedback: bad })).map((issue) => issue.expression?.[0]);
    expect(places).toEqual([
      'feedback[0].card',
      'feedback[1].outcome',
      'feedback[2].acceptedSuggestions',
      'feedback[3].acceptedSuggestions',
      'feedback[4].overrideReason',
      'feedback[5].overrideReason.reason',
      'feedback[6].outcomeTimestamp',
      'feedback[7].outcomeTimestamp',
    ]);
  });

  it('B-06: an override needs no reason; a comment alone is enough', async () => {
    const { send, counted } = service();
    const commented = { ...ignored, card: 'other', overrideReason: { userComment: 'she is away' } };
    expect((await send(ignored, commented)).status).toBe(200);
    expect(await counted()).toEqual([
      'pregnancy_htn_feedback_total{rule="unknown",guideline="unknown",outcome="overridden",reason="none"} 2',
    ]);
  });

  it('B-12: is counted for the rule that made the card, with outcome and reason, nothing being stored', async () => {
    const { agent, send, counted } = service();
    const card = await shownCard(agent);
    // Another process that never saw the card counts it alike.
    const other = service();
    const overridden = {
      ...ignored,
      card,
      overrideReason: { reason: { system: local, code: 'already-done' } },
    };
    for (const each of [send, other.send]) expect((await each(overridden)).status).toBe(200);
    const line =
      'pregnancy_htn_feedback_total{rule="class:pre-eclampsia",guideline="frontline",outcome="overridden",reason="already-done"} 1';
    expect([await counted(), await other.counted()]).toEqual([[line], [line]]);
  });

  it('B-08: the same item again counts once, in any order, at any spelling of the same instant', async () => {
    const { agent, send, counted } = service();
    const card = await shownCard(agent);
    const first = { ...ignored, card };
    const later = { ...item, card, outcomeTimestamp: '2026-11-24T11:00:00Z' };
    await send(later, first);
    await send(first, later, { ...first, outcomeTimestamp: '2026-11-24T15:35:31+05:30' });
    await send({ ...first, card: card.toUpperCase() });
    expect((await counted()).map((line) => line.split(' ')[1])).toEqual(['1', '1']);
  });

  it('B-09: a card that is shown and never reported is no acceptance', async () => {
    const { agent, counted } = service();
    await shownCard(agent);
    expect(await counted()).toEqual([]);
    expect((await agent.get('/metrics')).text).toMatch(
      /pregnancy_htn_cards_total\{rule="class:pre-eclampsia",guideline="frontline",indicator="warning"\} 1/,
    );
  });

  it('B-13: a comment stands in no log, no metric and no forwarded item', async () => {
    const { agent, send, logged, forwarded } = service();
    const secret = 'Asha is afraid of the needle';
    const overrideReason = { userComment: secret, reason: { system: 'x', code: secret } };
    await send({ ...ignored, card: secret, overrideReason });
    const everything = [
      logged().join(),
      JSON.stringify(forwarded),
      (await agent.get('/metrics')).text,
    ].join();
    expect(everything).not.toContain('Asha');
    expect(logged()).toHaveLength(1);
    expect(JSON.parse(logged()[0] ?? '')).toEqual(forwarded[0]);
    expect(forwarded[0]).toMatchObject({
      event: 'feedback',
      hasComment: true,
      reason: 'other',
      rule: 'unknown',
    });
  });

  it('B-10: an unknown service is not found', async () => {
    const response = await client().post('/cds-services/x/feedback').send({ feedback: [] });
    expect(response.status).toBe(404);
  });
});

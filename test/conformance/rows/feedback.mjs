// Section 7: feedback.
import { isObject, notTestable, unless } from '../verdict.mjs';

const item = {
  card: 'f6b95768-b1c8-40dc-8385-bf3504b82ffb',
  outcome: 'accepted',
  acceptedSuggestions: [{ id: '01f15c0c-0b51-4a4c-a3fc-8a3a0f3ad8a5' }],
  outcomeTimestamp: '2026-11-24T10:05:31Z',
};
// JSON has no undefined: the member is left out.
const overridden = { ...item, outcome: 'overridden', acceptedSuggestions: undefined };

async function offered(service) {
  const response = await service.feedback({ feedback: [overridden] });
  if ([404, 405].includes(response.status)) notTestable('feedback is not offered');
}

const isTaken = ({ status }) => status >= 200 && status < 300;

const takes =
  (...bodies) =>
  async (service) => {
    await offered(service);
    for (const body of bodies) {
      const response = await service.feedback(body);
      if (!isTaken(response)) return `good feedback: answered ${response.status}`;
    }
    return undefined;
  };

const refuses =
  (...bodies) =>
  async (service) => {
    await offered(service);
    for (const body of bodies) {
      const { status } = await service.feedback(body);
      if (status < 400 || status >= 500) return `${JSON.stringify(body)}: answered ${status}, expected 4xx`;
    }
    return undefined;
  };

const items = (...changes) => changes.map((change) => ({ feedback: [{ ...item, ...change }] }));

export const rows = [
  {
    id: 'B-01',
    level: 'MAY',
    title: 'feedback is taken at {id}/feedback',
    run: takes({ feedback: [item] }),
  },
  {
    id: 'B-02',
    level: 'SHALL',
    title: 'the body has a list under feedback',
    run: refuses({}, { feedback: 'all well' }),
  },
  {
    id: 'B-03',
    level: 'SHALL',
    title: 'an item names its card',
    run: refuses(...items({ card: undefined })),
  },
  {
    id: 'B-04',
    level: 'SHALL',
    title: 'outcome is accepted or overridden',
    run: refuses(...items({ outcome: undefined }, { outcome: 'ignored' })),
  },
  {
    id: 'B-05',
    level: 'SHALL',
    title: 'accepted names the suggestions',
    run: refuses(...items({ acceptedSuggestions: undefined }, { acceptedSuggestions: [{}] })),
  },
  {
    id: 'B-06',
    level: 'SHALL',
    title: 'an override needs no reason; a given one says something',
    run: async (service) => {
      const reason = {
        code: 'recipient-disagrees-evidence',
        system: 'http://terminology.hl7.org/CodeSystem/non-adherence-reason-codes',
      };
      const good = [overridden, { ...overridden, overrideReason: { reason } }];
      const taken = await takes(...good.map((each) => ({ feedback: [each] })))(service);
      return taken ?? (await refuses({ feedback: [{ ...overridden, overrideReason: {} }] })(service));
    },
  },
  {
    id: 'B-07',
    level: 'SHALL',
    title: 'outcomeTimestamp is a date-time with a zone',
    run: refuses(...items({ outcomeTimestamp: undefined }, { outcomeTimestamp: '2026-11-24T10:05:31' })),
  },
  {
    id: 'B-08',
    level: 'rule',
    title: 'several items, and the same again, are taken',
    run: takes(
      { feedback: [item, overridden] },
      { feedback: [overridden, item] },
      { feedback: [item, item] },
    ),
  },
  {
    id: 'B-11',
    level: 'P',
    title: 'a bad item is named in the OperationOutcome',
    run: async (service) => {
      await offered(service);
      const { json } = await service.feedback({ feedback: [item, { ...item, outcome: 'no-such-outcome' }] });
      const places =
        isObject(json) && Array.isArray(json.issue)
          ? json.issue.flatMap(({ expression }) => expression ?? [])
          : [];
      return unless(
        places.some((place) => place.startsWith('feedback[1]')),
        'feedback[1] is not named',
      );
    },
  },
];

// Section 1: JSON and transport.
import { each, isObject, statusIs, unless } from '../verdict.mjs';

/** Addresses of null and empty values, but for the lists that may be empty. */
function emptyPlaces(value, place = '') {
  if (value === null || value === '') return [place];
  if (typeof value !== 'object') return [];
  const inside = Object.entries(value);
  if (inside.length === 0) return place === '.cards' || place === '.services' ? [] : [place || 'the body'];
  return inside.flatMap(([name, item]) => emptyPlaces(item, `${place}.${name}`));
}

const jsonType = /^application\/json(?:\s*;\s*charset=utf-8)?$/i;
const optional = [
  'uuid',
  'detail',
  'suggestions',
  'selectionBehavior',
  'overrideReasons',
  'links',
  'extension',
];

async function successes(service) {
  const called = (await service.answers()).map(({ response }) => response);
  return [await service.discovered(), ...called].filter(({ status }) => status === 200);
}

const nested = (depth) => `${'{"a":'.repeat(depth)}1${'}'.repeat(depth)}`;

export const rows = [
  {
    id: 'T-01',
    level: 'SHALL',
    title: 'bodies are JSON, and said to be',
    run: async (service) => {
      await service.entries();
      return each(await successes(service), ({ headers }) =>
        unless(
          jsonType.test(headers.get('content-type') ?? ''),
          `Content-Type is ${headers.get('content-type')}`,
        ),
      );
    },
  },
  {
    id: 'T-02',
    level: 'SHALL',
    title: 'nothing is null or empty but cards and services',
    run: async (service) => {
      await service.entries();
      return each(await successes(service), ({ json }) => {
        const [first] = emptyPlaces(json);
        return unless(first === undefined, `${first} is null or empty`);
      });
    },
  },
  {
    id: 'T-03',
    level: 'SHALL',
    title: 'an optional attribute without value is left out',
    run: async (service) =>
      each(await service.cards(), ({ card }) => {
        const said = optional.find((name) => name in card && emptyPlaces(card[name]).includes('the body'));
        const none = optional.find((name) => card[name] === null || card[name] === '');
        return unless((said ?? none) === undefined, `card.${said ?? none} is sent without a value`);
      }),
  },
  {
    id: 'T-04',
    level: 'SHALL',
    title: 'a resource in an action is an object, never text',
    run: async (service) =>
      each(await service.actions(), ({ action }) =>
        unless(action.resource === undefined || isObject(action.resource), 'actions[].resource is no object'),
      ),
  },
  {
    id: 'T-05',
    level: 'SHOULD',
    title: 'no comments and no commas left over in JSON',
    run: async (service) => {
      await service.entries();
      const missing = await service.send('POST', '/cds-services/no-such-service', { body: {} });
      return each([missing, ...(await successes(service))], ({ text, json }) =>
        unless(text === '' || json !== undefined, 'a body does not parse as JSON'),
      );
    },
  },
  {
    id: 'T-06',
    level: 'P',
    title: 'JSON media types are taken, others are 415',
    run: async (service) => {
      for (const type of [
        'application/json',
        'application/fhir+json',
        'application/json; charset=utf-8',
        null,
      ]) {
        const said = statusIs(
          await service.ask('conf-t06', { type }),
          200,
          `Content-Type ${type ?? 'absent'}`,
        );
        if (said !== undefined) return said;
      }
      return statusIs(await service.ask('conf-t06', { type: 'text/xml' }), 415, 'Content-Type text/xml');
    },
  },
  {
    id: 'T-07',
    level: 'P',
    title: 'a body that is no JSON, or too deep, is 400 and no HTML page',
    run: async (service) => {
      const entry = await service.main();
      for (const body of ['{"hook":', nested(5000)]) {
        const response = await service.post(entry, body);
        const said =
          statusIs(response, 400, 'a body that cannot be read') ??
          unless(!/html/i.test(response.headers.get('content-type') ?? ''), 'the error is an HTML page');
        if (said !== undefined) return said;
      }
      return undefined;
    },
  },
  {
    id: 'T-08',
    level: 'P',
    title: 'a name that stands twice is refused, or the last one counts',
    run: async (service) => {
      const entry = await service.main();
      const request = JSON.stringify(service.requestFor(entry, 'well', 'conf-t08'));
      const response = await service.post(entry, request.replace('{', '{"hook":"earlier-name",'));
      return statusIs(response, [200, 400], 'hook twice');
    },
  },
];

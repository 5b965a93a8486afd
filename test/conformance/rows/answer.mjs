// Section 4.1 and 4.5: status codes and system actions.
import { isAnswer } from '../service.mjs';
import { each, isObject, unless } from '../verdict.mjs';

const without = (name) => (request) =>
  Object.fromEntries(Object.entries(request).filter(([key]) => key !== name));
const withoutPrefetch = without('prefetch');
const isOutcome = ({ json }) =>
  isObject(json) && json.resourceType === 'OperationOutcome' && Array.isArray(json.issue);

export const rows = [
  {
    id: 'S-01',
    level: 'SHALL',
    title: 'success is 200 with a list of cards, also with nothing to say',
    run: async (service) => {
      const response = await service.ask('conf-s01', { story: 'well' });
      return unless(isAnswer(response), `answered ${response.status} without a list of cards`);
    },
  },
  {
    id: 'S-02',
    level: 'SHALL',
    title: '412 when required data can be had by no route',
    run: async (service) => {
      const response = await service.ask('conf-s02', { change: withoutPrefetch });
      return unless(
        response.status === 412 || isAnswer(response),
        `without any data: answered ${response.status}`,
      );
    },
  },
  {
    id: 'S-07',
    level: 'SHOULD',
    title: 'a failure carries an OperationOutcome',
    run: async (service) => {
      const failures = [
        await service.send('POST', '/cds-services/no-such-service', { body: {} }),
        await service.ask('conf-s07', { change: without('hook') }),
        await service.ask('conf-s07', { change: withoutPrefetch }),
      ];
      return each(failures, (response) =>
        unless(
          response.status < 400 || response.status === 401 || isOutcome(response),
          `${response.status} without an OperationOutcome`,
        ),
      );
    },
  },
  {
    id: 'Y-01',
    level: 'P',
    title: 'no system actions unless agreed',
    run: async (service) =>
      each(await service.answers(), ({ response }) =>
        unless(
          !isObject(response.json) || response.json.systemActions === undefined,
          'systemActions are sent',
        ),
      ),
  },
];

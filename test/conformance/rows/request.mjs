// Section 3: the call.
import { cardsOf, isAnswer } from '../service.mjs';
import { each, statusIs, unless } from '../verdict.mjs';
import { severe } from '../women.mjs';

const without = (name) => (request) =>
  Object.fromEntries(Object.entries(request).filter(([key]) => key !== name));
const plus = (more) => (request) => ({ ...request, ...more });
const inContext = (more) => (request) => ({ ...request, context: { ...request.context, ...more } });
const authorization = {
  access_token: 'not-a-real-token',
  token_type: 'Bearer',
  expires_in: 300,
  scope: 'user/Observation.read',
  subject: 'conformance',
};
const isClientFault = ({ status }) => status >= 400 && status < 500 && ![401, 404].includes(status);

/** A row that passes when the changed request is refused as the caller's mistake. */
const refuses =
  (patientId, what, ...changes) =>
  async (service) => {
    for (const change of changes) {
      const response = await service.ask(patientId, { change });
      if (!isClientFault(response)) return `${what}: answered ${response.status}, expected 4xx`;
    }
    return undefined;
  };

const accepts =
  (patientId, what, ...changes) =>
  async (service) => {
    for (const change of changes) {
      const response = await service.ask(patientId, { change });
      if (!isAnswer(response)) return `${what}: answered ${response.status}`;
    }
    return undefined;
  };

/** Without instants: a running service judges at the moment it is asked. */
const timeless = (text) => text.replaceAll(/\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:\.\d+)?Z/g, '');

export const rows = [
  {
    id: 'R-01',
    level: 'SHALL',
    title: 'a call without hook, or with one that is not served, is refused',
    run: refuses('conf-r01', 'no hook, unknown hook', without('hook'), plus({ hook: 'no-such-hook' })),
  },
  {
    id: 'R-02',
    level: 'SHALL',
    title: 'a call without hookInstance is refused',
    run: refuses('conf-r02', 'no hookInstance', without('hookInstance')),
  },
  {
    id: 'R-03',
    level: 'SHALL',
    title: 'fhirAuthorization without fhirServer is refused',
    run: refuses('conf-r03', 'no fhirServer', plus({ fhirAuthorization: authorization })),
  },
  {
    id: 'R-04',
    level: 'SHALL',
    title: 'fhirAuthorization lacking a member is refused',
    run: refuses(
      'conf-r04',
      'no access_token, no scope',
      ...['access_token', 'scope'].map((name) =>
        plus({ fhirServer: 'https://fhir.invalid/r4', fhirAuthorization: without(name)(authorization) }),
      ),
    ),
  },
  {
    id: 'R-05',
    level: 'SHALL',
    title: 'a call without context, or a required field of it, is refused',
    run: refuses('conf-r05', 'no context, no patientId', without('context'), (request) => ({
      ...request,
      context: without('patientId')(request.context),
    })),
  },
  {
    id: 'R-06',
    level: 'rule',
    title: 'prefetch keys nobody asked for are ignored',
    run: accepts('conf-r06', 'an unknown prefetch key', (request) => ({
      ...request,
      prefetch: {
        ...request.prefetch,
        conformanceNotAsked: { resourceType: 'Basic', id: 'x', code: { text: 'x' } },
      },
    })),
  },
  {
    id: 'R-07',
    level: 'rule',
    title: 'extensions of any type are ignored',
    run: accepts(
      'conf-r07',
      'an unknown extension',
      ...[{ 'org.example.a': 1 }, ['a'], 'a'].map((extension) => plus({ extension })),
      inContext({ extension: 'a' }),
    ),
  },
  {
    id: 'R-08',
    level: 'P',
    title: 'unknown members are ignored',
    run: accepts(
      'conf-r08',
      'an unknown member',
      plus({ user: 'Practitioner/1', redirect: 'https://ehr.invalid' }),
    ),
  },
  {
    id: 'R-09',
    level: 'P',
    title: 'an unknown service is 404; GET on a service is 405 with Allow',
    run: async (service) => {
      const unknown = await service.send('POST', '/cds-services/no-such-service', { body: {} });
      const got = await service.send('GET', `/cds-services/${(await service.main()).id}`);
      return (
        statusIs(unknown, 404, 'unknown service') ??
        statusIs(got, 405, 'GET') ??
        unless(/POST/.test(got.headers.get('allow') ?? ''), '405 without Allow: POST')
      );
    },
  },
  {
    id: 'R-10',
    level: 'P',
    title: 'Patient/123 is read as the id; another type is refused',
    run: async (service) => {
      const [typed, other] = ['Patient/conf-r10', 'Practitioner/conf-r10'];
      const read = await service.ask('conf-r10', { change: inContext({ patientId: typed }) });
      if (!isAnswer(read)) return `${typed}: answered ${read.status}`;
      return statusIs(await service.ask('conf-r10', { change: inContext({ patientId: other }) }), 400, other);
    },
  },
  {
    id: 'R-11',
    level: 'P',
    title: 'nothing is said on data of another woman',
    run: async (service) => {
      const patient = (request) =>
        Object.values(request.prefetch ?? {}).find((value) => value?.resourceType === 'Patient');
      const stranger = await service.ask('conf-r11', {
        change: (request) =>
          JSON.parse(JSON.stringify(request).replaceAll('"id":"conf-r11"', '"id":"another"')),
      });
      if (
        patient(service.requestFor(await service.main(), 'well', 'x')) !== undefined &&
        stranger.status < 400
      ) {
        return `a Patient of another id: answered ${stranger.status}`;
      }
      const extra = severe('another', service.now).filter(({ resourceType }) => resourceType !== 'Patient');
      const mixed = await service.ask('conf-r11', { story: 'well', extra });
      return each(cardsOf(mixed), ({ indicator }) =>
        unless(indicator !== 'critical', "another woman's readings made a critical card"),
      );
    },
  },
  {
    id: 'R-12',
    level: 'SHOULD',
    title: 'answers within 500 ms',
    run: async (service) => {
      const times = [];
      for (let call = 0; call < 5; call += 1) {
        const { ms } = await service.ask('conf-r12');
        if (ms <= 500) return undefined;
        times.push(Math.round(ms));
      }
      return `five calls took ${times.join(', ')} ms`;
    },
  },
  {
    id: 'R-13',
    level: 'P',
    title: 'the same request gives the same bytes, but for the moment of asking',
    run: async (service) => {
      const entry = await service.main();
      const request = service.requestFor(entry, 'raised', 'conf-r13');
      const [first, second] = [await service.post(entry, request), await service.post(entry, request)];
      return unless(timeless(first.text) === timeless(second.text), 'two answers to one request differ');
    },
  },
  {
    id: 'E-04',
    level: 'rule',
    title: 'context fields of a newer minor version are ignored',
    run: accepts('conf-e04', 'an unknown context field', inContext({ conformanceNewField: 'x' })),
  },
  {
    id: 'F-01',
    level: 'SHALL',
    title: 'a complete fhirAuthorization is taken, with full prefetch',
    run: accepts(
      'conf-f01',
      'a complete fhirAuthorization',
      plus({ fhirServer: 'https://fhir.invalid/r4', fhirAuthorization: authorization }),
    ),
  },
  {
    id: 'F-03',
    level: 'SHALL',
    title: 'the access token is not repeated in an answer',
    run: async (service) => {
      const change = plus({ fhirServer: 'https://fhir.invalid/r4', fhirAuthorization: authorization });
      const { text } = await service.ask('conf-f03', { change });
      return unless(!text.includes(authorization.access_token), 'the answer holds the access token');
    },
  },
];

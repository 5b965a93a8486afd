// Section 5: prefetch templates and what a key may hold.
import { readTemplate } from '../prefetch.mjs';
import { cardsOf, isAnswer } from '../service.mjs';
import { each, isText, notTestable, unless } from '../verdict.mjs';

const emptyBundle = { resourceType: 'Bundle', type: 'searchset', total: 0 };
const outcome = { resourceType: 'OperationOutcome', issue: [{ severity: 'error', code: 'exception' }] };
const userTokens = ['userPractitionerId', 'userPractitionerRoleId', 'userPatientId', 'userRelatedPersonId'];
const contextFields = ['userId', 'patientId', 'encounterId', 'dispatchedOrders', 'performer'];
const tokensOf = (template) => [...template.matchAll(/\{\{(.*?)\}\}/g)].map(([, token]) => token);

const everyTemplate = (complaint) => async (service) =>
  each(
    (await service.entries()).flatMap(({ prefetch }) =>
      Object.entries(prefetch ?? {}).filter(([, value]) => isText(value)),
    ),
    ([key, template]) => complaint(key, template),
  );

function isRestricted({ name, value }) {
  if (name === '_count') return /^\d+$/.test(value);
  if (name === '_sort') return /^-?[\w-]+(,-?[\w-]+)*$/.test(value);
  return /^[a-z][\w-]*(:in)?$/.test(name) && value !== '';
}

/** Keys of searches, in the request as it is made for the main entry. */
const searches = ({ prefetch = {} }) =>
  Object.keys(prefetch).filter((key) => prefetch[key]?.resourceType === 'Bundle');
const isEmpty = (value) => value?.resourceType === 'Bundle' && value.entry === undefined;
const withEmpty = (value) => (request) => ({
  ...request,
  prefetch: Object.fromEntries(
    Object.entries(request.prefetch ?? {}).map(([key, held]) => [key, isEmpty(held) ? value : held]),
  ),
});

const shown = (response) =>
  JSON.stringify(cardsOf(response).map(({ summary, indicator }) => [indicator, summary]));

/** Each search key in turn given as something odd: answered, or refused in form, never an accident. */
const survives = (patientId, what, value) => async (service) => {
  const keys = searches(service.requestFor(await service.main(), 'raised', patientId));
  if (keys.length === 0) notTestable('no search is asked for');
  for (const key of keys) {
    const change = (request) => ({
      ...request,
      prefetch: { ...request.prefetch, [key]: value(request.prefetch[key]) },
    });
    const response = await service.ask(patientId, { change });
    if (!isAnswer(response) && ![400, 412].includes(response.status))
      return `${key}, ${what}: answered ${response.status}`;
  }
  return undefined;
};

export const rows = [
  {
    id: 'P-01',
    level: 'SHALL',
    title: 'tokens are fields of the context or one of the user ids',
    run: everyTemplate((key, template) =>
      each(tokensOf(template), (token) =>
        unless(/^context\./.test(token) || userTokens.includes(token), `${key}: {{${token}}} is no token`),
      ),
    ),
  },
  {
    id: 'P-02',
    level: 'SHALL',
    title: 'a context token is context.<field>, a field the hook allows',
    run: everyTemplate((key, template) =>
      each(
        tokensOf(template).filter((token) => token.startsWith('context.')),
        (token) =>
          unless(
            contextFields.includes(token.slice('context.'.length)),
            `${key}: {{${token}}} is no field for tokens`,
          ),
      ),
    ),
  },
  {
    id: 'P-03',
    level: 'SHALL',
    title: 'queries stay in the portable grammar',
    run: everyTemplate((key, template) => {
      const read = readTemplate(template);
      return unless(
        read !== undefined && (read.parameters ?? []).every(isRestricted),
        `${key} is outside the grammar`,
      );
    }),
  },
  {
    id: 'P-08',
    level: 'P',
    title: 'nine keys at most',
    run: async (service) =>
      each(await service.entries(), ({ id, prefetch }) => {
        const count = Object.keys(prefetch ?? {}).length;
        return unless(count <= 9, `${id} asks for ${count} keys`);
      }),
  },
  {
    id: 'C-01',
    level: 'rule',
    title: 'an empty Bundle is an answer: nothing there',
    run: survives('conf-c01', 'an empty Bundle', () => emptyBundle),
  },
  {
    id: 'C-02',
    level: 'rule',
    title: 'null means the same as an empty Bundle',
    run: async (service) => {
      const empty = await service.ask('conf-c02', { change: withEmpty(emptyBundle) });
      const none = await service.ask('conf-c02', { change: withEmpty(null) });
      if (!isAnswer(none)) return `null: answered ${none.status}`;
      return unless(shown(empty) === shown(none), 'null and an empty Bundle give different cards');
    },
  },
  {
    id: 'C-03',
    level: 'SHOULD',
    title: 'an OperationOutcome is looked for, not taken for data',
    run: survives('conf-c03', 'an OperationOutcome', () => outcome),
  },
  {
    id: 'C-06',
    level: 'rule',
    title: 'a Bundle with a next page is read',
    run: survives('conf-c06', 'a first page', (bundle) => ({
      ...bundle,
      link: [{ relation: 'next', url: 'https://fhir.invalid/r4?page=2' }],
    })),
  },
  {
    id: 'C-07',
    level: 'P',
    title: 'a value of another type is no accident',
    run: survives('conf-c07', 'text', () => '123'),
  },
  {
    id: 'C-08',
    level: 'rule',
    title: 'each key is judged on its own',
    run: survives('conf-c08', 'left out', () => undefined),
  },
];

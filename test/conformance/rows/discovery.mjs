// Section 2: discovery.
import { publishedHooks } from '../hooks.mjs';
import { cardsOf, isAnswer } from '../service.mjs';
import { each, isObject, isText, notTestable, statusIs, unless } from '../verdict.mjs';

const semver = /^\d+\.\d+\.\d+(?:-[0-9A-Za-z.-]+)?(?:\+[0-9A-Za-z.-]+)?$/;
const place = ({ id, hook }) => `${id}, ${hook}`;
const everyEntry = (complaint) => async (service) => each(await service.entries(), complaint);

/** Entries of the first id that answers more than one hook. */
async function sharedEntries(service) {
  const played = await service.played();
  const shared = played.filter(({ id }) => played.filter((other) => other.id === id).length > 1);
  return shared.filter(({ id }) => id === shared[0].id);
}

export const rows = [
  {
    id: 'D-01',
    level: 'SHALL',
    title: 'discovery is at {baseUrl}/cds-services',
    run: async (service) => statusIs(await service.discovered(), 200, 'GET /cds-services'),
  },
  {
    id: 'D-02',
    level: 'SHALL',
    title: 'an object whose services is a list',
    run: async (service) => {
      const { status, json } = await service.discovered();
      if (status !== 200) notTestable('discovery does not answer');
      return unless(isObject(json) && Array.isArray(json.services), 'services is no list');
    },
  },
  {
    id: 'D-03',
    level: 'SHOULD',
    title: 'no services: 200 with an empty list',
    run: async (service) => {
      if ((await service.entries()).length > 0) notTestable('this service hosts services');
    },
  },
  {
    id: 'D-04',
    level: 'SHALL',
    title: 'each entry names its hook',
    run: everyEntry(({ id, hook }) => unless(isText(hook), `${id}: hook is missing`)),
  },
  {
    id: 'D-05',
    level: 'SHALL',
    title: 'each entry has a description',
    run: everyEntry((entry) => unless(isText(entry.description), `${place(entry)}: description is missing`)),
  },
  {
    id: 'D-06',
    level: 'SHALL',
    title: 'each id is an address that answers',
    run: async (service) => {
      const named = each(await service.entries(), ({ id }) =>
        unless(isText(id) && /^[A-Za-z0-9._~-]+$/.test(id), `${id} is no id for a URL`),
      );
      if (named !== undefined) return named;
      for (const entry of await service.entries()) {
        const response = await service.post(entry, { hook: entry.hook });
        if ([404, 405].includes(response.status)) return `${entry.id}: answered ${response.status}`;
      }
      return undefined;
    },
  },
  {
    id: 'D-07',
    level: 'SHOULD',
    title: 'each entry has a title',
    run: everyEntry((entry) => unless(isText(entry.title), `${place(entry)}: no title`)),
  },
  {
    id: 'D-08',
    level: 'MAY',
    title: 'prefetch is an object of templates, left out when there are none',
    run: everyEntry((entry) => {
      if (entry.prefetch === undefined) return undefined;
      const isGood = isObject(entry.prefetch) && Object.keys(entry.prefetch).length > 0;
      return unless(
        isGood && Object.values(entry.prefetch).every(isText),
        `${place(entry)}: prefetch is out of form`,
      );
    }),
  },
  {
    id: 'D-09',
    level: 'MAY',
    title: 'usageRequirements is text',
    run: everyEntry((entry) =>
      unless(
        entry.usageRequirements === undefined || isText(entry.usageRequirements),
        `${place(entry)}: usageRequirements is no text`,
      ),
    ),
  },
  {
    id: 'D-10',
    level: 'SHOULD',
    title: 'version is a semantic version of the specification',
    run: everyEntry((entry) =>
      unless(semver.test(entry.version ?? ''), `${place(entry)}: version is ${entry.version}`),
    ),
  },
  {
    id: 'D-11',
    level: 'MAY',
    title: 'hookVersion is that of the published hook',
    run: everyEntry((entry) =>
      unless(
        entry.hookVersion === undefined || entry.hookVersion === publishedHooks[entry.hook],
        `${place(entry)}: hookVersion is ${entry.hookVersion}`,
      ),
    ),
  },
  {
    id: 'D-12',
    level: 'rule',
    title: 'one id, several hooks: the hook of the body decides',
    run: async (service) => {
      const entries = await sharedEntries(service);
      if (entries.length < 2) notTestable('no id has two hooks that this check can play');
      for (const entry of entries) {
        const response = await service.post(entry, service.requestFor(entry, 'raised', 'conf-d12'));
        if (!isAnswer(response)) return `${place(entry)}: answered ${response.status}`;
      }
      return undefined;
    },
  },
  {
    id: 'D-13',
    level: 'P',
    title: 'no pair of id and hook twice',
    run: async (service) => {
      const pairs = (await service.entries()).map(place);
      return each(pairs, (pair) =>
        unless(pairs.filter((other) => other === pair).length === 1, `${pair} stands twice`),
      );
    },
  },
  {
    id: 'D-15',
    level: 'P',
    title: 'HEAD works; other methods are 405 with Allow',
    run: async (service) => {
      const head = statusIs(await service.send('HEAD', '/cds-services'), 200, 'HEAD');
      if (head !== undefined) return head;
      const other = await service.send('DELETE', '/cds-services');
      return statusIs(other, 405, 'DELETE') ?? unless(other.headers.has('allow'), '405 without Allow');
    },
  },
  {
    id: 'D-16',
    level: 'P',
    title: 'an extension tells the FHIR release',
    run: everyEntry((entry) =>
      unless(
        JSON.stringify(entry.extension ?? {}).includes('4.0.1'),
        `${place(entry)}: FHIR release is not told`,
      ),
    ),
  },
  {
    id: 'X-01',
    level: 'rule',
    title: 'a later hook under the same id gives the full set again',
    run: async (service) => {
      const entries = (await sharedEntries(service)).filter(({ hook }) =>
        /^(patient-view|encounter-start)$/.test(hook),
      );
      if (entries.length < 2) notTestable('patient-view and encounter-start do not share an id');
      const sets = [];
      for (const entry of entries) {
        const response = await service.post(entry, service.requestFor(entry, 'severe', 'conf-x01'));
        sets.push(
          cardsOf(response)
            .map(({ summary }) => summary)
            .sort()
            .join('\n'),
        );
      }
      return unless(new Set(sets).size === 1, 'the hooks of one id show different cards for the same chart');
    },
  },
  {
    id: 'E-03',
    level: 'SHALL',
    title: 'a hook of their own has a reverse-domain name',
    run: everyEntry(({ hook }) =>
      unless(
        !isText(hook) || hook in publishedHooks || /^[a-z0-9-]+(\.[a-z0-9-]+)+$/i.test(hook),
        `${hook} is neither published nor reverse-domain`,
      ),
    ),
  },
];

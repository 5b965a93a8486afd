// Section 4.2 and 4.4: cards and links. Section 9: extensions.
import { each, isObject, isText, notTestable, unless } from '../verdict.mjs';

const uuid = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const indicators = ['critical', 'warning', 'info'];
const isAbsolute = (url) => isText(url) && /^https?:/.test(url) && URL.canParse(url);
const everyCard = (complaint) => async (service) =>
  each(await service.cards(), ({ card }) => complaint(card));
const listIn = (value) => (Array.isArray(value) ? value : []);
const links = (card) => listIn(card.links);
const hasMarkup = (text) => /<\/?[a-z!][^>]*>/i.test(text) || /!\[[^\]]*\]\(/.test(text);

/** Every `extension` in a body, with its place. */
function extensions(value, place = '') {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, item]) => {
    // A FHIR resource has extensions of its own kind.
    if (name === 'resource') return [];
    return name === 'extension'
      ? [{ place: `${place}.${name}`, value: item }]
      : extensions(item, `${place}.${name}`);
  });
}

const everyExtension = (complaint) => async (service) => {
  const bodies = [await service.discovered(), ...(await service.answers()).map(({ response }) => response)];
  return each(
    bodies.flatMap(({ json }) => extensions(json)),
    complaint,
  );
};

export const rows = [
  {
    id: 'K-01',
    level: 'P',
    title: 'each card has a uuid',
    run: everyCard((card) => unless(uuid.test(card.uuid ?? ''), `card.uuid is ${card.uuid}`)),
  },
  {
    id: 'K-02',
    level: 'SHALL',
    title: 'summary: one line of fewer than 140 characters',
    run: everyCard(({ summary }) =>
      unless(
        isText(summary) && summary.length < 140 && !/[\r\n]/.test(summary),
        'a summary is missing, too long or broken into lines',
      ),
    ),
  },
  {
    id: 'K-03',
    level: 'P',
    title: 'detail is Markdown without HTML and images',
    run: everyCard(({ detail }) =>
      unless(
        detail === undefined || (typeof detail === 'string' && !hasMarkup(detail)),
        'a detail holds HTML or an image',
      ),
    ),
  },
  {
    id: 'K-04',
    level: 'SHALL',
    title: 'indicator is info, warning or critical',
    run: everyCard(({ indicator }) => unless(indicators.includes(indicator), `indicator is ${indicator}`)),
  },
  {
    id: 'K-05',
    level: 'SHALL',
    title: 'source has a label',
    run: everyCard(({ source }) => unless(isText(source?.label), 'source.label is missing')),
  },
  {
    id: 'K-06',
    level: 'SHALL',
    title: 'source.url is absolute',
    run: everyCard(({ source }) =>
      unless(source?.url === undefined || isAbsolute(source.url), `source.url is ${source?.url}`),
    ),
  },
  {
    id: 'K-07',
    level: 'SHOULD',
    title: 'source.icon is absolute',
    run: everyCard(({ source }) =>
      unless(source?.icon === undefined || isAbsolute(source.icon), `source.icon is ${source?.icon}`),
    ),
  },
  {
    id: 'K-08',
    level: 'SHALL',
    title: 'source.topic has code and system',
    run: everyCard(({ source }) => {
      const topic = source?.topic;
      return unless(
        topic === undefined || (isText(topic.code) && isText(topic.system)),
        'source.topic lacks code or system',
      );
    }),
  },
  {
    id: 'K-09',
    level: 'SHALL',
    title: 'suggestions come with a selectionBehavior',
    run: everyCard((card) =>
      unless(
        listIn(card.suggestions).length === 0 || card.selectionBehavior !== undefined,
        'selectionBehavior is missing',
      ),
    ),
  },
  {
    id: 'K-10',
    level: 'SHALL',
    title: 'selectionBehavior is at-most-one or any',
    run: everyCard(({ selectionBehavior }) =>
      unless(
        [undefined, 'at-most-one', 'any'].includes(selectionBehavior),
        `selectionBehavior is ${selectionBehavior}`,
      ),
    ),
  },
  {
    id: 'K-11',
    level: 'SHALL',
    title: 'override reasons have code, system and display',
    run: everyCard((card) =>
      each(listIn(card.overrideReasons), (reason) =>
        unless(
          ['code', 'system', 'display'].every((name) => isText(reason?.[name])),
          'an override reason lacks a member',
        ),
      ),
    ),
  },
  {
    id: 'K-12',
    level: 'SHALL',
    title: 'links is a list of objects',
    run: everyCard((card) =>
      unless(
        card.links === undefined ||
          card.links === null ||
          (Array.isArray(card.links) && card.links.every(isObject)),
        'links is no list of objects',
      ),
    ),
  },
  {
    id: 'K-13',
    level: 'P',
    title: 'each card explains itself to programs, in its extension',
    run: everyCard((card) => unless(card.extension !== undefined, 'a card has no extension')),
  },
  {
    id: 'K-14',
    level: 'P',
    title: 'three cards at most',
    run: async (service) =>
      each(await service.answers(), ({ response }) => {
        const count = listIn(response.json?.cards).length;
        return unless(count <= 3, `${count} cards in one answer`);
      }),
  },
  {
    id: 'K-15',
    level: 'P',
    title: 'critical before warning before info',
    run: async (service) =>
      each(await service.answers(), ({ response }) => {
        const ranks = listIn(response.json?.cards)
          .map(({ indicator }) => indicators.indexOf(indicator))
          .filter((rank) => rank >= 0);
        return unless(
          ranks.every((rank, at) => at === 0 || ranks[at - 1] <= rank),
          'cards are out of order',
        );
      }),
  },
  {
    id: 'X-02',
    level: 'P',
    title: 'a card on a pressure states its value',
    run: async (service) => {
      const shown = (await service.cards()).filter(
        ({ entry, story }) => entry.hook === 'patient-view' && story === 'severe',
      );
      if (shown.length === 0) notTestable('no card on patient-view for a woman with severe pressure');
      return unless(
        shown.some(({ card }) => /168\s*\/\s*112/.test(`${card.summary} ${card.detail}`)),
        'no card states the newest pressure',
      );
    },
  },
  {
    id: 'L-01',
    level: 'SHALL',
    title: 'a link has label, absolute url and type',
    run: everyCard((card) =>
      each(links(card), (link) =>
        unless(
          isText(link?.label) && isAbsolute(link?.url) && ['absolute', 'smart'].includes(link?.type),
          'a link is out of form',
        ),
      ),
    ),
  },
  {
    id: 'L-02',
    level: 'SHALL',
    title: 'appContext is text, and only with smart links',
    run: everyCard((card) =>
      each(links(card), (link) =>
        unless(
          link?.appContext === undefined || (isText(link.appContext) && link.type === 'smart'),
          'appContext is out of place',
        ),
      ),
    ),
  },
  {
    id: 'L-03',
    level: 'SHALL',
    title: 'autolaunchable is true or false',
    run: everyCard((card) =>
      each(links(card), (link) =>
        unless([undefined, true, false].includes(link?.autolaunchable), 'autolaunchable is no boolean'),
      ),
    ),
  },
  {
    id: 'E-01',
    level: 'SHALL',
    title: 'an extension is an object',
    run: everyExtension(({ place, value }) => unless(isObject(value), `${place} is no object`)),
  },
  {
    id: 'E-02',
    level: 'SHOULD',
    title: 'names in an extension are reverse-domain',
    run: everyExtension(({ place, value }) =>
      unless(
        !isObject(value) || Object.keys(value).every((name) => name.includes('.')),
        `${place} has a name that is not reverse-domain`,
      ),
    ),
  },
];

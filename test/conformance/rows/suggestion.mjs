// Section 4.3: suggestions and actions.
import { cardsOf } from '../service.mjs';
import { each, isObject, isText, notTestable, unless } from '../verdict.mjs';

const everySuggestion = (complaint) => async (service) => {
  const shown = await service.suggestions();
  if (shown.length === 0) notTestable('nothing is suggested to any of the invented women');
  return each(shown, ({ suggestion, request }) => complaint(suggestion, request));
};

const everyAction = (complaint) => async (service) => {
  const shown = await service.actions();
  if (shown.length === 0) notTestable('no action is suggested to any of the invented women');
  return each(shown, ({ action }) => complaint(action));
};

const actionsOf = ({ actions }) => (Array.isArray(actions) ? actions : []);

/** Every relative reference in a value. */
function references(value) {
  if (typeof value !== 'object' || value === null) return [];
  const own = isText(value.reference) && /^[A-Z]\w+\/[\w.-]+$/.test(value.reference) ? [value.reference] : [];
  return [...own, ...Object.values(value).flatMap(references)];
}

/** `Type/id` of every resource in a value. */
function named(value) {
  if (typeof value !== 'object' || value === null) return [];
  const own = isText(value.resourceType) && isText(value.id) ? [`${value.resourceType}/${value.id}`] : [];
  return [...own, ...Object.values(value).flatMap(named)];
}

function unresolved(suggestion, request) {
  const resources = actionsOf(suggestion).map(({ resource }) => resource);
  const { userId, patientId, encounterId } = request.context;
  const known = [
    ...named(resources),
    ...named(request),
    userId,
    `Patient/${patientId}`,
    `Encounter/${encounterId}`,
  ];
  return references(resources).find((reference) => !known.includes(reference));
}

const codesOf = (resources) =>
  resources.flatMap(({ resourceType, code }) =>
    (code?.coding ?? []).map((coding) => `${resourceType} ${coding.system}|${coding.code}`),
  );

const created = (cards) =>
  cards
    .flatMap((card) => (Array.isArray(card.suggestions) ? card.suggestions : []))
    .flatMap(actionsOf)
    .filter(({ type, resource }) => type === 'create' && isObject(resource))
    .map(({ resource }) => resource);

/** As the record would hold it after the suggestion was accepted. */
const accepted = (resource) =>
  resource.resourceType === 'ServiceRequest' ? { ...resource, status: 'active', intent: 'order' } : resource;

export const rows = [
  {
    id: 'A-01',
    level: 'SHALL',
    title: 'a suggestion has a label',
    run: everySuggestion(({ label }) => unless(isText(label), 'a suggestion has no label')),
  },
  {
    id: 'A-02',
    level: 'P',
    title: 'a suggestion has a uuid',
    run: everySuggestion(({ uuid }) => unless(isText(uuid), 'a suggestion has no uuid')),
  },
  {
    id: 'A-03',
    level: 'SHALL',
    title: 'with at-most-one, one suggestion at most is recommended',
    run: async (service) =>
      each(await service.cards(), ({ card }) => {
        const marks = (Array.isArray(card.suggestions) ? card.suggestions : []).map(
          ({ isRecommended }) => isRecommended,
        );
        const isTold = marks.every((mark) => [undefined, true, false].includes(mark));
        const count = marks.filter((mark) => mark === true).length;
        return unless(
          isTold && (card.selectionBehavior === 'any' || count <= 1),
          'isRecommended is out of form',
        );
      }),
  },
  {
    id: 'A-04',
    level: 'SHALL',
    title: 'actions is a list of objects',
    run: everySuggestion(({ actions }) =>
      unless(
        actions === undefined || (Array.isArray(actions) && actions.every(isObject)),
        'actions is no list of objects',
      ),
    ),
  },
  {
    id: 'A-05',
    level: 'rule',
    title: 'references between actions resolve',
    run: everySuggestion((suggestion, request) => {
      const lost = unresolved(suggestion, request);
      return unless(lost === undefined, `${lost} is neither created nor known`);
    }),
  },
  {
    id: 'A-06',
    level: 'SHALL',
    title: 'no actionSelectionBehavior without agreement',
    run: everySuggestion((suggestion) =>
      unless(suggestion.actionSelectionBehavior === undefined, 'actionSelectionBehavior is sent'),
    ),
  },
  {
    id: 'A-07',
    level: 'SHALL',
    title: 'type is create, update or delete',
    run: everyAction(({ type }) =>
      unless(['create', 'update', 'delete'].includes(type), `action.type is ${type}`),
    ),
  },
  {
    id: 'A-08',
    level: 'SHALL',
    title: 'an action has a description',
    run: everyAction(({ description }) => unless(isText(description), 'an action has no description')),
  },
  {
    id: 'A-09',
    level: 'SHALL',
    title: 'create brings a resource; a new order is a draft or a proposal',
    run: everyAction(({ type, resource }) => {
      if (type !== 'create' || typeof resource === 'string') return undefined;
      if (!isText(resource?.resourceType)) return 'create without a resource';
      const isDraft = resource.status === 'draft' || ['proposal', 'plan'].includes(resource.intent);
      return unless(resource.resourceType !== 'ServiceRequest' || isDraft, 'an order is created as active');
    }),
  },
  {
    id: 'A-10',
    level: 'rule',
    title: 'update brings the whole resource with its id',
    run: everyAction(({ type, resource }) =>
      unless(
        type !== 'update' || (isText(resource?.resourceType) && isText(resource?.id)),
        'update without a whole resource',
      ),
    ),
  },
  {
    id: 'A-11',
    level: 'SHOULD',
    title: 'delete names Type/id in resourceId and brings no resource',
    run: everyAction(({ type, resource, resourceId }) =>
      unless(
        type !== 'delete' || (resource === undefined && /^[A-Z]\w+\/[\w.-]+$/.test(resourceId ?? '')),
        'delete is out of form',
      ),
    ),
  },
  {
    id: 'A-12',
    level: 'P',
    title: 'what the chart holds already is not suggested again',
    run: async (service) => {
      const first = created(cardsOf(await service.ask('conf-a12', { story: 'severe' })));
      if (first.length === 0) notTestable('nothing is created');
      const again = await service.ask('conf-a12', { story: 'severe', extra: first.map(accepted) });
      if (again.status !== 200) return `with the new resources in the chart: answered ${again.status}`;
      const held = codesOf(first);
      return each(codesOf(created(cardsOf(again))), (code) =>
        unless(!held.includes(code), `${code} is suggested again`),
      );
    },
  },
];

// A chart as the answers to a service's own prefetch templates.
/** The parts of a template; undefined when it is not in the portable grammar. */
export function readTemplate(template) {
  if (typeof template !== 'string') return undefined;
  if (template === '{{context.userId}}') return { kind: 'user' };
  const read = /^([A-Z][A-Za-z]+)\/\{\{context\.(\w+)\}\}$/.exec(template);
  if (read !== null) return { kind: 'read', type: read[1], field: read[2] };
  const search = /^([A-Z][A-Za-z]+)\?(.+)$/.exec(template);
  if (search === null) return undefined;
  const parameters = search[2].split('&').map((text) => {
    const at = text.indexOf('=');
    return { name: text.slice(0, at), value: text.slice(at + 1) };
  });
  return { kind: 'search', type: search[1], parameters };
}

const codesOf = (resource) =>
  (resource.code?.coding ?? []).flatMap(({ system, code }) => [`${system}|${code}`, code]);

function isWanted(resource, { type, parameters }) {
  if (resource.resourceType !== type) return false;
  const codes = parameters
    .filter(({ name }) => /^code(:in)?$/.test(name))
    .flatMap(({ value }) => value.split(','));
  return codes.length === 0 || codes.some((code) => codesOf(resource).includes(code));
}

const searchset = (resources) => ({
  resourceType: 'Bundle',
  type: 'searchset',
  total: resources.length,
  ...(resources.length === 0 ? {} : { entry: resources.map((resource) => ({ resource })) }),
});

function answerTo(template, resources, context) {
  switch (template.kind) {
    case 'user':
      return { resourceType: 'Practitioner', id: String(context.userId).split('/')[1], active: true };
    case 'read':
      return resources.find(
        ({ resourceType, id }) => resourceType === template.type && id === context[template.field],
      );
    case 'search':
      return searchset(resources.filter((resource) => isWanted(resource, template)));
  }
}

/** Prefetch for one discovery entry; a template that cannot be expanded leaves its key out. */
export function prefetchFor(entry, resources, context) {
  const found = Object.entries(entry.prefetch ?? {}).map(([key, template]) => {
    const read = readTemplate(template);
    return [key, read === undefined ? undefined : answerTo(read, resources, context)];
  });
  return Object.fromEntries(found.filter(([, value]) => value !== undefined));
}

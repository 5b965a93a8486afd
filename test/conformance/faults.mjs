// One fault for each row: what the deliberately wrong service does to a right answer, or to the question before it.
const isAnswer = ({ response }) => response.status === 200 && Array.isArray(response.json?.cards);
const isDiscovery = ({ request, response }) =>
  request.method === 'GET' && request.path === '/cds-services' && response.status === 200;
const isCall = ({ request }) => request.method === 'POST' && /^\/cds-services\/[^/]+$/.test(request.path);
const isFeedback = ({ request }) => request.path.endsWith('/feedback') && request.method === 'POST';
const context = ({ request }) => (typeof request.json?.context === 'object' ? request.json.context : {});
const isAbout = (exchange, id) => String(context(exchange)?.patientId).endsWith(id);

/** Changes the last entry of discovery. */
const inEntry = (change) => ({
  after: (exchange) => {
    if (isDiscovery(exchange))
      change(exchange.response.json.services.at(-1), exchange.response.json.services);
  },
});
/** Changes the first card of every answer. */
const inCard = (change) => ({
  after: (exchange) => {
    if (isAnswer(exchange)) for (const card of exchange.response.json.cards.slice(0, 1)) change(card);
  },
});
const inSuggestion = (change) =>
  inCard((card) => {
    for (const suggestion of (card.suggestions ?? []).slice(0, 1)) change(suggestion, card);
  });
const inAction = (change) => inSuggestion(({ actions }) => change(actions[0], actions));
const inBody = (change) => ({
  after: (exchange) => {
    if (isAnswer(exchange)) change(exchange.response.json, exchange);
  },
});
const replied = (exchange, status, json) => {
  exchange.response = { status, headers: { 'content-type': 'application/json' }, text: '', json };
};
/** Answers otherwise when something holds of the exchange. */
const answers = (when, status, json) => ({
  after: (exchange) => {
    if (when(exchange)) replied(exchange, status, json);
  },
});
const letsPass = (when) => answers((exchange) => isCall(exchange) && when(exchange), 200, { cards: [] });
const chokesOn = (when, status = 500) => answers((exchange) => isCall(exchange) && when(exchange), status);
const takesFeedback = (when) =>
  answers(({ request, ...rest }) => {
    const items = request.json?.feedback;
    const [first] = Array.isArray(items) ? items : [];
    return isFeedback({ request, ...rest }) && when(first ?? {}, request.json ?? {});
  }, 200);
/** Lets a token in that should not be: gives the right service a good one in its place. */
const trusts = (when) => ({ trusts: when });
const link = { label: 'Read more', url: 'https://example.org/', type: 'absolute' };
const holds = (request, value) => JSON.stringify(request.json?.prefetch ?? {}).includes(value);
const isAsked = (name) => (exchange) => isAbout(exchange, name);

let count = 0;

/** By row id; `breaks` when more than that row must fail. */
export const faults = {
  'T-01': { after: ({ response }) => void (response.headers['content-type'] = 'text/plain') },
  'T-02': inBody((body) => void (body.extension = { 'org.example.empty': null, 'org.example.x': {} })),
  'T-03': { ...inCard((card) => void (card.links = null)), breaks: ['T-02', 'T-03'] },
  'T-04': inAction((_action, actions) => {
    const last = actions.at(-1);
    last.resource = JSON.stringify(last.resource);
  }),
  'T-05': {
    after: ({ request, response }) => {
      if (request.path !== '/cds-services/no-such-service') return;
      response.text = '{"resourceType":"OperationOutcome",} // not found';
      response.json = undefined;
    },
    breaks: ['S-07', 'T-05'],
  },
  'T-06': chokesOn(({ request }) => /fhir\+json/.test(request.headers['content-type'] ?? ''), 415),
  'T-07': chokesOn(({ request }) => request.json === undefined),
  'T-08': chokesOn(isAsked('conf-t08')),
  'D-01': answers(({ request }) => request.path === '/cds-services' && request.method === 'GET', 404),
  'D-02': { after: (exchange) => isDiscovery(exchange) && (exchange.response.json = { services: {} }) },
  'D-04': inEntry((entry) => delete entry.hook),
  'D-05': inEntry((entry) => delete entry.description),
  'D-06': inEntry((entry) => void (entry.id = 'not a name')),
  'D-07': inEntry((entry) => delete entry.title),
  'D-08': inEntry((entry) => void (entry.prefetch.symptoms = 7)),
  'D-09': inEntry((entry) => void (entry.usageRequirements = 7)),
  'D-10': inEntry((entry) => void (entry.version = 'STU2')),
  'D-11': inEntry((entry) => void (entry.hookVersion = '9.9')),
  'D-12': chokesOn(
    (exchange) => isAbout(exchange, 'conf-d12') && exchange.request.json.hook === 'encounter-start',
    400,
  ),
  'D-13': inEntry((entry, services) => services.push(entry)),
  'D-15': {
    after: ({ request, response }) => request.path === '/cds-services' && delete response.headers.allow,
  },
  'D-16': inEntry((entry) => delete entry.extension),
  'X-01': letsPass(({ request }) => request.json?.hook === 'encounter-start'),
  'E-03': inEntry((entry, services) => services.push({ ...entry, hook: 'vitals-saved' })),
  'R-01': letsPass(({ request }) => request.json?.hook === 'no-such-hook'),
  'R-02': letsPass(
    ({ request }) =>
      request.json !== undefined &&
      request.json.hook !== undefined &&
      request.json.context !== undefined &&
      request.json.hookInstance === undefined,
  ),
  'R-03': letsPass(
    ({ request }) => request.json?.fhirAuthorization !== undefined && request.json.fhirServer === undefined,
  ),
  'R-04': letsPass(
    ({ request }) =>
      request.json?.fhirAuthorization !== undefined &&
      request.json.fhirAuthorization.access_token === undefined,
  ),
  'R-05': letsPass(
    ({ request }) =>
      request.json?.hookInstance !== undefined && request.json.context?.patientId === undefined,
  ),
  'R-06': chokesOn(({ request }) => holds(request, 'conformanceNotAsked'), 400),
  'R-07': chokesOn(({ request }) => Array.isArray(request.json?.extension), 400),
  'R-08': chokesOn(({ request }) => request.json?.redirect !== undefined, 400),
  'R-09': {
    after: ({ request, response }) =>
      request.method === 'GET' && response.status === 405 && delete response.headers.allow,
  },
  'R-10': letsPass(({ request }) => String(request.json?.context?.patientId).startsWith('Practitioner/')),
  'R-11': letsPass(isAsked('conf-r11')),
  'R-12': { delay: (exchange) => (isAbout(exchange, 'conf-r12') ? 520 : 0) },
  'R-13': inBody((body) => void (body.extension = { 'org.example.count': (count += 1) })),
  'E-04': chokesOn(isAsked('conf-e04'), 400),
  'F-01': chokesOn(isAsked('conf-f01'), 400),
  'F-03': inBody((body, { request }) => {
    const token = request.json?.fhirAuthorization?.access_token;
    if (token !== undefined) body.extension = { 'org.example.token': token };
  }),
  'S-01': answers(isAsked('conf-s01'), 204),
  'S-02': chokesOn(isAsked('conf-s02')),
  'S-07': answers(
    ({ request, response }) => request.path === '/cds-services/no-such-service' && response.status === 404,
    404,
  ),
  'Y-01': inBody(
    (body) => void (body.systemActions = [{ type: 'delete', description: 'x', resourceId: 'Condition/1' }]),
  ),
  'K-01': inCard((card) => delete card.uuid),
  'K-02': inCard((card) => void (card.summary = card.summary.padEnd(140, '.'))),
  'K-03': inCard((card) => void (card.detail += ' <b>now</b>')),
  'K-04': inCard((card) => void (card.indicator = 'hard-stop')),
  'K-05': inCard((card) => delete card.source.label),
  'K-06': inCard((card) => void (card.source.url = 'about/us')),
  'K-07': inCard((card) => void (card.source.icon = 'icon.png')),
  'K-08': inCard((card) => void (card.source.topic = { code: 'x' })),
  'K-09': inCard((card) => delete card.selectionBehavior),
  'K-10': inCard((card) => void (card.selectionBehavior &&= 'all')),
  'K-11': inCard((card) => void (card.overrideReasons = [{ code: 'x', system: 'https://example.org/x' }])),
  'K-12': inCard((card) => void (card.links = 'https://example.org')),
  'K-13': inCard((card) => delete card.extension),
  'K-14': inBody(({ cards }) => {
    const [first] = cards;
    while (first !== undefined && cards.length < 4) cards.unshift({ ...first });
  }),
  'K-15': inBody(({ cards }) => {
    if (cards.length > 0) cards.unshift({ ...cards.at(-1), indicator: 'info' });
    cards.splice(3);
  }),
  'X-02': {
    after: ({ response }) => {
      if (response.json?.cards !== undefined)
        response.json = JSON.parse(JSON.stringify(response.json).replaceAll('168/112', 'high'));
    },
  },
  'L-01': inCard((card) => void (card.links = [{ ...link, type: undefined }])),
  'L-02': inCard((card) => void (card.links = [{ ...link, appContext: 'x' }])),
  'L-03': inCard((card) => void (card.links = [{ ...link, autolaunchable: 'yes' }])),
  'E-01': inBody((body) => void (body.extension = ['x'])),
  'E-02': inBody((body) => void (body.extension = { plain: 1 })),
  'A-01': inSuggestion((suggestion) => delete suggestion.label),
  'A-02': inSuggestion((suggestion) => delete suggestion.uuid),
  'A-03': inSuggestion((suggestion, card) => {
    card.selectionBehavior = 'at-most-one';
    suggestion.isRecommended = true;
    card.suggestions.push({ ...suggestion });
  }),
  'A-04': inSuggestion((suggestion) => void (suggestion.actions = 'all')),
  'A-05': inAction((action) => void (action.resource.subject = { reference: 'Patient/nobody' })),
  'A-06': inSuggestion((suggestion) => void (suggestion.actionSelectionBehavior = 'all')),
  'A-07': inAction(
    (_action, actions) => void actions.push({ type: 'remove', description: 'x', resourceId: 'Condition/1' }),
  ),
  'A-08': inAction((action) => delete action.description),
  'A-09': inSuggestion(({ actions }) => {
    for (const { resource } of actions)
      if (resource.resourceType === 'ServiceRequest')
        Object.assign(resource, { status: 'active', intent: 'order' });
  }),
  'A-10': inAction(
    (_action, actions) =>
      void actions.push({ type: 'update', description: 'x', resource: { resourceType: 'Condition' } }),
  ),
  'A-11': inAction(
    (_action, actions) =>
      void actions.push({ type: 'delete', description: 'x', resource: { resourceType: 'Condition' } }),
  ),
  'A-12': {
    before: ({ request }) => {
      if (request.json?.context?.patientId !== 'conf-a12') return;
      const { prefetch } = request.json;
      for (const [key, value] of Object.entries(prefetch)) {
        if (/"(Condition|ServiceRequest)"/.test(JSON.stringify(value))) prefetch[key] = null;
      }
      request.text = JSON.stringify(request.json);
    },
  },
  'P-01': {
    ...inEntry((entry) => void (entry.prefetch.patient = 'Patient/{{today()}}')),
    breaks: ['P-01', 'P-03'],
  },
  'P-02': inEntry((entry) => void (entry.prefetch.patient = 'Patient/{{context.draftOrders}}')),
  'P-03': inEntry((entry) => void (entry.prefetch.symptoms += '&_include=Observation:subject&code:not=x')),
  'P-08': inEntry((entry) => {
    for (let key = 0; key < 10; key += 1) entry.prefetch[`more${key}`] = 'Patient/{{context.patientId}}';
  }),
  'C-01': chokesOn(isAsked('conf-c01')),
  'C-02': chokesOn((exchange) => isAbout(exchange, 'conf-c02') && holds(exchange.request, 'null')),
  'C-03': chokesOn(({ request }) => holds(request, 'OperationOutcome')),
  'C-06': chokesOn(({ request }) => holds(request, '"relation":"next"')),
  'C-07': chokesOn(({ request }) => holds(request, '"123"')),
  'C-08': chokesOn(isAsked('conf-c08')),
  'B-01': answers(
    (exchange) =>
      isFeedback(exchange) &&
      exchange.request.json?.feedback?.length === 1 &&
      exchange.request.json.feedback[0].outcome === 'accepted' &&
      exchange.response.status === 200,
    500,
  ),
  'B-02': takesFeedback((_item, { feedback }) => !Array.isArray(feedback)),
  'B-03': takesFeedback(({ card, outcome }) => outcome !== undefined && card === undefined),
  'B-04': takesFeedback(({ outcome }) => outcome === 'ignored'),
  'B-05': takesFeedback(
    ({ outcome, acceptedSuggestions }) => outcome === 'accepted' && acceptedSuggestions === undefined,
  ),
  'B-06': takesFeedback(({ overrideReason }) => JSON.stringify(overrideReason) === '{}'),
  'B-07': takesFeedback(
    ({ card, outcomeTimestamp }) => card !== undefined && !/Z$/.test(outcomeTimestamp ?? ''),
  ),
  'B-08': answers(
    (exchange) =>
      isFeedback(exchange) &&
      exchange.request.json?.feedback?.length === 2 &&
      exchange.response.status === 200,
    409,
  ),
  'B-11': answers((exchange) => isFeedback(exchange) && exchange.response.status === 400, 400),
  'J-13': answers(({ request }) => request.method === 'OPTIONS', 405),
};

/** For a service that asks for tokens. */
export const tokenFaults = {
  'J-02': trusts(({ request, token }) => token === undefined && isCall({ request })),
  'J-04': trusts(({ token }) => token !== undefined && token.header.typ === undefined),
  'J-05': trusts(({ token }) => token?.header.alg === 'none'),
  'J-06': trusts(({ token }) => token !== undefined && token.payload.jti === undefined),
  'J-07': trusts(({ token }) => String(token?.payload.aud).startsWith('https://another.invalid')),
  'J-08': trusts(({ token }) => String(token?.payload.iss) === 'https://unknown.invalid'),
  'J-09': trusts(({ token }) => token?.payload.exp - token?.payload.iat > 3600),
  'J-10': trusts(({ token }) => String(token?.payload.jti).startsWith('conf-j10')),
  'J-11': { after: ({ response }) => response.status === 401 && (response.text = 'expired') },
  'B-10': trusts(({ request, token }) => token === undefined && isFeedback({ request })),
};

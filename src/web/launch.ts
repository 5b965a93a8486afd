// Launched by a record system: authorise, read what the service would read, show the page with it.
import { chartQueries } from '../presenters/data-requirements.ts';
import { caseOf, isJson } from './case.ts';
import { byId, make } from './dom.ts';
import { loadPageSettings, pageSettings } from './page-settings.ts';
import { smart, type SmartClient } from './smart-client.ts';
import { startPage } from './start-page.ts';

/** What is read, and no more. */
const scope = [
  'launch',
  ...['Patient', 'Observation', 'Condition', 'MedicationRequest', 'ServiceRequest'].map(
    (type) => `patient/${type}.read`,
  ),
].join(' ');

const mostPages = 10;

async function start(): Promise<void> {
  await loadPageSettings();
  const query = new URLSearchParams(location.search);
  if (query.has('code') || query.has('error')) await finish();
  else await begin(query.get('iss'));
}

/** First visit: off to the authorisation server, with PKCE and a state that is checked on the way back. */
async function begin(issuer: string | null): Promise<void> {
  const settings = pageSettings().smart;
  if (settings === undefined)
    throw new Error('Launch is not set up here: SMART_CLIENT_ID and SMART_ORIGINS are missing.');
  if (issuer === null) throw new Error('Open this page from the record system: it names itself in `iss`.');
  if (!URL.canParse(issuer) || !settings.origins.includes(new URL(issuer).origin))
    throw new Error(
      'The record system that launched this page is not among those this service is set up for.',
    );
  const redirectUri = `${location.origin}${location.pathname}`;
  await smart().authorize({
    clientId: settings.clientId,
    scope,
    redirectUri,
    pkceMode: 'required',
    completeInTarget: true,
  });
}

/** Second visit: the code is exchanged, the chart read, and what the client kept is forgotten. */
async function finish(): Promise<void> {
  const client = await smart().ready();
  forget();
  const { id } = client.patient;
  if (id === null) throw new Error('The record system named no patient.');
  say('Reading the chart.');
  const answers = await Promise.all(chartQueries.map(({ template }) => read(client, template, id)));
  const failed = chartQueries.filter((_query, at) => answers[at] === undefined).map(({ what }) => what);
  const resources = answers.flatMap((answer) => answer ?? []);
  history.replaceState(null, '', location.pathname);
  const title =
    failed.length === 0
      ? 'The chart as the record system gave it.'
      : `The chart as the record system gave it. Not read: ${failed.join(', ')}.`;
  const entry = resources.map((resource) => ({ resource }));
  startPage([], caseOf(title, { resourceType: 'Bundle', type: 'collection', entry }));
}

/** The token was needed only for these reads. */
const forget = (): void => sessionStorage.clear();

async function read(
  client: SmartClient,
  template: string,
  patientId: string,
): Promise<readonly unknown[] | undefined> {
  const query = template.replaceAll('{{context.patientId}}', encodeURIComponent(patientId));
  try {
    const answer = await client.request(query, { pageLimit: mostPages, flat: true });
    const list: readonly unknown[] = Array.isArray(answer) ? answer : [answer];
    return list.filter((each) => isJson(each) && each['resourceType'] !== 'OperationOutcome');
  } catch {
    return undefined;
  }
}

function say(text: string): void {
  byId('view').replaceChildren(make('p', { role: 'status' }, text));
  document.documentElement.dataset['said'] = 'true';
}

start().catch((error: unknown) => {
  forget();
  say(`The launch did not succeed: ${error instanceof Error ? error.message : 'unknown reason'}`);
});

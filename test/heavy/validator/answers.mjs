// Writes the answers to every file of test data, and of a larger collection where one lies beside the checkout.
// Usage: node answers.mjs FOLDER
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { measureDefinitions } from '../../../dist/guidelines/measures.js';
import { createApp } from '../../../dist/http/app.js';
import { assessText } from '../../../dist/cli/assess.js';
import { evaluateInFull } from '../../../dist/index.js';
import { toReferralDocument } from '../../../dist/presenters/referral-document.js';
import { toReferralNote } from '../../../dist/presenters/referral-note.js';

const [target] = process.argv.slice(2);
const root = fileURLToPath(new URL('../../..', import.meta.url));
const collections = [join(root, 'test', 'data'), join(root, '..', 'shared', 'data')].filter((each) =>
  existsSync(each),
);

/** The newest instant written in a text, so that its readings are fresh. */
function newestInstant(text) {
  const found =
    text.match(/\b(?:19|20)\d\d-\d\d-\d\d(?:T\d\d:\d\d:\d\d(?:\.\d+)?(?:Z|[+-]\d\d:\d\d))?/g) ?? [];
  const times = found.map((each) => Date.parse(each)).filter((time) => Number.isFinite(time));
  return new Date(Math.max(0, ...times) + 60_000).toISOString();
}

/** Lines of one resource each, gathered by the person they are about. */
function gathered(place, lines) {
  const byPerson = new Map();
  for (const line of lines.split('\n').filter(Boolean)) {
    const resource = JSON.parse(line);
    const about = resource.subject ?? resource.patient;
    const person =
      resource.resourceType === 'Patient' ? resource.id : about?.reference?.replace(/^.*[/:]/, '');
    byPerson.set(person, [...(byPerson.get(person) ?? []), line]);
  }
  return [...byPerson].map(([person, found]) => ({ name: `${place}-${person}`, text: found.join('\n') }));
}

function inputsBelow(folder) {
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
    (path) => !/definitions|schema/.test(path),
  );
  const text = (path) => readFileSync(join(folder, path), 'utf8');
  const single = paths
    .filter((path) => path.endsWith('.json'))
    .map((path) => ({ name: path, text: text(path) }));
  const perLine = paths
    .filter((path) => path.endsWith('.bundles.ndjson'))
    .flatMap((path) =>
      text(path)
        .split('\n')
        .filter(Boolean)
        .map((line, index) => ({ name: `${path}-${index + 1}`, text: line })),
    );
  const plain = paths.filter((path) => path.endsWith('.ndjson') && !path.endsWith('.bundles.ndjson'));
  const perWoman = [...new Set(plain.map((path) => dirname(path)))].flatMap((place) =>
    gathered(
      place,
      plain
        .filter((path) => dirname(path) === place)
        .map(text)
        .join('\n'),
    ),
  );
  return [...single, ...perLine, ...perWoman];
}

/** The reports of every measure, in the three forms that have groups, over the obstetric and screening bundles. */
async function writeReports() {
  const folder = join(root, 'test', 'data', 'ecqm-test-bundles');
  const bundles = readdirSync(folder).flatMap((name) =>
    readFileSync(join(folder, name), 'utf8').split('\n').filter(Boolean),
  );
  const entry = bundles.flatMap((line) => JSON.parse(line).entry ?? []);
  const body = JSON.stringify({ resourceType: 'Bundle', type: 'collection', entry });
  const first = JSON.stringify({
    resourceType: 'Bundle',
    type: 'collection',
    entry: JSON.parse(bundles[0]).entry,
  });
  const server = createApp({ now: () => Date.UTC(2026, 0, 1), limits: { maxBodyBytes: 2 ** 26 } }).listen(
    0,
    '127.0.0.1',
  );
  await new Promise((resolve) => server.once('listening', resolve));
  for (const { id } of measureDefinitions) {
    for (const reportType of ['population', 'subject-list', 'subject']) {
      const query = `periodStart=2000-01-01&periodEnd=2030-12-31&reportType=${reportType}`;
      const address = `http://127.0.0.1:${server.address().port}/fhir/Measure/${id}/$evaluate-measure?${query}`;
      const headers = { 'Content-Type': 'application/fhir+json' };
      const response = await fetch(address, {
        method: 'POST',
        headers,
        body: reportType === 'subject' ? first : body,
      });
      const text = await response.text();
      if (!response.ok) throw new Error(`${id}, ${reportType}: answered ${response.status} ${text}`);
      writeFileSync(join(target, `${id}.${reportType}.report.json`), text);
      written += 1;
    }
  }
  server.close();
}

/** The referral note of each story as a FHIR document, with and without the woman's own resource. */
function writeReferrals() {
  const stories = JSON.parse(readFileSync(join(root, 'dist', 'web', 'stories.json'), 'utf8'));
  for (const { id, path, request } of stories) {
    const resources = resourcesIn(request.prefetch ?? request);
    const asOf = new URLSearchParams(path.split('?')[1]).get('asOf');
    const evaluation = evaluateInFull(
      { resourceType: 'Bundle', type: 'collection', entry: resources.map((resource) => ({ resource })) },
      { asOf },
    );
    const patient = resources.find(({ resourceType }) => resourceType === 'Patient');
    for (const woman of [patient, undefined]) {
      const note = toReferralNote(evaluation, { name: 'A woman', birthDate: '1995-01-08' });
      const file = `${id}.${woman === undefined ? 'unnamed' : 'named'}.document.json`;
      writeFileSync(join(target, file), JSON.stringify(toReferralDocument(evaluation, note, woman)));
      written += 1;
    }
  }
}

/** Resources of a Bundle, or of the Bundles and resources of a prefetch. */
function resourcesIn(data) {
  if (data.resourceType === 'Bundle') return (data.entry ?? []).map(({ resource }) => resource);
  if (data.resourceType !== undefined) return [data];
  return Object.values(data).flatMap((each) => (each === null ? [] : resourcesIn(each)));
}

const seen = new Set();
let written = 0;
let unreadable = 0;
for (const [index, collection] of collections.entries()) {
  // Every guideline side by side for our own data; the larger collection would take an hour.
  const asked = [['fhir'], ['cards'], ...(index === 0 ? [['fhir', 'all']] : [])];
  const place = join(target, basename(dirname(collection)));
  mkdirSync(place, { recursive: true });
  for (const { name, text } of inputsBelow(collection).filter((input) => !seen.has(input.name))) {
    seen.add(name);
    for (const [format, guideline] of asked) {
      const result = assessText(text, { format, guideline, asOf: newestInstant(text) }, 0);
      if (result.output === '') {
        unreadable += 1;
        continue;
      }
      const file = `${name.replaceAll(/[^\w.-]+/g, '_')}.${format}${guideline === undefined ? '' : `.${guideline}`}.json`;
      writeFileSync(join(place, file), result.output);
      written += 1;
    }
  }
}
await writeReports();
writeReferrals();
console.log(`${written} answers to ${seen.size} inputs; ${unreadable} could not be read as FHIR`);
if (written === 0) process.exitCode = 1;

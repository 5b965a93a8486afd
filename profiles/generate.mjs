// Writes generated/: the conformance resources made from the data of the program (built before by `npm run build`).
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { fingerprint } from '../dist/fingerprint.js';
import { measureDefinitions } from '../dist/guidelines/measures.js';
import { guidelineIds, guidelineOf } from '../dist/guidelines/registry.js';
import { generatedResources } from '../dist/presenters/conformance/every.js';

const folder = new URL('./generated/', import.meta.url);
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder);
const guidelines = guidelineIds.map((id) => guidelineOf(id));
for (const resource of generatedResources({ guidelines, measures: measureDefinitions, fingerprint })) {
  const name = `${resource.resourceType}-${resource.id}.json`;
  writeFileSync(new URL(name, folder), `${JSON.stringify(resource, null, 1)}\n`);
}

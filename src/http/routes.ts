// The routes in one list.
import { assessReply } from './fhir-operations.ts';
import { discoveryReply, feedbackReply, metricsReply, serviceReply } from './cds-services.ts';
import { exampleReply, pageSettingsReply } from './page.ts';
import { productVersion } from './cds-discovery.ts';
import type { Answer } from './call.ts';
import { metadataReply, readReply, searchReply } from './conformance-resources.ts';
import { measureReply } from './measure-operations.ts';
import { applyReply } from './plan-operations.ts';
import { jsonReply } from './reply.ts';
import { validateReply } from './validate-operation.ts';
import { rulesReply } from './rules-page.ts';
import { webFile } from './web-files.ts';
import { checkReply } from './check-data.ts';

export interface Route {
  readonly path: string;
  readonly get?: Answer;
  readonly post?: Answer;
  /** Shown by a browser; `launch`: it talks to record systems too. */
  readonly isPage?: 'page' | 'launch';
}

export const routes: readonly Route[] = [
  { path: '/', get: webFile('page.html'), isPage: 'page' },
  { path: '/page.js', get: webFile('page.js') },
  { path: '/page.css', get: webFile('page.css') },
  { path: '/stories.json', get: webFile('stories.json') },
  { path: '/page-settings.json', get: pageSettingsReply },
  { path: '/check', post: checkReply },
  { path: '/launch', get: webFile('launch.html'), isPage: 'launch' },
  { path: '/launch.js', get: webFile('launch.js') },
  { path: '/fhir-client.js', get: webFile('fhir-client.js') },
  { path: '/example.json', get: exampleReply },
  { path: '/health', get: () => jsonReply({ status: 'ok', version: productVersion }) },
  { path: '/rules', get: rulesReply },
  { path: '/metrics', get: metricsReply },
  { path: '/cds-services', get: discoveryReply },
  { path: '/cds-services/:id', post: serviceReply },
  { path: '/cds-services/:id/feedback', post: feedbackReply },
  { path: '/fhir/$assess-hypertension', post: assessReply },
  { path: '/fhir/PlanDefinition/:id/$apply', post: applyReply },
  { path: '/fhir/Bundle/$validate', post: validateReply },
  { path: '/fhir/Measure/:id/$evaluate-measure', post: measureReply },
  { path: '/fhir/metadata', get: metadataReply },
  // Last: any type, any id.
  { path: '/fhir/:type/:id', get: readReply },
  { path: '/fhir/:type', get: searchReply },
];

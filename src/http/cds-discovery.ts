// What a CDS client reads first: the services with their hooks, what they need, and what they answer.
import { guidelineIds, defaultGuidelineId } from '../guidelines/registry.ts';
import { languages } from '../messages/languages.ts';
import { templateOf, type Dialect } from '../presenters/data-requirements.ts';
import { cdsServices, type CdsService, type ServedHook } from './cds-service-table.ts';

/** Version of this software as published. */
export const productVersion = '0.1.0';

/** Version of the specification each dialect of prefetch belongs to. */
const specification: Readonly<Record<Dialect, string>> = { '2.0': '2.0.1', '3.0': '3.0.0' };

/**
 * The discovery document (CDS Hooks 2.0.1, discovery; rows D-01 to D-16).
 *
 * Given    dialect   of the prefetch templates; the newer one only for clients that ask for it
 * Returns  one entry for each hook of each service; entries of a service share their id (row D-12)
 */
export function discovery(dialect: Dialect = '2.0') {
  return {
    services: cdsServices.flatMap((service) => service.hooks.map((hook) => entryOf(service, hook, dialect))),
  };
}

function entryOf(service: CdsService, hook: ServedHook, dialect: Dialect) {
  const { id, title, description, usageRequirements, queries } = service;
  return {
    hook: hook.name,
    ...(dialect === '3.0' && hook.version !== undefined ? { hookVersion: hook.version } : {}),
    id,
    title,
    description,
    usageRequirements,
    version: specification[dialect],
    prefetch: Object.fromEntries(queries.map((query) => [query.key, templateOf(query, dialect)])),
    extension: {
      'org.pregnancy-htn.service': {
        productVersion,
        fhirVersion: '4.0.1',
        locales: languages.map(({ language }) => language),
        guidelines: [...guidelineIds],
        defaultGuideline: defaultGuidelineId,
        prefetchDialect: dialect,
        prefetch: Object.fromEntries(queries.map((query) => [query.key, query.need])),
      },
    },
  };
}

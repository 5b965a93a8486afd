// What a resource that is set aside would have told, for those a card speaks of.
import { pressureCodes, pressurePanelCodes } from '../terminology/pressure-codes.ts';
import { urineProteinCodes } from '../terminology/urine-codes.ts';
import { listOf, memberOf } from './json.ts';
import type { SetAside } from './read-bundle-types.ts';

const kinds = new Map<unknown, SetAside['about']>([
  ...[...pressureCodes, ...pressurePanelCodes].map(({ code }) => [code, 'blood-pressure'] as const),
  ...urineProteinCodes.map(({ code }) => [code, 'urine'] as const),
]);

/**
 * Was it a pressure or a urine result?
 *
 * Given    resource  as received; nothing of it is believed
 * Returns  by the first known code of an Observation; undefined for everything else
 * Throws   never
 */
export function aboutOf(resource: unknown): SetAside['about'] {
  if (memberOf(resource, 'resourceType') !== 'Observation') return undefined;
  const codings = listOf(memberOf(memberOf(resource, 'code'), 'coding'));
  return codings.map((coding) => kinds.get(memberOf(coding, 'code'))).find((kind) => kind !== undefined);
}

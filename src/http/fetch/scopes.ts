// What a token lets us read, from its SMART scopes, version 1 (`user/Observation.read`) and 2 (`user/Observation.rs`).

/** `part`: only some resources of the type; what is not found is then not known to be absent. */
export type Reach = 'all' | 'part' | 'none';

/** Reading one resource by its id, or searching. */
export type Access = 'read' | 'search';

/**
 * How much of a resource type may be read?
 *
 * Given    scope    space-separated scopes; those that are not about FHIR data are ignored
 * Returns  all, part (only scopes with a query, such as `?category=laboratory`), or none
 * Notes    1. In version 1 `read` covers searching, and `*` everything. In version 2 `r` is reading, `s` searching.
 * Source   SMART App Launch 1.0 and 2.2, scopes; checklist F-06
 */
export function reachOf(scope: string, type: string, access: Access): Reach {
  const reaches = scope.split(/\s+/).map((each) => reachOfOne(each, type, access));
  if (reaches.includes('all')) return 'all';
  return reaches.includes('part') ? 'part' : 'none';
}

function reachOfOne(scope: string, type: string, access: Access): Reach {
  const found = /^(?:patient|user|system)\/(\*|[A-Za-z]+)\.([a-z]+|\*)(\?.+)?$/.exec(scope);
  const [, named, permission = '', query] = found ?? [];
  if (named !== '*' && named !== type) return 'none';
  if (!permits(permission, access)) return 'none';
  return query === undefined ? 'all' : 'part';
}

function permits(permission: string, access: Access): boolean {
  if (permission === '*' || permission === 'read') return true;
  const isVersion2 = /^c?r?u?d?s?$/.test(permission);
  return isVersion2 && permission.includes(access === 'read' ? 'r' : 's');
}

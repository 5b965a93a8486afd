// What axe-core complains about on a page as it stands.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** To be added to a context before its pages open. */
export const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Each rule that is broken, with the first places where it is. */
export async function violations(page) {
  return page.evaluate(async () => {
    const { violations: all } = await globalThis.axe.run(document, { resultTypes: ['violations'] });
    const placesOf = (nodes) => nodes.map(({ target }) => target.join(' ')).slice(0, 3);
    return all.map(({ id, nodes }) => `${id}: ${placesOf(nodes).join(', ')}`);
  });
}

// Expected: the checksum written beside the file, of fhirclient 2.6.3 as published.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

it('fhirclient is the published file', () => {
  const folder = new URL('../../src/web/vendor/', import.meta.url);
  const sum = createHash('sha256')
    .update(readFileSync(new URL('fhir-client.js', folder)))
    .digest('hex');
  expect(readFileSync(new URL('README.md', folder), 'utf8')).toContain(sum);
});

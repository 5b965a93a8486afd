// The page offers cards in each language the service has, without carrying their texts.
import { expect, it } from 'vitest';
import { languages } from '../../src/messages/languages.ts';
import { cardLanguages, curlOf } from '../../src/web/doors.ts';

it('every language of the service can be chosen', () => {
  expect(Object.keys(cardLanguages)).toEqual(languages.map(({ language }) => language));
});

it('the line of curl asks for the language that was chosen', () => {
  const line = curlOf({ path: 'cds-services/x', body: {}, language: 'es' }, 'http://localhost/');
  expect(line).toContain("-H 'Accept-Language: es'");
});

// In which language and for which role a card speaks.
import { describe, expect, it } from 'vitest';
import { cardsOf, client, fullPrefetch, hookRequest, servicePath } from './client.ts';

const ask = (language: string, body: object = hookRequest()) =>
  client().post(servicePath).set('Accept-Language', language).send(body);
const key = 'org.pregnancy-htn.assessment';

describe('language', () => {
  // RFC 9110 section 12.5.4, from memory.
  it.each([
    ['', 'en'],
    ['es', 'es'],
    ['es-MX, en;q=0.5', 'es'],
    ['fr, en;q=0.5, es;q=0.8', 'es'],
    ['fr', 'en'],
    ['es;q=0, en', 'en'],
    ['*', 'en'],
    ['EN-gb, es', 'en'],
    ['; ; q=x', 'en'],
  ])('pain point 19: Accept-Language %s is answered in %s', async (asked, language) => {
    const response = await ask(asked);
    expect(response.headers['content-language']).toBe(language);
    expect(response.headers['vary']).toContain('Accept-Language');
    for (const card of cardsOf(response)) expect(card.extension[key]?.['language']).toBe(language);
  });

  it('Spanish cards say the same, with the same uuids, urgency and numbers, and that they need a review', async () => {
    const [english, spanish] = [cardsOf(await ask('en')), cardsOf(await ask('es'))];
    expect(spanish.map(({ uuid, indicator }) => [uuid, indicator])).toEqual(
      english.map(({ uuid, indicator }) => [uuid, indicator]),
    );
    expect(spanish[0]?.summary).toContain('Actúe hoy: preeclampsia. PA 150/96 mmHg');
    expect(spanish[0]?.extension[key]?.['languageReview']).toBe('needs review by a speaker');
    expect(english[0]?.extension[key]?.['languageReview']).toBeUndefined();
  });
});

describe('role', () => {
  const role = (name: string) => ({ ...hookRequest(), extension: { 'org.pregnancy-htn.role': name } });
  const headings = (detail = '') => [...detail.matchAll(/^\*\*(.+)\*\*$/gm)].map(([, heading]) => heading);

  it('a nurse-midwife reads first what to do, a physician first the figures with their limits', async () => {
    const midwife = cardsOf(await ask('', role('nurse-midwife')))[0];
    const physician = cardsOf(await ask('', role('physician')))[0];
    expect(headings(midwife?.detail).slice(0, 2)).toEqual(['Do now', 'Newest data']);
    expect(headings(physician?.detail).slice(0, 2)).toEqual(['Newest data', 'Last readings']);
    expect(headings(physician?.detail)).toContain('Limits applied');
    expect(headings(midwife?.detail)).not.toContain('Limits applied');
  });

  it('urgency, summary, uuid and steps are the same for both', async () => {
    const [midwife, physician] = [
      cardsOf(await ask('', role('nurse-midwife'))),
      cardsOf(await ask('', role('physician'))),
    ];
    const same = (cards: typeof midwife) => cards.map((card) => [card.uuid, card.indicator, card.summary]);
    expect(same(physician)).toEqual(same(midwife));
    const steps = (detail = '') => detail.split('\n').filter((line) => /^\d+\. /.test(line));
    expect(steps(physician[0]?.detail)).toEqual(steps(midwife[0]?.detail));
    expect(steps(midwife[0]?.detail).length).toBeGreaterThan(2);
  });

  it.each([
    ['physician', { resourceType: 'PractitionerRole', code: [{ coding: [{ code: 'doctor' }] }] }],
    ['physician', { resourceType: 'PractitionerRole', specialty: [{ text: 'Obstetrics' }] }],
    ['nurse-midwife', { resourceType: 'PractitionerRole', code: [{ text: 'Auxiliary nurse midwife' }] }],
    [
      'nurse-midwife',
      { resourceType: 'Practitioner', qualification: [{ code: { coding: [{ code: 'CNM' }] } }] },
    ],
    [undefined, { resourceType: 'Practitioner', id: 'x' }],
    [undefined, 'text'],
  ])('is read as %s from the user that was sent', async (expected, user) => {
    const response = await ask('', hookRequest({ ...fullPrefetch, user }));
    expect(cardsOf(response)[0]?.extension[key]?.['role']).toBe(expected);
  });
});

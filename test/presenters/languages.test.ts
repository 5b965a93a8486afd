// Every language holds to the same form, over all check cases.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import { guidelineOf } from '../../src/guidelines/registry.ts';
import { english } from '../../src/messages/en.ts';
import { spanish } from '../../src/messages/es.ts';
import { chosenLanguage, languages } from '../../src/messages/languages.ts';
import { fill, isTranslated, translated } from '../../src/messages/say.ts';
import { toCards } from '../../src/presenters/cds-cards.ts';
import { toFollowUpCards } from '../../src/presenters/follow-up-cards.ts';
import { caseAsOf, caseBundle } from '../support/case-bundle.ts';
import { readCaseFile } from '../support/case-schema.ts';

const folder = join(import.meta.dirname, '..', 'cases');
const names = [
  'check-cases.json',
  ...readdirSync(join(folder, 'thresholds')).map((name) => join('thresholds', name)),
];
const evaluations = names
  .flatMap((name) => readCaseFile(join(folder, name)).rows)
  .map((row) => evaluate(caseBundle(row.given), { asOf: row.asOf ?? caseAsOf(row.given) }));

describe('languages', () => {
  it.each(languages.map((messages) => [messages.language, messages] as const))(
    'K-02, K-03: %s: every summary of every check case has fewer than 140 characters on one line, no detail has HTML',
    (_language, messages) => {
      const cards = evaluations.flatMap((evaluation) => [
        ...toCards(evaluation, { messages }).cards,
        ...toCards(evaluation, { messages, role: 'physician' }).cards,
        ...toFollowUpCards(evaluation, { messages }).cards,
      ]);
      expect(cards.length).toBeGreaterThan(100);
      for (const { summary, detail } of cards) {
        expect(Math.max(summary.length, Array.from(summary).length)).toBeLessThan(140);
        expect(summary).not.toMatch(/[\r\n]|\{\w+\}|\*\*/);
        expect(detail).not.toMatch(/<[a-z/!]|!\[|\{\w+\}/i);
      }
    },
  );

  it('have the same places in every phrase as English', () => {
    const places = (text: string) => [...text.matchAll(/\{\w+\}/g)].map(([place]) => place).sort();
    for (const { phrases, months, caution } of languages) {
      expect(Object.entries(phrases).map(([name, text]) => [name, places(text)])).toEqual(
        Object.entries(english.phrases).map(([name, text]) => [name, places(text)]),
      );
      expect([months.length, caution.length]).toEqual([12, english.caution.length]);
    }
  });

  it('Spanish knows every step of the first level', () => {
    const rules = guidelineOf('frontline')?.actionRules ?? [];
    const said = rules.flatMap(({ sentence, clock }) => [
      sentence.replace('{time}', '13:10, which is 4 hours after the reading at 09:10'),
      ...(clock === undefined
        ? []
        : ['13:10', '13:10 on 2025-03-09'].map((time) => clock.whenOver.replace('{time}', time))),
    ]);
    expect(said.filter((sentence) => !isTranslated(spanish, sentence))).toEqual([]);
  });

  it('a translation carries the numbers of the sentence and holds none of its own', () => {
    expect(
      translated(spanish, 'Pressure at least every 24 hours; blood 7 times a week; a scan every 9 weeks.'),
    ).toBe('Presión al menos cada 24 horas; sangre 7 veces por semana; ecografía cada 9 semanas.');
    for (const [sentence, translation] of Object.entries(spanish.sentences)) {
      const asked = [...translation.matchAll(/#(\d+)/g)].map(([, at]) => Number(at));
      expect(asked.sort((a, b) => a - b)).toEqual(
        [...sentence.matchAll(/#/g)].map((_match, index) => index + 1),
      );
      expect(translation.replace(/#\d+/g, '')).not.toMatch(/\d/);
    }
  });

  it('a sentence that changed in the data is shown in English', () => {
    const unknown = 'Give her 5 of something new.';
    expect(translated(spanish, unknown)).toBe(unknown);
    expect(translated(spanish, 'Call the receiving hospital. Give her 5 of something new.')).toContain(
      'Call',
    );
    expect(translated(spanish, 'constructor')).toBe('constructor');
    expect(fill('{a} and {b}', { a: 1 })).toBe('1 and {b}');
  });
});

describe('a site with its own language', () => {
  it.each([
    [undefined, 'es', 'es'],
    ['fr', 'es', 'es'],
    ['en', 'es', 'en'],
    ['*', 'es', 'es'],
    [undefined, undefined, 'en'],
    [undefined, 'fr', 'en'],
  ])('asked for %s at a site of %s it answers in %s', (asked, site, language) => {
    expect(chosenLanguage(asked, site).language).toBe(language);
  });
});

// Every number in advice comes from a cited figure.
import { describe, expect, it } from 'vitest';
import { acog222 } from '../../src/guidelines/citations.ts';
import type { Figure, Guideline } from '../../src/guidelines/guideline.ts';
import { guidelineIds } from '../../src/guidelines/registry.ts';
import { figure, figureText, say } from '../../src/guidelines/sentences.ts';
import { guideline } from '../support/assess.ts';

const source = acog222('an example', 'read');

describe('a figure in words', () => {
  it.each([
    [figure('a', 30, 'min', source, 60), undefined, '30 to 60 minutes'],
    [figure('a', 1, 'h', source), undefined, '1 hour'],
    [figure('a', 80, 'mL/h', source), undefined, '80 mL per hour'],
    [figure('a', 20, '%', source), undefined, '20%'],
    [figure('a', 135, 'mm[Hg]', source), 'bare', '135'],
    [figure('a', 259, 'd', source), 'weeks', '37+0'],
    [figure('a', 258, 'd', source), 'weeks', '36+6'],
  ])('%o as %s: %s', (one, form, words) => {
    expect(figureText(one, form)).toBe(words);
  });
});

describe('a sentence', () => {
  it('keeps {time} for the clock and gives back its figures', () => {
    const dose = figure('dose', 5, 'g', source);
    expect(say('{dose} at {time}', { dose })).toEqual({ sentence: '5 g at {time}', figures: [dose] });
  });

  it('is refused when it quotes what it does not have, or has what it does not quote', () => {
    expect(() => say('{dose}')).toThrow('dose');
    expect(() => say('no number', { dose: figure('dose', 5, 'g', source) })).toThrow('dose');
  });
});

/** Sentences with figures, of every kind. */
function quoting(of: Guideline) {
  return [
    ...of.actionRules.map(({ id, sentence: text, figures = [], citation }) => ({
      id,
      text,
      figures,
      citation,
    })),
    ...(of.medicineRules ?? []).map(({ id, sentence: text, figures = [], citation }) => ({
      id,
      text,
      figures,
      citation,
    })),
    ...(of.treatmentRules ?? []).map(({ id, dose, figures, citation }) => ({
      id,
      text: dose,
      figures,
      citation,
    })),
    ...(of.preventionRules ?? []).map(({ id, dose, window, figures, citation }) => ({
      id,
      text: `${dose} ${window?.sentence ?? ''}`,
      figures,
      citation,
    })),
  ];
}

/** The sentence with its figures taken out. */
const withoutFigures = (text: string, figures: readonly Figure[]): string =>
  figures
    .flatMap((one) => [figureText(one), figureText(one, 'bare'), figureText(one, 'weeks')])
    .sort((a, b) => b.length - a.length)
    .reduce((rest, words) => rest.replaceAll(words, ''), text);

describe.each(guidelineIds)('sentences of %s', (id) => {
  it('take every number from a cited figure', () => {
    const typed = quoting(guideline(id)).filter(({ text, figures }) =>
      /\d/.test(withoutFigures(text, figures)),
    );
    expect(typed.map((one) => `${one.id}: ${one.text}`)).toEqual([]);
  });

  it('are marked from memory as soon as one figure is', () => {
    const unmarked = quoting(guideline(id)).filter(
      ({ figures, citation }) =>
        citation.known === 'read' && figures.some((one) => one.citation.known !== 'read'),
    );
    expect(unmarked.map((one) => one.id)).toEqual([]);
  });

  it('have ids of their own', () => {
    const { actionRules, medicineRules = [], treatmentRules = [] } = guideline(id);
    for (const rules of [actionRules, medicineRules, treatmentRules]) {
      const ids = rules.map((rule) => rule.id);
      expect(ids.filter((one, index) => ids.indexOf(one) !== index)).toEqual([]);
    }
  });

  it('quote figures whose ids mean one number each', () => {
    const all = quoting(guideline(id)).flatMap(({ figures }) => figures);
    const seen = new Map<string, string>();
    const clashing = all.filter((one) => {
      const text = `${figureText(one)} ${one.citation.publication}`;
      const known = seen.get(one.id) ?? text;
      seen.set(one.id, known);
      return known !== text;
    });
    expect(clashing.map((one) => one.id)).toEqual([]);
  });
});

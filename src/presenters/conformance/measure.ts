// The quality measures as Measure resources.
import type { Expression, Measure, MeasureGroupPopulation, MeasureGroupStratifier } from 'fhir/r4.js';
import type { MeasureDefinition, Population, StratifierId } from '../../guidelines/measures.ts';
import { limitWords } from '../../findings/limit-words.ts';
import { idWords } from '../../id-words.ts';
import { sentenceCase } from '../words.ts';
import { citedArtifacts, header } from './header.ts';

const terminologyBase = 'http://terminology.hl7.org/CodeSystem';

const populationDisplays = {
  'initial-population': 'Initial Population',
  denominator: 'Denominator',
  'denominator-exclusion': 'Denominator Exclusion',
  'denominator-exception': 'Denominator Exception',
  numerator: 'Numerator',
} as const satisfies Readonly<Record<Population['id'], string>>;

const stratifierWords = {
  'guideline-class': 'Leading class under the guideline asked for',
  trimester: 'Trimester, or after birth',
  site: 'Place of care as sent',
} as const satisfies Readonly<Record<StratifierId, string>>;

/** A measure as FHIR; its criteria name what $evaluate-measure of this service decides. */
export function measureResource(definition: MeasureDefinition): Measure {
  const { id, title, sentence, scoring, improvementNotation } = definition;
  return {
    ...header('Measure', { id, title, description: description(definition) }),
    subjectCodeableConcept: {
      coding: [{ system: 'http://hl7.org/fhir/resource-types', code: 'Patient', display: 'Patient' }],
    },
    relatedArtifact: citedArtifacts([
      definition.citation,
      ...definition.limits.map(({ citation }) => citation),
    ]),
    scoring: coded('measure-scoring', scoring, sentenceCase(scoring)),
    type: [coded('measure-type', 'process', 'Process')],
    rationale: sentence,
    improvementNotation: coded(
      'measure-improvement-notation',
      improvementNotation,
      improvementNotation === 'increase'
        ? 'Increased score indicates improvement'
        : 'Decreased score indicates improvement',
    ),
    group: [
      {
        population: definition.populations.map(toPopulation),
        stratifier: definition.stratifiers.map(toStratifier),
      },
    ],
  };
}

function description({ sentence, basis, limits }: MeasureDefinition): string {
  const counted = basis === 'pregnancy' ? 'Counts pregnancies: one woman, one pregnancy.' : 'Counts values.';
  const lines = limits.map((limit) => `- ${idWords(limit.id)}: ${limitWords(limit)}`);
  return [sentence, counted, ...(lines.length === 0 ? [] : ['', ...lines])].join('\n');
}

function coded(system: string, code: string, display: string) {
  return { coding: [{ system: `${terminologyBase}/${system}`, code, display }] };
}

/** `%counted`: names of the criteria a pregnancy or value satisfies. `%stratum`: its strata by name. */
function criteria(expression: string, words: string): Expression {
  return { description: words, language: 'text/fhirpath', expression };
}

function toPopulation({ id, criterion, words }: Population): MeasureGroupPopulation {
  return {
    code: coded('measure-population', id, populationDisplays[id]),
    description: words,
    criteria: criteria(`'${criterion}' in %counted`, words),
  };
}

function toStratifier(id: StratifierId): MeasureGroupStratifier {
  const words = stratifierWords[id];
  return {
    code: { text: id },
    description: words,
    criteria: criteria(`%stratum.where(name = '${id}').value`, words),
  };
}

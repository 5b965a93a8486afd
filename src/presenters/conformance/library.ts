// The data a guideline needs and the questions it asks, as Library.
import type { Coding, DataRequirement, Library } from 'fhir/r4.js';
import type { Guideline } from '../../guidelines/guideline.ts';
import { chartQueries, type ChartQuery } from '../data-requirements.ts';
import { citationsIn } from '../rule-sources.ts';
import { canonical, citedArtifacts, header } from './header.ts';

/**
 * The logic library of a guideline.
 *
 * Given    guideline   whose questions are listed
 *          mark        fingerprint of its data, hexadecimal
 * Returns  a Library: its data requirements are those of the prefetch templates (checklist F-D06).
 */
export function library(guideline: Guideline, mark: string): Library {
  const { id, title, version } = guideline;
  return {
    ...header('Library', {
      id,
      title: `Data and questions: ${title}`,
      version,
      status: guideline.status === 'active' ? 'active' : 'retired',
      description: questionsText(guideline),
    }),
    identifier: [{ system: canonical('NamingSystem', 'rule-set-fingerprint'), value: mark }],
    type: {
      coding: [
        {
          system: 'http://terminology.hl7.org/CodeSystem/library-type',
          code: 'logic-library',
          display: 'Logic Library',
        },
      ],
    },
    relatedArtifact: citedArtifacts(citationsIn(guideline.questions)),
    dataRequirement: chartQueries.map(toRequirement),
  };
}

/** The questions as markdown: the ids that conditions of the PlanDefinition name. */
function questionsText({ questions }: Guideline): string {
  const lines = questions.map(({ id, asks }) => `- \`${id}\`: ${asks}`);
  return [
    'Conditions are FHIRPath over one variable, `%met`: the ids of these questions, and of rules already decided (`class:…`), that are answered met. What cannot be told is not in it.',
    '',
    ...lines,
  ].join('\n');
}

/** Types that templates search for; an Observation where none begins so. */
const searchedTypes = [
  'Patient',
  'Condition',
  'MedicationRequest',
  'MedicationStatement',
  'MedicationAdministration',
  'ServiceRequest',
  'Encounter',
  'Procedure',
] as const;

/** A prefetch template as a data requirement: resource type, and the codes searched for. */
function toRequirement({ template }: ChartQuery): DataRequirement {
  const type = searchedTypes.find((each) => template.startsWith(each)) ?? 'Observation';
  const codes = /[?&]code=([^&]+)/.exec(template)?.[1];
  if (codes === undefined) return { type };
  return { type, codeFilter: [{ path: 'code', code: codes.split(',').map(toCoding) }] };
}

function toCoding(token: string): Coding {
  const bar = token.lastIndexOf('|');
  return { system: token.slice(0, bar), code: token.slice(bar + 1) };
}

// The populations and scores of our measures against those of fqm-execution, a general-purpose measure engine.
// Equivalent logic, written by hand as ELM: a criterion holds for a woman who has an Observation of its name. What is
// compared is the arithmetic: nesting, exclusion, exception, score, strata, and what a woman without data counts as.
import { Buffer } from 'node:buffer';
import { Calculator } from 'fqm-execution';
import { addCounts, membershipOf, noCounts, scoreOf } from '../../../dist/measures/membership.js';

const system = 'https://pregnancy-htn.example/criteria';
const library = 'https://pregnancy-htn.example/fhir/Library/criteria';
const populations = {
  'initial-population': 'Initial Population',
  denominator: 'Denominator',
  'denominator-exclusion': 'Denominator Exclusion',
  'denominator-exception': 'Denominator Exception',
  numerator: 'Numerator',
};
const sites = ['north', 'south', 'unknown'];
const women = Number(process.env.WOMEN ?? 400);

/** The same numbers every time (linear congruence, Numerical Recipes). */
let state = 20_261_125;
const random = () => (state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0) / 4_294_967_296;

const woman = (at) => ({
  id: `w${at}`,
  initial: random() < 0.9,
  denominator: random() < 0.7,
  exclusion: random() < 0.2,
  exception: random() < 0.3,
  numerator: random() < 0.5,
  site: sites[Math.floor(random() * sites.length)],
});

const flagsOf = ({ initial, denominator, exclusion, exception, numerator, site }) => [
  ...(initial ? ['initial-population'] : []),
  ...(denominator ? ['denominator'] : []),
  ...(exclusion ? ['denominator-exclusion'] : []),
  ...(exception ? ['denominator-exception'] : []),
  ...(numerator ? ['numerator'] : []),
  `site-${site}`,
];

const patientBundle = (each) => ({
  resourceType: 'Bundle',
  type: 'collection',
  entry: [
    {
      fullUrl: `urn:uuid:${each.id}`,
      resource: { resourceType: 'Patient', id: each.id, birthDate: '1995-01-01' },
    },
    ...flagsOf(each).map((code, at) => ({
      fullUrl: `urn:uuid:${each.id}-${at}`,
      resource: {
        resourceType: 'Observation',
        id: `${each.id}-${at}`,
        status: 'final',
        code: { coding: [{ system, code }] },
        subject: { reference: `Patient/${each.id}` },
        effectiveDateTime: '2026-06-01T10:00:00Z',
      },
    })),
  ],
});

const fhirType = '{http://hl7.org/fhir}Observation';
const exists = (code) => ({
  type: 'Exists',
  operand: {
    type: 'Retrieve',
    dataType: fhirType,
    templateId: 'http://hl7.org/fhir/StructureDefinition/Observation',
    codeProperty: 'code',
    codeComparator: '~',
    codes: { type: 'ToList', operand: { type: 'Code', code, system: { name: 'Criteria' } } },
  },
});
const define = (name, expression) => ({ name, context: 'Patient', accessLevel: 'Public', expression });

const elm = {
  library: {
    identifier: { id: 'Criteria', version: '1.0.0' },
    schemaIdentifier: { id: 'urn:hl7-org:elm', version: 'r1' },
    usings: {
      def: [
        { localIdentifier: 'System', uri: 'urn:hl7-org:elm-types:r1' },
        { localIdentifier: 'FHIR', uri: 'http://hl7.org/fhir', version: '4.0.1' },
      ],
    },
    parameters: {
      def: [
        {
          name: 'Measurement Period',
          accessLevel: 'Public',
          parameterTypeSpecifier: {
            type: 'IntervalTypeSpecifier',
            pointType: { name: '{urn:hl7-org:elm-types:r1}DateTime', type: 'NamedTypeSpecifier' },
          },
        },
      ],
    },
    codeSystems: { def: [{ name: 'Criteria', id: system, accessLevel: 'Public' }] },
    statements: {
      def: [
        define('Patient', {
          type: 'SingletonFrom',
          operand: {
            type: 'Retrieve',
            dataType: '{http://hl7.org/fhir}Patient',
            templateId: 'http://hl7.org/fhir/StructureDefinition/Patient',
          },
        }),
        ...Object.entries(populations).map(([code, name]) => define(name, exists(code))),
        ...sites.map((site) => define(`Site ${site}`, exists(`site-${site}`))),
      ],
    },
  },
};

const criteria = (expression) => ({ language: 'text/cql-identifier', expression });
const measure = {
  resourceType: 'Measure',
  id: 'compared',
  url: 'https://pregnancy-htn.example/fhir/Measure/compared',
  version: '1.0.0',
  status: 'active',
  library: [library],
  scoring: {
    coding: [{ system: 'http://terminology.hl7.org/CodeSystem/measure-scoring', code: 'proportion' }],
  },
  improvementNotation: {
    coding: [
      { system: 'http://terminology.hl7.org/CodeSystem/measure-improvement-notation', code: 'increase' },
    ],
  },
  group: [
    {
      population: Object.entries(populations).map(([code, name]) => ({
        code: { coding: [{ system: 'http://terminology.hl7.org/CodeSystem/measure-population', code }] },
        criteria: criteria(name),
      })),
      stratifier: sites.map((site) => ({ code: { text: site }, criteria: criteria(`Site ${site}`) })),
    },
  ],
};

const measureBundle = {
  resourceType: 'Bundle',
  type: 'collection',
  entry: [
    { resource: measure },
    {
      resource: {
        resourceType: 'Library',
        id: 'criteria',
        url: library,
        version: '1.0.0',
        status: 'active',
        type: { coding: [{ code: 'logic-library' }] },
        content: [
          { contentType: 'application/elm+json', data: Buffer.from(JSON.stringify(elm)).toString('base64') },
        ],
      },
    },
  ],
};

const countsOf = (list) => list.map((each) => membershipOf(each)).reduce(addCounts, noCounts);
const codeOf = (population) => population.code?.coding?.[0]?.code;

function differences(name, theirs, score, ours) {
  const wrong = (theirs ?? []).filter((population) => population.count !== ours[codeOf(population)]);
  const lines = wrong.map(
    (population) =>
      `${name} ${codeOf(population)}: theirs ${population.count}, ours ${ours[codeOf(population)]}`,
  );
  if ((theirs ?? []).length !== Object.keys(populations).length)
    lines.push(`${name}: ${(theirs ?? []).length} populations`);
  // An empty denominator: theirs is 0, ours is no score (F-Q02), the one difference we mean.
  const own = scoreOf(ours);
  if (Math.abs((own ?? 0) - (score ?? 0)) > 1e-12) lines.push(`${name} score: theirs ${score}, ours ${own}`);
  return lines;
}

const all = Array.from({ length: women }, (_, at) => woman(at));
const { results } = await Calculator.calculateMeasureReports(measureBundle, all.map(patientBundle), {
  measurementPeriodStart: '2026-01-01',
  measurementPeriodEnd: '2026-12-31',
  reportType: 'summary',
  calculateHTML: false,
  calculateSDEs: false,
});
const report = Array.isArray(results) ? results[0] : results;
const group = report.group[0];
let compared = 0;
const found = [
  ...differences('all', group.population, group.measureScore?.value, countsOf(all)),
  ...group.stratifier.flatMap(({ code, stratum }) => {
    const site = code?.[0]?.text;
    const own = countsOf(all.filter((each) => each.site === site));
    compared += (stratum ?? []).length;
    return (stratum ?? []).flatMap((each) =>
      differences(`site ${site}`, each.population, each.measureScore?.value, own),
    );
  }),
];
console.log(
  `${women} women, ${group.population.map((each) => `${codeOf(each)} ${each.count}`).join(', ')}, score ${group.measureScore?.value}; ${compared} strata`,
);
if (compared !== sites.length) found.push(`${compared} strata instead of ${sites.length}`);
for (const line of found) console.log(line);
console.log(found.length === 0 ? 'Our measures and fqm-execution agree.' : `${found.length} differences`);
process.exitCode = found.length === 0 ? 0 : 1;

// One evaluateInFull() on a 60-observation bundle against JSON.parse of the same text, side by side.
// Interleaved rounds; the result is the median of the per-round ratios. Absolute times are for orientation only.
import { evaluateInFull as evaluate } from '../../dist/index.js';

const rounds = 15;
const callsPerRound = 200;
const asOf = '2025-06-01T12:00:00Z';

const loinc = (code, display) => ({ coding: [{ system: 'http://loinc.org', code, display }], text: display });
const quantity = (value, unit) => ({ value, unit, system: 'http://unitsofmeasure.org', code: unit });

/** An observation as a server sends it: meta, identifier, category, performer, so that the text has a usual weight. */
function observation(id, code, at, fields) {
  return {
    resourceType: 'Observation',
    id,
    meta: {
      versionId: '1',
      lastUpdated: at,
      profile: ['http://hl7.org/fhir/StructureDefinition/vitalsigns'],
      tag: [{ system: 'http://example.org/tags', code: 'antenatal', display: 'Antenatal clinic' }],
    },
    identifier: [{ use: 'official', system: 'http://example.org/observations', value: `antenatal-${id}` }],
    status: 'final',
    category: [
      {
        coding: [
          {
            system: 'http://terminology.hl7.org/CodeSystem/observation-category',
            code: 'vital-signs',
            display: 'Vital Signs',
          },
        ],
      },
    ],
    code,
    subject: { reference: 'Patient/p', display: 'Ada Example' },
    encounter: { reference: `Encounter/visit-${id}` },
    effectiveDateTime: at,
    issued: at,
    performer: [{ reference: 'Practitioner/midwife-17', display: 'Midwife on duty' }],
    ...fields,
  };
}

/** 25 panels, 10 strips and 25 results over ten visits a week apart: what a clinic holds late in pregnancy. */
function makeBundle() {
  const start = Date.parse('2025-03-10T09:00:00Z');
  const at = (visit, minutes) => new Date(start + visit * 7 * 86_400_000 + minutes * 60_000).toISOString();
  const panels = Array.from({ length: 25 }, (_, index) =>
    observation(
      `bp${index}`,
      loinc('85354-9', 'Blood pressure panel with all children optional'),
      at(index % 10, index),
      {
        component: [
          {
            code: loinc('8480-6', 'Systolic blood pressure'),
            valueQuantity: quantity(112 + ((index * 7) % 38), 'mm[Hg]'),
          },
          {
            code: loinc('8462-4', 'Diastolic blood pressure'),
            valueQuantity: quantity(68 + ((index * 5) % 28), 'mm[Hg]'),
          },
        ],
      },
    ),
  );
  const strips = Array.from({ length: 10 }, (_, index) =>
    observation(
      `strip${index}`,
      loinc('20454-5', 'Protein [Presence] in Urine by Test strip'),
      at(index, 30),
      {
        valueCodeableConcept: loinc(index > 7 ? 'LA11841-6' : 'LA6577-6', index > 7 ? '1+' : 'Negative'),
      },
    ),
  );
  const tests = [
    ['777-3', 'Platelets [#/volume] in Blood by Automated count', 210, '10*3/uL'],
    ['1920-8', 'Aspartate aminotransferase [Enzymatic activity/volume] in Serum or Plasma', 24, 'U/L'],
    ['1742-6', 'Alanine aminotransferase [Enzymatic activity/volume] in Serum or Plasma', 19, 'U/L'],
    ['2160-0', 'Creatinine [Mass/volume] in Serum or Plasma', 0.7, 'mg/dL'],
    ['2890-2', 'Protein/Creatinine [Mass Ratio] in Urine', 150, 'mg/g'],
  ];
  const results = Array.from({ length: 25 }, (_, index) => {
    const [code, display, value, unit] = tests[index % tests.length];
    return observation(`lab${index}`, loinc(code, display), at(index % 10, 45), {
      valueQuantity: quantity(value, unit),
    });
  });
  const pregnant = {
    resourceType: 'Condition',
    id: 'pregnancy',
    clinicalStatus: {
      coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-clinical', code: 'active' }],
    },
    code: { coding: [{ system: 'http://snomed.info/sct', code: '77386006', display: 'Pregnant' }] },
    subject: { reference: 'Patient/p' },
    onsetDateTime: '2024-10-01',
  };
  const patient = { resourceType: 'Patient', id: 'p', gender: 'female', birthDate: '1996-04-02' };
  const dueDate = observation('due', loinc('11778-8', 'Delivery date Estimated'), at(0, 0), {
    valueDateTime: '2025-07-08',
  });
  const resources = [patient, pregnant, dueDate, ...panels, ...strips, ...results];
  const entry = resources.map((resource) => ({
    fullUrl: `https://ehr.example.org/fhir/${resource.resourceType}/${resource.id}`,
    resource,
    search: { mode: 'match' },
  }));
  return { resourceType: 'Bundle', type: 'searchset', total: entry.length, entry };
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

function microseconds(call) {
  const before = performance.now();
  for (let index = 0; index < callsPerRound; index += 1) call();
  return ((performance.now() - before) * 1000) / callsPerRound;
}

const text = JSON.stringify(makeBundle());
const parsed = JSON.parse(text);
const parse = () => JSON.parse(text);
const assess = () => evaluate(parsed, { asOf });

for (let warming = 0; warming < 3; warming += 1) {
  microseconds(parse);
  microseconds(assess);
}
const measured = Array.from({ length: rounds }, () => ({
  parse: microseconds(parse),
  assess: microseconds(assess),
}));

const { assessment } = assess();
const ratio = median(measured.map((round) => round.assess / round.parse));
console.log(
  `bundle: 60 observations, ${(text.length / 1000).toFixed(1)} kB; answer: ${assessment.classification.join(', ')}, ${assessment.urgency}`,
);
console.log(
  `JSON.parse  ${median(measured.map((round) => round.parse)).toFixed(0)} us (median of ${rounds} rounds)`,
);
console.log(
  `evaluate()  ${median(measured.map((round) => round.assess)).toFixed(0)} us (median of ${rounds} rounds)`,
);
console.log(`evaluate() / JSON.parse = ${ratio.toFixed(2)} (median of per-round ratios; aim: 0.20 or less)`);

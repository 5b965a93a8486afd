// A synthetic Bulk Data file of Observations: fixed random state, women in random order, 8 % of lines relevant.
// All women are invented. node generate.mjs LINES FILE
import { closeSync, openSync, writeSync } from 'node:fs';

/** mulberry32. */
export function randomOf(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const noise = [
  ['29463-7', 'Body weight', 'kg', 40, 100],
  ['8302-2', 'Body height', 'cm', 140, 190],
  ['8310-5', 'Body temperature', 'Cel', 36, 39],
  ['8302-2', 'Body height', 'cm', 140, 190],
  ['2345-7', 'Glucose [Mass/volume] in Serum or Plasma', 'mg/dL', 60, 180],
  ['9843-4', 'Head Occipital-frontal circumference', 'cm', 30, 60],
  ['2951-2', 'Sodium [Moles/volume] in Serum or Plasma', 'mmol/L', 130, 146],
  ['2075-0', 'Chloride [Moles/volume] in Serum or Plasma', 'mmol/L', 95, 108],
  ['4548-4', 'Hemoglobin A1c/Hemoglobin.total in Blood', '%', 4, 10],
];
const laboratory = [
  ['777-3', 'Platelets [#/volume] in Blood by Automated count', '10*3/uL', 60, 350],
  ['1742-6', 'Alanine aminotransferase [Enzymatic activity/volume] in Serum or Plasma', 'U/L', 10, 120],
  ['2160-0', 'Creatinine [Mass/volume] in Serum or Plasma', 'mg/dL', 0.4, 1.6],
];
const loinc = 'http://loinc.org';
const ucum = 'http://unitsofmeasure.org';
const quantity = (value, unit) => ({ value, unit, system: ucum, code: unit });
const concept = (code, display) => ({ coding: [{ system: loinc, code, display }], text: display });
const instant = (ms) => new Date(ms).toISOString().replace('Z', '+00:00');

function observation(random, id, woman, ms, kind) {
  const [code, display, unit, low, high] =
    kind === 'noise'
      ? noise[Math.floor(random() * noise.length)]
      : laboratory[Math.floor(random() * laboratory.length)];
  const base = {
    resourceType: 'Observation',
    id,
    meta: {
      versionId: '1',
      lastUpdated: instant(ms + 6e5),
      profile: ['http://hl7.org/fhir/StructureDefinition/vitalsigns'],
    },
    identifier: [{ system: 'https://ehr.example.org/obs', value: id }],
    status: 'final',
    category: [
      {
        coding: [
          {
            system: 'http://terminology.hl7.org/CodeSystem/observation-category',
            code: kind === 'laboratory' ? 'laboratory' : 'vital-signs',
            display: 'Vital Signs',
          },
        ],
      },
    ],
    code:
      kind === 'pressure'
        ? concept('85354-9', 'Blood pressure panel with all children optional')
        : concept(code, display),
    subject: { reference: `Patient/${woman}` },
    encounter: { reference: `Encounter/e-${id}` },
    effectiveDateTime: instant(ms),
    issued: instant(ms + 6e5),
    performer: [{ reference: 'Practitioner/pr-17', display: 'Example Midwife' }],
  };
  if (kind === 'due')
    return { ...base, code: concept('11778-8', 'Delivery date Estimated'), valueDateTime: '2025-10-01' };
  if (kind === 'strip')
    return {
      ...base,
      code: concept('20454-5', 'Protein [Presence] in Urine by Test strip'),
      valueCodeableConcept: { text: ['Negative', 'Trace', '1+', '2+'][Math.floor(random() * 4)] },
    };
  if (kind === 'pressure')
    return {
      ...base,
      component: [
        {
          code: concept('8480-6', 'Systolic blood pressure'),
          valueQuantity: quantity(100 + Math.floor(random() * 75), 'mm[Hg]'),
        },
        {
          code: concept('8462-4', 'Diastolic blood pressure'),
          valueQuantity: quantity(60 + Math.floor(random() * 55), 'mm[Hg]'),
        },
      ],
    };
  return {
    ...base,
    valueQuantity: quantity(Math.round((low + random() * (high - low)) * 10) / 10, unit),
    referenceRange: [{ low: quantity(low, unit), high: quantity(high, unit), text: `${low} - ${high}` }],
  };
}

/** An id as most servers give them: a UUID (version 4). */
function uuidOf(random) {
  const hex = (digits) =>
    Math.floor(random() * 16 ** digits)
      .toString(16)
      .padStart(digits, '0');
  return `${hex(8)}-${hex(4)}-4${hex(3)}-a${hex(3)}-${hex(6)}${hex(6)}`;
}

const kinds = [
  ['pressure', 0.04],
  ['strip', 0.008],
  ['laboratory', 0.007],
];

/** Writes the file; a woman has about 40 lines, 3.2 of them relevant. */
export function generate(lines, file) {
  const random = randomOf(7);
  const women = Math.max(1, Math.round(lines / 40));
  const start = Date.parse('2025-01-06T08:00:00Z');
  const out = openSync(file, 'w');
  let held = [];
  for (let at = 0; at < lines; at += 1) {
    const dice = random();
    let kind = 'noise';
    let sum = 0;
    for (const [name, share] of kinds) {
      if (dice >= sum && dice < sum + share) kind = name;
      sum += share;
    }
    if (at % 40 === 0) kind = 'due';
    const woman = kind === 'due' ? at / 40 : Math.floor(random() * women);
    const ms = start + Math.floor(random() * 240) * 864e5 + Math.floor(random() * 20) * 36e5;
    held.push(JSON.stringify(observation(random, uuidOf(random), `p${woman}`, ms, kind)), '\n');
    if (held.length > 20_000) {
      writeSync(out, held.join(''));
      held = [];
    }
  }
  writeSync(out, held.join(''));
  closeSync(out);
}

if (process.argv[1]?.endsWith('generate.mjs')) generate(Number(process.argv[2]), process.argv[3]);

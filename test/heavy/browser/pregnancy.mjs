// Invented pregnancies for the browser checks: one with everything on it, one with very many readings.

const loinc = (code) => ({ coding: [{ system: 'http://loinc.org', code }] });
const subject = { reference: 'Patient/wren' };
const mmHg = { unit: 'mmHg', system: 'http://unitsofmeasure.org', code: 'mm[Hg]' };
const day = 86_400_000;
const start = Date.parse('2025-03-03T09:00:00Z');
const time = (days, minutes = 0) =>
  new Date(start + days * day + minutes * 60_000).toISOString().replace('.000Z', 'Z');

function pressure(id, at, systolic, diastolic, unit = mmHg) {
  return {
    resourceType: 'Observation',
    id,
    status: 'final',
    code: loinc('85354-9'),
    subject,
    effectiveDateTime: at,
    component: [
      { code: loinc('8480-6'), valueQuantity: { value: systolic, ...unit } },
      { code: loinc('8462-4'), valueQuantity: { value: diastolic, ...unit } },
    ],
  };
}

const strip = (id, at, text) => ({
  resourceType: 'Observation',
  id,
  status: 'final',
  code: loinc('20454-5'),
  subject,
  effectiveDateTime: at,
  valueCodeableConcept: { text },
});

const platelets = (id, at, value) => ({
  resourceType: 'Observation',
  id,
  status: 'final',
  code: loinc('777-3'),
  subject,
  effectiveDateTime: at,
  valueQuantity: { value, unit: '10*3/uL', system: 'http://unitsofmeasure.org', code: '10*3/uL' },
});

const medicine = {
  resourceType: 'MedicationStatement',
  id: 'methyldopa',
  status: 'active',
  medicationCodeableConcept: {
    coding: [{ system: 'http://www.nlm.nih.gov/research/umls/rxnorm', code: '6876', display: 'methyldopa' }],
    text: 'methyldopa',
  },
  subject,
  effectivePeriod: { start: time(126) },
};

const frame = (resources) => ({
  resourceType: 'Bundle',
  type: 'collection',
  entry: [
    {
      resourceType: 'Patient',
      id: 'wren',
      name: [{ given: ['Wren'], family: 'Holloway' }],
      gender: 'female',
      birthDate: '1996-05-04',
      identifier: [{ value: 'SC-1042' }],
    },
    {
      resourceType: 'Observation',
      id: 'due',
      status: 'final',
      code: loinc('11778-8'),
      subject,
      effectiveDateTime: time(0),
      valueDateTime: '2025-10-20',
    },
    ...resources,
  ].map((resource) => ({ resource })),
});

/** Ten visits with a gap, several readings at some, a reading that cannot be, urine, platelets, a medicine. */
export const whole = frame([
  pressure('p1', time(0), 112, 70),
  pressure('p2', time(28), 114, 72),
  pressure('p3', time(56), 110, 70),
  pressure('p4', time(119), 142, 88),
  pressure('p5', time(119, 5), 146, 92),
  pressure('p6', time(119, 300), 148, 94),
  pressure('p7', time(126), 90, 130),
  pressure('p8', time(126, 10), 138, 88),
  pressure('p9', time(140), 144, 92),
  pressure('p10', time(154), 152, 98),
  pressure('p11', time(154, 6), 154, 96),
  pressure('p12', time(161), 20, 12, {}),
  strip('u1', time(0, 10), 'negative'),
  strip('u2', time(119, 20), '1+'),
  strip('u3', time(154, 20), '2+'),
  platelets('l1', time(119, 400), 210),
  platelets('l2', time(154, 60), 148),
  medicine,
]);

/** Two thousand readings over one pregnancy. */
export const many = frame(
  Array.from({ length: 2000 }, (_, at) =>
    pressure(`m${at}`, time(at / 8), 118 + ((at * 7) % 30), 70 + ((at * 5) % 24)),
  ),
);

export const asOf = time(161, 60);

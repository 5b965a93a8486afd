// An invented woman at 31 weeks: two raised readings some hours apart, protein in the urine. Dated back from now.
const minute = 60_000;
const day = 24 * 60 * minute;

const loinc = (code, display) => ({ coding: [{ system: 'http://loinc.org', code, display }] });
const mmHg = (value) => ({ value, unit: 'mmHg', system: 'http://unitsofmeasure.org', code: 'mm[Hg]' });
const vitalSigns = {
  coding: [{ system: 'http://terminology.hl7.org/CodeSystem/observation-category', code: 'vital-signs' }],
};

/** Patient and Observations; references go to `Patient/example-woman`. */
export function inventedWoman(now) {
  const before = (ms) => new Date(now.getTime() - ms).toISOString();
  const observation = (id, code, minutesAgo, rest) => ({
    resourceType: 'Observation',
    id,
    status: 'final',
    code,
    subject: { reference: 'Patient/example-woman' },
    effectiveDateTime: before(minutesAgo * minute),
    ...rest,
  });
  const pressure = (id, systolic, diastolic, minutesAgo) =>
    observation(id, loinc('85354-9', 'Blood pressure panel with all children optional'), minutesAgo, {
      category: [vitalSigns],
      component: [
        { code: loinc('8480-6', 'Systolic blood pressure'), valueQuantity: mmHg(systolic) },
        { code: loinc('8462-4', 'Diastolic blood pressure'), valueQuantity: mmHg(diastolic) },
      ],
    });
  return [
    {
      resourceType: 'Patient',
      id: 'example-woman',
      name: [{ family: 'Invented', given: ['Wilhelmina'] }],
      gender: 'female',
      birthDate: '1997-04-12',
    },
    observation('example-due-date', loinc('11778-8', 'Delivery date Estimated'), 90 * 24 * 60, {
      valueDateTime: new Date(now.getTime() + 63 * day).toISOString().slice(0, 10),
    }),
    pressure('example-reading-1', 146, 92, 330),
    pressure('example-reading-2', 150, 96, 20),
    observation('example-strip', loinc('20454-5', 'Protein [Presence] in Urine by Test strip'), 15, {
      valueCodeableConcept: { text: '1+' },
    }),
  ];
}

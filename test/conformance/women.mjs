// Invented women, dated back from the moment of the check.
const minute = 60_000;
const day = 24 * 60 * minute;
const instant = (ms) => new Date(ms).toISOString();
const date = (ms) => instant(ms).slice(0, 10);

const loinc = (code, display) => ({ coding: [{ system: 'http://loinc.org', code, display }] });
const mmHg = (value) => ({ value, unit: 'mmHg', system: 'http://unitsofmeasure.org', code: 'mm[Hg]' });

function chartOf(id, now) {
  const observation = (name, code, at, rest) => ({
    resourceType: 'Observation',
    id: `${id}-${name}`,
    status: 'final',
    code,
    subject: { reference: `Patient/${id}` },
    effectiveDateTime: instant(at),
    ...rest,
  });
  return {
    patient: {
      resourceType: 'Patient',
      id,
      name: [{ family: 'Invented', given: ['Nobody'] }],
      gender: 'female',
      birthDate: date(now - 29 * 365 * day),
    },
    pressure: (name, systolic, diastolic, minutesAgo) =>
      observation(
        name,
        loinc('85354-9', 'Blood pressure panel with all children optional'),
        now - minutesAgo * minute,
        {
          component: [
            { code: loinc('8480-6', 'Systolic blood pressure'), valueQuantity: mmHg(systolic) },
            { code: loinc('8462-4', 'Diastolic blood pressure'), valueQuantity: mmHg(diastolic) },
          ],
        },
      ),
    /** Due in so many weeks. */
    due: (weeks) =>
      observation('due', loinc('11778-8', 'Delivery date Estimated'), now - 60 * day, {
        valueDateTime: date(now + weeks * 7 * day),
      }),
    strip: (text, minutesAgo) =>
      observation(
        'strip',
        loinc('20454-5', 'Protein [Presence] in Urine by Test strip'),
        now - minutesAgo * minute,
        { valueCodeableConcept: { text } },
      ),
    symptom: (code, display, minutesAgo) =>
      observation(
        'symptom',
        { coding: [{ system: 'http://snomed.info/sct', code, display }] },
        now - minutesAgo * minute,
        { valueBoolean: true },
      ),
  };
}

/** Normal pressure at 30 weeks. */
export function well(id, now) {
  const { patient, due, pressure, strip } = chartOf(id, now);
  return [patient, due(10), pressure('reading', 112, 70, 20), strip('negative', 15)];
}

/** Two raised readings hours apart and protein in the urine, at 31 weeks. */
export function raised(id, now) {
  const { patient, due, pressure, strip } = chartOf(id, now);
  return [patient, due(9), pressure('first', 146, 92, 330), pressure('second', 150, 96, 20), strip('1+', 15)];
}

/** Two severe readings and a headache, at 34 weeks. */
export function severe(id, now) {
  const { patient, due, pressure, symptom } = chartOf(id, now);
  return [
    patient,
    due(6),
    pressure('first', 166, 108, 40),
    pressure('second', 168, 112, 20),
    symptom('25064002', 'Headache', 20),
  ];
}

export const stories = { well, raised, severe };

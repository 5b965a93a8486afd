// The example the built-in page starts with: an invented woman, invented readings.

const subject = { reference: 'Patient/example' };
const mmHg = { unit: 'mmHg', system: 'http://unitsofmeasure.org', code: 'mm[Hg]' };

function loinc(code: string, display: string) {
  return { coding: [{ system: 'http://loinc.org', code, display }] };
}

function pressure(id: string, time: string, systolic: number, diastolic: number) {
  return {
    resourceType: 'Observation',
    id,
    status: 'final',
    code: loinc('85354-9', 'Blood pressure panel with all children optional'),
    subject,
    effectiveDateTime: time,
    component: [
      { code: loinc('8480-6', 'Systolic blood pressure'), valueQuantity: { value: systolic, ...mmHg } },
      { code: loinc('8462-4', 'Diastolic blood pressure'), valueQuantity: { value: diastolic, ...mmHg } },
    ],
  };
}

const dueDate = {
  resourceType: 'Observation',
  id: 'due-date',
  status: 'final',
  code: loinc('11778-8', 'Delivery date Estimated'),
  subject,
  effectiveDateTime: '2026-03-02',
  valueDateTime: '2026-09-14',
};

const strip = {
  resourceType: 'Observation',
  id: 'urine-strip',
  status: 'final',
  code: loinc('20454-5', 'Protein [Presence] in Urine by Test strip'),
  subject,
  effectiveDateTime: '2026-07-13T14:25:00+05:30',
  valueCodeableConcept: { text: '1+' },
};

/** Time at which the example is judged. */
export const exampleAsOf = '2026-07-13T14:40:00+05:30';

export const exampleBundle = {
  resourceType: 'Bundle',
  type: 'collection',
  entry: [
    { resource: { resourceType: 'Patient', id: 'example', gender: 'female' } },
    { resource: dueDate },
    { resource: pressure('first-reading', '2026-07-13T09:10:00+05:30', 146, 92) },
    { resource: pressure('second-reading', '2026-07-13T14:20:00+05:30', 150, 96) },
    { resource: strip },
  ],
};

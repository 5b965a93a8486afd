// Services and hooks; test names carry the row ids of the conformance checklist.
import { describe, expect, it } from 'vitest';
import { cdsServices, vitalSignsHook } from '../../src/http/cds-service-table.ts';
import { bodyOf, cardsOf, client, exampleBundle, firstIssue, fullPrefetch, hookRequest } from './client.ts';

const user = { userId: 'Practitioner/midwife', patientId: 'example' };
const bundle = (...resources: readonly object[]) => ({
  entry: resources.map((resource) => ({ resource })),
});

/** A draft of lisinopril (ATC C09AA03), invented. */
const lisinopril = {
  resourceType: 'MedicationRequest',
  id: 'draft-1',
  status: 'draft',
  intent: 'order',
  subject: { reference: 'Patient/example' },
  medicationCodeableConcept: {
    coding: [{ system: 'http://www.whocc.no/atc', code: 'C09AA03', display: 'lisinopril' }],
  },
};
const paracetamol = {
  ...lisinopril,
  id: 'draft-2',
  medicationCodeableConcept: {
    coding: [{ system: 'http://www.whocc.no/atc', code: 'N02BE01', display: 'paracetamol' }],
  },
};
const observations = exampleBundle.entry.map(({ resource }) => resource);
const reading = observations.find(({ id }) => id === 'second-reading') ?? {};
const appointment = (start: string) => ({ resourceType: 'Appointment', status: 'proposed', start });

/** The example at 14:40 on 13 July 2026 is pre-eclampsia, same-day (docs of the example). */
const contexts: Readonly<Record<string, object>> = {
  'patient-view': user,
  'encounter-start': { ...user, encounterId: 'visit' },
  'problem-list-item-create': {
    ...user,
    conditions: bundle({ resourceType: 'Condition', category: 'problem-list-item' }),
  },
  [vitalSignsHook]: { ...user, observations: bundle(reading) },
  'order-select': { ...user, selections: ['MedicationRequest/draft-1'], draftOrders: bundle(lisinopril) },
  'order-sign': { ...user, draftOrders: bundle(lisinopril) },
  'medication-refill': { patientId: 'example', medications: bundle(lisinopril) },
  'encounter-discharge': { ...user, encounterId: 'visit' },
  'appointment-book': { ...user, appointments: bundle(appointment('2026-08-01T09:00:00+05:30')) },
};

const post = (id: string, hook: string, context: object, prefetch: object = fullPrefetch) =>
  client()
    .post(`/cds-services/${id}`)
    .send({ ...hookRequest(), hook, context, prefetch });
const pairs = cdsServices.flatMap(({ id, hooks }) => hooks.map((hook) => [id, hook.name, hook] as const));

describe('services and hooks', () => {
  it.each(pairs)('D-06, D-12: %s answers %s by the hook of the body', async (id, name) => {
    const response = await post(id, name, contexts[name] ?? {});
    expect(response.status).toBe(200);
    expect(cardsOf(response).length).toBeGreaterThan(0);
  });

  it.each(pairs)(
    'R-05: %s, %s: each required field of the table is asked for by name',
    async (id, name, hook) => {
      for (const { name: field, isRequired } of hook.fields) {
        const context = Object.fromEntries(
          Object.entries(contexts[name] ?? {}).filter(([key]) => key !== field),
        );
        const response = await post(id, name, context);
        const expected = isRequired ? [400, `error/required context.${field}`] : [200, ''];
        expect([response.status, firstIssue(response)]).toEqual(expected);
      }
    },
  );

  it('R-01: a hook of another service is refused', async () => {
    const response = await post('pregnancy-follow-up', 'patient-view', user);
    expect([response.status, firstIssue(response)]).toEqual([400, 'error/not-supported hook']);
  });

  it('H-05, X-01: the same chart gives the same cards through every hook of the main service', async () => {
    const id = 'pregnancy-hypertension';
    const plain = cardsOf(await post(id, 'patient-view', user));
    for (const hook of ['encounter-start', 'problem-list-item-create', vitalSignsHook]) {
      const heard = cardsOf(await post(id, hook, contexts[hook] ?? {}));
      expect(heard.map(({ uuid, summary }) => [uuid, summary])).toEqual(
        plain.map(({ uuid, summary }) => [uuid, summary]),
      );
    }
  });

  it('H-04: what the private hook brings is judged with the chart, and stands in for pressures that were not sent', async () => {
    const context = { ...user, observations: bundle(...observations) };
    const { bloodPressures: _none, ...rest } = fullPrefetch;
    const saved = await post('pregnancy-hypertension', vitalSignsHook, context, rest);
    expect(saved.status).toBe(200);
    expect(cardsOf(saved)[0]?.summary).toContain('BP 150/96 mmHg');
    expect(cardsOf(saved)[0]?.detail).toContain('blood pressures: not sent by the record system');
    const bare = await post('pregnancy-hypertension', 'patient-view', user, rest);
    expect([bare.status, firstIssue(bare)]).toEqual([412, 'error/required prefetch.bloodPressures']);
  });

  it('H-04, R-11: an Observation of another woman in the context is not judged', async () => {
    const stray = { ...reading, id: 'stray', subject: { reference: 'Patient/other' } };
    const context = { ...user, observations: bundle(stray) };
    const heard = await post('pregnancy-hypertension', vitalSignsHook, context);
    expect(JSON.stringify(cardsOf(heard)[0]?.extension)).toContain(
      '{"reference":"Observation/stray","code":"other-subject"}',
    );
  });

  it('H-01, H-02: bundles without type, entries without wrapper, and a bare resource are read', async () => {
    const forms = [
      { resourceType: 'Bundle', type: 'collection', ...bundle(lisinopril) },
      { entry: [lisinopril] },
      lisinopril,
    ];
    const answers = await Promise.all(
      forms.map(async (draftOrders) =>
        cardsOf(await post('pregnancy-medicine-safety', 'order-sign', { ...user, draftOrders })).map(
          ({ summary }) => summary,
        ),
      ),
    );
    expect(new Set(answers.map((each) => each.join())).size).toBe(1);
    expect(answers[0]?.[0]).toContain('Lisinopril: Not in pregnancy');
  });

  it.each([
    ['ProcedureRequest', { resourceType: 'ProcedureRequest' }],
    ['MedicationOrder', { resourceType: 'MedicationOrder' }],
    ['a Condition with its status as text', { resourceType: 'Condition', clinicalStatus: 'active' }],
  ])('H-03: resources of an older release are refused: %s', async (_what, resource) => {
    const context = { ...user, draftOrders: bundle(resource) };
    const response = await post('pregnancy-medicine-safety', 'order-sign', context);
    expect([response.status, firstIssue(response)]).toEqual([400, 'error/not-supported context.draftOrders']);
  });

  it('the woman herself and her family get no clinical card', async () => {
    for (const userId of [
      'Patient/example',
      'RelatedPerson/sister',
      'https://ehr.example/fhir/Patient/example',
    ]) {
      const response = await post('pregnancy-hypertension', 'patient-view', { ...user, userId });
      expect([response.status, bodyOf(response)]).toEqual([200, { cards: [] }]);
    }
  });
});

describe('safety of medicines', () => {
  const id = 'pregnancy-medicine-safety';

  it('order-select: speaks only about what is selected', async () => {
    const draftOrders = bundle(lisinopril, paracetamol);
    const selected = (reference: string) =>
      post(id, 'order-select', { ...user, selections: [reference], draftOrders });
    expect(cardsOf(await selected('MedicationRequest/draft-1'))).toHaveLength(1);
    expect(cardsOf(await selected('MedicationRequest/draft-2'))).toEqual([]);
  });

  it('order-sign: is silent about a medicine without a rule, and about one in use already', async () => {
    const medications = bundle({ ...lisinopril, id: 'running', status: 'active' });
    const response = await post(
      id,
      'order-sign',
      { ...user, draftOrders: bundle(paracetamol) },
      { ...fullPrefetch, medications: { resourceType: 'Bundle', ...medications } },
    );
    expect(bodyOf(response)).toEqual({ cards: [] });
  });

  it('order-sign: a draft without an id is spoken about too', async () => {
    const { id: _none, ...nameless } = lisinopril;
    const response = await post(id, 'order-sign', { ...user, draftOrders: bundle(nameless) });
    expect(cardsOf(response)[0]?.indicator).toBe('warning');
  });

  it('S-02: without anything that dates the pregnancy it answers 412 naming the key', async () => {
    const { pregnancy: _none, ...rest } = fullPrefetch;
    const response = await post(id, 'order-sign', { ...user, draftOrders: bundle(paracetamol) }, rest);
    expect([response.status, firstIssue(response)]).toEqual([412, 'error/required prefetch.pregnancy']);
  });
});

describe('follow-up', () => {
  const id = 'pregnancy-follow-up';
  const book = (start: string) =>
    post(id, 'appointment-book', { ...user, appointments: bundle(appointment(start)) });

  it('appointment-book: an appointment after the time the urgency names is too late', async () => {
    // Same-day: until the end of the local day of 14:40+05:30 on 13 July.
    expect(cardsOf(await book('2026-07-14T08:00:00+05:30'))[0]?.summary).toMatch(/is too late: act today/);
    const inTime = cardsOf(await book('2026-07-13T20:00:00+05:30'));
    expect(inTime.map(({ summary }) => summary).join()).not.toContain('too late');
  });

  it('appointment-book: of several appointments the earliest counts', async () => {
    const appointments = bundle(
      appointment('2026-08-01T09:00:00+05:30'),
      appointment('2026-07-13T20:00:00+05:30'),
    );
    const response = await post(id, 'appointment-book', { ...user, appointments });
    expect(response.text).not.toContain('too late');
  });

  it('encounter-discharge: says what is open before she leaves, then the plan', async () => {
    const [open, plan] = cardsOf(
      await post(id, 'encounter-discharge', contexts['encounter-discharge'] ?? {}),
    );
    expect(open?.summary).toContain('Open before she leaves: act today, pre-eclampsia.');
    expect(plan?.summary).toContain('Follow-up plan: pre-eclampsia.');
  });
});

// $evaluate-measure, $apply and $validate over the wire; test names carry the row ids of the conformance checklist.
import type { Bundle, FhirResource, MeasureReport, OperationOutcome, RequestGroup } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { resourceFaults } from '../support/fhir-schema.ts';
import { client, exampleAsOf, exampleBundle, firstIssue, operationPath } from './client.ts';

const measurePath = '/fhir/Measure/severe-pressure-repeated/$evaluate-measure';
const planPath = '/fhir/PlanDefinition/frontline/$apply';
const year = exampleAsOf.slice(0, 4);
const parameters = (more: readonly object[]) => ({
  resourceType: 'Parameters',
  parameter: [{ name: 'data', resource: exampleBundle }, ...more],
});
const period = [
  { name: 'periodStart', valueDate: year },
  { name: 'periodEnd', valueDate: year },
];
const report = async (more: readonly object[] = []) => {
  const response = await client()
    .post(measurePath)
    .send(parameters([...period, ...more]));
  return response.body as MeasureReport;
};

describe('$evaluate-measure', () => {
  it('F-Q06, F-Q07: a summary is valid, has period, measure and notation, and names no woman', async () => {
    const summary = await report();
    expect(resourceFaults(summary)).toEqual([]);
    expect([summary.type, summary.period.start, summary.period.end]).toEqual(['summary', year, year]);
    expect(summary.measure).toMatch(/\/Measure\/severe-pressure-repeated\|\d/);
    expect(summary.improvementNotation?.coding?.[0]?.code).toBe('increase');
    expect(JSON.stringify(summary)).not.toContain('Patient/');
  });

  it('F-Q07, F-Q08: subject and subject-list name the women; both spellings of the type are understood', async () => {
    const individual = await report([{ name: 'reportType', valueCode: 'subject' }]);
    expect([individual.type, individual.subject?.reference]).toEqual(['individual', 'Patient/example']);
    const list = await report([{ name: 'reportType', valueCode: 'subject-list' }]);
    expect(resourceFaults(list)).toEqual([]);
    expect(list.group?.[0]?.population?.[0]?.subjectResults?.reference).toBe('#list-initial-population');
    expect((await report([{ name: 'reportType', valueCode: 'summary' }])).type).toBe('summary');
  });

  it('F-Q05: a stratum has a value, and populations of its own that add up', async () => {
    const [group] = (await report()).group ?? [];
    for (const stratifier of group?.stratifier ?? []) {
      const sum = (stratifier.stratum ?? []).reduce(
        (all, { population }) => all + (population?.[0]?.count ?? 0),
        0,
      );
      expect(sum).toBe(group?.population?.[0]?.count);
    }
    expect(group?.stratifier).toHaveLength(3);
  });

  it('refuses an unknown measure, a missing or odd period, and an odd report type', async () => {
    const unknown = await client().post('/fhir/Measure/none/$evaluate-measure').send(parameters(period));
    expect([unknown.status, firstIssue(unknown)]).toEqual([404, 'error/not-found http.id']);
    const none = await client().post(measurePath).send(parameters([]));
    expect([none.status, firstIssue(none)]).toEqual([400, 'error/required http.periodStart']);
    const odd = await client()
      .post(measurePath)
      .query({ periodStart: '2026', periodEnd: 'soon' })
      .send(exampleBundle);
    expect([odd.status, firstIssue(odd)]).toEqual([400, 'error/value http.periodEnd']);
    const type = await client()
      .post(measurePath)
      .send(parameters([...period, { name: 'reportType', valueCode: 'all' }]));
    expect([type.status, firstIssue(type)]).toEqual([400, 'error/value http.reportType']);
  });
});

describe('PlanDefinition/$apply', () => {
  it('F-D04, F-O01, F-O02: answers one Bundle: a RequestGroup first, every action pointing into the Bundle', async () => {
    const response = await client()
      .post(planPath)
      .query({ asOf: exampleAsOf })
      .send(parameters([{ name: 'subject', valueString: 'Patient/example' }]));
    expect(response.status).toBe(200);
    expect(resourceFaults(response.body)).toEqual([]);
    const entries = (response.body as Bundle<FhirResource>).entry ?? [];
    const group = entries[0]?.resource as RequestGroup;
    expect([group.resourceType, group.status, group.intent]).toEqual(['RequestGroup', 'active', 'proposal']);
    const urls = entries.map(({ fullUrl }) => fullUrl);
    expect((group.action ?? []).length).toBeGreaterThan(0);
    // rqg-1: a resource and no sub-actions.
    for (const action of group.action ?? []) {
      expect(urls).toContain(action.resource?.reference);
      expect(action.action).toBeUndefined();
    }
  });

  it('F-O03: the same request gives the same bytes', async () => {
    const send = () => client().post(planPath).query({ asOf: exampleAsOf }).send(parameters([]));
    expect((await send()).text).toBe((await send()).text);
  });

  it('knows its guidelines, needs data, and takes one woman', async () => {
    const unknown = await client().post('/fhir/PlanDefinition/none/$apply').send(exampleBundle);
    expect([unknown.status, firstIssue(unknown)]).toEqual([404, 'error/not-found http.id']);
    const none = await client()
      .post(planPath)
      .send({ resourceType: 'Parameters', parameter: [{ name: 'subject', valueString: 'Patient/1' }] });
    expect([none.status, firstIssue(none)]).toEqual([400, 'error/required Parameters.parameter']);
    const two = await client()
      .post(planPath)
      .send(
        parameters([
          { name: 'subject', valueString: 'a' },
          { name: 'subject', valueString: 'b' },
        ]),
      );
    expect([two.status, firstIssue(two)]).toEqual([400, 'error/not-supported http.subject']);
  });
});

describe('Bundle/$validate', () => {
  const validated = async (body: object) => {
    const response = await client().post('/fhir/Bundle/$validate').send(body);
    return { status: response.status, outcome: response.body as OperationOutcome };
  };

  it('F-C04: answers 200 with an information issue when all is well, and 200 with errors when it is not', async () => {
    const good = await validated(exampleBundle);
    expect([good.status, good.outcome.issue.every(({ severity }) => severity !== 'error')]).toEqual([
      200,
      true,
    ]);
    const bad = await validated({ ...exampleBundle, type: undefined });
    expect([bad.status, bad.outcome.issue[0]?.severity, bad.outcome.issue[0]?.expression]).toEqual([
      200,
      'error',
      ['Bundle.type'],
    ]);
    expect(resourceFaults(bad.outcome)).toEqual([]);
  });

  it('judges data of years ago as of their own time, so that they are no earlier pregnancy', async () => {
    const old = JSON.parse(
      JSON.stringify(exampleBundle).replaceAll(/"(20\d\d)-/g, (_, year) => `"${Number(year) - 5}-`),
    ) as object;
    const text = JSON.stringify((await validated(old)).outcome);
    expect(text).not.toContain('earlier pregnancy');
    const asked = await client().post('/check').send(old);
    expect(asked.body).toMatchObject({ women: 1, classified: 1 });
  });
});

describe('negotiation', () => {
  it('F-H02: _format overrides Accept; XML alone is 406; other preferences are ignored', async () => {
    const xml = await client().post(operationPath).query({ _format: 'xml' }).send(exampleBundle);
    expect([xml.status, firstIssue(xml)]).toEqual([406, 'error/not-supported http._format']);
    const json = await client()
      .post(operationPath)
      .query({ _format: 'json' })
      .set('Accept', 'application/fhir+xml')
      .send(exampleBundle);
    expect(json.status).toBe(200);
    const plain = await client()
      .post(operationPath)
      .set('Prefer', 'return=minimal, respond-async')
      .send(exampleBundle);
    expect(plain.status).toBe(200);
  });

  it('F-B09, F-H03: Prefer: handling=strict refuses what lenient answers with a warning', async () => {
    const odd = { ...exampleBundle, type: undefined };
    const strict = await client().post(operationPath).set('Prefer', 'handling=strict').send(odd);
    expect([strict.status, firstIssue(strict)]).toEqual([400, 'error/required Bundle.type']);
    const lenient = await client().post(operationPath).set('Prefer', 'handling=lenient').send(odd);
    expect(lenient.status).toBe(200);
    const sound = await client().post(operationPath).set('Prefer', 'handling=strict').send(exampleBundle);
    expect(sound.status).toBe(200);
  });

  it('F-C02: the operations need a body: GET is 405 with an OperationOutcome', async () => {
    for (const path of [operationPath, planPath, measurePath, '/fhir/Bundle/$validate']) {
      const response = await client().get(path);
      expect([response.status, firstIssue(response)]).toEqual([405, 'error/not-supported http.method']);
    }
  });
});

// `guideline=all` and the rules at every door: command line, FHIR operation, CDS Hooks, web.
import type { Bundle, GuidanceResponse, Parameters, ParametersParameter } from 'fhir/r4.js';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { assessText } from '../src/cli/assess.ts';
import { rulesText } from '../src/cli/rules.ts';
import { guidelineIds } from '../src/guidelines/registry.ts';
import { readRulePage } from '../src/http/rules-page.ts';
import { client, operationPath, servicePath, hookRequest, fullPrefetch } from './http/client.ts';
import { caseAsOf, caseBundle } from './support/case-bundle.ts';
import { readCaseFile } from './support/case-schema.ts';
import { resourceFaults } from './support/fhir-schema.ts';

const row = readCaseFile(join(import.meta.dirname, 'cases', 'check-cases.json')).rows.find(
  ({ id }) => id === 'A13',
);
const given = row?.given ?? [];
const bundle = caseBundle(given);
const asOf = caseAsOf(given);
const platelets = 'platelets 132 × 10⁹/L is not below 100 × 10⁹/L';

describe('the command line', () => {
  const assess = (guideline: string, format: 'text' | 'json' | 'fhir' | 'cards'): string =>
    assessText(JSON.stringify(bundle), { guideline, format, asOf }, 0).output;

  it('prints a table of every guideline, with the reading on which they part', () => {
    const text = assess('all', 'text');
    for (const id of guidelineIds) expect(text).toContain(`  ${id}`);
    const flowing = text.replaceAll(/\s+/g, ' ');
    expect(flowing).toContain('acog-platelets below 100 × 10⁹/L');
    expect(flowing).toContain(platelets);
  });

  it('gives the same as JSON, beside the default answer', () => {
    expect(JSON.parse(assess('all', 'json'))).toMatchObject({
      guideline: { id: 'frontline' },
      comparison: { guidelines: guidelineIds.map((id) => ({ id })) },
    });
  });

  it('names those who would differ in every answer, in one line', () => {
    const { differs } = JSON.parse(assess('frontline', 'json')) as { differs: readonly { id: string }[] };
    expect(differs).toContainEqual(
      expect.objectContaining({ id: 'acog-2020', classification: ['gestational-hypertension'] }),
    );
    expect(assess('frontline', 'text').replaceAll(/\s+/g, ' ')).toContain(platelets);
    expect(assess('frontline', 'cards')).toContain('Other guidelines');
  });

  it('prints one rule, the whole page, or the ids known', () => {
    const page = readRulePage('rules');
    expect(rulesText(readRulePage, 'pre-eclampsia').output).toMatch(/^### pre-eclampsia\n/);
    expect(rulesText(readRulePage, 'urgency:seizure').output).toMatch(/^### urgency: seizure\n/);
    expect(rulesText(readRulePage, undefined).output).toBe(page);
    expect(rulesText(readRulePage, 'cases').output).toMatch(/^# Every case\n/);
    expect(rulesText(readRulePage, 'nothing')).toMatchObject({ exitCode: 2, output: '' });
    expect(rulesText(readRulePage, 'nothing').errors).toContain('pre-eclampsia');
  });
});

function comparisonOf(body: unknown): ParametersParameter | undefined {
  const { entry = [] } = body as Bundle;
  const guidance = entry
    .map(({ resource }) => resource)
    .find((resource): resource is GuidanceResponse => resource?.resourceType === 'GuidanceResponse');
  const output = guidance?.contained?.find(
    (resource): resource is Parameters => resource.resourceType === 'Parameters',
  );
  return output?.parameter?.find(({ name }) => name === 'comparison');
}

describe('the FHIR operation', () => {
  const post = (query: object) =>
    client()
      .post(operationPath)
      .query(query)
      .set('Content-Type', 'application/fhir+json')
      .send(JSON.stringify(bundle));

  it('adds a parameter with one part for each guideline, in valid R4', async () => {
    const response = await post({ guideline: 'all', asOf });
    const parts = comparisonOf(response.body)?.part?.filter(({ name }) => name === 'guideline') ?? [];
    const ids = parts.map(({ part }) => part?.find(({ name }) => name === 'id')?.valueString);
    expect(ids).toEqual(guidelineIds);
    expect(resourceFaults(response.body)).toEqual([]);
  });

  it('leaves it out when one guideline is asked for', async () => {
    expect(comparisonOf((await post({ asOf })).body)).toBeUndefined();
  });
});

describe('CDS Hooks', () => {
  it('takes `all` as the default guideline, whose card names those that differ', async () => {
    const answer = (query: object) => client().post(servicePath).query(query).send(hookRequest(fullPrefetch));
    const [all, plain] = [await answer({ guideline: 'all' }), await answer({})];
    expect(all.status).toBe(200);
    expect(all.body).toEqual(plain.body);
  });
});

describe('GET /rules', () => {
  it('serves RULES.md as markdown, and as a page to a browser', async () => {
    const markdown = await client().get('/rules');
    expect(markdown.headers['content-type']).toBe('text/markdown; charset=utf-8');
    expect(markdown.text).toBe(readRulePage('rules'));
    const page = await client().get('/rules').set('Accept', 'text/html,*/*;q=0.8');
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(page.text).toContain('<h3 id="urgency-seizure">urgency: seizure</h3>');
    expect(page.text).toContain('<a href="/rules?id=numbers">');
    expect(page.headers['content-security-policy']).toContain("style-src 'self'");
  });

  it('serves one rule, and says 404 with the ids known when there is none', async () => {
    expect((await client().get('/rules').query({ id: 'hellp' })).text).toMatch(/^### hellp\n/);
    const none = await client().get('/rules').query({ id: 'nothing' });
    expect(none.status).toBe(404);
    expect(JSON.stringify(none.body)).toContain('pre-eclampsia');
  });
});

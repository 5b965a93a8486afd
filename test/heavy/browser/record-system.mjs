// A record system for the launch test: authorisation server and FHIR server in one, strict about PKCE and state.
import { createHash, randomUUID } from 'node:crypto';
import { createServer } from 'node:http';

const challengeOf = (verifier) => createHash('sha256').update(verifier).digest('base64url');

/**
 * Given    bundle   what the chart holds
 * Returns  base of its FHIR server, what it was asked, and how to stop it
 */
export async function startRecordSystem(bundle, patientId) {
  const resources = bundle.entry.map(({ resource }) => resource);
  const asked = [];
  const codes = new Map();
  const tokens = new Set();
  const launch = randomUUID();
  const server = createServer(async (request, response) => {
    const url = new URL(request.url, 'http://localhost');
    const cors = { 'Access-Control-Allow-Origin': '*', 'Access-Control-Allow-Headers': '*' };
    const json = (status, body) => {
      response.writeHead(status, { 'Content-Type': 'application/json', ...cors });
      response.end(JSON.stringify(body));
    };
    if (request.method === 'OPTIONS') return json(200, {});
    const base = `http://localhost:${server.address().port}`;
    if (url.pathname === '/fhir/.well-known/smart-configuration')
      return json(200, {
        authorization_endpoint: `${base}/authorize`,
        token_endpoint: `${base}/token`,
        code_challenge_methods_supported: ['S256'],
        capabilities: ['launch-ehr', 'client-public', 'context-ehr-patient', 'permission-patient'],
      });
    if (url.pathname === '/authorize') {
      const query = url.searchParams;
      asked.push({ step: 'authorize', query: Object.fromEntries(query) });
      const code = randomUUID();
      codes.set(code, { challenge: query.get('code_challenge'), redirect: query.get('redirect_uri') });
      const back = new URL(query.get('redirect_uri'));
      back.searchParams.set('code', code);
      back.searchParams.set('state', query.get('state'));
      response.writeHead(302, { Location: back.href });
      return response.end();
    }
    if (url.pathname === '/token') {
      let body = '';
      for await (const chunk of request) body += chunk;
      const form = new URLSearchParams(body);
      const known = codes.get(form.get('code'));
      codes.delete(form.get('code'));
      const fits = known !== undefined && known.challenge === challengeOf(form.get('code_verifier') ?? '');
      asked.push({ step: 'token', fits });
      if (!fits) return json(400, { error: 'invalid_grant' });
      const token = randomUUID();
      tokens.add(token);
      return json(200, {
        access_token: token,
        token_type: 'Bearer',
        expires_in: 300,
        scope: 'launch patient/*.read',
        patient: patientId,
      });
    }
    if (url.pathname.startsWith('/fhir/')) {
      const token = (request.headers.authorization ?? '').replace('Bearer ', '');
      asked.push({ step: 'read', path: url.pathname, allowed: tokens.has(token) });
      if (!tokens.has(token)) return json(401, {});
      const [, , type, id] = url.pathname.split('/');
      const own = resources.filter((each) => each.resourceType === type);
      if (id !== undefined)
        return json(
          200,
          own.find((each) => each.id === id),
        );
      const codesAsked = (url.searchParams.get('code') ?? '')
        .split(',')
        .map((each) => each.split('|').at(-1));
      const found = own.filter(
        (each) =>
          !url.searchParams.has('code') || each.code?.coding?.some(({ code }) => codesAsked.includes(code)),
      );
      return json(200, {
        resourceType: 'Bundle',
        type: 'searchset',
        total: found.length,
        entry: found.map((resource) => ({ resource })),
      });
    }
    return json(404, {});
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address();
  return {
    issuer: `http://localhost:${port}/fhir`,
    origin: `http://localhost:${port}`,
    launch,
    asked,
    stop: () => server.close(),
  };
}

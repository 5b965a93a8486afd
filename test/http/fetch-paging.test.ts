// Pages and places: how far a FHIR server is followed. Test names carry the row ids of the checklists.
import { afterEach, describe, expect, it } from 'vitest';
import { addressCheck, guardedLookup } from '../../src/http/fetch/allowed-address.ts';
import { toNetwork } from '../../src/http/fetch/networks.ts';
import { client, firstIssue, fullPrefetch, hookRequest, servicePath } from './client.ts';
import {
  authorization,
  callWith,
  closeServers,
  fetchedFrom,
  fhirServer,
  settingsFor,
  wholeChart,
  withoutKeys,
} from './fetch-support.ts';

afterEach(closeServers);

describe('pages', () => {
  it('C-06, F-N01, F-N02: all pages are read, each address used exactly as given', async () => {
    const server = await fhirServer({ bloodPressures: 'paged' });
    expect(await fetchedFrom(server)).toEqual(wholeChart);
    const pages = server.seen.filter(({ url }) => url.includes('page='));
    expect(pages.map(({ url }) => url)).toEqual(['/fhir?of=bloodPressures&page=1&state=a%2Fb|c']);
  });

  it('C-06: after a first page in prefetch the rest is fetched, and the answer is the whole one', async () => {
    const server = await fhirServer({ bloodPressures: 'paged' });
    const link = [{ relation: 'next', url: `${server.base}?of=bloodPressures&page=1` }];
    const all = fullPrefetch['bloodPressures'] as { readonly entry: readonly unknown[] };
    const first = { ...all, entry: all.entry.slice(0, 1), link };
    const prefetch = { ...fullPrefetch, bloodPressures: first };
    expect((await fetchedFrom(server, { prefetch }))['bloodPressures']).toBe('found 2');
    const whole = await client().post(servicePath).send(hookRequest());
    expect((await callWith(server, { prefetch })).text).toBe(whole.text);
  });

  it('C-06: a next page in another place is not fetched; the history stays marked as incomplete', async () => {
    const elsewhere = await fhirServer();
    const server = await fhirServer();
    const link = [{ relation: 'next', url: `${elsewhere.base}?of=bloodPressures&page=1` }];
    const prefetch = {
      ...fullPrefetch,
      bloodPressures: { ...(fullPrefetch['bloodPressures'] as object), link },
    };
    expect((await fetchedFrom(server, { prefetch }))['bloodPressures']).toBe('part 2: other-origin');
    expect([...server.seen, ...elsewhere.seen]).toEqual([]);
  });

  it.each([
    ['endless', 'part 20: too-many-pages', 10],
    ['circle', 'part 4: endless', 2],
    ['gone-after-first', 'part 2: server-failed', 2],
  ] as const)('F-N01: pages that are %s end as %s', async (fault, expected, requests) => {
    const server = await fhirServer({ bloodPressures: fault });
    expect((await fetchedFrom(server))['bloodPressures']).toBe(expected);
    expect(server.seen.filter(({ key }) => key === 'bloodPressures')).toHaveLength(requests);
  });

  it('F-05, F-R10: neither a link nor a redirect leads the token to another origin', async () => {
    const elsewhere = await fhirServer();
    const faults = { bloodPressures: 'next-elsewhere', results: 'redirect' } as const;
    const server = await fhirServer(faults, { elsewhere: elsewhere.origin });
    const states = await fetchedFrom(server);
    expect(states['bloodPressures']).toBe('part 2: other-origin');
    expect(states['results']).toBe('failed: redirected');
    expect(elsewhere.seen).toEqual([]);
  });
});

describe('places', () => {
  it('F-05: a server that is not on the list is not asked, and the gap is named', async () => {
    const server = await fhirServer();
    const settings = { origins: ['https://fhir.example'] };
    const states = await fetchedFrom(server, { settings, prefetch: withoutKeys('results') });
    expect([states['results'], states['bloodPressures'], server.seen]).toEqual([
      'failed: not-allowed',
      'found 2',
      [],
    ]);
  });

  it.each([
    ['a word', 'no address', 'error/value'],
    ['another scheme', 'ftp://fhir.example/r4', 'error/value'],
    ['a password inside', 'https://a:b@fhir.example/r4', 'error/value'],
  ])('R-03: fhirServer as %s is refused', async (_what, fhirServerText, issue) => {
    const response = await callWith(await fhirServer(), { fhirServer: fhirServerText });
    expect([response.status, firstIssue(response)]).toEqual([400, `${issue} fhirServer`]);
  });

  it('R-03: in production the server must be https', async () => {
    const server = await fhirServer();
    const settings = settingsFor([server.origin], { needsHttps: true });
    const body = { ...hookRequest(), fhirServer: server.base, fhirAuthorization: authorization };
    const response = await client({ settings }).post(servicePath).send(body);
    expect([response.status, firstIssue(response)]).toEqual([400, 'error/security fhirServer']);
  });

  it('F-05: private, link-local and loopback addresses are refused unless the site names their network', () => {
    const isAllowed = addressCheck([]);
    // Special-purpose ranges of the IANA registries, from memory; each also in its IPv6 spelling where there is one.
    const refused = [
      '127.0.0.1',
      '0.0.0.0',
      '10.1.2.3',
      '100.64.0.1',
      '169.254.169.254',
      '172.16.0.1',
      '172.31.255.255',
      '192.168.1.1',
      '198.18.0.1',
      '224.0.0.1',
      '255.255.255.255',
      '::1',
      '::',
      '::ffff:10.1.2.3',
      '::ffff:7f00:1',
      'fe80::1',
      'fc00::1',
      'fd12::1',
      '64:ff9b::a00:1',
      '2002:a00:1::',
      'ff02::1',
      'a name',
    ];
    expect(refused.filter(isAllowed)).toEqual([]);
    const allowed = ['1.1.1.1', '172.32.0.1', '192.169.0.1', '2606:4700::1111', '::ffff:1.1.1.1'];
    expect(allowed.filter((address) => !isAllowed(address))).toEqual([]);
    const network = toNetwork('10.20.0.0/16');
    const ours = addressCheck(network === undefined ? [] : [network]);
    expect([ours('10.20.1.1'), ours('10.21.1.1'), ours('127.0.0.1')]).toEqual([true, false, false]);
  });

  it('F-05: a name is judged by every address it leads to, and the connection goes to the one judged', () => {
    const answers = (addresses: readonly string[]) =>
      new Promise<unknown>((resolve) => {
        const system = (_name: string, _options: unknown, callback: (...found: unknown[]) => void) => {
          callback(
            null,
            addresses.map((address) => ({ address, family: 4 })),
          );
        };
        const lookup = guardedLookup(addressCheck([]), system as never);
        lookup('fhir.example', {}, (error, address) => {
          resolve(error?.name ?? address);
        });
      });
    return Promise.all([
      expect(answers(['1.1.1.1'])).resolves.toBe('1.1.1.1'),
      expect(answers(['1.1.1.1', '10.0.0.1'])).resolves.toBe('AddressRefused'),
      expect(answers([])).resolves.toBe('AddressRefused'),
    ]);
  });

  it('F-05: an address on the list that leads to this machine is not connected to', async () => {
    for (const host of ['127.0.0.1', 'localhost', '[::ffff:127.0.0.1]', '2130706433']) {
      const server = await fhirServer();
      const address = new URL(`http://${host}:${new URL(server.origin).port}/fhir`);
      const settings = { privateNetworks: [], origins: [address.origin] };
      const states = await fetchedFrom(server, { settings, fhirServer: address.href });
      expect([states['bloodPressures'], server.seen]).toEqual(['failed: not-allowed', []]);
    }
  });
});

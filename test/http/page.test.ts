// The page over the wire: built by `npm run build`. Expected weight: issue 7, under 300 kB compressed.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { webFile } from '../../src/http/web-files.ts';
import { openSettings, readSettings } from '../../src/http/settings.ts';
import { client, hookRequest, servicePath } from './client.ts';

const built = new URL('../../dist/web/', import.meta.url);
const weightOf = (files: readonly string[], ending: string): number =>
  files.reduce((sum, file) => sum + statSync(new URL(`${file}${ending}`, built)).size, 0);

describe('the weight of the page', () => {
  it.each([
    ['the page', ['page.html', 'page.css', 'page.js', 'stories.json']],
    ['the launch page', ['launch.html', 'page.css', 'launch.js', 'fhir-client.js']],
  ])('of %s is under 300 kB compressed', (_name, files) => {
    expect(weightOf(files, '.gz')).toBeLessThan(300_000);
    expect(weightOf(files, '.br')).toBeLessThan(weightOf(files, '.gz'));
  });

  it('is sent compressed where the client takes it, and plain elsewhere', () => {
    const file = webFile('page.js');
    const plain = file({ acceptEncoding: 'identity' });
    const zipped = file({ acceptEncoding: 'gzip;q=1.0, br;q=0' });
    expect(zipped.headers?.['Content-Encoding']).toBe('gzip');
    expect(gunzipSync(zipped.bytes ?? Buffer.alloc(0)).equals(plain.bytes ?? Buffer.alloc(0))).toBe(true);
    expect(file({ acceptEncoding: 'gzip, br' }).headers?.['Content-Encoding']).toBe('br');
  });
});

describe('the policy of the page', () => {
  it('allows nothing inline and no other origin', async () => {
    const policy = (await client().get('/')).headers['content-security-policy'] ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("connect-src 'self';");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
  });

  it('holds for every file: no inline script or style in what is sent', () => {
    const pages = readdirSync(built).filter((name) => name.endsWith('.html'));
    expect(pages.length).toBe(2);
    for (const name of pages) {
      const html = readFileSync(new URL(name, built), 'utf8');
      expect(html).not.toMatch(/<script(?![^>]*\bsrc=)|<style|\sstyle=|\son\w+=|https?:\/\//);
    }
  });

  const settings = {
    ...openSettings,
    frameAncestors: ['https://ehr.example'],
    smart: {
      clientId: 'page',
      launchUrl: 'https://clinic.example/launch',
      origins: ['https://fhir.ehr.example'],
    },
  };

  it('lets only configured origins frame it, and only the launch page talk to record systems', async () => {
    const page = await client({ settings }).get('/');
    expect(page.headers['content-security-policy']).toContain('frame-ancestors https://ehr.example');
    expect(page.headers['x-frame-options']).toBeUndefined();
    expect(page.headers['content-security-policy']).not.toContain('fhir.ehr.example');
    const launch = await client({ settings }).get('/launch');
    expect(launch.headers['content-security-policy']).toContain(
      "connect-src 'self' https://fhir.ehr.example",
    );
    const json = await client({ settings }).get('/health');
    expect(json.headers['x-frame-options']).toBe('DENY');
  });

  it('cards link to the launch page where it is set up, and nowhere else', async () => {
    const linked = await client({ settings }).post(servicePath).send(hookRequest());
    expect(JSON.stringify(linked.body)).toContain('"url":"https://clinic.example/launch","type":"smart"');
    const plain = await client().post(servicePath).send(hookRequest());
    expect(JSON.stringify(plain.body)).not.toContain('"links"');
  });

  it('a SMART client without an address and origins is refused at the start', () => {
    expect(() => readSettings({ SMART_CLIENT_ID: 'page' }, () => '')).toThrow('SMART_CLIENT_ID');
  });
});

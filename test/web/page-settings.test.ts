// What the service says of its site must reach the engine in the browser as the service itself uses it.
import { expect, it } from 'vitest';
import { pageSettingsReply } from '../../src/http/page.ts';
import { readPageSettings } from '../../src/web/read-page-settings.ts';
import type { SiteSetup } from '../../src/site/site.ts';

const mapping = { system: 'http://loinc.org', code: '85354-9', map: 'https://site.example/map|1' };
const setup: SiteSetup = {
  name: 'Stillwater Crossing',
  guideline: 'who-2020',
  timeZone: 'Asia/Kathmandu',
  pressureUnit: 'kPa',
  strict: false,
  level: { can: ['laboratory'], next: 'the district hospital' },
  performers: new Map(),
  codes: new Map([['urn:local|BP', mapping]]),
  units: new Map(),
  stripTexts: new Map(),
};

function told(call: Parameters<typeof pageSettingsReply>[0]) {
  return readPageSettings(JSON.parse(pageSettingsReply(call).body));
}

it('the site arrives whole', () => {
  const { site } = told({ site: { setup, options: {} } });
  expect(site?.setup).toEqual(setup);
  expect(site?.options).toMatchObject({
    guideline: 'who-2020',
    defaultPressureUnit: 'kPa',
    site: { can: ['laboratory'], next: 'the district hospital' },
  });
  const offset = site?.options.facilityOffsetMinutes;
  expect(typeof offset === 'function' ? offset(0) : offset).toBe(330);
});

it('without a site and a SMART client there are no settings', () => {
  expect(told({})).toEqual({});
  expect(readPageSettings('nonsense')).toEqual({});
});

it('the SMART client arrives with the origins it may talk to', () => {
  const smart = { clientId: 'page', launchUrl: 'https://a.example/launch', origins: ['https://ehr.example'] };
  expect(told({ smart })).toEqual({ smart: { clientId: 'page', origins: ['https://ehr.example'] } });
});

// What the service says about its set-up, made into what the engine takes.
import type { CodeMap, Mapping, SiteSetup } from '../site/site.ts';
import { zoneOffset } from '../site/zone-offset.ts';
import { isJson } from './case.ts';
import type { PageSettings } from './page-settings.ts';

/**
 * The settings of the page.
 *
 * Given    said   `/page-settings.json`: the site, its maps as lists of pairs; smart, the SMART client
 * Returns  what could be read; nothing of a site that is not of this shape
 */
export function readPageSettings(said: unknown): PageSettings {
  if (!isJson(said)) return {};
  const setup = setupOf(said['site']);
  const smart = said['smart'];
  return {
    ...(setup === undefined ? {} : { site: { setup, options: optionsOf(setup) } }),
    ...(isJson(smart) && typeof smart['clientId'] === 'string'
      ? { smart: { clientId: smart['clientId'], origins: textsOf(smart['origins']) } }
      : {}),
  };
}

type Json = Readonly<Record<string, unknown>>;

function setupOf(site: unknown): SiteSetup | undefined {
  if (!isJson(site)) return undefined;
  const { name, guideline, timeZone, pressureUnit, level } = site;
  return {
    name: typeof name === 'string' ? name : '',
    ...(typeof guideline === 'string' ? { guideline } : {}),
    ...(typeof timeZone === 'string' ? { timeZone } : {}),
    ...(pressureUnit === 'mm[Hg]' || pressureUnit === 'kPa' ? { pressureUnit } : {}),
    ...(isJson(level) ? { level: levelOf(level) } : {}),
    strict: site['strict'] === true,
    performers: new Map(),
    codes: mapOf(site['codes']),
    units: mapOf(site['units']),
    stripTexts: mapOf(site['stripTexts']),
  };
}

function levelOf({ can, next }: Json): NonNullable<SiteSetup['level']> {
  return { can: textsOf(can), ...(typeof next === 'string' ? { next } : {}) };
}

const textsOf = (list: unknown): readonly string[] =>
  Array.isArray(list) ? list.filter((each): each is string => typeof each === 'string') : [];

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

function mapOf(pairs: unknown): CodeMap {
  return new Map(
    listOf(pairs).flatMap((pair): [string, Mapping][] => {
      const [key, mapping] = listOf(pair);
      return typeof key === 'string' && isMapping(mapping) ? [[key, mapping]] : [];
    }),
  );
}

const isMapping = (value: unknown): value is Mapping =>
  isJson(value) &&
  typeof value['system'] === 'string' &&
  typeof value['code'] === 'string' &&
  typeof value['map'] === 'string';

/** As the service takes them from the site. */
function optionsOf({ timeZone, guideline, pressureUnit, level }: SiteSetup) {
  return {
    ...(timeZone === undefined ? {} : { facilityOffsetMinutes: zoneOffset(timeZone) }),
    ...(guideline === undefined ? {} : { guideline }),
    ...(pressureUnit === undefined ? {} : { defaultPressureUnit: pressureUnit }),
    ...(level === undefined ? {} : { site: level }),
  };
}

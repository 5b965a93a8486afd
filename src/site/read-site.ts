// The files of a site folder, as texts, to a checked site; every fault with file and line.
import type { z } from 'zod';
import { guidelineIds } from '../guidelines/registry.ts';
import { lineOf } from './line-of.ts';
import type { CodeMap, Mapping, Performer, SiteSetup } from './site.ts';
import { conceptMapShape, siteShape } from './site-config.ts';
import type { ConceptMapJson, SiteJson } from './site-config.ts';
import { mapKey } from './map-key.ts';

/** The folder cannot be used; `message` names every fault, one a line: `site.json:12: timeZone: ...`. */
export class SiteError extends Error {}

/**
 * What a folder says of its site.
 *
 * Given    readText  the text of a file of the folder, by name; undefined when there is none
 * Returns  the checked site
 * Throws   SiteError with every fault found, each with file, line and member
 * Notes    1. A mapping that is neither equal nor equivalent is kept in the file and never used: it may not feed a
 *             safety rule. The same local code mapped twice and differently is a fault.
 * Source   fhir.md F-S02, F-S03
 */
export function readSite(readText: (file: string) => string | undefined): SiteSetup {
  const site = checked('site.json', readText('site.json'), siteShape);
  const { conceptMaps = {}, guideline } = site.value;
  if (guideline !== undefined && !guidelineIds.includes(guideline)) {
    const line = lineOf(site.text, ['guideline']);
    throw new SiteError(`site.json:${line}: guideline: known are ${guidelineIds.join(', ')}`);
  }
  const maps = (files: readonly string[] = []): CodeMap =>
    joined(files.map((file) => ({ file, ...checked(file, readText(file), conceptMapShape) })));
  return {
    ...settingsOf(site.value),
    codes: maps(conceptMaps.codes),
    units: maps(conceptMaps.units),
    stripTexts: maps(conceptMaps.stripTexts),
  };
}

interface Checked<T> {
  readonly text: string;
  readonly value: T;
}

function checked<T>(file: string, text: string | undefined, shape: z.ZodType<T>): Checked<T> {
  if (text === undefined) throw new SiteError(`${file}: the file is not there`);
  const value = parsed(file, text);
  const result = shape.safeParse(value);
  if (result.success) return { text, value: result.data };
  const faults = result.error.issues.map(({ path, message, ...issue }) => {
    const keys = 'keys' in issue && Array.isArray(issue.keys) ? issue.keys.map(String) : [];
    const place = [...path, ...keys.slice(0, 1)].filter((step) => typeof step !== 'symbol');
    return `${file}:${lineOf(text, place)}: ${place.join('.')}: ${message}`;
  });
  throw new SiteError(faults.join('\n'));
}

function parsed(file: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const position = /position (\d+)/.exec(error instanceof Error ? error.message : '')?.[1];
    const line = text.slice(0, Number(position ?? text.length)).split('\n').length;
    throw new SiteError(`${file}:${line}: it is not JSON`);
  }
}

type Settings = Omit<SiteSetup, 'codes' | 'units' | 'stripTexts'>;

function settingsOf(site: SiteJson): Settings {
  const levels = site.levels ?? [];
  const level = levels.find((each) => each.id === site.level) ?? levels[0];
  const next = levels.find((each) => each.id === level?.next)?.title;
  return {
    name: site.name,
    strict: site.strict ?? false,
    performers: performersOf(site.referral ?? {}),
    ...(site.guideline === undefined ? {} : { guideline: site.guideline }),
    ...(site.language === undefined ? {} : { language: site.language }),
    ...(site.timeZone === undefined ? {} : { timeZone: site.timeZone }),
    ...(site.pressureUnit === undefined ? {} : { pressureUnit: site.pressureUnit }),
    ...(level === undefined ? {} : { level: { can: level.can, ...(next === undefined ? {} : { next }) } }),
  };
}

function performersOf(referral: NonNullable<SiteJson['referral']>): SiteSetup['performers'] {
  return new Map(
    Object.entries(referral).flatMap(([level, target]): [string, Performer][] => {
      if (target === undefined) return [];
      const { reference, display } = target;
      return [[level, display === undefined ? { reference } : { reference, display }]];
    }),
  );
}

interface NamedMap extends Checked<ConceptMapJson> {
  readonly file: string;
}

/** Only equal and equivalent targets; by system and code. */
function joined(files: readonly NamedMap[]): CodeMap {
  const all = new Map<string, Mapping>();
  for (const each of files) {
    const { value } = each;
    const name = value.version === undefined ? value.url : `${value.url}|${value.version}`;
    value.group.forEach((group, groupAt) => {
      group.element.forEach((element, elementAt) => {
        const target = element.target?.find(({ equivalence }) =>
          ['equal', 'equivalent'].includes(equivalence),
        );
        if (target?.code === undefined) return;
        const key = mapKey(group.source, element.code);
        const known = all.get(key);
        if (known !== undefined && (known.code !== target.code || known.system !== group.target)) {
          const line = lineOf(each.text, ['group', groupAt, 'element', elementAt]);
          throw new SiteError(`${each.file}:${line}: this code is mapped twice, and differently`);
        }
        const display = target.display === undefined ? {} : { display: target.display };
        all.set(key, { system: group.target, code: target.code, ...display, map: name });
      });
    });
  }
  return all;
}

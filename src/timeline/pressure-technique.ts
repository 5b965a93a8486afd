// How and where a blood pressure was taken, as far as recorded. Hands on technique, arm and setting.
import type { Received } from '../bundle/read-bundle-types.ts';
import { loinc } from '../terminology/loinc.ts';
import { snomed } from '../terminology/snomed.ts';
import { systems } from '../terminology/systems.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import type { TimelineContext } from './context.ts';
import type { Coding, Fields } from './fields.ts';
import { codingsOf, fieldsOf, listOf, textOf, wordingOf } from './fields.ts';
import { disturbancesIn } from './pressure-disturbance.ts';
import { readQuantity } from './quantity.ts';
import type { Technique } from './timeline.ts';
import type { Writable } from './writable.ts';

type Arm = 'left' | 'right';

export interface Circumstances {
  readonly technique: Technique;
  readonly arm?: Arm;
  /** Where a code says it was taken. */
  readonly place?: 'home' | 'clinic';
}

interface Trait {
  readonly position?: NonNullable<Technique['position']>;
  readonly method?: NonNullable<Technique['method']>;
  readonly arm?: Arm;
  readonly place?: 'home' | 'clinic';
}

const traitsBySnomed = {
  'body-position-sitting': { position: 'sitting' },
  'body-position-standing': { position: 'standing' },
  'body-position-supine': { position: 'supine' },
  'body-position-recumbent': { position: 'recumbent' },
  'body-position-left-lateral': { position: 'left-lateral' },
  'blood-pressure-sitting': { position: 'sitting' },
  'blood-pressure-lying': { position: 'recumbent' },
  'bp-method-auscultation': { method: 'auscultation' },
  'bp-method-palpation': { method: 'palpation' },
  'bp-method-oscillometry': { method: 'oscillometry' },
  'bp-method-invasive': { method: 'invasive' },
  'body-site-left-upper-arm': { arm: 'left' },
  'body-site-left-brachial-artery': { arm: 'left' },
  'body-site-right-upper-arm': { arm: 'right' },
  'body-site-right-brachial-artery': { arm: 'right' },
  'bp-setting-home': { place: 'home' },
  'home-blood-pressure-monitoring': { place: 'home' },
  'bp-setting-clinic': { place: 'clinic' },
  'bp-setting-hospital': { place: 'clinic' },
} as const satisfies Partial<Record<keyof typeof snomed, Trait>>;

const traitIndex = indexCodes(
  Object.entries<Trait>(traitsBySnomed).flatMap(([concept, trait]) =>
    rowsOf(snomed, concept).map(({ code }) => ({ system: systems.snomed, code, trait })),
  ),
);

/** Codes of what tells how a pressure was taken: as a component, or in an observation beside it. */
export const circumstanceCodes = (
  [
    ['arm-circumference', 'arm-circumference'],
    ['body-position', 'position'],
    ['blood-pressure-cuff-size', 'cuff'],
    ['blood-pressure-measurement-site', 'site'],
    ['blood-pressure-device-type', 'device'],
  ] as const
).flatMap(([concept, detail]) => loinc[concept].map(({ code }) => ({ system: systems.loinc, code, detail })));

const detailIndex = indexCodes(circumstanceCodes);

const cuffIndex = indexCodes(
  (
    [
      ['bp-cuff-adult', 'adult'],
      ['bp-cuff-paediatric', 'paediatric'],
    ] as const
  ).flatMap(([concept, cuff]) => snomed[concept].map(({ code }) => ({ system: systems.snomed, code, cuff }))),
);

function rowsOf(table: Readonly<Record<string, readonly { readonly code: string }[]>>, concept: string) {
  return table[concept] ?? [];
}

/**
 * How was this pressure taken?
 *
 * Given    received  an observation of blood pressure
 *          others    its components that hold no pressure
 *          context   the bundle, for a device it refers to
 * Returns  what is recorded of position, method, cuff, arm, device, rest, observer, site, and a place that
 *          a code names; nothing for what is not recorded
 * Throws   never
 * Notes    1. Looked for in the code, category, method, body site, extensions and components, in any order.
 *          2. An arm is also taken from the words left or right, when only one of them is there.
 * Source   terminology.md section 1b; fhir checklist F-P10.
 */
export function circumstancesOf(
  received: Received,
  others: readonly Fields[],
  context: TimelineContext,
): Circumstances {
  const fields = fieldsOf(received.resource);
  const traits = traitsOf(fields, listOf(fields['component']));
  const details = others.map(detailsOf);
  const site = wordingOf(fields['bodySite']);
  const device = deviceOf(received, fields, context);
  const observer = observerOf(fields);
  const disturbances = disturbancesIn(received.resource);
  const technique: Writable<Technique> = {};
  for (const detail of details) Object.assign(technique, detail.technique);
  if (site !== undefined) technique.site = site;
  if (device !== undefined) technique.device = device;
  if (observer !== undefined) technique.observer = observer;
  if (disturbances.length > 0) technique.disturbances = disturbances;
  if (traits.position !== undefined) technique.position = traits.position;
  if (traits.method !== undefined) technique.method = traits.method;
  const circumstances: Writable<Circumstances> = { technique };
  const arm = traits.arm ?? armIn(site) ?? details.find((detail) => detail.arm !== undefined)?.arm;
  if (arm !== undefined) circumstances.arm = arm;
  if (traits.place !== undefined) circumstances.place = traits.place;
  return circumstances;
}

/** What a stand-alone observation says of how a pressure of its time was taken; undefined for any other. */
export function techniqueBeside(fields: Fields): Technique | undefined {
  if (rowsFor(codingsOf(fields['code']), detailIndex).length === 0) return undefined;
  const { position } = traitsOf({}, [fields]);
  return { ...detailsOf(fields).technique, ...(position === undefined ? {} : { position }) };
}

const noTrait: Trait = {};

function traitsOf(fields: Fields, components: readonly Fields[]): Trait {
  const traits: Trait[] = [];
  const lookAt = (concept: unknown): void => {
    if (concept === undefined) return;
    for (const { trait } of rowsFor(codingsOf(concept), traitIndex)) traits.push(trait);
  };
  lookAt(fields['code']);
  lookAt(fields['method']);
  lookAt(fields['bodySite']);
  listOf(fields['category']).forEach(lookAt);
  extensionConcepts(fields).forEach(lookAt);
  for (const component of components) {
    lookAt(component['valueCodeableConcept']);
    extensionConcepts(component).forEach(lookAt);
  }
  if (traits.length === 0) return noTrait;
  const merged = traits.reduceRight<Trait>((later, trait) => ({ ...later, ...trait }), {});
  return traits.some((trait) => trait.place === 'home') ? { ...merged, place: 'home' } : merged;
}

const noConcepts: readonly unknown[] = [];

function extensionConcepts(fields: Fields): readonly unknown[] {
  if (fields['extension'] === undefined) return noConcepts;
  return listOf(fields['extension']).map(
    (extension) => extension['valueCodeableConcept'] ?? { coding: extension['valueCoding'] },
  );
}

interface Detail {
  readonly technique: Technique;
  readonly arm?: Arm;
}

function detailsOf(component: Fields): Detail {
  const codings = codingsOf(component['code']);
  const wording = wordingOf(component['valueCodeableConcept']) ?? textOf(component['valueString']);
  const detail = rowsFor(codings, detailIndex)[0]?.detail;
  if (detail === undefined) return { technique: namedDetail(component, codings) };
  if (detail === 'cuff') return { technique: cuffOf(component, wording) };
  if (detail === 'arm-circumference') return { technique: armOf(component) };
  if (wording === undefined || detail === 'position') return { technique: {} };
  if (detail === 'device') return { technique: { device: wording } };
  const arm = armIn(wording);
  return { technique: { site: wording }, ...(arm === undefined ? {} : { arm }) };
}

function cuffOf(component: Fields, wording: string | undefined): Technique {
  const cuffCm = amount(component, 'length');
  if (cuffCm !== undefined) return { cuffCm };
  const cuff = wording ?? rowsFor(codingsOf(component['valueCodeableConcept']), cuffIndex)[0]?.cuff;
  return cuff === undefined ? {} : { cuff };
}

function armOf(component: Fields): Technique {
  const armCircumferenceCm = amount(component, 'length');
  return armCircumferenceCm === undefined ? {} : { armCircumferenceCm };
}

/** Arm circumference under another code, and minutes of rest, which have none: known by their words. */
function namedDetail(component: Fields, codings: readonly Coding[]): Technique {
  const name = textOf(fieldsOf(component['code'])['text']) ?? codings[0]?.display ?? '';
  if (/\barm\b.*circumference|circumference.*\barm\b/i.test(name)) return armOf(component);
  if (!/\brest(ed|ing)?\b/i.test(name)) return {};
  const restMinutes = amount(component, 'duration');
  return restMinutes === undefined ? {} : { restMinutes };
}

function amount(component: Fields, kind: 'length' | 'duration'): number | undefined {
  const read = readQuantity(component['valueQuantity'], kind);
  return read.kind === 'usable' ? read.byUnit.values[kind === 'length' ? 'cm' : 'min'] : undefined;
}

function deviceOf(received: Received, fields: Fields, context: TimelineContext): string | undefined {
  if (fields['device'] === undefined) return undefined;
  const reference = fieldsOf(fields['device']);
  const resource = fieldsOf(context.bundle.resolve(reference, received)?.resource);
  const name = textOf(listOf(resource['deviceName'])[0]?.['name']);
  return (
    textOf(reference['display']) ?? name ?? wordingOf(resource['type']) ?? textOf(reference['reference'])
  );
}

function observerOf(fields: Fields): string | undefined {
  const performer = listOf(fields['performer'])[0];
  return textOf(performer?.['reference']) ?? textOf(performer?.['display']);
}

function armIn(text: string | undefined): Arm | undefined {
  if (text === undefined) return undefined;
  const isLeft = /\bleft\b/i.test(text);
  const isRight = /\bright\b/i.test(text);
  if (isLeft === isRight) return undefined;
  return isLeft ? 'left' : 'right';
}

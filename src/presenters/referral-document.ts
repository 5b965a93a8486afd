// The referral note as a FHIR document for the receiving site: a Composition, the woman, and what is proposed.
import type {
  Bundle,
  Composition,
  CompositionSection,
  Device,
  FhirResource,
  Patient,
  ServiceRequest,
} from 'fhir/r4.js';
import type { Evaluation } from '../evaluation.ts';
import type { NotePart, ReferralNote } from './referral-note.ts';
import { stableUuid } from './stable-uuid.ts';
import { toSuggestions } from './suggestions.ts';
import { traced } from './trace-back.ts';

/**
 * The note as a Bundle of type document.
 *
 * Given    evaluation   the answer
 *          note         as `toReferralNote` gives it for the same answer
 *          patient      the woman's own resource, where the caller has it
 * Returns  Composition first (preliminary: a clinician signs it), then Patient, the Device that wrote it, the proposed
 *          Conditions and the referral
 * Throws   never
 * Notes    1. Readings stand in the narrative; their resources stay where they are.
 *          2. Without the woman's resource a Patient with name and birth date, as far as known, takes its place.
 * Source   FHIR R4 Documents and Composition; LOINC 57133-1 "Referral note", from memory
 */
export function toReferralDocument(
  evaluation: Evaluation,
  note: ReferralNote,
  patient?: Patient,
): Bundle<FhirResource> {
  const { stamp, asOf, subject } = evaluation;
  const uuid = (kind: string): string => stableUuid([kind, stamp.fingerprint, subject ?? '', asOf]);
  const woman = patient ?? patientOf(note, uuid('Patient'));
  const device: Device & { id: string } = {
    resourceType: 'Device',
    id: uuid('Device'),
    deviceName: [{ name: 'pregnancy-htn', type: 'user-friendly-name' }],
    version: [{ value: stamp.version }],
  };
  const { conditions, referral } = toSuggestions(evaluation);
  const womanUrn = urn(uuid('Patient'));
  const about = { subject: { reference: womanUrn } };
  const proposed = [
    ...conditions.map(({ resource }) => ({ ...resource, ...about })),
    ...(referral === undefined ? [] : [{ ...withinDocument(referral, conditions), ...about }]),
  ];
  const composition: Composition & { id: string } = {
    resourceType: 'Composition',
    id: uuid('Composition'),
    meta: traced(stamp),
    status: 'preliminary',
    type: { coding: [{ system: 'http://loinc.org', code: '57133-1', display: 'Referral note' }] },
    ...about,
    date: asOf,
    author: [{ reference: urn(device.id) }],
    title: note.title,
    section: sectionsOf(
      note,
      proposed.map(({ id }) => urn(id)),
    ),
  };
  return {
    resourceType: 'Bundle',
    type: 'document',
    identifier: { system: 'urn:ietf:rfc:3986', value: urn(uuid('Bundle')) },
    timestamp: asOf,
    entry: [
      { fullUrl: urn(composition.id), resource: composition },
      { fullUrl: womanUrn, resource: woman },
      { fullUrl: urn(device.id), resource: device },
      ...proposed.map((resource) => ({ fullUrl: urn(resource.id), resource })),
    ],
  };
}

/** The reasons of the referral point to the Conditions beside it: a document resolves within itself. */
function withinDocument<Request extends ServiceRequest>(
  referral: Request,
  conditions: readonly { readonly resource: { readonly id: string } }[],
): Request {
  const addresses = new Map(conditions.map(({ resource: { id } }) => [`Condition/${id}`, urn(id)]));
  const inside = referral.reasonReference?.map((reason) => {
    const address = addresses.get(reason.reference ?? '');
    return address === undefined ? reason : { ...reason, reference: address };
  });
  return inside === undefined ? referral : { ...referral, reasonReference: inside };
}

const urn = (id: string): string => `urn:uuid:${id}`;

function patientOf({ person }: ReferralNote, id: string): Patient {
  const { name, birthDate } = person;
  return {
    resourceType: 'Patient',
    id,
    ...(name === undefined ? {} : { name: [{ text: name }] }),
    ...(birthDate === undefined ? {} : { birthDate }),
  };
}

function sectionsOf(note: ReferralNote, proposed: readonly string[]): CompositionSection[] {
  const sections = note.sections.map(({ id, title, parts }): CompositionSection => {
    const entries = id === 'recommendation' ? proposed.map((reference) => ({ reference })) : [];
    return {
      title,
      text: narrative(parts.flatMap(partMarkup).join('')),
      ...(entries.length === 0 ? {} : { entry: entries }),
    };
  });
  return [...sections, { title: 'Caution', text: narrative(listMarkup(note.cautions)) }];
}

function narrative(markup: string): { status: 'generated'; div: string } {
  return { status: 'generated', div: `<div xmlns="http://www.w3.org/1999/xhtml">${markup}</div>` };
}

const partMarkup = ({ heading, lines }: NotePart): readonly string[] => [
  `<p><b>${escaped(heading)}</b></p>`,
  listMarkup(lines),
];

const listMarkup = (lines: readonly string[]): string =>
  `<ul>${lines.map((line) => `<li>${escaped(line)}</li>`).join('')}</ul>`;

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

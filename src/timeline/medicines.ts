// Medicines taken, ordered or given, as the agents a rule asks for.
import type { MedicationAdministration, MedicationRequest, MedicationStatement } from 'fhir/r4.js';
import type { Received } from '../bundle/read-bundle-types.ts';
import { sublingual } from '../terminology/medicine-codes.ts';
import { reportMissingSystem } from './coded-value.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { codingsOf, fieldsOf, isFields, listOf, textOf, wordingOf, type Fields } from './fields.ts';
import { agentsNamed, isUnknownMedicine, medicinesOf, medicineWords, type Agents } from './medicine-names.ts';
import { courseOf, type Course } from './medicine-course.ts';
import { sourceOf } from './source.ts';
import type { Medicine } from './timeline.ts';
import { notAsked, unusable, type NotAsked } from './unusable.ts';

export type MedicineResource = MedicationStatement | MedicationRequest | MedicationAdministration;

/**
 * Which agents does she take, has she been ordered, or was she given?
 *
 * Given    received  a medication statement, request or administration
 *          context   finds the Medication; `asOf`, zone of the facility
 * Returns  one entry per agent or class
 *          not-needed  not in our list, not given, or an order not to give it
 *          unusable    reference-unresolved, code-missing, code-unknown (it may be one of ours), value-ambiguous
 *                      (medicine sent twice), status-not-usable
 * Throws   never
 * Notes    1. A combination counts for each of its agents.
 *          2. A name counts only when no code is recognised; that is reported.
 *          3. Nifedipine under the tongue is an entry more, beside nifedipine.
 * Source   fhir checklist F-M02; terminology.md section 9.
 */
export function readMedicines(
  received: Received<MedicineResource>,
  context: TimelineContext,
): readonly Medicine[] | NotAsked | Unusable {
  const fields = fieldsOf(received.resource);
  const named = readNamed(received, fields, context);
  if ('code' in named) return named;
  if (named.agents.medicines.length === 0) return named.isOpen ? unknownCode : notAsked(notOurs);
  const course = courseOf(fields, context);
  if ('kind' in course) return course;
  if (named.agents.byName) reportByName(received, context);
  return entries(received, fields, named, course);
}

const notOurs = 'This medicine is not in our list.';
const unknownCode = unusable(
  'code-unknown',
  'medication',
  'The code of this medicine is not known here, and no name was sent. Send its ATC or ingredient code, or its name.',
);

interface Named {
  readonly agents: Agents;
  readonly wording: string;
  /** No agent was recognised, and it may be one of ours: a code without a name. */
  readonly isOpen: boolean;
}

function readNamed(received: Received, fields: Fields, context: TimelineContext): Named | Unusable {
  const concept = fields['medicationCodeableConcept'];
  const reference = fields['medicationReference'];
  if (concept !== undefined && reference !== undefined) {
    return unusable(
      'value-ambiguous',
      'medicationReference',
      'The medicine was sent twice. Send one medication[x].',
    );
  }
  if (isFields(concept)) {
    reportMissingSystem(received, concept, 'medicationCodeableConcept', context);
    return namedBy(medicinesOf(concept), wordingOf(concept), [concept]);
  }
  if (isFields(reference)) return readReferenced(received, reference, context);
  return unusable(
    'code-missing',
    'medicationCodeableConcept',
    'The medicine is not named. Send its ATC, RxNorm or SNOMED CT code.',
  );
}

function readReferenced(received: Received, reference: Fields, context: TimelineContext): Named | Unusable {
  const medication = context.bundle.resolve(reference, received);
  const display = textOf(reference['display']);
  if (medication === undefined) {
    return display === undefined
      ? unusable(
          'reference-unresolved',
          'medicationReference',
          'The Medication is not in the bundle. Send it, or name the medicine by code.',
        )
      : namedBy(agentsNamed(display), display, []);
  }
  const fields = fieldsOf(medication.resource);
  const ingredients = listOf(fields['ingredient']).map((ingredient) => ingredient['itemCodeableConcept']);
  const found = [fields['code'], ...ingredients].map(medicinesOf);
  const coded = found.filter((agents) => !agents.byName && agents.medicines.length > 0);
  const counted = coded.length > 0 ? coded : found;
  const agents = {
    medicines: [...new Set(counted.flatMap(({ medicines }) => medicines))],
    byName: coded.length === 0 && found.some(({ byName }) => byName),
  };
  return namedBy(agents, wordingOf(fields['code']) ?? display, [fields['code'], ...ingredients]);
}

/** Where no wording was sent, the agents as we name them, with the code. */
function namedBy(agents: Agents, wording: string | undefined, concepts: readonly unknown[]): Named {
  const isOpen = wording === undefined && concepts.some(isUnknownMedicine);
  if (wording !== undefined) return { agents, wording, isOpen };
  const code = concepts.map(codeOf).find((each) => each !== '');
  return {
    agents,
    wording: `${medicineWords(agents.medicines)}${code === undefined ? '' : ` (${code})`}`,
    isOpen,
  };
}

const codeOf = (concept: unknown): string =>
  codingsOf(concept).find(({ code }) => code !== undefined)?.code ?? '';

function entries(received: Received, fields: Fields, named: Named, course: Course): readonly Medicine[] {
  const route = routeOf(fields);
  const { medicines } = named.agents;
  const isUnderTheTongue = route?.isSublingual === true && medicines.includes('nifedipine');
  const all = isUnderTheTongue ? [...medicines, 'sublingual-nifedipine' as const] : medicines;
  return all.map((medicine) => ({
    medicine,
    status: course.status,
    ...(fields['resourceType'] === 'MedicationRequest' ? { isOrder: true as const } : {}),
    asSent: named.wording,
    source: sourceOf(received),
    ...(course.start === undefined ? {} : { start: course.start }),
    ...(course.end === undefined ? {} : { end: course.end }),
    ...(route === undefined ? {} : { route: route.wording }),
  }));
}

interface Route {
  readonly wording: string;
  readonly isSublingual: boolean;
}

const sublingualCodes: ReadonlySet<string> = new Set(sublingual.codes);

// Statements and administrations say `dosage`, requests `dosageInstruction`.
function routeOf(fields: Fields): Route | undefined {
  const dosages = [...listOf(fields['dosage']), ...listOf(fields['dosageInstruction'])];
  const written = dosages
    .map((dosage) => textOf(dosage['text']) ?? textOf(dosage['patientInstruction']) ?? '')
    .join('; ');
  const routes = dosages.map((dosage) => dosage['route']).filter(isFields);
  const wording = routes.flatMap((route) => wordingOf(route) ?? codeOf(route)).join(', ');
  const isSublingual =
    routes.some((route) =>
      codingsOf(route).some(({ code }) => code !== undefined && sublingualCodes.has(code)),
    ) ||
    sublingual.word.test(wording) ||
    sublingual.word.test(written);
  if (wording === '' && !isSublingual) return undefined;
  return { wording: wording === '' ? 'sublingual' : wording, isSublingual };
}

function reportByName(received: Received, context: TimelineContext): void {
  context.issue(received, {
    severity: 'warning',
    code: 'recognised-by-name',
    type: 'code-invalid',
    element: 'medication',
    message:
      'The medicine was recognised by its name only. Send its ATC, RxNorm ingredient or SNOMED CT code.',
  });
}

// Which agents a medicine contains: by code, or by name when no code is recognised.
import type { MedicineId } from '../guidelines/guideline.ts';
import { medicineCodes, medicineNames } from '../terminology/medicine-codes.ts';
import { systems } from '../terminology/systems.ts';
import { classifiedRows, indexClassified } from './classified-codes.ts';
import { canonicalSystem } from './coded-value.ts';
import { codingsOf, fieldsOf, textOf, wordingOf } from './fields.ts';

interface MedicineRow {
  readonly system: string;
  readonly code: string;
  readonly medicines: readonly MedicineId[];
}

const rows: readonly MedicineRow[] = medicineCodes;
const index = indexClassified(rows);

// A name must stand as a word of its own: hydralazine is not found inside dihydralazine.
const names = medicineNames.flatMap((row) =>
  row.names.map((name): { readonly word: RegExp; readonly medicines: readonly MedicineId[] } => ({
    word: new RegExp(`(?:^|[^\\p{L}])${name}(?:$|[^\\p{L}])`, 'u'),
    medicines: row.medicines,
  })),
);

export interface Agents {
  readonly medicines: readonly MedicineId[];
  /** Recognised by its name only. */
  readonly byName: boolean;
}

/**
 * Which agents does this concept name?
 *
 * Given    concept  a CodeableConcept as sent
 * Returns  every agent and class that a rule asks for, each once; empty when none
 * Throws   never
 * Notes    1. A product of several agents counts for each.
 *          2. Text and displays count only when no coding is recognised: product codes carry their agents only there.
 * Source   terminology.md section 9.
 */
export function medicinesOf(concept: unknown): Agents {
  const coded = classifiedRows(concept, index).flatMap((row) => row.medicines);
  if (coded.length > 0) return { medicines: [...new Set(coded)], byName: false };
  const wordings = [textOf(fieldsOf(concept)['text']), ...codingsOf(concept).map(({ display }) => display)];
  return agentsNamed(wordings.flatMap((wording) => wording ?? []).join('; '));
}

/** The agents a text names. */
export function agentsNamed(text: string): Agents {
  const plain = text.toLowerCase();
  const named = names.filter(({ word }) => word.test(plain)).flatMap(({ medicines }) => medicines);
  return { medicines: [...new Set(named)], byName: named.length > 0 };
}

const wholeAtcCode = /^[A-Z]\d\d[A-Z]{2}\d\d$/;

/**
 * May this be one of our medicines, though no code of it is in our list?
 *
 * Returns  true for a code without any name; false for a whole ATC code, which names its substance and is not ours
 */
export function isUnknownMedicine(concept: unknown): boolean {
  const codings = codingsOf(concept);
  if (wordingOf(concept) !== undefined || classifiedRows(concept, index).length > 0) return false;
  return (
    codings.some(({ code }) => code !== undefined) &&
    !codings.some(
      ({ system, code }) => canonicalSystem(system) === systems.atc && wholeAtcCode.test(code?.trim() ?? ''),
    )
  );
}

const inCapitals: ReadonlyMap<string, string> = new Map([
  ['ace-inhibitor', 'ACE inhibitor'],
  ['nsaid', 'NSAID'],
]);

/** Agents as people name them; a class goes unsaid where the agent itself is known. */
export function medicineWords(medicines: readonly MedicineId[]): string {
  const agents = medicines.filter(
    (medicine) => medicine !== 'ace-inhibitor' || !medicines.some((one) => aceInhibitors.has(one)),
  );
  return agents.map((medicine) => inCapitals.get(medicine) ?? medicine.replaceAll('-', ' ')).join(', ');
}

const aceInhibitors: ReadonlySet<MedicineId> = new Set<MedicineId>(['enalapril', 'captopril']);

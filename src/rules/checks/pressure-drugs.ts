// Drugs that lower the pressure: was one given between two moments?
import type { Evidence } from '../../findings/finding.ts';
import type { MedicineId } from '../../guidelines/guideline.ts';
import type { Medicine, Moment } from '../../timeline/timeline.ts';
import { ofFact } from '../answer.ts';
import type { View } from '../view.ts';

export const pressureDrugs: ReadonlySet<MedicineId> = new Set<MedicineId>([
  'labetalol',
  'nifedipine',
  'sublingual-nifedipine',
  'amlodipine',
  'nicardipine',
  'methyldopa',
  'hydralazine',
  'dihydralazine',
  'ace-inhibitor',
  'angiotensin-receptor-blocker',
  'renin-inhibitor',
  'neprilysin-inhibitor',
  'aldosterone-antagonist',
  'atenolol',
  'other-beta-blocker',
  'other-antihypertensive',
  'thiazide',
  'enalapril',
  'captopril',
]);

/** A drug for pressure given, or begun, after `from` and not after `to`; no `to`: up to now. */
export function pressureDrugBetween(view: View, from: Moment, to?: Moment): Evidence | undefined {
  const drug = view.timeline.medicines.find(
    (medicine) =>
      pressureDrugs.has(medicine.medicine) &&
      medicine.status !== 'ordered' &&
      medicine.start !== undefined &&
      medicine.start.earliest >= from.earliest &&
      medicine.start.precision === 'minute' &&
      (to === undefined || medicine.start.earliest <= to.earliest),
  );
  return drug === undefined ? undefined : ofMedicine(drug);
}

export const ofMedicine = (medicine: Medicine): Evidence => ofFact('medicine', medicine, medicine.start);

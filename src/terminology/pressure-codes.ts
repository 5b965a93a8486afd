// Which codes hold a blood pressure, which half, and whether a classification may rest on it. Data only.
import type { SystemCode } from './code-row.ts';
import { systems } from './systems.ts';

/** What a code of a pressure value stands for. */
export interface PressureCode extends SystemCode {
  readonly half: 'systolic' | 'diastolic';
  /** One reading, an average of several, an average over 24 hours, or a value no classification may rest on. */
  readonly use: 'reading' | 'mean-of-readings' | 'mean-24h' | 'not-usable';
  /** Why it is not usable, in words. */
  readonly why?: string;
  readonly position?: 'sitting' | 'supine' | 'left-lateral';
  readonly method?: 'palpation';
  readonly setting?: 'home';
}

export interface PressurePanelCode extends SystemCode {
  readonly holds: 'reading' | 'mean-of-readings' | 'mean-24h' | 'vital-signs';
}

const l = { system: systems.loinc, known: 'read' } as const;
const s = { system: systems.snomed, known: 'read' } as const;
const invasive = 'an invasive pressure is not a cuff pressure';
const continuous = 'a continuous pressure is not a cuff pressure';
const standing = 'a pressure taken standing is not used for classification';
const arterial = 'a mean arterial pressure is neither systolic nor diastolic';

/** Source: terminology.csv; what is usable: terminology.md, rules of section 1. */
export const pressureCodes: readonly PressureCode[] = [
  { ...l, code: '8480-6', half: 'systolic', use: 'reading' },
  { ...l, code: '8462-4', half: 'diastolic', use: 'reading' },
  { ...l, code: '8459-0', half: 'systolic', use: 'reading', position: 'sitting' },
  { ...l, code: '8453-3', half: 'diastolic', use: 'reading', position: 'sitting' },
  { ...l, code: '8461-6', half: 'systolic', use: 'reading', position: 'supine' },
  { ...l, code: '8455-8', half: 'diastolic', use: 'reading', position: 'supine' },
  { ...l, code: '89268-7', half: 'systolic', use: 'reading', position: 'left-lateral' },
  { ...l, code: '89267-9', half: 'diastolic', use: 'reading', position: 'left-lateral' },
  { ...l, code: '76534-7', half: 'systolic', use: 'reading' },
  { ...l, code: '76535-4', half: 'diastolic', use: 'reading' },
  { ...l, code: '11378-7', half: 'systolic', use: 'reading' },
  // No diastolic partner exists: it can raise an alarm and never rule hypertension out.
  { ...l, code: '8479-8', half: 'systolic', use: 'reading', method: 'palpation' },
  { ...l, code: '96608-5', half: 'systolic', use: 'mean-of-readings' },
  { ...l, code: '96609-3', half: 'diastolic', use: 'mean-of-readings' },
  { ...l, code: '8490-5', half: 'systolic', use: 'mean-24h' },
  { ...l, code: '8472-3', half: 'diastolic', use: 'mean-24h' },
  { ...l, code: '8460-8', half: 'systolic', use: 'not-usable', why: standing },
  { ...l, code: '8454-1', half: 'diastolic', use: 'not-usable', why: standing },
  { ...l, code: '75997-7', half: 'systolic', use: 'not-usable', why: continuous },
  { ...l, code: '75995-1', half: 'diastolic', use: 'not-usable', why: continuous },
  { ...l, code: '76215-3', half: 'systolic', use: 'not-usable', why: invasive },
  { ...l, code: '76213-8', half: 'diastolic', use: 'not-usable', why: invasive },
  { ...s, code: '271649006', half: 'systolic', use: 'reading' },
  { ...s, code: '72313002', half: 'systolic', use: 'reading' },
  { ...s, code: '271650006', half: 'diastolic', use: 'reading' },
  { ...s, code: '407554009', half: 'systolic', use: 'reading', position: 'sitting' },
  { ...s, code: '314440001', half: 'systolic', use: 'mean-of-readings' },
  { ...s, code: '314453003', half: 'diastolic', use: 'mean-of-readings' },
  { ...s, code: '413606001', half: 'systolic', use: 'mean-of-readings', setting: 'home' },
  {
    ...s,
    code: '413605002',
    half: 'diastolic',
    use: 'mean-of-readings',
    setting: 'home',
    known: 'from-memory',
  },
];

/** Panels hold their pressures as components or members. */
export const pressurePanelCodes: readonly PressurePanelCode[] = [
  { ...l, code: '85354-9', holds: 'reading' },
  { ...l, code: '55284-4', holds: 'reading' },
  { ...l, code: '35094-2', holds: 'reading' },
  { ...l, code: '55417-0', holds: 'reading' },
  { ...l, code: '96607-7', holds: 'mean-of-readings' },
  { ...l, code: '97844-5', holds: 'mean-24h' },
  { ...l, code: '85353-1', holds: 'vital-signs' },
  { ...s, code: '75367002', holds: 'reading' },
  { ...s, code: '163035008', holds: 'reading', note: 'sitting' },
  { ...s, code: '163033001', holds: 'reading', note: 'lying' },
];

/** Mean arterial pressure and standing panels: recognised, and not used. */
export const unusedPressureCodes: readonly (SystemCode & { readonly why: string })[] = [
  { ...l, code: '8478-0', why: arterial },
  { ...s, code: '6797001', why: arterial },
  { ...s, code: '163034007', why: standing },
];

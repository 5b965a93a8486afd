// Codes and words that say that something is there, is not there, or was not found out. Data only.
import type { SystemCode } from './code-row.ts';
import { systems } from './systems.ts';

export interface PresenceCode extends SystemCode {
  readonly says: 'present' | 'absent' | 'unknown';
}

const s = { system: systems.snomed } as const;
const l = { system: systems.loinc } as const;
const v3 = { system: systems.interpretation, known: 'from-memory' } as const;
const v2 = { system: systems.yesNo, known: 'from-memory' } as const;
const memory = { known: 'from-memory' } as const;
const read = { known: 'read' } as const;

export const presenceCodes: readonly PresenceCode[] = [
  { ...s, ...memory, code: '52101004', says: 'present' },
  { ...s, ...memory, code: '373066001', says: 'present' },
  { ...s, ...memory, code: '410515003', says: 'present' },
  { ...s, ...memory, code: '260373001', says: 'present' },
  { ...s, ...read, code: '10828004', display: 'Positive (qualifier value)', says: 'present' },
  { ...s, ...read, code: '2667000', display: 'Absent (qualifier value)', says: 'absent' },
  { ...s, ...memory, code: '373067005', says: 'absent' },
  { ...s, ...memory, code: '410516002', says: 'absent' },
  { ...s, ...read, code: '260385009', display: 'Negative (qualifier value)', says: 'absent' },
  { ...s, ...read, code: '260415000', display: 'Not detected (qualifier value)', says: 'absent' },
  { ...s, ...memory, code: '261665006', says: 'unknown' },
  { ...l, ...memory, code: 'LA33-6', display: 'Yes', says: 'present' },
  { ...l, ...memory, code: 'LA9633-4', display: 'Present', says: 'present' },
  { ...l, ...read, code: 'LA6576-8', display: 'Positive', says: 'present' },
  { ...l, ...memory, code: 'LA32-8', display: 'No', says: 'absent' },
  { ...l, ...memory, code: 'LA9634-2', display: 'Absent', says: 'absent' },
  { ...l, ...read, code: 'LA6577-6', display: 'Negative', says: 'absent' },
  { ...l, ...read, code: 'LA11883-8', display: 'Not detected', says: 'absent' },
  { ...l, ...memory, code: 'LA4489-6', display: 'Unknown', says: 'unknown' },
  { ...v3, code: 'POS', says: 'present' },
  { ...v3, code: 'DET', says: 'present' },
  { ...v3, code: 'NEG', says: 'absent' },
  { ...v3, code: 'ND', says: 'absent' },
  { ...v2, code: 'Y', says: 'present' },
  { ...v2, code: 'N', says: 'absent' },
];

/** Words, lower case, for a value that is text only. From memory. */
export const presenceWords: Readonly<Record<PresenceCode['says'], readonly string[]>> = {
  present: [
    'present',
    'yes',
    'y',
    'true',
    'positive',
    'pos',
    '+',
    '+ve',
    'detected',
    'oui',
    'si',
    'sí',
    'sim',
    'ya',
    'ndiyo',
  ],
  absent: [
    'absent',
    'no',
    'n',
    'false',
    'none',
    'nil',
    'negative',
    'neg',
    '-',
    '-ve',
    'not present',
    'not detected',
    'denied',
    'denies',
    'non',
    'não',
    'tidak',
    'hapana',
  ],
  unknown: ['unknown', 'not known', 'not asked', 'unsure', 'n/a', 'not applicable', '?'],
};

// Relatives whose pre-eclampsia counts as a risk. Data only; from memory.
import type { SystemCode } from './code-row.ts';
import { systems } from './systems.ts';

const roles = ['MTH', 'NMTH', 'SIS', 'NSIS', 'HSIS'] as const;

export const familyRelations: { readonly codes: readonly SystemCode[]; readonly words: readonly string[] } = {
  codes: [
    ...roles.map((code): SystemCode => ({ system: systems.roleCode, code, known: 'from-memory' })),
    { system: systems.snomed, code: '72705000', known: 'from-memory' },
    { system: systems.snomed, code: '27733009', known: 'from-memory' },
  ],
  words: ['mother', 'natural mother', 'sister', 'natural sister', 'half-sister'],
};

import type { ConformanceRow } from './check-service.mjs';

export interface ChecklistRow extends ConformanceRow {
  /** Why no test is wanted. */
  readonly withoutTest?: string;
}

export const checklist: readonly ChecklistRow[];

export function checklistWithTests(): readonly (ChecklistRow & {
  readonly isSeenOutside: boolean;
  readonly files: readonly string[];
})[];

export function withTable(text: string): string;

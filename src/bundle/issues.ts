// Wording of the issues that are not the loss of a resource.
import type { Issue } from '../errors.ts';

export function warning(code: string, type: string, expression: string, message: string): Issue {
  return { severity: 'warning', code, type, expression, message };
}

export function information(code: string, type: string, expression: string, message: string): Issue {
  return { severity: 'information', code, type, expression, message };
}

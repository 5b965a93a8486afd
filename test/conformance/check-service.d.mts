export interface ConformanceRow {
  readonly id: string;
  readonly level: string;
  readonly title: string;
}

export interface Result extends ConformanceRow {
  readonly state: 'pass' | 'fail' | 'not-testable';
  readonly reason?: string;
}

/** The key of a client that the service knows. */
export interface ClientKey {
  readonly iss: string;
  readonly kid: string;
  readonly alg: string;
  readonly jwk: object;
}

export const rows: readonly ConformanceRow[];

export function checkService(options: {
  readonly base: string;
  readonly now: number;
  readonly key?: ClientKey | undefined;
  readonly isCounted?: boolean;
  readonly only?: readonly string[];
}): Promise<readonly Result[]>;

import type { ClientKey } from './check-service.mjs';

export interface WrongService {
  readonly base: string;
  readonly point: (
    target: string,
    options?: { readonly key?: ClientKey & { readonly base: string } },
  ) => void;
  /** Chooses the fault of a row; undefined: none. */
  readonly break: (id: string | undefined) => void;
  readonly close: () => Promise<void>;
}

export const faultsWithoutTokens: Readonly<Record<string, object>>;
export const faultsWithTokens: Readonly<Record<string, object>>;

/** Rows that must fail with a fault. */
export function brokenBy(id: string): readonly string[];

export function startWrongService(): Promise<WrongService>;

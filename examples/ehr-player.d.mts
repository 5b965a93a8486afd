import type { Store } from './ehr/fhir-store.mjs';

export interface ShownCard {
  readonly summary: string;
  readonly suggestions?: readonly { readonly label: string }[];
}

export function play(options: {
  readonly base: string;
  readonly store: Store;
  readonly say: (line: string) => void;
}): Promise<{
  readonly before: readonly ShownCard[];
  readonly after: readonly ShownCard[];
  readonly created: readonly string[];
  readonly suggestion: { readonly label: string };
}>;

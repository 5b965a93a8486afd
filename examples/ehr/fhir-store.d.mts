export interface Store {
  /** Saves a chart whose first resource is the Patient; gives the id of that. */
  readonly save: (resources: readonly object[]) => Promise<string>;
  /** Creates all or nothing; gives `Type/id` of each. */
  readonly transaction: (resources: readonly object[]) => Promise<readonly string[]>;
  /** `Patient/1` or `Observation?patient=1&…`; undefined when it cannot be read. */
  readonly get: (query: string) => Promise<unknown>;
}

export function memoryServer(): Store;
export function fhirServer(address: string, token?: string): Store;

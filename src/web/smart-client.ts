// The part of fhirclient that is used. It is loaded as a script of its own and stands on `window.FHIR`.

export interface SmartClient {
  readonly patient: { readonly id: string | null };
  readonly request: (
    query: string,
    options: { readonly pageLimit: number; readonly flat: boolean },
  ) => Promise<unknown>;
}

export interface Smart {
  readonly authorize: (options: {
    readonly clientId: string;
    readonly scope: string;
    readonly redirectUri: string;
    readonly pkceMode: 'required';
    readonly completeInTarget: boolean;
  }) => Promise<unknown>;
  readonly ready: () => Promise<SmartClient>;
}

interface WithSmart {
  readonly FHIR: { readonly oauth2: Smart };
}

const hasSmart = (place: unknown): place is WithSmart =>
  typeof place === 'object' && place !== null && 'FHIR' in place;

export function smart(): Smart {
  const place: unknown = window;
  if (!hasSmart(place)) throw new Error('fhir-client.js was not loaded.');
  return place.FHIR.oauth2;
}

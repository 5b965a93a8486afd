// What the service says about trust when it starts.
import type { Settings } from '../settings.ts';

/**
 * Lines for the operator.
 *
 * Notes    1. Open mode is never silent.
 */
export function startUpLines(settings: Settings): readonly string[] {
  return [...trustLines(settings), fetchLine(settings)];
}

function trustLines(settings: Settings): readonly string[] {
  if (settings.trust === 'open') {
    return [
      '*** OPEN MODE: whoever can reach this port may ask and gets an answer. No client is checked.',
      '*** For real patients set TRUST=jwt, CLIENTS_FILE and PUBLIC_BASE_URL.',
    ];
  }
  const memory = settings.replayStore === 'memory';
  return [
    `Clients are checked: ${settings.clients.length} known, tokens made out to ${settings.publicBaseUrl ?? ''}.`,
    ...(memory
      ? ['Token ids are remembered in this process only; several processes need REPLAY_STORE.']
      : []),
  ];
}

function fetchLine({ trust, fetching, clients }: Settings): string {
  const origins = trust === 'open' ? fetching.origins : clients.flatMap(({ fhirOrigins }) => fhirOrigins);
  return origins.length === 0
    ? 'Nothing is fetched from FHIR servers: none is allowed (FHIR_ORIGINS, or fhirOrigins of a client).'
    : `FHIR servers that may be asked: ${[...new Set(origins)].join(', ')}.`;
}

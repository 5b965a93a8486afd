// The clients file: who may call, how their signatures are checked, and what each may do.
import { dirname, resolve } from 'node:path';
import { z } from 'zod';
import { jwkSetShape, type KeySet } from './key-set-shape.ts';

export interface TrustedClient {
  /** The `iss` of its tokens. */
  readonly issuer: string;
  /** Addresses of its key sets; a token may name one of them and no other. */
  readonly jku: readonly string[];
  /** Its key set as handed over out of band. */
  readonly keys?: KeySet;
  /** FHIR servers it may send the service to. */
  readonly fhirOrigins: readonly string[];
  /** Services it may call; absent: all. */
  readonly services?: readonly string[];
  /** Tenants it may speak for; absent: any, or none. */
  readonly tenants?: readonly string[];
}

const origin = z.string().refine((text) => URL.canParse(text) && new URL(text).origin === text, {
  message: 'write each origin as https://host[:port]',
});

const clientShape = z
  .strictObject({
    issuer: z.string().min(1),
    jku: z.array(z.url({ protocol: /^https?$/ })).default([]),
    keys: jwkSetShape.optional(),
    keysFile: z.string().optional(),
    fhirOrigins: z.array(origin).default([]),
    services: z.array(z.string()).optional(),
    tenants: z.array(z.string()).optional(),
  })
  .refine(({ jku, keys, keysFile }) => jku.length > 0 || keys !== undefined || keysFile !== undefined, {
    message: 'one of jku, keys, keysFile is required',
  });

const fileShape = z.strictObject({ clients: z.array(clientShape).min(1) });

/**
 * The clients of a clients file.
 *
 * Given    path       of a JSON file `{"clients": [{"issuer", "jku", "keys" or "keysFile", "fhirOrigins", ...}]}`
 *          readText   reads it, and the key files it names relative to itself
 * Throws   Error naming the file and the member that is wrong
 */
export function readClients(path: string, readText: (path: string) => string): readonly TrustedClient[] {
  const { clients } = readJson(path, fileShape, readText);
  const issuers = clients.map(({ issuer }) => issuer);
  if (new Set(issuers).size < issuers.length) {
    throw new Error(`CLIENTS_FILE: ${path}: an issuer stands there twice.`);
  }
  return clients.map(({ keys, keysFile, services, tenants, ...client }) => {
    const keySet =
      keysFile === undefined ? keys : readJson(resolve(dirname(path), keysFile), jwkSetShape, readText);
    return {
      ...client,
      ...(keySet === undefined ? {} : { keys: keySet }),
      ...(services === undefined ? {} : { services }),
      ...(tenants === undefined ? {} : { tenants }),
    };
  });
}

function readJson<T>(path: string, shape: z.ZodType<T>, readText: (path: string) => string): T {
  const read = shape.safeParse(parsed(path, readText));
  if (read.success) return read.data;
  const faults = read.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
  throw new Error(`CLIENTS_FILE: ${path}: ${faults.join('; ')}`);
}

function parsed(path: string, readText: (path: string) => string): unknown {
  try {
    return JSON.parse(readText(path));
  } catch {
    throw new Error(`CLIENTS_FILE: ${path} cannot be read, or is not JSON.`);
  }
}

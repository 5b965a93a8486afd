// A JSON Web Key Set as far as signatures are checked with it: public keys only.
import type { JWK } from 'jose';
import { z } from 'zod';

export interface KeySet {
  readonly keys: JWK[];
}

const privateMembers = ['d', 'p', 'q', 'dp', 'dq', 'qi', 'oth', 'k'];

const keyShape = z
  .looseObject({ kty: z.enum(['RSA', 'EC', 'OKP']), kid: z.string().min(1) })
  .refine((key) => privateMembers.every((member) => key[member] === undefined), {
    message: 'holds a secret: only public keys belong here',
  })
  .transform((key): JWK => key);

export const jwkSetShape = z
  .object({ keys: z.array(keyShape).min(1) })
  .refine(({ keys }) => new Set(keys.map(({ kid }) => kid)).size === keys.length, {
    message: 'each kid may stand there once',
  });

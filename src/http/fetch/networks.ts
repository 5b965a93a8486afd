// Networks in CIDR notation.
import { isIP } from 'node:net';
import { z } from 'zod';

export interface Network {
  readonly address: string;
  readonly prefix: number;
  readonly family: 'ipv4' | 'ipv6';
}

/** `10.0.0.0/8` */
export const networkShape = z.string().transform((text, context): Network => {
  const network = toNetwork(text);
  if (network !== undefined) return network;
  context.addIssue({ code: 'custom', message: 'write each network as 10.0.0.0/8 or fd00::/8' });
  return z.NEVER;
});

/** The network of a CIDR text; undefined when it is none. */
export function toNetwork(text: string): Network | undefined {
  const [address = '', length = ''] = text.split('/');
  const version = isIP(address);
  const prefix = Number(length);
  if (version === 0 || !/^\d{1,3}$/.test(length) || prefix > (version === 4 ? 32 : 128)) return undefined;
  return { address, prefix, family: version === 4 ? 'ipv4' : 'ipv6' };
}

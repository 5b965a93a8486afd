// Which network addresses the service may connect to: none that only this machine or its neighbours can reach.
import { lookup as systemLookup } from 'node:dns';
import { BlockList, isIP, type LookupFunction } from 'node:net';
import { toNetwork, type Network } from './networks.ts';

const machineNetworks = ['127.0.0.0/8', '::1/128', '0.0.0.0/8', '::/128', '169.254.0.0/16', 'fe80::/10'];

/** Private, shared, test, multicast and translated ranges, besides those of the machine itself. */
const privateNetworks = [
  '10.0.0.0/8',
  '100.64.0.0/10',
  '172.16.0.0/12',
  '192.0.0.0/24',
  '192.0.2.0/24',
  '192.168.0.0/16',
  '198.18.0.0/15',
  '198.51.100.0/24',
  '203.0.113.0/24',
  '224.0.0.0/4',
  '240.0.0.0/4',
  '64:ff9b::/96',
  '64:ff9b:1::/48',
  '100::/64',
  '2001::/32',
  '2001:db8::/32',
  '2002::/16',
  'fc00::/7',
  'fec0::/10',
  'ff00::/8',
];

const machine = listOf(machineNetworks);
const blocked = listOf([...machineNetworks, ...privateNetworks]);

function listOf(networks: readonly string[]): BlockList {
  return withNetworks(networks.flatMap((text) => toNetwork(text) ?? []));
}

function withNetworks(networks: readonly Network[]): BlockList {
  const list = new BlockList();
  for (const { address, prefix, family } of networks) list.addSubnet(address, prefix, family);
  return list;
}

/** Is it a network of this machine itself, or a link-local one? */
export function isMachineNetwork({ address, family }: Network): boolean {
  return machine.check(address, family);
}

/** Answers whether an address may be connected to. */
export type AddressCheck = (address: string) => boolean;

/**
 * Which addresses may be connected to?
 *
 * Given    allowed   private networks the site has named
 * Returns  a check: true for public addresses and those in `allowed`; false for all others, and for what is no address
 * Notes    1. An IPv4 address written as IPv6 is judged as the IPv4 address it is.
 * Source   IANA special-purpose address registries (from memory); checklist F-05
 */
export function addressCheck(allowed: readonly Network[]): AddressCheck {
  const named = withNetworks(allowed);
  return (address) => {
    const version = isIP(address);
    if (version === 0) return false;
    const family = version === 4 ? 'ipv4' : 'ipv6';
    return named.check(address, family) || !blocked.check(address, family);
  };
}

/** A name led to an address that may not be connected to. */
export class AddressRefused extends Error {
  constructor() {
    super('The name leads to an address that may not be connected to.');
    this.name = 'AddressRefused';
  }
}

/**
 * Name resolution that hands on only allowed addresses; the connection is made to the very address checked.
 *
 * Notes    1. One refused address among several refuses the name: a name that means two places is not to be trusted.
 */
export function guardedLookup(isAllowed: AddressCheck, resolve = systemLookup): LookupFunction {
  return (hostname, options, callback) => {
    resolve(hostname, { ...options, all: true }, (error, addresses) => {
      const [first] = addresses;
      if (error !== null) callback(error, '', 0);
      else if (first === undefined || addresses.some(({ address }) => !isAllowed(address)))
        callback(new AddressRefused(), '', 0);
      else if (options.all === true) callback(null, addresses);
      else callback(null, first.address, first.family);
    });
  };
}

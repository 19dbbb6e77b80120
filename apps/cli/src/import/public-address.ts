import { BlockList, isIPv4 } from 'node:net';

/**
 * IPv4 ranges that are not reachable from everywhere, and so may be somebody's inside: private, shared, loopback,
 * link-local (cloud metadata lives there), documentation, benchmarking, multicast, reserved. Source: IANA IPv4
 * Special-Purpose Address Registry, from memory.
 */
const NOT_PUBLIC_V4: readonly (readonly [network: string, prefix: number])[] = [
  ['0.0.0.0', 8],
  ['10.0.0.0', 8],
  ['100.64.0.0', 10],
  ['127.0.0.0', 8],
  ['169.254.0.0', 16],
  ['172.16.0.0', 12],
  ['192.0.0.0', 24],
  ['192.0.2.0', 24],
  ['192.88.99.0', 24],
  ['192.168.0.0', 16],
  ['198.18.0.0', 15],
  ['198.51.100.0', 24],
  ['203.0.113.0', 24],
  ['224.0.0.0', 4],
  ['240.0.0.0', 4],
];
/** Global unicast; all of loopback, private, link-local, multicast and mapped IPv4 lies outside. */
const PUBLIC_V6 = ['2000::', 3] as const;
/** Inside global unicast: special purposes with Teredo, documentation, and 6to4, which may lead to any IPv4 address. */
const NOT_PUBLIC_V6: readonly (readonly [network: string, prefix: number])[] = [
  ['2001::', 23],
  ['2001:db8::', 32],
  ['2002::', 16],
  ['3fff::', 20],
];

const notPublic = new BlockList();
for (const [network, prefix] of NOT_PUBLIC_V4) notPublic.addSubnet(network, prefix, 'ipv4');
for (const [network, prefix] of NOT_PUBLIC_V6) notPublic.addSubnet(network, prefix, 'ipv6');
const publicV6 = new BlockList();
publicV6.addSubnet(...PUBLIC_V6, 'ipv6');

/** Whether an IP address, as text without brackets, is one of the public Internet. */
export function isPublicAddress(address: string): boolean {
  if (isIPv4(address)) return !notPublic.check(address, 'ipv4');
  return publicV6.check(address, 'ipv6') && !notPublic.check(address, 'ipv6');
}

/**
 * IPv4 addresses and subnets, as unsigned 32-bit numbers.
 *
 * Sources, each read: RFC 791 §3.1 (32-bit addresses), RFC 4632 §3.1 (prefix notation; from memory),
 * RFC 1918 §3 (private ranges), RFC 3021 §2.1 (both addresses of a /31 are hosts),
 * RFC 5771 §3 (224.0.0.0/4 is multicast).
 */

/** A block of addresses; `network` has no host bits set, `prefix` is 0 to 32. */
export interface Subnet {
  readonly network: number;
  readonly prefix: number;
}

/** A subnet that was parsed: `hostBits` says whether the text had bits set after the prefix. */
export interface ParsedSubnet extends Subnet {
  readonly hostBits: boolean;
}

/** Two addresses and all between them; `first` is not above `last`. */
export interface AddressRange {
  readonly first: number;
  readonly last: number;
}

const octet = '(0|[1-9][0-9]{0,2})';
const dottedQuad = new RegExp(`^${octet}\\.${octet}\\.${octet}\\.${octet}$`);
const decimal = /^(0|[1-9][0-9]?)$/;

/** The address that a dotted quad names, or undefined; four decimal numbers, none with a leading zero. */
export function parseAddress(text: string): number | undefined {
  const match = dottedQuad.exec(text);
  if (match === null) {
    return undefined;
  }
  let address = 0;
  for (const digits of match.slice(1)) {
    const value = Number(digits);
    if (value > 255) {
      return undefined;
    }
    address = address * 256 + value;
  }
  return address;
}

/** The dotted quad of an address. */
export function formatAddress(address: number): string {
  return [24, 16, 8, 0].map((shift) => (address >>> shift) & 0xff).join('.');
}

/** The subnet written as `a.b.c.d/prefix`, its host bits cleared, or undefined. */
export function parseSubnet(text: string): ParsedSubnet | undefined {
  const slash = text.indexOf('/');
  const digits = text.slice(slash + 1);
  if (slash < 0 || !decimal.test(digits)) {
    return undefined;
  }
  const address = parseAddress(text.slice(0, slash));
  const prefix = Number(digits);
  if (address === undefined || prefix > 32) {
    return undefined;
  }
  const network = (address & mask(prefix)) >>> 0;
  return { network, prefix, hostBits: network !== address };
}

/** `a.b.c.d/prefix`. */
export function formatSubnet(subnet: Subnet): string {
  return `${formatAddress(subnet.network)}/${subnet.prefix}`;
}

/** Whether the address lies in the subnet, its network and broadcast addresses included. */
export function contains(subnet: Subnet, address: number): boolean {
  return (address & mask(subnet.prefix)) >>> 0 === subnet.network;
}

/** The highest address of the subnet. In a /31 or /32 it is a host and no broadcast address (RFC 3021 §2.2). */
export function broadcast(subnet: Subnet): number {
  return (subnet.network | ~mask(subnet.prefix)) >>> 0;
}

/** The lowest address that a host may have: after the network address, except in a /31 (RFC 3021) or a /32. */
export function firstHost(subnet: Subnet): number {
  return subnet.prefix >= 31 ? subnet.network : subnet.network + 1;
}

/** The highest address that a host may have: before the broadcast address, except in a /31 (RFC 3021) or a /32. */
export function lastHost(subnet: Subnet): number {
  return subnet.prefix >= 31 ? broadcast(subnet) : broadcast(subnet) - 1;
}

/** Whether the two have an address in common; of two subnets that do, one holds the other. */
export function overlaps(a: Subnet, b: Subnet): boolean {
  return a.prefix <= b.prefix ? contains(a, b.network) : contains(b, a.network);
}

/** The range written as `A-B`, with or without spaces about the hyphen; undefined if B is below A. */
export function parseRange(text: string): AddressRange | undefined {
  const ends = text.split('-');
  if (ends.length !== 2) {
    return undefined;
  }
  const [first, last] = ends.map((end) => parseAddress(end.trim()));
  return first === undefined || last === undefined || last < first ? undefined : { first, last };
}

/** Whether the address is in 224.0.0.0/4 (RFC 5771 §3). */
export function isMulticast(address: number): boolean {
  return address >>> 28 === 0xe;
}

/**
 * Why no host can have the address, as a clause; `undefined` where one can (RFC 1122 §3.2.1.3, from memory; RFC 5771
 * §3, read; 240.0.0.0/4: RFC 1112 §4, read).
 */
export function whyNotHost(address: number): string | undefined {
  if (address === 0xffffffff) return 'is the broadcast address of every link';
  if (address >>> 24 === 0) return 'stands for a host that has no address yet';
  if (address >>> 24 === 127) return 'leads every host back to itself';
  if (isMulticast(address)) return 'is a multicast group';
  return address >>> 28 === 0xf ? 'is reserved' : undefined;
}

/** Whether the address is in 10/8, 172.16/12 or 192.168/16 (RFC 1918 §3). */
export function isPrivate(address: number): boolean {
  return address >>> 24 === 10 || address >>> 20 === 0xac1 || address >>> 16 === 0xc0a8;
}

/** The bits that the prefix covers, as a signed 32-bit number; a shift by 32 would be a shift by 0. */
function mask(prefix: number): number {
  return prefix === 0 ? 0 : -1 << (32 - prefix);
}

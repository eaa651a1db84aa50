/**
 * Which ports of a router are sockets, switched with each other as in a home router:
 * - ports that share a VLAN in which the router has one address;
 * - ports of a range that has an address;
 * - where the router has an address beside its ports, ports without VLAN and address. A single such port beside sockets
 *   of a VLAN is the way out instead.
 */

/** The keys of a port that are read here. */
interface Declared {
  readonly vlan?: unknown;
  readonly trunk?: unknown;
  readonly native?: unknown;
  readonly address?: unknown;
  readonly addresses?: unknown;
}

/** The keys of `ports` that declare sockets; `count` is how many ports a key declares. */
export function socketsAmong(
  ports: readonly (readonly [key: string, port: Declared, count: number])[],
  hasOwn: boolean,
): ReadonlySet<string> {
  const sockets = new Set<string>();
  const byVlan = new Map<string, { readonly keys: string[]; ports: number; addressed: number }>();
  const withVlans = ports.some(([, port]) => vlansOf(port).length > 0);
  for (const [key, port, count] of ports) {
    const vlans = vlansOf(port);
    if (vlans.length === 0 && (count > 1 ? hasOwn || isAddressed(port) : hasOwn && !isAddressed(port) && !withVlans))
      sockets.add(key);
    for (const vlan of vlans) {
      const there = byVlan.get(vlan) ?? { keys: [], ports: 0, addressed: 0 };
      byVlan.set(vlan, there);
      there.keys.push(key);
      there.ports += count;
      if (isAddressedIn(port, vlan)) there.addressed++;
    }
  }
  for (const { keys, ports: number, addressed } of byVlan.values())
    if (number > 1 && addressed <= 1) for (const key of keys) sockets.add(key);
  return sockets;
}

function vlansOf({ vlan, trunk, native }: Declared): string[] {
  const all = [vlan, native, ...(Array.isArray(trunk) ? (trunk as unknown[]) : [])];
  return [...new Set(all.filter((name) => typeof name === 'string'))];
}

function isAddressed({ address, addresses }: Declared): boolean {
  return address !== undefined || addresses !== undefined;
}

function isAddressedIn({ vlan, native, address, addresses }: Declared, name: string): boolean {
  const isByVlan = typeof addresses === 'object' && addresses !== null && Object.hasOwn(addresses, name);
  return isByVlan || (address !== undefined && (native ?? vlan) === name);
}

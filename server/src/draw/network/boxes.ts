/** The network as boxes: what joins others is a box with its ports in order, and the rest is a row at its port. */

import { grouped } from '../../grouped.ts';
import { type Link, linkEnd, oppositePort } from '../../network/link.ts';
import type { Plan } from '../../plan.ts';
import type { Device, Port } from '../../site/model.ts';
import { naturally } from '../../text/natural-order.ts';

/** A device that joins others. */
export interface NetworkBox {
  readonly device: Device;
  /** By port, in their order. */
  readonly rows: readonly PortRow[];
  /** The link to its parent box. */
  readonly up: Link | undefined;
  /** Boxes that hang on it, in the order of its ports. */
  readonly children: readonly NetworkBox[];
}

/** A link at a port of a box. */
export interface PortRow {
  readonly link: Link;
  /** That of the box; of several as one link, the one that stands for them. */
  readonly port: Port;
  /** `16`, or `1+2` of ports that make one link. */
  readonly name: string;
  readonly far: Device;
  /** Whether the link leads to its parent, to a child, to any other box, or to something without a box. */
  readonly leads: 'up' | 'down' | 'across' | 'out';
}

export interface Boxes {
  /** The boxes without a parent: one for each group of devices that are cabled together. */
  readonly roots: readonly NetworkBox[];
  /** Links between boxes beside the tree: spanning tree blocks them, or they close a loop. */
  readonly across: readonly Link[];
  /** Devices without a cable, of those that are there for the network alone. */
  readonly loose: readonly Device[];
}

/** A longer chain of boxes goes on below, as from a root of its own. */
const DEEPEST = 200;

/** The tree is the spanning tree where there is one: it grows from its root, along the ports in their order. */
export function boxesOf({ site, network }: Plan): Boxes {
  const { topology } = network;
  const linksAt = new Map<Device, Link[]>();
  for (const link of topology.links) for (const { device } of [link.a, link.b]) append(linksAt, device, link);
  const boxed = boxedDevices(site.devices, linksAt, topology.links);
  const isBox = (device: Device): boolean => boxed.has(device);
  const between = topology.links.filter(({ a, b }) => isBox(a.device) && isBox(b.device));

  const parents = new Map<Device, Link | undefined>();
  const depths = new Map<Device, number>();
  const order: Device[] = [];
  const inTree = new Set<Link>();
  const grow = (root: Device): void => {
    if (parents.has(root) || !isBox(root)) return;
    parents.set(root, undefined);
    const queue = [root];
    for (const device of queue) {
      order.push(device);
      for (const link of inPortOrder(device, linksAt.get(device) ?? [])) {
        const far = farOf(link, device);
        if (link.blocked !== undefined || !isBox(far) || parents.has(far)) continue;
        const depth = ((depths.get(device) ?? 0) + 1) % DEEPEST;
        depths.set(far, depth);
        parents.set(far, depth === 0 ? undefined : link);
        if (depth > 0) inTree.add(link);
        queue.push(far);
      }
    }
  };
  for (const root of topology.spanningTree.roots) if (root.spanningTree) grow(root);
  // Without a spanning tree from the one with most boxes around it, which no further host makes another.
  const around = grouped(
    between.flatMap(({ a, b }) => [a.device, b.device]),
    (device) => device,
  );
  const byBoxes = [...boxed].sort((a, b) => (around.get(b)?.length ?? 0) - (around.get(a)?.length ?? 0));
  for (const device of byBoxes) grow(device);

  const made = new Map<Device, NetworkBox>();
  // Those that hang on a box are made before it.
  for (const device of order.reverse()) {
    const links = inPortOrder(device, linksAt.get(device) ?? []);
    const up = parents.get(device);
    const rows = links.map((link): PortRow => {
      const far = farOf(link, device);
      const leads = !isBox(far) ? 'out' : link === up ? 'up' : inTree.has(link) ? 'down' : 'across';
      return { link, port: portAt(link, device), name: portsWords(link, device), far, leads };
    });
    const children = rows.flatMap((row) => (row.leads === 'down' ? (made.get(row.far) ?? []) : []));
    made.set(device, { device, rows, up, children });
  }
  const loose = site.devices.filter(
    ({ ports, kind, connectorByName }) => ports.length > 0 && kind !== 'patch-panel' && connectorByName.size === 0,
  );
  return {
    roots: order.reverse().flatMap((device) => (parents.get(device) === undefined ? (made.get(device) ?? []) : [])),
    across: between.filter((link) => !inTree.has(link)),
    loose: loose.filter((device) => !linksAt.has(device)),
  };
}

/** What forwards frames or packets between two links, and one of two that would hang on nothing else. */
function boxedDevices(
  devices: readonly Device[],
  linksAt: ReadonlyMap<Device, readonly Link[]>,
  links: readonly Link[],
): Set<Device> {
  const boxed = new Set(
    devices.filter((device) => (device.bridging || device.routing) && (linksAt.get(device)?.length ?? 0) > 1),
  );
  for (const { a, b } of links)
    if (!boxed.has(a.device) && !boxed.has(b.device)) boxed.add(moreLike(a.device, b.device));
  return boxed;
}

function moreLike(a: Device, b: Device): Device {
  return b.bridging && !a.bridging ? b : a;
}

function farOf(link: Link, device: Device): Device {
  return oppositePort(link, portAt(link, device)).device;
}

function portAt(link: Link, device: Device): Port {
  return link.a.device === device ? link.a : link.b;
}

function inPortOrder(device: Device, links: readonly Link[]): Link[] {
  return [...links].sort((a, b) => naturally(portAt(a, device).name, portAt(b, device).name));
}

function portsWords(link: Link, device: Device): string {
  const own = portAt(link, device);
  return link.members.length < 2
    ? own.name
    : link.members.map(({ a, b }) => (linkEnd(link, a) === own ? a.name : b.name)).join('+');
}

function append<K, V>(lists: Map<K, V[]>, key: K, value: V): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}

/** The items that a site has for one camera. */

import type { Link } from '../network/link.ts';
import { oppositePort } from '../network/link.ts';
import type { BroadcastDomain } from '../network/vlan-membership.ts';
import type { Plan } from '../plan.ts';
import type { Device, Port, Recording, Site, Stream, Traffic } from '../site/model.ts';
import { contains } from '../standards/ipv4.ts';

export interface Family {
  readonly camera: Device;
  /** The camera's own port. */
  readonly port: Port | undefined;
  readonly link: Link | undefined;
  /** The network that it is in. */
  readonly domain: BroadcastDomain | undefined;
  /** What it sends, and what servers make of that. */
  readonly streams: readonly Stream[];
  readonly recordings: readonly Recording[];
  readonly traffic: readonly Traffic[];
}

export function familyOf({ site, network }: Plan, camera: Device): Family {
  const { linkAt, domainOf } = network.topology;
  const port = camera.ports.find((own) => linkAt(own) !== undefined) ?? camera.ports[0];
  const link = port === undefined ? undefined : linkAt(port);
  const vlan = site.vlans.find(({ subnet }) =>
    camera.ports.some(({ addresses }) =>
      addresses.some(({ address }) => subnet !== undefined && contains(subnet, address)),
    ),
  );
  const streams = streamsOf(site, camera);
  const names = new Set(streams.map(({ name }) => name));
  return {
    camera,
    port,
    link,
    domain: link?.untagged ?? (vlan === undefined ? undefined : domainOf(vlan)),
    streams,
    recordings: site.recordings.filter(({ stream }) => stream !== undefined && names.has(stream)),
    traffic: site.traffic.filter(({ from, to }) => from === camera.name || to === camera.name),
  };
}

/** What a device sends, and the streams that carry that on, in the order of the site. */
function streamsOf({ streams }: Site, { name }: Device): readonly Stream[] {
  const found = new Set(streams.filter(({ source }) => source === name));
  for (let before = -1; before !== found.size;) {
    before = found.size;
    const names = new Set([...found].map((stream) => stream.name));
    for (const stream of streams) if (stream.carries !== undefined && names.has(stream.carries)) found.add(stream);
  }
  return streams.filter((stream) => found.has(stream));
}

/** The switch that a camera is plugged into; `undefined` where it is not, or not into a switch. */
export function switchOf({ network }: Plan, camera: Device): Device | undefined {
  for (const own of camera.ports) {
    const link = network.topology.linkAt(own);
    const other = link === undefined ? undefined : oppositePort(link, own);
    if (other?.forwards === true) return other.device;
  }
  return undefined;
}

/** The camera at the beginning of a stream's chain; `undefined` where it does not come from a camera. */
export function cameraOf({ site }: Plan, stream: Stream): Device | undefined {
  let first = stream;
  // A chain is no longer than there are streams, unless it is a circle.
  for (let steps = site.streams.length; steps > 0 && first.carries !== undefined; steps--)
    first = site.streamByName.get(first.carries) ?? { ...first, carries: undefined };
  const source = first.source === undefined ? undefined : site.deviceByName.get(first.source);
  return source?.kind === 'camera' ? source : undefined;
}

/** Free ports of a switch, and free positions of a patch panel. */

import { lastResult } from '../../memo.ts';
import { portTypes } from '../../standards/poe.ts';
import { type Device, type Port, type Site, portAt } from '../model.ts';

/**
 * The next port of the same device without a cable that has the VLANs of `like` and at least its speed and power;
 * `wanted` is a further condition.
 */
export function nextFreeSwitchPort(
  site: Site,
  like: Port,
  wanted: (port: Port) => boolean = () => true,
): Port | undefined {
  const taken = takenPorts(site.cables, site.deviceByName);
  const { ports } = like.device;
  const after = ports.indexOf(like) + 1;
  return [...ports.slice(after), ...ports.slice(0, after)].find(
    (port) => !taken.has(port) && doesAsMuch(port, like) && wanted(port),
  );
}

/** The ports of a device that no cable takes, in its order. */
export function freePorts(site: Site, device: Device): Port[] {
  const taken = takenPorts(site.cables, site.deviceByName);
  return device.ports.filter((port) => !taken.has(port));
}

/** Kept for the fixes of many findings in one site. */
const takenPorts = lastResult((cables: Site['cables'], deviceByName: Site['deviceByName']): ReadonlySet<Port> => {
  const taken = new Set<Port>();
  for (const { from, to, through } of cables)
    for (const end of [from, to, ...through]) {
      const port = portAt({ deviceByName }, end);
      if (port !== undefined) taken.add(port);
    }
  return taken;
});

function doesAsMuch(port: Port, like: Port): boolean {
  return (
    port.vlan === like.vlan &&
    port.native === like.native &&
    sameNames(port.trunk, like.trunk) &&
    (like.speed === undefined || (port.speed ?? 0) >= like.speed) &&
    fed(port) >= fed(like)
  );
}

/** Milliwatts that the port can feed. */
function fed(port: Port): number {
  return port.pse === undefined ? 0 : portTypes[port.pse].pseMilliwatts;
}

function sameNames(a: readonly string[] | undefined, b: readonly string[] | undefined): boolean {
  return [...new Set(a)].sort().join() === [...new Set(b)].sort().join() && (a === undefined) === (b === undefined);
}

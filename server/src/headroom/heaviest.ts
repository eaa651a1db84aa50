/** Which camera stands for the others: the one that sends most. */

import { type Link, oppositePort } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import type { Device, Port } from '../site/model.ts';
import { cameraOf } from './family.ts';

/** The heaviest of the cameras that are plugged into a switch. */
export function heaviestAt(plan: Plan, at: Device): Device | undefined {
  const { topology, load } = plan.network;
  let found: Device | undefined;
  let most = -1;
  for (const port of at.ports) {
    const link = topology.linkAt(port);
    const other = link === undefined ? undefined : oppositePort(link, port);
    if (link === undefined || other?.device.kind !== 'camera') continue;
    const { peak } = load(link, other).line;
    if (peak > most) [found, most] = [other.device, peak];
  }
  return found;
}

/** The heaviest of the cameras whose streams cross a direction of a link. */
export function heaviestOn(plan: Plan, link: Link, out: Port): Device | undefined {
  let found: Device | undefined;
  let most = 0;
  for (const { stream, untagged, tagged } of plan.network.copies(link, out)) {
    const rates = plan.network.rates(stream);
    const peak = untagged * rates.untagged.line.peak + tagged * rates.tagged.line.peak;
    const camera = peak > most ? cameraOf(plan, stream) : undefined;
    if (camera !== undefined) [found, most] = [camera, peak];
  }
  return found;
}

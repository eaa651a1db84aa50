/** How many more cameras fit, at what is under the pointer: the same number as `plumbline headroom` prints. */

import { cameraOf, switchOf } from '../../headroom/family.ts';
import { type Headroom, headroomOf } from '../../headroom/headroom.ts';
import { headroomWords, limitsWords, nextWords } from '../../headroom/words.ts';
import { type Link, oppositePort } from '../../network/link.ts';
import type { Plan } from '../../plan.ts';
import { type Device, type Port, type Stream, portName } from '../../site/model.ts';
import { escaped } from '../../text/markdown.ts';

/** Of a camera at its switch; of a switch by the camera there that sends most. */
export function growth(plan: Plan, device: Device): string[] {
  if (device.kind === 'camera') return shown(ofCamera(plan, device));
  const camera = device.kind === 'switch' ? heaviestAt(plan, device) : undefined;
  return camera === undefined ? [] : shown(headroomOf(plan, camera, device), true);
}

export function growthOfStream(plan: Plan, stream: Stream): string[] {
  const camera = cameraOf(plan, stream);
  return camera === undefined ? [] : shown(ofCamera(plan, camera));
}

/** Of the camera whose streams put most on each direction of the link at a port: what that direction bears. */
export function growthOnLink(plan: Plan, port: Port): string[] {
  const link = plan.network.topology.linkAt(port);
  if (link === undefined) return [];
  return [port, oppositePort(link, port)].flatMap((out) => {
    const camera = heaviestOn(plan, link, out);
    const headroom = camera === undefined ? undefined : ofCamera(plan, camera);
    const at = `${portName(out)} → ${portName(oppositePort(link, out))}`;
    const own = headroom?.limits.find((limit) => limit.at === at && limit.more !== undefined);
    if (headroom === undefined || own === undefined) return [];
    return [escaped(`${at} bears ${own.more} more like ${headroom.camera.name} at ${headroom.at.name}.`)];
  });
}

function ofCamera(plan: Plan, camera: Device): Headroom | undefined {
  const at = switchOf(plan, camera);
  return at === undefined ? undefined : headroomOf(plan, camera, at);
}

function shown(headroom: Headroom | undefined, isWhole = false): string[] {
  if (headroom === undefined) return [];
  const words = [headroomWords(headroom), ...(isWhole ? [nextWords(headroom), limitsWords(headroom)] : [])];
  return [escaped(words.filter((text) => text !== '').join(' '))];
}

function heaviestAt(plan: Plan, at: Device): Device | undefined {
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

function heaviestOn(plan: Plan, link: Link, out: Port): Device | undefined {
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

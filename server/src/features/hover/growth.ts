/** How many more cameras fit at the thing under the pointer: the same number as `plumbline headroom` prints. */

import { cameraOf, switchOf } from '../../headroom/family.ts';
import { type Headroom, headroomOf } from '../../headroom/headroom.ts';
import { heaviestAt, heaviestOn } from '../../headroom/heaviest.ts';
import { headroomWords, limitsWords, nextWords } from '../../headroom/words.ts';
import { oppositePort } from '../../network/link.ts';
import type { Plan } from '../../plan.ts';
import { type Device, type Port, type Stream, portName } from '../../site/model.ts';
import { escaped } from '../../text/markdown.ts';
import { asName } from '../../text/words.ts';

/** How many more like a camera fit at its switch; at a switch, more like its camera that sends most. */
export function growth(plan: Plan, device: Device): string[] {
  if (device.kind === 'camera') return shown(ofCamera(plan, device));
  const camera = device.kind === 'switch' ? heaviestAt(plan, device) : undefined;
  return camera === undefined ? [] : shown(headroomOf(plan, camera, device), true);
}

export function growthOfStream(plan: Plan, stream: Stream): string[] {
  const camera = cameraOf(plan, stream);
  return camera === undefined ? [] : shown(ofCamera(plan, camera));
}

/** How many more cameras each direction of the link at a port bears, like the one that puts most on it. */
export function growthOnLink(plan: Plan, port: Port): string[] {
  const link = plan.network.topology.linkAt(port);
  if (link === undefined) return [];
  return [port, oppositePort(link, port)].flatMap((out) => {
    const camera = heaviestOn(plan, link, out);
    const headroom = camera === undefined ? undefined : ofCamera(plan, camera);
    const at = `${portName(out)} → ${portName(oppositePort(link, out))}`;
    const own = headroom?.limits.find((limit) => limit.at === at && limit.more !== undefined);
    if (headroom === undefined || own === undefined) return [];
    return [
      escaped(`${at} bears ${own.more} more like ${asName(headroom.camera.name)} at ${asName(headroom.at.name)}.`),
    ];
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

/** What is lost when the thing under the pointer fails. */

import { type Element, cableElement, deviceElement, volumeElement } from '../../failure/element.ts';
import { failureOf } from '../../failure/failure.ts';
import { failureWords } from '../../failure/words.ts';
import { memberLinkAt } from '../../network/link.ts';
import type { Plan } from '../../plan.ts';
import type { Device, Port, Volume } from '../../site/model.ts';
import { escaped } from '../../text/markdown.ts';

/** The loss of a device that others depend on: that a broken screen shows nothing needs no words. */
export function lossOfDevice(plan: Plan, device: Device): string[] {
  const isVital = device.bridging || device.routing || device.kind === 'server' || device.ups !== undefined;
  return isVital || device.kind === 'circuit' ? shown(plan, deviceElement(device)) : [];
}

export function lossOfVolume(plan: Plan, volume: Volume): string[] {
  return shown(plan, volumeElement(volume));
}

/** The loss of the cable at a port. */
export function lossOfCable(plan: Plan, port: Port): string[] {
  const link = plan.network.topology.linkAt(port);
  const member = link === undefined ? undefined : memberLinkAt(link, port);
  return member === undefined ? [] : shown(plan, cableElement(member));
}

function shown(plan: Plan, element: Element): string[] {
  return [escaped(failureWords(failureOf(plan, element)))];
}

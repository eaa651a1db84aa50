/** The devices and cables that are out of order once an element has failed. */

import { grouped } from '../grouped.ts';
import { perObject } from '../memo.ts';
import type { Failed } from '../network/failed.ts';
import { membersOf } from './members.ts';
import type { Cable, Device } from '../site/model.ts';
import type { Element, Works } from './element.ts';

/** An element with all that it fed, directly or not: a device without power counts as failed. */
export function downWith(plan: Works, { cables, devices }: Element): Failed {
  const dead = new Set<Device>(devices);
  const cut = new Set<Cable>(cables);
  const { site } = plan;
  const { feeding } = plan.supply();
  const { topology } = plan.network;
  const { linkAt } = topology;
  const isCut = (cable: Cable | undefined): boolean => cable !== undefined && cut.has(cable);
  const feeds = (from: Device, by: Cable | undefined): boolean => !dead.has(from) && !isCut(by);
  const cableOf = (port: Device['ports'][number]): Cable | undefined =>
    linkAt(port)?.members.find(({ a, b }) => a === port || b === port)?.cable;
  const isFed = (device: Device): boolean => {
    const fed = feeding.of(device);
    if (fed.by === 'mains') return true;
    const own = fed.by === 'poe' ? feeds(fed.device, cableOf(fed.feed.to)) : feeds(fed.device, undefined);
    const standby = feeding.standby(device);
    return own || (standby !== undefined && feeds(standby.from.device, cableOf(standby.to)));
  };
  const hangingOn = (device: Device): readonly Device[] => [
    ...feeding.fedBy(device),
    ...(standbysOf(site)(feeding).get(device) ?? []),
  ];
  const plugged = cables.flatMap((cable) => membersOf(topology, cable)).flatMap(({ a, b }) => [a.device, b.device]);
  const doubtful = [...plugged, ...devices.flatMap(hangingOn)];
  for (const device of doubtful) {
    if (dead.has(device) || isFed(device)) continue;
    dead.add(device);
    doubtful.push(...hangingOn(device));
  }
  return { cables: cut, devices: dead };
}

/** By the device that would feed them as well. */
const standbysOf = perObject((site: Works['site']) =>
  perObject((feeding: ReturnType<Works['supply']>['feeding']) =>
    grouped(site.devices, (device) => feeding.standby(device)?.from.device),
  ),
);

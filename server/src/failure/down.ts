/** What goes dark or carries nothing once an element has failed. */

import type { Failed } from '../network/failed.ts';
import type { Cable, Device } from '../site/model.ts';
import type { Element, Works } from './element.ts';

/** With what it fed, and what that fed: a device without power is as one that has failed. */
export function downWith(plan: Works, { cables, devices }: Element): Failed {
  const dead = new Set<Device>(devices);
  const cut = new Set<Cable>(cables);
  const { feeding } = plan.supply();
  const { linkAt } = plan.network.topology;
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
  for (let before = -1; before !== dead.size;) {
    before = dead.size;
    for (const device of plan.site.devices) if (!dead.has(device) && !isFed(device)) dead.add(device);
  }
  return { cables: cut, devices: dead };
}

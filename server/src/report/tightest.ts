/** The things of a site nearest to their limits: links, lines to the Internet, volumes, power, air and USB. */

import { oppositePort } from '../network/link.ts';
import { uplinksOf } from '../network/uplinks.ts';
import type { Plan } from '../plan.ts';
import { portName } from '../site/model.ts';
import { bitRate, byteRate, bytes, watts } from '../text/words.ts';
import { isSizeKnown } from './answer/storage.ts';
import { isLoadKnown } from './answer/words.ts';
import { type Bounds, WHOLE, boundsOf } from './bounds.ts';
import type { Name } from './page/cells.ts';

export interface Tight {
  readonly name: Name;
  /** The figure: `to stable/9`, `power`. */
  readonly what: string;
  /** `94.8 Mb/s of 100 Mb/s` */
  readonly figures: string;
  /** Of the whole. */
  readonly share: number;
  readonly bounds: Bounds;
  /** Whether all of it is known; if not, there is more. */
  readonly isKnown: boolean;
}

/** The things nearest to their limits, the nearest first; only those in use. */
export function tightest(plan: Plan, most: number): Tight[] {
  return [...links(plan), ...uplinks(plan), ...volumes(plan), ...power(plan), ...air(plan), ...buses(plan)]
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share / b.bounds.limit - a.share / a.bounds.limit)
    .slice(0, most);
}

function links(plan: Plan): Tight[] {
  const { site, network } = plan;
  return network.topology.links.flatMap((link) => {
    const { capacity, a, b } = link;
    if (capacity === undefined || capacity === 0) return [];
    return [a, b].map((out): Tight => {
      const { peak } = network.load(link, out).line;
      return {
        name: { names: 'ports', name: portName(out) },
        what: `to ${portName(oppositePort(link, out))}`,
        figures: `${bitRate(peak)} of ${bitRate(capacity)}`,
        share: peak / capacity,
        bounds: boundsOf(site.policies.linkLoad),
        isKnown: isLoadKnown(plan, link, out),
      };
    });
  });
}

function uplinks(plan: Plan): Tight[] {
  return uplinksOf(plan.site.devices, plan.network).flatMap(({ device, down, up }) =>
    [down, up].flatMap(({ way, rate, load: { peak }, link, out }): Tight[] =>
      rate === undefined || rate === 0
        ? []
        : [
            {
              name: { names: 'devices', name: device.name },
              what: `${way}, the line to the Internet`,
              figures: `${bitRate(peak)} of ${bitRate(rate)}`,
              share: peak / rate,
              bounds: boundsOf(plan.site.policies.linkLoad),
              isKnown: isLoadKnown(plan, link, out),
            },
          ],
    ),
  );
}

function volumes({ site, storage }: Plan): Tight[] {
  return storage.volumes.flatMap(({ volume, usableBytes, bytesKept, writeRate, recordings }) => {
    const name: Name = { names: 'volumes', name: volume.name };
    const isKnown = recordings.every(({ recording }) => isSizeKnown(site, recording));
    const { sustainedWrite } = volume;
    const found: Tight[] = [];
    if (usableBytes !== undefined && usableBytes > 0)
      found.push({
        name,
        what: 'room',
        figures: `${bytes(bytesKept)} of ${bytes(usableBytes)}`,
        share: bytesKept / usableBytes,
        bounds: boundsOf(site.policies.volumeFill),
        isKnown: isKnown && recordings.every(({ recording }) => recording.keep !== undefined),
      });
    if (sustainedWrite !== undefined && sustainedWrite > 0)
      found.push({
        name,
        what: 'writing',
        figures: `${byteRate(writeRate.peak)} of ${byteRate(sustainedWrite)}`,
        share: writeRate.peak / sustainedWrite,
        bounds: WHOLE,
        isKnown,
      });
    return found;
  });
}

function power({ poe }: Plan): Tight[] {
  return poe.flatMap(({ device, budget, allotted }) =>
    budget === undefined || budget === 0
      ? []
      : [
          {
            name: { names: 'devices', name: device.name },
            what: 'power over Ethernet',
            figures: `${watts(allotted)} of ${watts(budget)}`,
            share: allotted / budget,
            bounds: WHOLE,
            isKnown: true,
          },
        ],
  );
}

function air({ air: cells, site }: Plan): Tight[] {
  return cells.map(({ device, share: { peak }, streams }) => ({
    name: { names: 'devices', name: device.name },
    what: 'air',
    figures: `${count(streams.length)} of its time`,
    share: peak,
    bounds: boundsOf(site.policies.airtime),
    isKnown: true,
  }));
}

function count(streams: number): string {
  return streams === 1 ? '1 group' : `${streams} groups`;
}

function buses({ television }: Plan): Tight[] {
  return television.buses
    .filter(({ usable }) => usable > 0)
    .map(({ host, bus, peak, usable }) => ({
      name: { names: 'devices', name: host.name },
      what: `USB controller ${bus.name}`,
      figures: `${bitRate(peak)} of ${bitRate(usable)}`,
      share: peak / usable,
      bounds: WHOLE,
      isKnown: true,
    }));
}

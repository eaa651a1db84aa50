/** The elements that must not fail: all elements, ranked by their losses. */

import { perObject } from '../memo.ts';
import type { Failed } from '../network/failed.ts';
import { oppositePort } from '../network/link.ts';
import { router } from '../network/routes.ts';
import { wiringOf } from '../network/wiring.ts';
import type { Device, Volume } from '../site/model.ts';
import { availableIn } from './available.ts';
import { downWith } from './down.ts';
import { type Element, elementsOf, type Works } from './element.ts';
import { type Losses, availableNow, lossesBetween } from './failure.ts';
import { footageAfter } from './footage.ts';
import { membersOf } from './members.ts';
import { forgetsIn } from './queriers.ts';
import { type Touched, touchedBy } from './touched.ts';

export interface Ranked extends Losses {
  readonly element: Element;
  /** Whether footage that is kept is lost with it. */
  readonly losesFootage: boolean;
}

/** Most recordings first, then most cameras, then most pictures; elements without losses are left out. */
export interface Ranking {
  readonly ranked: readonly Ranked[];
  /** What was not tried, as there is too much. */
  readonly untried: readonly Element[];
}

export const rankingOf = perObject((plan: Works): Ranking => finished(rankingSteps(plan)));

/** Runs all steps at once. */
export function finished<T>(steps: Generator<undefined, T, undefined>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
  }
}

/** The ranking, with a stop after each element, where others may be answered. */
export function* rankingSteps(plan: Works, patience = new Patience(plan)): Generator<undefined, Ranking, undefined> {
  const elements = elementsOf(plan);
  const found = new Map<Element, Ranked>();
  // A device takes its cables with it.
  const heavyFirst = [
    ...elements.filter(({ kind }) => kind !== 'cable'),
    ...elements.filter(({ kind }) => kind === 'cable'),
  ];
  for (const element of heavyFirst) {
    const own = patience.rankedOf(element);
    if (own !== undefined) found.set(element, own);
    yield;
  }
  const ranked = elements
    .flatMap((element) => found.get(element) ?? [])
    .filter(
      ({ pictures, recordings, cameras, losesFootage }) =>
        pictures.length + recordings.length + cameras.length > 0 || losesFootage,
    )
    .sort(
      (a, b) =>
        b.recordings.length - a.recordings.length ||
        b.cameras.length - a.cameras.length ||
        b.pictures.length - a.pictures.length,
    );
  return { ranked, untried: elements.filter((element) => !found.has(element)) };
}

/** Things that are gone over in all where the network is another without them, some 15 µs each. */
const MOST_ROUTED = 150_000;

/** Streams and devices that are looked at in all where it is the same, some 5 µs each. */
const MOST_TOUCHED = 300_000;

/** Tries what fails as long as that does not take too long. */
export class Patience {
  private readonly plan: Works;
  private readonly size: number;
  private routed: number;
  private touched = MOST_TOUCHED;

  constructor(plan: Works, routed = MOST_ROUTED) {
    const { devices, cables, streams, recordings } = plan.site;
    this.plan = plan;
    this.routed = routed;
    this.size = devices.length + cables.length + streams.length + recordings.length;
  }

  /** `undefined` where it would take too long. */
  rankedOf(element: Element): Ranked | undefined {
    if (this.touched <= 0) return undefined;
    const down = downOf(this.plan, element);
    this.touched -= down.failed.devices.size;
    if (down.ends === undefined) {
      if (this.routed < this.size) return undefined;
      this.routed -= this.size;
      return rankedBy(this.plan, down);
    }
    this.touched -= touchedIn(this.plan, down).streams.length;
    return rankedBy(this.plan, down);
  }
}

/** Elements of one kind that lose as much as each other. */
export type Equals = readonly [Ranked, ...Ranked[]];

/** In the order of the ranking. */
export function equalsIn(ranking: readonly Ranked[]): readonly Equals[] {
  const groups = new Map<string, [Ranked, ...Ranked[]]>();
  for (const ranked of ranking) {
    const { element, recordings, cameras, pictures, losesFootage } = ranked;
    const key = [element.kind, recordings.length, cameras.length, pictures.length, losesFootage].join();
    const known = groups.get(key);
    if (known === undefined) groups.set(key, [ranked]);
    else known.push(ranked);
  }
  return [...groups.values()];
}

/** What is out of order with an element. */
interface Down {
  readonly element: Element;
  readonly failed: Failed;
  readonly lost: readonly Volume[];
  /** The end hosts that are cut off, where all else goes on as it is; `undefined` where others may be. */
  readonly ends: readonly Device[] | undefined;
}

function downOf(plan: Works, element: Element): Down {
  const failed = downWith(plan, element);
  const lost = footageAfter(plan, element, failed).flatMap(({ volume, fate }) => (fate === 'lost' ? [volume] : []));
  return { element, failed, lost, ends: endsAlone(plan, element, failed.devices) };
}

function touchedIn({ site }: Works, { failed, lost, ends = [] }: Down): Touched {
  return touchedBy(
    site,
    [...failed.devices, ...ends].map(({ name }) => name),
    lost,
  );
}

/** The losses alone, without loads. */
export function rankedOf(plan: Works, element: Element): Ranked {
  return rankedBy(plan, downOf(plan, element));
}

function rankedBy(plan: Works, down: Down): Ranked {
  const { site, network } = plan;
  const { element, failed, lost, ends } = down;
  const dark = { devices: new Set([...failed.devices, ...(ends ?? [])]), volumes: new Set(lost) };
  const losesFootage = lost.length > 0;
  if (ends !== undefined) {
    const { deviceByName, streamByName, volumeByName } = site;
    const touched = touchedIn(plan, down);
    const available = availableIn({ ...touched, deviceByName, streamByName, volumeByName }, network.delivery, dark);
    return { element, losesFootage, ...lossesBetween(plan, available, undefined, touched) };
  }
  const { vlans, devices, deviceByName, cables, streams } = site;
  const wiring = wiringOf({ vlans, devices, deviceByName, cables, failed });
  const { delivery } = router(wiring, deviceByName)(streams);
  const forgets = forgetsIn(site, network, { ...wiring, delivery });
  return { element, losesFootage, ...lossesBetween(plan, availableIn(site, delivery, { ...dark, forgets })) };
}

/** The end hosts that are cut off, where nothing else is; `undefined` where others may be. */
function endsAlone(
  { site, network }: Works,
  { cables, volume }: Element,
  dead: ReadonlySet<Device>,
): readonly Device[] | undefined {
  const { linkAt } = network.topology;
  const leads = leadsOf(site);
  const isEnd = (device: Device): boolean =>
    !device.bridging && !device.routing && !leads.has(device.name) && device.kind !== 'internet';
  if (![...dead].every(isEnd)) return undefined;
  const ends: Device[] = [];
  for (const { a, b } of cables.flatMap((cable) => membersOf(network.topology, cable))) {
    const link = linkAt(a);
    const end = [a, b].find(({ forwards }) => !forwards);
    if (link === undefined || end === undefined || link.members.length > 1) return undefined;
    const isOnly = end.device.ports.filter((port) => linkAt(port) !== undefined).length === 1;
    // A server's own recordings go on without its cable.
    const isPlain = end.device.kind === 'camera' || end.device.kind === 'display';
    if (!isPlain || !isEnd(end.device) || !isOnly || !oppositePort(link, end).forwards) return undefined;
    ends.push(end.device);
  }
  return volume === undefined || ends.length === 0 ? ends : undefined;
}

/** Names of the devices that a VLAN needs. */
const leadsOf = perObject(
  ({ vlans }: Works['site']) => new Set(vlans.flatMap(({ gateway, querier }) => [gateway, querier])),
);

/** The recordings and pictures while nothing has failed, to compare losses with. */
export function allOf(plan: Works): { recordings: number; pictures: number } {
  const { recordings, reaches } = availableNow(plan);
  const pictures = plan.site.streams.reduce(
    (sum, stream) =>
      sum + [...reaches(stream)].filter((name) => plan.site.deviceByName.get(name)?.kind !== 'server').length,
    0,
  );
  return { recordings: recordings.size, pictures };
}

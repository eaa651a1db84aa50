/** Tuners on one cable of an LNB: together they get one polarisation and band at a time. */

import type { Connector } from '../site/model.ts';
import type { Plane } from '../standards/television/satellite.ts';
import { type Matching, type Rooms, type TakersByWish, maximumMatching, sizeOf } from './matching.ts';

/** A cable of several tuners, with the planes that are wanted from it. */
interface SharedCable {
  readonly from: Connector;
  readonly planes: readonly string[];
}

/** The limits of a matching that LNB cables add. */
export interface OnLnbCables {
  readonly rooms: Rooms;
  /** By taker, the output at the other end of its cable. */
  readonly outputs: readonly (Connector | undefined)[];
  /** By wish; `undefined` where it does not come from a satellite. */
  readonly planes: readonly (Plane | undefined)[];
}

/** Beyond so many combinations of planes, the cables are set one after another. */
const MOST_COMBINATIONS = 1024;

/** The best matching where each shared cable is set to one plane. */
export function matchingOnCables(ways: TakersByWish, cables: OnLnbCables): Matching {
  const free = maximumMatching(ways, cables.rooms);
  const shared = sharedCables(ways, cables);
  if (shared.length === 0) return free;
  const most = sizeOf(free);
  let best: { readonly matching: Matching; readonly size: number } | undefined;
  const attempt = (set: ReadonlyMap<Connector, string>): number => {
    const matching = maximumMatching(waysWhere(ways, cables, set), cables.rooms);
    const size = sizeOf(matching);
    if (best === undefined || size > best.size) best = { matching, size };
    return size;
  };
  const combinations = shared.reduce((product, { planes }) => product * planes.length, 1);
  if (combinations > MOST_COMBINATIONS) setInTurn(shared, attempt);
  else {
    const search = (set: ReadonlyMap<Connector, string>, next: number): void => {
      const cable = shared[next];
      if (cable === undefined) attempt(set);
      else
        for (const plane of cable.planes) {
          if (best?.size === most) return;
          search(new Map(set).set(cable.from, plane), next + 1);
        }
    };
    search(new Map(), 0);
  }
  return best?.matching ?? free;
}

/** Sets each cable in turn to the plane that gives most wishes. */
function setInTurn(shared: readonly SharedCable[], attempt: (set: ReadonlyMap<Connector, string>) => number): void {
  const set = new Map<Connector, string>();
  for (const { from, planes } of shared) set.set(from, planes[0] ?? '');
  for (const { from, planes } of shared) {
    const sizes = planes.map((plane) => attempt(new Map(set).set(from, plane)));
    set.set(from, planes[sizes.indexOf(Math.max(...sizes))] ?? '');
  }
}

/** The cables with several tuners, from which several planes are wanted. */
function sharedCables(ways: TakersByWish, { rooms, outputs, planes }: OnLnbCables): SharedCable[] {
  const tuners = new Map<Connector, number>();
  outputs.forEach((output, taker) => {
    if (output !== undefined) tuners.set(output, (tuners.get(output) ?? 0) + (rooms[taker] ?? 0));
  });
  const wanted = new Map<Connector, Set<string>>();
  ways.forEach((own, wish) => {
    const plane = nameOf(planes[wish]);
    if (plane === undefined) return;
    for (const taker of own) {
      const output = outputs[taker];
      if (output === undefined || (tuners.get(output) ?? 0) < 2) continue;
      const known = wanted.get(output);
      if (known === undefined) wanted.set(output, new Set([plane]));
      else known.add(plane);
    }
  });
  return [...wanted].flatMap(([from, own]) => (own.size < 2 ? [] : [{ from, planes: [...own] }]));
}

/** The ways without those over a cable that is set to another plane. */
function waysWhere(
  ways: TakersByWish,
  { outputs, planes }: OnLnbCables,
  set: ReadonlyMap<Connector, string>,
): TakersByWish {
  return ways.map((own, wish) => {
    const plane = nameOf(planes[wish]);
    if (plane === undefined) return own;
    return own.filter((taker) => {
      const output = outputs[taker];
      const at = output === undefined ? undefined : set.get(output);
      return at === undefined || at === plane;
    });
  });
}

function nameOf(plane: Plane | undefined): string | undefined {
  return plane === undefined ? undefined : `${plane.volts} V${plane.tone ? ', 22 kHz' : ''}`;
}

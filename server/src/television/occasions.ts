/** Whether the tuners suffice for what is wanted at once: each multiplex takes a tuner to itself. */

import { grouped } from '../grouped.ts';
import type { Connector, Device, Site, Stream } from '../site/model.ts';
import type { Multiplex, Occasion } from '../site/television/facts.ts';
import type { LnbCable } from './lnb-cable.ts';
import { type Matching, type TakersByWish, maximumMatching, shortfalls, sizeOf } from './matching.ts';
import { type OnLnbCables, matchingOnCables } from './planes.ts';
import type { Reception } from './reception.ts';
import { type Fit, type Unit, fittingTuners, planeOfMultiplex, tunerUnits } from './units.ts';
import { type Asked, type Wish, fewestAsked, standingWishes, wishOf, wishesOf } from './wishes.ts';

/** Multiplexes with too few tuners for all of them. */
export interface Short {
  readonly asked: readonly Asked[];
  readonly units: readonly Unit[];
  /** The number of these multiplexes that no tuner is left for. */
  readonly missing: number;
}

/** The use of tuners at one time. */
export interface Tuned {
  readonly asked: readonly Asked[];
  readonly assigned: ReadonlyMap<Asked, Unit>;
  readonly unmet: readonly Asked[];
  readonly short: readonly Short[];
  /** The shortages that would remain if all levels sufficed and every tuner had its own LNB. */
  readonly tooFew: readonly Short[];
  /** Cables of an LNB that would have to carry several planes at a time. */
  readonly contested: readonly Contested[];
}

export interface Contested {
  readonly from: Connector;
  /** All multiplexes that are wanted from it. */
  readonly asked: readonly Asked[];
  readonly units: readonly Unit[];
}

export interface Tuning {
  readonly units: readonly Unit[];
  readonly fit: (unit: Unit, multiplex: Multiplex) => Fit;
  readonly occasions: readonly Tuned[];
  readonly of: (occasion: Occasion) => Tuned;
  /** The use of tuners by only the streams that always run. */
  readonly standing: Tuned;
  /** Streams that can never be watched, as their tuners are always in use. */
  readonly never: readonly Never[];
}

/** A stream of a tuner, and the shortage that it meets beside the streams that always run. */
export interface Never {
  readonly stream: Stream;
  readonly short: Short;
}

type Facts = Pick<
  Site,
  | 'devices'
  | 'deviceByName'
  | 'channelPlan'
  | 'multiplexByName'
  | 'serviceByName'
  | 'occasions'
  | 'streams'
  | 'recordings'
>;

export function tuningOf(site: Facts, reception: Reception, cables: ReadonlyMap<Connector, LnbCable>): Tuning {
  const units = tunerUnits(site.devices, cables);
  const fit = fittingTuners(site, reception);
  const known = new Map<Multiplex, readonly Fit[]>();
  const places = new Map([...site.multiplexByName.values()].map((multiplex, place) => [multiplex, place]));
  const alike = alikeUnits(units);
  const context: Context = {
    site,
    alike,
    placeOf: (multiplex) => places.get(multiplex) ?? 0,
    fits: (multiplex) => {
      let own = known.get(multiplex);
      if (own === undefined) known.set(multiplex, (own = alike.map(([unit]) => fit(unit, multiplex))));
      return own;
    },
  };
  const standing = standingWishes(site, (source) => units.some((unit) => isOf(unit, source)));
  const byOccasion = new Map(
    site.occasions.map((occasion) => [occasion, tuned(context, [...wishesOf(site, occasion), ...standing])]),
  );
  return {
    units,
    fit,
    occasions: [...byOccasion.values()],
    of: (occasion) => {
      const found = byOccasion.get(occasion);
      if (found === undefined) throw new Error(`${occasion.name} is not an occasion of this site`);
      return found;
    },
    standing: tuned(context, standing),
    never: neverTuned(context, standing, (source) => units.some((unit) => isOf(unit, source))),
  };
}

function neverTuned(context: Context, standing: readonly Wish[], hasUnits: (source: Device) => boolean): Never[] {
  if (standing.length === 0) return [];
  const always = new Set(standing.map(({ stream }) => stream));
  // A shortage at all times is reported by itself.
  const before = tuned(context, standing);
  if (before.tooFew.length > 0) return [];
  const known = new Map<string, Short | undefined>();
  return context.site.streams.flatMap((stream): Never[] => {
    if (always.has(stream) || stream.receivers.length === 0) return [];
    const [wish] = wishOf(context.site, stream, hasUnits);
    if (wish === undefined) return [];
    const key = [wish.source?.name ?? '', ...wish.multiplexes.map(({ name }) => name)].join(' ');
    if (!known.has(key))
      known.set(
        key,
        tuned(context, [...standing, wish]).tooFew.find(({ units }) => units.length > 0),
      );
    const short = known.get(key);
    return short === undefined ? [] : [{ stream, short }];
  });
}

/** Whether a tuner can serve a device: its own, or one that is plugged into it. */
export function isOf({ device }: Unit, source: Device): boolean {
  return device === source || device.host === source.name;
}

/** Tuners of one device with the same systems and inputs: any of them can take what the others can. */
type Alike = readonly [Unit, ...Unit[]];

function alikeUnits(units: readonly Unit[]): Alike[] {
  const keyOf = ({ device, tuner }: Unit): string => [device.name, tuner.input ?? '', ...tuner.systems].join(' ');
  return [...grouped(units, keyOf).values()].flatMap(([first, ...others]) =>
    first === undefined ? [] : [[first, ...others]],
  );
}

interface Context {
  readonly site: Facts;
  readonly alike: readonly Alike[];
  /** In the order of the site. */
  readonly placeOf: (multiplex: Multiplex) => number;
  /** The fit of each group of alike tuners. */
  readonly fits: (multiplex: Multiplex) => readonly Fit[];
}

const NOTHING: Tuned = { asked: [], assigned: new Map(), unmet: [], short: [], tooFew: [], contested: [] };

function tuned(context: Context, wishes: readonly Wish[]): Tuned {
  if (wishes.length === 0) return NOTHING;
  const { alike } = context;
  const canTake = (multiplex: Multiplex): boolean => context.fits(multiplex).includes('fits');
  const matched = (asked: readonly Asked[]): Matching =>
    matchingOnCables(waysOf(context, asked, ['fits']), cablesOf(context, asked));
  const asked = [...fewestAsked(wishes, canTake, (candidate) => sizeOf(matched(candidate)))].sort(
    (a, b) => context.placeOf(a.multiplex) - context.placeOf(b.multiplex),
  );
  const matching = matched(asked);
  const assigned = new Map<Asked, Unit>();
  const unmet: Asked[] = [];
  const next = alike.map((units) => units.values());
  asked.forEach((one, index) => {
    const taker = matching[index];
    const unit = taker === undefined ? undefined : next[taker]?.next().value;
    if (unit === undefined) unmet.push(one);
    else assigned.set(one, unit);
  });
  if (unmet.length === 0) return { asked, assigned, unmet, short: [], tooFew: [], contested: [] };
  // Levels and LNB cables aside.
  const ways = waysOf(context, asked, ['fits', 'poor']);
  const free = maximumMatching(ways, roomsOf(context));
  return {
    asked,
    assigned,
    unmet,
    short: shortOf(context, asked, waysOf(context, asked, ['fits']), matching),
    tooFew: shortOf(context, asked, ways, free),
    contested: contestedOf(context, asked, ways, sizeOf(free)),
  };
}

function roomsOf({ alike }: Context): number[] {
  return alike.map(({ length }) => length);
}

function waysOf({ alike, fits }: Context, asked: readonly Asked[], enough: readonly Fit[]): TakersByWish {
  return asked.map(({ multiplex, source }) =>
    fits(multiplex).flatMap((fit, index) => {
      const unit = alike[index]?.[0];
      return enough.includes(fit) && unit !== undefined && (source === undefined || isOf(unit, source)) ? [index] : [];
    }),
  );
}

function cablesOf(context: Context, asked: readonly Asked[]): OnLnbCables {
  const { site, alike } = context;
  return {
    rooms: roomsOf(context),
    outputs: alike.map(([{ lnbCable }]) => lnbCable?.from),
    planes: asked.map(({ multiplex }) => planeOfMultiplex(site, multiplex)),
  };
}

function shortOf({ alike }: Context, asked: readonly Asked[], ways: TakersByWish, matching: Matching): Short[] {
  return shortfalls(ways, matching).map(({ wishes, takers, missing }) => ({
    asked: wishes.flatMap((wish) => asked[wish] ?? []),
    units: takers.flatMap((taker) => alike[taker] ?? []),
    missing,
  }));
}

/** Empty where one plane for each cable leaves no more wishes unmet than any number of planes. */
function contestedOf(context: Context, asked: readonly Asked[], ways: TakersByWish, most: number): Contested[] {
  const { alike } = context;
  const cables = cablesOf(context, asked);
  const matching = matchingOnCables(ways, cables);
  if (sizeOf(matching) === most) return [];
  const isContested = (from: Connector): boolean =>
    matching.some(
      (taker, wish) =>
        taker === undefined &&
        cables.planes[wish] !== undefined &&
        ways[wish]?.some((way) => cables.outputs[way] === from) === true,
    );
  return [...new Set(cables.outputs)].flatMap((from): Contested[] => {
    if (from === undefined || !isContested(from)) return [];
    const onIt = alike.filter((_, index) => cables.outputs[index] === from).flat();
    const wanted = asked.filter(
      (_, wish) =>
        cables.planes[wish] !== undefined && ways[wish]?.some((way) => cables.outputs[way] === from) === true,
    );
    return onIt.length < 2 ? [] : [{ from, asked: wanted, units: onIt }];
  });
}

/** The programmes that are wanted at once, and the fewest multiplexes that carry them. */

import { grouped } from '../grouped.ts';
import type { Device, Site, Stream } from '../site/model.ts';
import type { Multiplex, Occasion } from '../site/television/facts.ts';

/** A programme or a whole multiplex that is wanted. */
export interface Wish {
  /** The name of the service or the multiplex. */
  readonly name: string;
  /** Any of them will do. */
  readonly multiplexes: readonly Multiplex[];
  /** The device whose tuners must take it; `undefined` for any. */
  readonly source: Device | undefined;
  /** The stream of a wish that runs at all times, as a server records it or sends it on. */
  readonly stream: Stream | undefined;
}

/** A multiplex that a tuner must take, once for all its wishes. */
export interface Asked {
  readonly multiplex: Multiplex;
  readonly source: Device | undefined;
  readonly wishes: readonly Wish[];
}

type Facts = Pick<Site, 'multiplexByName' | 'serviceByName' | 'deviceByName' | 'streams' | 'recordings'>;

export function wishesOf(site: Facts, { services, multiplexes }: Occasion): Wish[] {
  const any = { source: undefined, stream: undefined };
  return [
    ...services.map((name) => ({ name, multiplexes: multiplexesOf(site, { service: name }), ...any })),
    ...multiplexes.map((name) => ({ name, multiplexes: multiplexesOf(site, { multiplex: name }), ...any })),
  ].filter(isKnown);
}

/** The wishes of streams from tuners that run at all times: those that a server records or sends on. */
export function standingWishes(site: Facts, hasUnits: (source: Device) => boolean): Wish[] {
  if (site.multiplexByName.size === 0) return [];
  const taken = new Set([
    ...site.recordings.map(({ stream }) => stream),
    ...site.streams.map(({ carries }) => carries),
  ]);
  return site.streams.filter(({ name }) => taken.has(name)).flatMap((stream) => wishOf(site, stream, hasUnits));
}

/** The wish of a stream to the tuners of its source; empty where it is unknown. */
export function wishOf(site: Facts, stream: Stream, hasUnits: (source: Device) => boolean): Wish[] {
  const source = stream.source === undefined ? undefined : site.deviceByName.get(stream.source);
  const name = stream.service ?? stream.multiplex;
  if (name === undefined || source === undefined || !hasUnits(source)) return [];
  return [{ name, multiplexes: multiplexesOf(site, stream), source, stream }].filter(isKnown);
}

function isKnown({ multiplexes }: Wish): boolean {
  return multiplexes.length > 0;
}

/** The declared multiplexes that carry a service, or the whole multiplex itself. */
export function multiplexesOf(
  { multiplexByName, serviceByName }: Pick<Site, 'multiplexByName' | 'serviceByName'>,
  { service, multiplex }: { readonly service?: string | undefined; readonly multiplex?: string | undefined },
): Multiplex[] {
  const names = service === undefined ? (multiplex ?? []) : (serviceByName.get(service)?.multiplexes ?? []);
  return [names].flat().flatMap((name) => multiplexByName.get(name) ?? []);
}

/** A choice for a wish: a multiplex, and the device whose tuners must take it. */
interface Choice {
  readonly multiplex: Multiplex;
  readonly source: Device | undefined;
}

/** Beyond so many open wishes the choice is good but perhaps not the best. */
const MOST_EXACT = 16;
/** The most equal choices that are compared. */
const MOST_EQUAL = 32;
/** The most steps of the search. */
const MOST_STEPS = 5000;

/**
 * The fewest multiplexes that fulfil all wishes; among several such choices the one with the highest `met`, then the
 * one that is named first. A multiplex that no tuner can take is chosen only where nothing else is left.
 */
export function fewestAsked(
  wishes: readonly Wish[],
  canTake: (multiplex: Multiplex) => boolean,
  met: (asked: readonly Asked[]) => number,
): readonly Asked[] {
  const options = wishes.map((wish): readonly Choice[] => {
    const possible = wish.multiplexes.filter(canTake);
    return (possible.length > 0 ? possible : wish.multiplexes).map((multiplex) => ({ multiplex, source: wish.source }));
  });
  const fixed = options.flatMap((own) => (own.length === 1 ? own : []));
  const open = openChoices(options);
  const [first = fixed, ...others] = open.length === 0 ? [] : fewest(fixed, open);
  let best = askedBy(wishes, options, first);
  if (others.length === 0) return best;
  let most = met(best);
  for (const choices of others) {
    if (most === best.length) break;
    const asked = askedBy(wishes, options, choices);
    const own = met(asked);
    if (own > most) [best, most] = [asked, own];
  }
  return best;
}

/** The wishes with several options, equal ones once. */
function openChoices(options: readonly (readonly Choice[])[]): (readonly Choice[])[] {
  const found = new Map<string, readonly Choice[]>();
  for (const own of options) {
    if (own.length < 2) continue;
    const names = own.map(({ multiplex }) => multiplex.name).sort();
    const key = [own[0]?.source?.name ?? '', ...names].join('/');
    if (!found.has(key)) found.set(key, own);
  }
  return [...found.values()];
}

/** All choices with the fewest multiplexes, in the order of the options. */
function fewest(fixed: readonly Choice[], open: readonly (readonly Choice[])[]): (readonly Choice[])[] {
  const greedy = greedily(fixed, open);
  if (open.length > MOST_EXACT) return [greedy];
  let least = distinct(greedy).length;
  let found: (readonly Choice[])[] = [];
  let steps = 0;
  const chosen = [...fixed];
  const search = (size: number, next: number): void => {
    if (size > least || (size === least && found.length >= MOST_EQUAL) || ++steps > MOST_STEPS) return;
    const own = open[next];
    if (own === undefined) {
      if (size < least) found = [];
      least = size;
      found.push([...chosen]);
      return;
    }
    for (const choice of own) {
      const added = isAnother(chosen, choice) ? 1 : 0;
      chosen.push(choice);
      search(size + added, next + 1);
      chosen.pop();
    }
  };
  search(distinct(fixed).length, 0);
  return found.length === 0 ? [greedy] : found;
}

/**
 * Whether a choice needs one more tuner than those before it. A multiplex for any tuner shares one that must take it.
 */
function isAnother(chosen: readonly Choice[], { multiplex, source }: Choice): boolean {
  let isTaken = false;
  let isTied = false;
  for (const other of chosen) {
    if (other.multiplex !== multiplex) continue;
    if (source === undefined || other.source === source) return false;
    isTaken = true;
    if (other.source !== undefined) isTied = true;
  }
  return !isTaken || isTied;
}

/** Chooses one after another, each time the multiplex that serves most wishes. */
function greedily(fixed: readonly Choice[], open: readonly (readonly Choice[])[]): readonly Choice[] {
  const chosen = [...fixed];
  let left = open;
  while (left.length > 0) {
    const good = new Map<Multiplex, number>();
    for (const { multiplex } of left.flat()) good.set(multiplex, (good.get(multiplex) ?? 0) + 1);
    for (const { multiplex } of chosen) if (good.has(multiplex)) good.set(multiplex, left.length + 1);
    const [best] = [...good].sort(([, a], [, b]) => b - a);
    const fits = ({ multiplex }: Choice): boolean => multiplex === best?.[0];
    chosen.push(...left.flatMap((own) => own.find(fits) ?? []));
    left = left.filter((own) => !own.some(fits));
  }
  return chosen;
}

/** The multiplexes to take, each once. */
function distinct(choices: readonly Choice[]): Choice[] {
  const sources = new Map<Multiplex, Set<Device>>();
  for (const { multiplex, source } of choices) {
    const known = sources.get(multiplex);
    if (known === undefined) sources.set(multiplex, new Set(source === undefined ? [] : [source]));
    else if (source !== undefined) known.add(source);
  }
  return [...sources].flatMap(([multiplex, own]): Choice[] =>
    own.size === 0 ? [{ multiplex, source: undefined }] : [...own].map((source) => ({ multiplex, source })),
  );
}

/** The multiplexes of some choices, in the order of the wishes. */
function askedBy(
  wishes: readonly Wish[],
  options: readonly (readonly Choice[])[],
  choices: readonly Choice[],
): readonly Asked[] {
  const taken = grouped(
    distinct(choices).map(({ multiplex, source }) => ({ multiplex, source, wishes: [] as Wish[] })),
    ({ multiplex }) => multiplex,
  );
  const ordered = new Set<Asked>();
  wishes.forEach((wish, index) => {
    for (const { multiplex } of options[index] ?? []) {
      const given = taken.get(multiplex)?.find(({ source }) => wish.source === undefined || source === wish.source);
      if (given === undefined) continue;
      given.wishes.push(wish);
      ordered.add(given);
      return;
    }
  });
  return [...ordered];
}

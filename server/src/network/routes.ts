/** Which receivers each stream reaches, and which links it crosses in which direction, whatever its rate. */

import { lastEqual, lastList, lastResult, perObject } from '../memo.ts';
import type { Device, Port, Stream } from '../site/model.ts';
import { senderOf } from '../site/sender.ts';
import { type Choices, ChoosingMembers, choicesOf } from './choices.ts';
import { type Copy, type Delivery, MOST_COPIES, NOT_FOLLOWED, type Routed } from './delivery.ts';
import { type Direction, type Link, domainsSentBy } from './link.ts';
import { Memberships, routeMulticast } from './multicast.ts';
import type { RoutingContext } from './trace.ts';
import { routeUnicast } from './unicast.ts';
import type { Wiring } from './wiring.ts';

/** Copies of a stream in one direction of a link: tagged or not, towards receivers or replies. */
export interface StreamCopies {
  readonly stream: Stream;
  readonly untagged: number;
  readonly tagged: number;
  readonly repliesUntagged: number;
  readonly repliesTagged: number;
}

/** Copies that cross only while one of some screens shows the stream. */
export interface ChosenCopies extends StreamCopies {
  readonly shownBy: readonly Device[];
}

export interface Routes {
  readonly memberships: Memberships;
  readonly choices: Choices;
  /** In the order of the streams. */
  readonly deliveries: readonly Delivery[];
  readonly delivery: (stream: Stream) => Delivery;
  /** The streams that always cross a link in the direction in which frames leave by `out`, in their order. */
  readonly copies: (link: Link, out: Port) => readonly StreamCopies[];
  /** The streams that cross it only while a screen shows them, likewise. */
  readonly chosen: (link: Link, out: Port) => readonly ChosenCopies[];
}

/** Routes the streams of a site that is edited: a stream keeps its route while its text and all memberships stay. */
export function router(
  wiring: Wiring,
  deviceByName: ReadonlyMap<string, Device>,
): (streams: readonly Stream[]) => Routes {
  const context: RoutingContext = { deviceByName, ...wiring };
  const keepJoins = lastEqual(areSameJoins);
  const keepChosen = lastList<number>();
  const keepGroups = lastResult((joins: readonly Joins[], chosen: readonly number[]) => {
    const memberships = new Memberships(context, joins, chosen);
    const routed = perObject((stream: Stream): Followed => {
      const { delivery, copies } = route(context, memberships, stream);
      return { delivery, counted: counted(stream, copies) };
    });
    return { memberships, routed };
  });
  return lastResult((streams) => {
    const choices = choicesOf(deviceByName, streams);
    const choosing = new ChoosingMembers(context, choices, streams);
    const { memberships, routed } = keepGroups(keepJoins(streams.map(joinsOf)), keepChosen([...choices.groups]));
    const byStream = new Map<Stream, Delivery>();
    const crossing = new Crossing();
    let total = 0;
    for (const stream of streams) {
      const { delivery, counted } = total > MOST_COPIES ? notFollowed(context, stream) : routed(stream);
      // The way to each screen that chooses is followed by itself.
      total += counted.length * (1 + screensOf(choices, stream));
      byStream.set(stream, delivery);
      const { source } = delivery;
      if (source === undefined || counted.length === 0 || !choices.streams.has(stream)) {
        for (const copies of counted) crossing.addAlways(copies);
        continue;
      }
      for (const { copy, shownBy } of choosing.copiesOf(stream, source)) {
        const single = { link: copy.link, out: copy.out, copies: singleCopy(stream, kindOf(copy)) };
        if (shownBy.length === 0) crossing.addAlways(single);
        else crossing.addChosen(single, shownBy);
      }
    }
    return {
      memberships,
      choices,
      deliveries: [...byStream.values()],
      delivery: (stream) => {
        const delivery = byStream.get(stream);
        if (delivery === undefined) throw new Error(`${stream.name} is not a stream of this site`);
        return delivery;
      },
      copies: (link, out) => crossing.of(link, out).always,
      chosen: (link, out) => crossing.of(link, out).chosen,
    };
  });
}

/** The delivery of a stream, and its copies counted by kind. */
interface Followed {
  readonly delivery: Delivery;
  readonly counted: readonly Counted[];
}

/** How many screens join and leave its group. */
function screensOf({ screens }: Choices, { group }: Stream): number {
  return group === undefined ? 0 : (screens.get(group)?.size ?? 0);
}

/** The part of a stream that decides its memberships. */
type Joins = Pick<Stream, 'group' | 'receivers'>;

const joinsOf = perObject(({ group, receivers }: Stream): Joins => ({ group, receivers }));

function areSameJoins(a: readonly Joins[], b: readonly Joins[]): boolean {
  return a.length === b.length && a.every((joins, i) => isSameJoins(joins, b[i]));
}

function isSameJoins(a: Joins, b: Joins | undefined): boolean {
  return a === b || (a.group === b?.group && String(a.receivers) === String(b?.receivers));
}

function route(context: RoutingContext, memberships: Memberships, stream: Stream): Routed {
  const source = senderOf(context, stream);
  if (source !== undefined && stream.group !== undefined)
    return memberships.isFollowed(stream.group)
      ? routeMulticast(context, memberships, stream, source, stream.group)
      : { delivery: notFollowed(context, stream).delivery, copies: [] };
  if (source !== undefined) return routeUnicast(context, stream, source);
  const nowhere = { leaves: undefined, route: undefined, reaches: [], unreached: [], domains: [] };
  return { delivery: { stream, source, ...nowhere }, copies: [] };
}

/** A stream beyond the bound: no receiver is known to get it. */
function notFollowed(context: RoutingContext, stream: Stream): Followed {
  const unreached = stream.receivers.flatMap((receiver) =>
    context.deviceByName.has(receiver) ? [{ receiver, why: NOT_FOLLOWED }] : [],
  );
  const source = senderOf(context, stream);
  return {
    delivery: { stream, source, leaves: undefined, route: undefined, reaches: [], unreached, domains: [] },
    counted: [],
  };
}

type Kind = Exclude<keyof StreamCopies, 'stream'>;

/** One copy of a stream, or several, in a direction of a link. */
interface Counted extends Direction {
  readonly copies: StreamCopies;
}

/** The copies counted by kind; kept with the route of the stream, so that an edit of another one does not repeat it. */
function counted(stream: Stream, copies: readonly Copy[]): readonly Counted[] {
  const byKind: { [K in Kind]?: StreamCopies } = {};
  return copies.map((copy) => {
    const kind = kindOf(copy);
    return { link: copy.link, out: copy.out, copies: (byKind[kind] ??= singleCopy(stream, kind)) };
  });
}

function kindOf({ link, out, domain, reply }: Copy): Kind {
  const isTagged = domainsSentBy(link, out).tagged.includes(domain);
  if (reply) return isTagged ? 'repliesTagged' : 'repliesUntagged';
  return isTagged ? 'tagged' : 'untagged';
}

function singleCopy(stream: Stream, kind: Kind): StreamCopies {
  const count = (of: Kind): number => (of === kind ? 1 : 0);
  return {
    stream,
    untagged: count('untagged'),
    tagged: count('tagged'),
    repliesUntagged: count('repliesUntagged'),
    repliesTagged: count('repliesTagged'),
  };
}

function together(a: StreamCopies, b: StreamCopies): StreamCopies {
  return {
    stream: a.stream,
    untagged: a.untagged + b.untagged,
    tagged: a.tagged + b.tagged,
    repliesUntagged: a.repliesUntagged + b.repliesUntagged,
    repliesTagged: a.repliesTagged + b.repliesTagged,
  };
}

/** What crosses a direction of a link. */
interface Crossed {
  readonly always: StreamCopies[];
  readonly chosen: ChosenCopies[];
  /** The last stream that was chosen, with its places among `chosen` by the names of the screens. */
  last: { readonly stream: Stream; readonly byScreens: Map<string, number> } | undefined;
}

const IDLE: Crossed = idle();

function idle(): Crossed {
  return { always: [], chosen: [], last: undefined };
}

/** What crosses each link, one stream after another. */
class Crossing {
  private readonly byLink = new Map<Link, { readonly fromA: Crossed; readonly fromB: Crossed }>();

  addAlways({ link, out, copies }: Counted): void {
    const { always } = this.at(link, out);
    const last = always.at(-1);
    if (last?.stream === copies.stream) always[always.length - 1] = together(last, copies);
    else always.push(copies);
  }

  addChosen({ link, out, copies }: Counted, shownBy: readonly Device[]): void {
    const crossed = this.at(link, out);
    const { chosen } = crossed;
    if (crossed.last?.stream !== copies.stream) crossed.last = { stream: copies.stream, byScreens: new Map() };
    const { byScreens } = crossed.last;
    const screens = String(names(shownBy));
    const same = byScreens.get(screens);
    const before = same === undefined ? undefined : chosen[same];
    if (same === undefined || before === undefined) {
      byScreens.set(screens, chosen.length);
      chosen.push({ ...copies, shownBy });
    } else chosen[same] = { ...together(before, copies), shownBy };
  }

  of(link: Link, out: Port): Crossed {
    const both = this.byLink.get(link);
    return both === undefined ? IDLE : link.a === out ? both.fromA : both.fromB;
  }

  private at(link: Link, out: Port): Crossed {
    let both = this.byLink.get(link);
    if (both === undefined) {
      both = { fromA: idle(), fromB: idle() };
      this.byLink.set(link, both);
    }
    return link.a === out ? both.fromA : both.fromB;
  }
}

function names(devices: readonly Device[]): string[] {
  return devices.map(({ name }) => name);
}

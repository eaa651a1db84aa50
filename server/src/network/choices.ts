/**
 * Screens that show only some of their streams at a time: which streams they choose from, and which links each stream
 * takes only while a screen shows it.
 *
 * A screen joins the groups and pulls the streams that it shows, and no others. So a stream always crosses a link that
 * it takes with all such screens off, and crosses others only while a screen there shows it. A stream that is sent to a
 * receiver unasked, such as RTP to its address, always comes.
 */

import { grouped } from '../grouped.ts';
import { type Device, type Stream, isRtsp } from '../site/model.ts';
import type { Copy } from './delivery.ts';
import type { Link } from './link.ts';
import { Memberships, routeMulticast } from './multicast.ts';
import type { RoutingContext } from './trace.ts';
import { routeUnicast } from './unicast.ts';

export interface Choices {
  /** Screens that receive more streams than they show at a time, with how many they show. */
  readonly decoders: ReadonlyMap<Device, number>;
  /** The streams that one of them chooses from. */
  readonly streams: ReadonlySet<Stream>;
  /** The groups of those streams. */
  readonly groups: ReadonlySet<number>;
  /** By group, the screens that join and leave it. */
  readonly screens: ReadonlyMap<number, ReadonlySet<Device>>;
}

/** A copy, and the screens that must show it for it to be sent; none where it always is. */
export interface ChosenCopy {
  readonly copy: Copy;
  readonly shownBy: readonly Device[];
}

export function choicesOf(deviceByName: ReadonlyMap<string, Device>, streams: readonly Stream[]): Choices {
  if (!hasScreens(deviceByName)) return NO_CHOICES;
  const asked = new Map<Device, Stream[]>();
  for (const stream of streams) {
    for (const receiver of isAskedFor(stream) ? stream.receivers : []) {
      const device = deviceByName.get(receiver);
      if (device?.decoders === undefined) continue;
      const list = asked.get(device);
      if (list === undefined) asked.set(device, [stream]);
      else list.push(stream);
    }
  }
  const decoders = new Map<Device, number>();
  const chosen = new Set<Stream>();
  const screens = new Map<number, Set<Device>>();
  for (const [device, among] of asked) {
    if (device.decoders === undefined || device.decoders >= among.length) continue;
    decoders.set(device, device.decoders);
    for (const stream of among) {
      if (stream.group === undefined) chosen.add(stream);
      else screens.set(stream.group, (screens.get(stream.group) ?? new Set()).add(device));
    }
  }
  // A screen that joins a group draws all streams that are sent to it.
  for (const stream of streams) if (stream.group !== undefined && screens.has(stream.group)) chosen.add(stream);
  return { decoders, streams: chosen, groups: new Set(screens.keys()), screens };
}

const NO_CHOICES: Choices = { decoders: new Map(), streams: new Set(), groups: new Set(), screens: new Map() };

/** Whether a device says how many streams it shows at a time. */
function hasScreens(deviceByName: ReadonlyMap<string, Device>): boolean {
  for (const { decoders } of deviceByName.values()) if (decoders !== undefined) return true;
  return false;
}

/** Whether receivers ask for the stream, by joining a group or by RTSP. */
function isAskedFor({ group, transport }: Stream): boolean {
  return group !== undefined || isRtsp(transport);
}

/** Memberships of a group while none of the screens is on, and while one of them shows it. */
export class ChoosingMembers {
  private readonly context: RoutingContext;
  private readonly choices: Choices;
  private readonly streams: ReadonlyMap<number | undefined, readonly Stream[]>;
  private readonly kept = new Map<number, Map<Device | undefined, Memberships>>();

  constructor(context: RoutingContext, choices: Choices, streams: readonly Stream[]) {
    this.context = context;
    this.choices = choices;
    this.streams = grouped(choices.groups.size === 0 ? [] : streams, ({ group }) => group);
  }

  with(screen: Device | undefined, group: number): Memberships {
    const { context, choices, kept } = this;
    const byScreen = kept.get(group) ?? new Map<Device | undefined, Memberships>();
    kept.set(group, byScreen);
    let members = byScreen.get(screen);
    if (members === undefined) {
      const joins = (name: string): boolean => {
        const device = context.deviceByName.get(name);
        return device !== undefined && (device === screen || !choices.decoders.has(device));
      };
      const own = this.streams.get(group) ?? [];
      const streams = own.map(({ receivers }) => ({ group, receivers: receivers.filter(joins) }));
      byScreen.set(screen, (members = new Memberships(context, streams, [group])));
    }
    return members;
  }

  /** The copies of a stream that a screen chooses, each with the screens that draw it. */
  copiesOf(stream: Stream, source: Device): readonly ChosenCopy[] {
    const { context, choices } = this;
    const { group } = stream;
    if (group === undefined) {
      return stream.receivers.flatMap((receiver) => {
        const device = context.deviceByName.get(receiver);
        const shownBy = device !== undefined && choices.decoders.has(device) ? [device] : [];
        const { copies } = routeUnicast(context, { ...stream, receivers: [receiver] }, source);
        return copies.map((copy) => ({ copy, shownBy }));
      });
    }
    const copiesWith = (screen: Device | undefined): readonly Copy[] =>
      routeMulticast(context, this.with(screen, group), stream, source, group).copies;
    const found = new CopyMap<Device[]>();
    const always = copiesWith(undefined);
    for (const copy of always) found.set(copy, []);
    for (const screen of choices.screens.get(group) ?? []) {
      for (const copy of copiesWith(screen)) {
        const shownBy = found.get(copy);
        if (shownBy === undefined) found.set(copy, [screen]);
        else if (shownBy.length > 0) shownBy.push(screen);
      }
    }
    return found.entries.map(({ copy, value }) => ({ copy, shownBy: value }));
  }
}

/** Values by the direction of a link and the broadcast domain of a copy. */
class CopyMap<V> {
  readonly entries: { readonly copy: Copy; readonly value: V }[] = [];
  private readonly byLink = new Map<Link, { readonly copy: Copy; readonly value: V }[]>();

  get({ link, out, domain }: Copy): V | undefined {
    return this.byLink.get(link)?.find(({ copy }) => copy.out === out && copy.domain === domain)?.value;
  }

  set(copy: Copy, value: V): void {
    const entry = { copy, value };
    this.entries.push(entry);
    const list = this.byLink.get(copy.link);
    if (list === undefined) this.byLink.set(copy.link, [entry]);
    else list.push(entry);
  }
}

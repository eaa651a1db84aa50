/** Compares announcements with the streams of the site. */

import { describable, describe } from '../../make/announcements/describe.ts';
import type { Plan } from '../../plan.ts';
import { type Item, type Place, namePlace, placeOf } from '../../site/item.ts';
import type { Site, Stream } from '../../site/model.ts';
import { formatAddress, isMulticast, parseAddress } from '../../standards/ipv4.ts';
import { sapGroupFor } from '../../standards/multicast.ts';
import { type Pace, baseInterval, nextGap } from '../../standards/sap.ts';
import { type SessionDescription, connectionOf } from '../../standards/sdp.ts';
import { visible } from '../../text/visible.ts';
import { count, duration, few, list, asName } from '../../text/words.ts';
import type { Audited } from '../audited.ts';
import { diagnose } from '../../lint/diagnose.ts';
import type { Found } from '../../lint/rule.ts';
import { differences } from './differences.ts';
import { announcementRules as rules } from './rules.ts';
import type { Heard, HeardSession } from './heard.ts';

/** Allowance for late timers and networks: a fiftieth of a gap, and a second. */
const LATE = { part: 0.02, milliseconds: 1000 };

interface Announced {
  readonly stream: Stream;
  readonly planned: SessionDescription;
  readonly sessions: readonly HeardSession[];
}

/** @param problem why the capture ends early, if it does; the announcements up to there count */
export function auditAnnouncements(plan: Plan, heard: Heard, problem: string | undefined, pace: Pace): Audited {
  const streams = plan.site.streams.filter(
    (stream) => describable(stream) && stream.group !== undefined && isMulticast(stream.group),
  );
  const planned = new Map<Stream, SessionDescription>();
  for (const stream of streams) {
    const made = describe(plan, stream);
    if ('description' in made) planned.set(stream, made.description);
  }
  const sessions = [...heard.sessions.values()];
  const streamOf = new Map(sessions.map((session) => [session, matching(planned, session.description)]));
  const announced = [...planned].map(([stream, description]): Announced => ({
    stream,
    planned: description,
    sessions: sessions.filter((session) => streamOf.get(session) === stream),
  }));
  const unplanned = sessions.filter(
    (session) => streamOf.get(session) === undefined && session.withdrawn === undefined,
  );
  const gaps = new Gaps(sessions, announced, pace);
  const found = [
    ...announced.flatMap((each) => [...ofStream(each, heard, gaps)]),
    ...unplanned.map((session) => notPlanned(plan.site, session)),
  ];
  return {
    found: diagnose(plan.site.lint, found),
    summary: [...summary(heard, sessions, problem, streams.length - planned.size), ...gaps.tooShort(heard, announced)],
  };
}

/** The stream with the session's number, else its name, else its group and port. */
function matching(planned: ReadonlyMap<Stream, SessionDescription>, said: SessionDescription): Stream | undefined {
  const all = [...planned];
  const [group, port] = [groupOf(said), said.media[0]?.port];
  const tests: readonly ((stream: Stream, own: SessionDescription) => boolean)[] = [
    (_, own) => own.origin.sessionId === said.origin.sessionId,
    ({ name }) => name === said.name,
    (stream) => stream.group === group && stream.port === port,
    (stream) => stream.group === group,
  ];
  for (const test of tests) {
    const match = all.find(([stream, own]) => test(stream, own));
    if (match !== undefined) return match[0];
  }
  return undefined;
}

function groupOf(said: SessionDescription): number | undefined {
  const [media] = said.media;
  return media === undefined ? undefined : parseAddress(connectionOf(said, media)?.address ?? '');
}

/** The allowed times between announcements, in milliseconds, with an allowance for late timers. */
class Gaps {
  private readonly pace: Pace;
  private readonly counts = new Map<number, number>();
  private readonly largest: number;

  constructor(sessions: readonly HeardSession[], announced: readonly Announced[], pace: Pace) {
    this.pace = pace;
    for (const { on, withdrawn } of sessions)
      if (withdrawn === undefined) this.counts.set(on, (this.counts.get(on) ?? 0) + 1);
    const all = Math.max(sessions.length, announced.length);
    this.largest = this.allowed(baseInterval(all, Math.max(1024, ...sessions.map(({ size }) => size)), pace), 1);
  }

  /** The longest gap, for the number of sessions announced at the end of the capture. */
  longest({ on, size }: HeardSession): number {
    return this.allowed(baseInterval(this.counts.get(on) ?? 1, size, this.pace), 1);
  }

  /** The shortest gap, as for a single session: an announcer knows only of those that it has heard. */
  shortest({ size }: HeardSession): number {
    return this.allowed(baseInterval(1, size, this.pace), 0);
  }

  /** A capture of at least this length contains every session. */
  get enough(): number {
    return this.largest;
  }

  tooShort(heard: Heard, announced: readonly Announced[]): string[] {
    const unheard = announced.filter(({ sessions }) => sessions.length === 0);
    if (heard.span >= this.enough || unheard.length === 0) return [];
    return [
      `The capture lasts ${duration(Math.round(heard.span))}, and announcements may be ${duration(Math.round(this.enough))} apart: ` +
        `that it has none of ${few(unheard.map(({ stream }) => stream.name))} says nothing.`,
    ];
  }

  private allowed(interval: number, random: 0 | 1): number {
    const gap = 1000 * nextGap(interval, random);
    return random === 1 ? gap * (1 + LATE.part) + LATE.milliseconds : gap * (1 - LATE.part) - LATE.milliseconds;
  }
}

function* ofStream({ stream, planned, sessions }: Announced, heard: Heard, gaps: Gaps): Iterable<Found> {
  const { item, name, group = 0 } = stream;
  const acceptAt = [name];
  const live = sessions.filter(({ withdrawn }) => withdrawn === undefined);
  if (sessions.length === 0) {
    if (heard.span < gaps.enough) return;
    yield {
      rule: rules.missing,
      at: namePlace(item),
      acceptAt,
      message: `${asName(name)} was not announced in ${duration(Math.round(heard.span))}. Look whether the announcer runs, and knows of it.`,
    };
    return;
  }
  const [first] = sessions;
  if (live.length === 0 && first !== undefined) {
    const when = Math.max(...sessions.map(({ withdrawn = 0 }) => withdrawn));
    yield {
      rule: rules.withdrawn,
      at: namePlace(item),
      acceptAt,
      message: `${asName(name)} was withdrawn by ${first.announcer} at ${instant(when)}, and not announced again. Start its announcer, or take it out.`,
    };
  }
  for (const session of live) {
    for (const { keyPath, what } of differences(planned, session.description)) {
      yield {
        rule: rules.otherwise,
        at: placeOf(item, keyPath),
        acceptAt,
        message: `${asName(name)} is announced by ${session.announcer} with ${visible(what, 300)}.`,
      };
    }
    const own = groupOf(session.description);
    const right = own === undefined ? undefined : sapGroupFor(own);
    if (right !== undefined && right !== session.on) {
      const message = `${asName(name)} is announced on ${formatAddress(session.on)}; sessions of the scope of ${formatAddress(own ?? group)} are on ${formatAddress(right)}.`;
      yield { rule: rules.elsewhere, at: placeOf(item, ['group']), acceptAt, message };
    }
    yield* ofPace(stream, session, heard, gaps);
  }
  if (live.length > 1) {
    const who = live.map(({ announcer, description }) => `${visible(description.name, 60)} by ${announcer}`);
    yield {
      rule: rules.twice,
      at: placeOf(item, ['group']),
      acceptAt,
      message: `${asName(name)} is announced ${live.length} times: ${list(who)}. End all but one.`,
    };
  }
}

function* ofPace({ item, name }: Stream, session: HeardSession, heard: Heard, gaps: Gaps): Iterable<Found> {
  const acceptAt = [name];
  const at = namePlace(item);
  const longest = Math.max(session.longest, (heard.last ?? 0) - session.last);
  const may = gaps.longest(session);
  if (longest > may) {
    yield {
      rule: rules.rarely,
      at,
      acceptAt,
      message: `${asName(name)} was not announced for ${seconds(longest)}; it should be at least every ${seconds(may)}.`,
    };
  }
  // A single short gap may come from a restarted announcer.
  const [, shortest] = session.shortest;
  const must = gaps.shortest(session);
  if (shortest < must) {
    yield {
      rule: rules.often,
      at,
      acceptAt,
      message: `${asName(name)} was announced after ${seconds(session.shortest[0])} and after ${seconds(shortest)}; it should be ${seconds(must)} at least.`,
    };
  }
}

function notPlanned(site: Site, session: HeardSession): Found {
  const { description, announcer } = session;
  const [media] = description.media;
  const to =
    media === undefined
      ? 'nowhere'
      : `${connectionOf(description, media)?.address ?? 'an unknown address'} port ${media.port}`;
  const name = visible(description.name, 100);
  return {
    rule: rules.unplanned,
    at: placeOfSite(site),
    acceptAt: [name],
    message: `${asName(name)}, sent to ${visible(to, 100)}, is announced by ${announcer}, and no stream of the site is it. Add it, or end its announcement.`,
  };
}

/** The place for findings about no item in particular: the head of the site. */
function placeOfSite(site: Site): Place {
  const item: Item | undefined =
    site.sections.site.find(({ key }) => key?.value === 'name') ??
    site.sections.site[0] ??
    site.streams[0]?.item ??
    site.items[0];
  if (item === undefined) throw new Error('a site without items announces nothing');
  return namePlace(item);
}

function summary(
  heard: Heard,
  sessions: readonly HeardSession[],
  problem: string | undefined,
  undescribed: number,
): string[] {
  const lines = [
    `${count(heard.packets, 'packet')} of announcements of ${count(sessions.length, 'session')} by ${count(new Set(sessions.map(({ announcer }) => announcer)).size, 'announcer')} in ${duration(Math.round(heard.span))}.`,
  ];
  for (const [why, number] of heard.unread)
    lines.push(`${count(number, 'packet')} could not be read: ${visible(why, 200)}.`);
  if (problem !== undefined) lines.push(`The capture was read as far as could be: ${problem}.`);
  if (undescribed > 0)
    lines.push(`${count(undescribed, 'stream')} could not be compared: \`plumbline make sdp\` says why.`);
  return lines;
}

function seconds(milliseconds: number): string {
  return duration(Math.round(milliseconds / 1000) * 1000);
}

function instant(milliseconds: number): string {
  const date = new Date(milliseconds);
  return Number.isNaN(date.getTime()) ? 'an unknown time' : `${date.toISOString().slice(0, 19).replace('T', ' ')} UTC`;
}

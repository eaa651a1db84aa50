/** Links whose load changes enough to matter, and power. */

import type { Link } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import type { PoeFigures } from '../network/poe.ts';
import { type Port, portName } from '../site/model.ts';
import { kilowattHours } from '../report/supply/figures.ts';
import { oppositePort } from '../network/link.ts';
import type { Match, Pair } from './match.ts';

/** One direction of a link. */
export interface LinkChange {
  readonly from: Pair;
  readonly to: Pair;
  readonly before: LinkLoad;
  readonly after: LinkLoad;
}

export interface LinkLoad {
  /** bit/s on the line, at peak. */
  readonly peak: number;
  readonly capacity: number | null;
}

export interface PoeChange {
  readonly device: Pair;
  /** W; null where it feeds nothing. */
  readonly before: PoeLoad | null;
  readonly after: PoeLoad | null;
}

export interface PoeLoad {
  readonly draw: number;
  readonly budget: number | null;
}

export interface PowerChange {
  readonly before: PowerSum;
  readonly after: PowerSum;
}

export interface PowerSum {
  /** W on average and at most, as far as declared. */
  readonly mean: number;
  readonly most: number;
  readonly kilowattHours: number;
}

/** A share that changes by less is left out, unless it crosses the site's threshold for warnings or its limit. */
const LEAST = 0.01;

export function linkChanges(before: Plan, after: Plan, { id }: Match): LinkChange[] {
  const old = new Map(directions(before).map((way) => [key(way, id, 'before'), way]));
  return directions(after).flatMap((way) => {
    const was = old.get(key(way, id, 'after'));
    if (was === undefined) return [];
    const [then, now] = [loadOf(before, was), loadOf(after, way)];
    const [a, b] = [then.peak / (then.capacity ?? Infinity), now.peak / (now.capacity ?? Infinity)];
    const isSmall = Math.abs(a - b) <= LEAST && level(before, a) === level(after, b);
    if (isSmall) return [];
    return [
      {
        from: { before: portName(was.out), after: portName(way.out) },
        to: { before: portName(oppositePort(was.link, was.out)), after: portName(oppositePort(way.link, way.out)) },
        before: then,
        after: now,
      },
    ];
  });
}

interface Way {
  readonly link: Link;
  readonly out: Port;
}

function directions({ network }: Plan): Way[] {
  return network.topology.links.flatMap((link) => [link.a, link.b].map((out) => ({ link, out })));
}

function key({ link, out }: Way, id: Match['id'], side: 'before' | 'after'): string {
  return `${id(portName(out), side)} → ${id(portName(oppositePort(link, out)), side)}`;
}

function loadOf({ network }: Plan, { link, out }: Way): LinkLoad {
  return { peak: network.load(link, out).line.peak, capacity: link.capacity ?? null };
}

function level({ site }: Plan, share: number): number {
  const { warn, limit } = site.policies.linkLoad;
  return (share * 1e4 > warn ? 1 : 0) + (share * 1e4 > limit ? 1 : 0);
}

export function poeChanges(before: Plan, after: Plan, { devices }: Match): PoeChange[] {
  const sourcesOf = (plan: Plan): ReadonlyMap<string, PoeFigures> =>
    new Map([...plan.poe].reverse().map((source) => [source.device.name, source]));
  const [old, current] = [sourcesOf(before), sourcesOf(after)];
  const poeLoad = (source: PoeFigures | undefined): PoeLoad | null => {
    if (source === undefined) return null;
    return { draw: source.allotted / 1000, budget: source.budget === undefined ? null : source.budget / 1000 };
  };
  return devices.flatMap((pair) => {
    const [was, is] = [pair.before?.name, pair.after?.name];
    const then = was === undefined ? null : poeLoad(old.get(was));
    const now = is === undefined ? null : poeLoad(current.get(is));
    if (then?.draw === now?.draw && then?.budget === now?.budget) return [];
    return [{ device: { before: was ?? null, after: is ?? null }, before: then, after: now }];
  });
}

/** `null` where no figure changes by a tenth of a watt or more. */
export function powerChange(before: Plan, after: Plan): PowerChange | null {
  const [then, now] = [sumOf(before), sumOf(after)];
  return then.mean === now.mean && then.most === now.most ? null : { before: then, after: now };
}

function sumOf(plan: Plan): PowerSum {
  const { total } = plan.supply();
  const tenth = (milliwatts: number): number => Math.round(milliwatts / 100) / 10;
  return { mean: tenth(total.mean), most: tenth(total.most), kilowattHours: kilowattHours(total) };
}

/**
 * Matches the things of two plans: those with the same name, and renamed devices, which keep their kind and a MAC
 * address, an address, or the far end of a cable with a label. The order of the plans does not matter.
 */

import { grouped } from '../grouped.ts';
import { perObject } from '../memo.ts';
import type { Plan } from '../plan.ts';
import { type Cable, type CableEnd, type Device, connectorAt, connectorName, portAt, portName } from '../site/model.ts';
import { textAt } from '../text/syntax.ts';

/** A thing by its names in the two plans; `null` where a plan lacks it. */
export interface Pair {
  readonly before: string | null;
  readonly after: string | null;
}

export interface Matched<T> {
  readonly before: T | undefined;
  readonly after: T | undefined;
}

export interface Match {
  /** In the order of the later plan, then those that are gone. */
  readonly devices: readonly Matched<Device>[];
  readonly cables: readonly Matched<Cable>[];
  /** The same text for one device or port, in whichever plan it is named. */
  readonly id: (name: string, side: 'before' | 'after') => string;
  /** Whether two words are the same, or an old name and the new one. */
  readonly isSame: (before: string, after: string) => boolean;
}

export function matchOf(before: Plan, after: Plan): Match {
  const devices = matchedDevices(before, after);
  const pairOf = {
    before: new Map(devices.flatMap((pair) => (pair.before === undefined ? [] : [[pair.before.name, pair] as const]))),
    after: new Map(devices.flatMap((pair) => (pair.after === undefined ? [] : [[pair.after.name, pair] as const]))),
  };
  const id: Match['id'] = (name, side) => {
    const slash = name.indexOf('/');
    const device = slash === -1 ? name : name.slice(0, slash);
    const pair = pairOf[side].get(device);
    const known = pair === undefined ? device : `${pair.before?.name ?? ''} ${pair.after?.name ?? ''}`;
    return slash === -1 ? known : known + name.slice(slash);
  };
  const isSame: Match['isSame'] = (one, other) => one === other || id(one, 'before') === id(other, 'after');
  return { devices, cables: matchedCables(before, after, id), id, isSame };
}

/** Matches things by name. */
export function matchedByName<T extends { readonly name: string }>(
  before: readonly T[],
  after: readonly T[],
): Matched<T>[] {
  const old = new Map(before.map((one) => [one.name, one]));
  const current = new Set(after.map(({ name }) => name));
  return [
    ...after.map((one) => ({ before: old.get(one.name), after: one })),
    ...before.filter(({ name }) => !current.has(name)).map((one) => ({ before: one, after: undefined })),
  ];
}

function matchedDevices(before: Plan, after: Plan): Matched<Device>[] {
  const matched = matchedByName(before.site.devices, after.site.devices);
  const gone = matched.flatMap((pair) => (pair.after === undefined && pair.before !== undefined ? [pair.before] : []));
  const added = matched.flatMap((pair) => (pair.before === undefined && pair.after !== undefined ? [pair.after] : []));
  const renamed = paired(
    gone,
    added,
    (device) => signsOf(before, device),
    (device) => signsOf(after, device),
  );
  const oldNames = new Set(renamed.values());
  return matched.flatMap((pair): Matched<Device>[] => {
    if (pair.after === undefined) return pair.before !== undefined && oldNames.has(pair.before) ? [] : [pair];
    return [{ before: pair.before ?? renamed.get(pair.after), after: pair.after }];
  });
}

/** The signs of a device that stay when only its name changes. */
function signsOf({ site }: Plan, device: Device): string[] {
  const { kind = '', mac, address, addresses, ports, item } = device;
  const macs = [mac, ...ports.map((port) => port.mac)].filter((one) => one !== undefined);
  const all = [address, ...[...addresses, ...ports.flatMap((port) => port.addresses)].map((one) => one.address)];
  const labelled = (labelsAt(site).get(device.name) ?? []).map(({ label, far }) => `${label} to ${endText(site, far)}`);
  return [
    ...macs.map((one) => `1 mac ${one.toLowerCase()}`),
    ...all.filter((one) => one !== undefined).map((one) => `2 address ${one}`),
    ...labelled.map((one) => `3 label ${one}`),
  ].map((sign) => `${sign} ${kind}${item.section}`);
}

/** The labels of cables by the device at either end, with the other end. */
const labelsAt = perObject(({ cables }: Plan['site']) => {
  const ends = cables.flatMap((cable) => {
    const label = labelOf(cable);
    const { from, to } = cable;
    if (label === undefined || from === undefined || to === undefined) return [];
    const there = { device: from.device, label, far: to };
    return from.device === to.device ? [there] : [there, { device: to.device, label, far: from }];
  });
  return grouped(ends, ({ device }) => device);
});

/** Pairs things by a sign that no others share, the strongest signs first. @returns the old by the new */
function paired<T>(
  gone: readonly T[],
  added: readonly T[],
  signsOld: (one: T) => readonly string[],
  signsNew: (one: T) => readonly string[],
): Map<T, T> {
  const old = bySign(gone, signsOld);
  const current = bySign(added, signsNew);
  const found = new Map<T, T>();
  const taken = new Set<T>();
  for (const sign of [...current.keys()].filter((one) => old.has(one)).sort()) {
    const [from, ...othersOld] = old.get(sign) ?? [];
    const [to, ...othersNew] = current.get(sign) ?? [];
    if (from === undefined || to === undefined || othersOld.length + othersNew.length > 0) continue;
    if (found.has(to) || taken.has(from)) continue;
    found.set(to, from);
    taken.add(from);
  }
  return found;
}

function bySign<T>(all: readonly T[], signs: (one: T) => readonly string[]): Map<string, T[]> {
  const found = new Map<string, T[]>();
  for (const one of all)
    for (const sign of new Set(signs(one))) {
      const list = found.get(sign);
      if (list === undefined) found.set(sign, [one]);
      else list.push(one);
    }
  return found;
}

/** `core/1`; with its port also where the device alone is written. */
export function endText(site: Plan['site'], end: CableEnd): string {
  const port = portAt(site, end);
  if (port !== undefined) return portName(port);
  const connector = connectorAt(site, end);
  if (connector !== undefined) return connectorName(connector);
  return end.port === undefined ? end.device : `${end.device}/${end.port}`;
}

export function labelOf({ item }: Cable): string | undefined {
  return textAt(item.data, ['label']);
}

function matchedCables(before: Plan, after: Plan, id: Match['id']): Matched<Cable>[] {
  const ends = (plan: Plan, { from, to }: Cable, side: 'before' | 'after'): string[] =>
    [from, to].map((end) => (end === undefined ? '?' : id(endText(plan.site, end), side))).sort();
  let gone = [...before.site.cables];
  let added = [...after.site.cables];
  const found = new Map<Cable, Cable>();
  const take = (signs: (plan: Plan, cable: Cable, side: 'before' | 'after') => readonly string[]): void => {
    const pairs = paired(
      gone,
      added,
      (cable) => signs(before, cable, 'before'),
      (cable) => signs(after, cable, 'after'),
    );
    for (const [to, from] of pairs) found.set(to, from);
    const old = new Set(pairs.values());
    gone = gone.filter((cable) => !old.has(cable));
    added = added.filter((cable) => !pairs.has(cable));
  };
  take((plan, cable, side) => [ends(plan, cable, side).join(' – ')]);
  take((_, cable) => {
    const label = labelOf(cable);
    return label === undefined ? [] : [label];
  });
  // A cable that keeps one end, its type and its length was moved at the other end.
  take((plan, cable, side) => ends(plan, cable, side).map((end) => `${end} ${cable.type ?? ''} ${cable.length ?? ''}`));
  return [
    ...after.site.cables.map((cable) => ({ before: found.get(cable), after: cable })),
    ...gone.map((cable) => ({ before: cable, after: undefined })),
  ];
}

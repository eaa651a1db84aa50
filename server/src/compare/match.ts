/**
 * Matches the things of two plans: those with the same name, and those that were renamed. A renamed device keeps its
 * kind and a MAC address, an address, or the far end of a cable with a label; `entries.ts` says what others keep. The
 * order of the plans does not matter.
 */

import { grouped } from '../grouped.ts';
import { perObject } from '../memo.ts';
import type { Plan } from '../plan.ts';
import { type Cable, type CableEnd, type Device, connectorAt, connectorName, portAt, portName } from '../site/model.ts';
import type { Item } from '../site/item.ts';
import { textAt } from '../text/syntax.ts';
import { type EntrySection, matchedEntries } from './entries.ts';
import { type MatchedPairs, matchedBySigns, paired } from './pairing.ts';
import { type Identify, PairedNames } from './paired-names.ts';

/** A thing by its names in the two plans; `null` where a plan lacks it. */
export interface Pair {
  readonly before: string | null;
  readonly after: string | null;
}

export interface Match {
  /** In the order of the later plan, then those that are gone. */
  readonly devices: readonly MatchedPairs<Device>[];
  readonly cables: readonly MatchedPairs<Cable>[];
  /** What the other sections hold. */
  readonly entries: Readonly<Record<EntrySection, readonly MatchedPairs<Item>[]>>;
  readonly names: PairedNames;
  readonly id: Identify;
}

export function matchOf(before: Plan, after: Plan): Match {
  const devices = matchedDevices(before, after);
  const names = new PairedNames();
  names.add('devices', devices);
  const entries = matchedEntries(before.site, after.site, names);
  const { id } = names;
  return { devices, cables: matchedCables(before, after, id), entries, names, id };
}

function matchedDevices(before: Plan, after: Plan): MatchedPairs<Device>[] {
  return matchedBySigns(
    before.site.devices,
    after.site.devices,
    (device) => signsOf(before, device),
    (device) => signsOf(after, device),
  );
}

/** The signs of a device that stay when only its name changes. */
function signsOf({ site }: Plan, device: Device): string[] {
  const { kind = '', mac, address, addresses, ports, item } = device;
  const macs = [mac, ...ports.map((port) => port.mac)].filter((one) => one !== undefined);
  const all = [address, ...[...addresses, ...ports.flatMap((port) => port.addresses)].map((one) => one.address)];
  const labelled = (labelsAt(site).get(device.name) ?? []).map(({ label, far }) => `${label} to ${endName(site, far)}`);
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

/** `core/1`; with its port also where the device alone is written. */
export function endName(site: Plan['site'], end: CableEnd): string {
  const port = portAt(site, end);
  if (port !== undefined) return portName(port);
  const connector = connectorAt(site, end);
  if (connector !== undefined) return connectorName(connector);
  return end.port === undefined ? end.device : `${end.device}/${end.port}`;
}

export function labelOf({ item }: Cable): string | undefined {
  return textAt(item.data, ['label']);
}

function matchedCables(before: Plan, after: Plan, id: Identify): MatchedPairs<Cable>[] {
  const ends = (plan: Plan, { from, to }: Cable, side: 'before' | 'after'): string[] =>
    [from, to].map((end) => (end === undefined ? '?' : id(endName(plan.site, end), side))).sort();
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

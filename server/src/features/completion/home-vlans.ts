/** The VLANs that an address may be meant for. */

import { contains } from '../../standards/ipv4.ts';
import { domainsOf } from '../../network/vlan-membership.ts';
import type { Checked } from '../../lint/check.ts';
import { type Device, type Port, type Vlan, ownAddresses } from '../../site/model.ts';
import { type CompletionContext, textAtCursor } from './wanted.ts';

/** A single VLAN where a key or the cable at the port decides; else all, the likeliest first. */
export function vlansWanted(wanted: CompletionContext): Vlan[] {
  const { site, keyPath, name } = wanted;
  const named =
    keyPath[keyPath.length - 2] === 'addresses'
      ? keyPath[keyPath.length - 1]
      : textAtCursor(wanted, [...keyPath.slice(0, -1), 'vlan']);
  const vlan = named === undefined ? undefined : site.vlanByName.get(String(named));
  if (vlan !== undefined) return [vlan];
  const device = site.deviceByName.get(name);
  const port = portWanted(wanted);
  const cabled = port === undefined ? [] : vlansAt(wanted, port);
  if (cabled.length > 0) return cabled;
  const homes = homeVlansOf(wanted.checked, textAtCursor(wanted, ['kind']), name);
  // Two cards of a host are in two networks: VLANs that another port of it is in come last.
  const taken = new Set(
    (device?.ports ?? []).filter((own) => own !== port).flatMap((own) => homes.filter((home) => isAt(own, home))),
  );
  return [...homes.filter((home) => !taken.has(home)), ...homes.filter((home) => taken.has(home))];
}

/** The port that an address is for; `undefined` for the address of a device that forwards frames itself. */
export function portWanted({ site, keyPath, name }: CompletionContext): Port | undefined {
  const device = site.deviceByName.get(name);
  if (keyPath[0] === 'ports') return device?.portByName.get(String(keyPath[1]).split('-')[0] ?? '');
  return device?.bridging === true ? undefined : device?.ports[0];
}

/** VLANs with a subnet, the likeliest for a device of that kind first; `except` is the device itself. */
export function homeVlansOf(checked: Checked, kind: string | undefined, except = ''): Vlan[] {
  const { vlans } = checked.plan.site;
  const withSubnet = vlans.filter(({ subnet }) => subnet !== undefined);
  if (withSubnet.length < 2) return withSubnet;
  const video = videoRanks(checked, withSubnet);
  const asks = (vlan: Vlan): boolean => kind === 'switch' && vlan.querier === except;
  const alike = countIn(checked, withSubnet, ({ kind: own, name }) => own === kind && name !== except);
  const isVideo = kind === undefined || !OF_THE_HOUSE.includes(kind);
  const rank = (vlan: Vlan): readonly number[] => [
    Number(asks(vlan)),
    alike.get(vlan) ?? 0,
    (isVideo ? 1 : -1) * (video.get(vlan) ?? 0),
  ];
  const ranks = new Map(withSubnet.map((vlan) => [vlan, rank(vlan)]));
  return withSubnet.sort((a, b) => compare(ranks.get(b) ?? [], ranks.get(a) ?? []));
}

/** The VLAN where cameras are and groups are sent. */
export function videoVlan(checked: Checked): Vlan | undefined {
  return likeliestVideo(checked)[0];
}

/** The likeliest VLAN for the rest of the house. */
export function houseVlan(checked: Checked): Vlan | undefined {
  const [video, ...others] = likeliestVideo(checked);
  return homeVlansOf(checked, 'computer').find((vlan) => vlan !== video) ?? others[0];
}

function likeliestVideo(checked: Checked): Vlan[] {
  const { vlans } = checked.plan.site;
  const ranks = videoRanks(checked, vlans);
  return [...vlans].sort((a, b) => (ranks.get(b) ?? 0) - (ranks.get(a) ?? 0));
}

/** Kinds of device that are mostly outside the cameras' network. */
const OF_THE_HOUSE: readonly string[] = ['computer', 'access-point', 'router', 'internet'];

/** Cameras count most, then the querier, then the name. */
function videoRanks(checked: Checked, vlans: readonly Vlan[]): Map<Vlan, number> {
  const cameras = countIn(checked, vlans, ({ kind }) => kind === 'camera');
  return new Map(
    vlans.map((vlan) => [
      vlan,
      4 * (cameras.get(vlan) ?? 0) +
        (vlan.querier === undefined ? 0 : 2) +
        Number(/video|cam|media|multicast|^tv/i.test(vlan.name)),
    ]),
  );
}

function countIn(
  checked: Checked,
  vlans: readonly Vlan[],
  counts: (device: Device) => boolean,
): ReadonlyMap<Vlan, number> {
  const { site, network } = checked.plan;
  const found = new Map<Vlan, number>();
  for (const device of site.devices) {
    if (!counts(device)) continue;
    const linked = device.ports.map((port) => network.topology.linkAt(port)?.untagged?.vlan);
    const addresses = ownAddresses(device);
    for (const vlan of vlans) {
      const { subnet } = vlan;
      const isHere =
        linked.includes(vlan) || (subnet !== undefined && addresses.some(({ address }) => contains(subnet, address)));
      if (isHere) found.set(vlan, (found.get(vlan) ?? 0) + 1);
    }
  }
  return found;
}

function vlansAt({ checked }: CompletionContext, port: Port): Vlan[] {
  const { topology } = checked.plan.network;
  const link = topology.linkAt(port);
  if (link === undefined) return [];
  return domainsOf(link)
    .flatMap(({ vlan }) => vlan ?? [])
    .filter(({ subnet }) => subnet !== undefined);
}

function isAt({ addresses }: Port, { subnet }: Vlan): boolean {
  return subnet !== undefined && addresses.some(({ address }) => contains(subnet, address));
}

function compare(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at === -1 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}

/** How well a port of a switch suits a device: by VLAN, power, speed, medium and building. */

import { contains } from '../../standards/ipv4.ts';
import { portTypes, powerClasses } from '../../standards/poe.ts';
import type { Checked } from '../../lint/check.ts';
import { type BroadcastDomain, domainsOf, hasVlans } from '../../network/vlan-membership.ts';
import { mediumAt } from '../../site/cable.ts';
import type { Device, Port, Vlan } from '../../site/model.ts';
import { homeVlansOf } from './home-vlans.ts';

/** The device's port that is to be plugged in, and facts that are the same for all ports that are compared. */
export interface PlugKind {
  readonly port: Port;
  /** The VLAN that it belongs in; `undefined` where the site does not show it. */
  readonly vlan: Vlan | undefined;
  /** The VLAN that its uplink or its own address puts a switch without VLANs in. */
  readonly vlanOf: (device: Device) => Vlan | undefined;
  /** Networks that another port of the same device is in: two cards in one are a mistake. */
  readonly others: ReadonlySet<BroadcastDomain>;
  /** The network of a switch without VLANs that has a cable. */
  readonly domainOf: (device: Device) => BroadcastDomain | undefined;
  /** mW that each switch with a declared budget can still feed. */
  readonly powerLeft: ReadonlyMap<Device, number>;
}

export function plugOf(checked: Checked, port: Port): PlugKind {
  const { site, poe } = checked.plan;
  const [own] = port.addresses;
  const holding =
    own === undefined
      ? undefined
      : site.vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, own.address));
  const vlan = holding ?? (own === undefined ? homeVlansOf(checked, port.device.kind, port.device.name)[0] : undefined);
  const powerLeft = new Map(
    poe.flatMap(({ device, budget, allotted }): [Device, number][] =>
      budget === undefined ? [] : [[device, budget - allotted]],
    ),
  );
  const { topology } = checked.plan.network;
  const vlanOf = ({ ports, address }: Device): Vlan | undefined =>
    ports.flatMap((one) => topology.linkAt(one)?.untagged?.vlan ?? [])[0] ??
    (address === undefined
      ? undefined
      : site.vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address)));
  const domainsAt = (one: Port): readonly BroadcastDomain[] => {
    const link = topology.linkAt(one);
    return link === undefined ? [] : domainsOf(link);
  };
  const domainOf = ({ ports }: Device): BroadcastDomain | undefined => ports.flatMap(domainsAt)[0];
  const others = new Set(port.device.ports.filter((one) => one !== port).flatMap(domainsAt));
  return { port, vlan, vlanOf, others, domainOf, powerLeft };
}

/** 0 where it suits best; `undefined` where it does not suit. */
export function misfit(out: Port, plug: PlugKind): number | undefined {
  const { port, powerLeft } = plug;
  if (out.device === port.device || !out.forwards || out.lag !== undefined || port.lag !== undefined) return undefined;
  if ((mediumAt(out) ?? 'copper') !== (mediumAt(port) ?? 'copper')) return undefined;
  const byVlan = vlanMisfit(out, plug);
  const byPower = powerMisfit(out, port, powerLeft.get(out.device));
  if (byVlan === undefined || byPower === undefined) return undefined;
  const [own, other] = [out.speed ?? 0, port.speed ?? 0];
  const bySpeed = own < other ? 8 : own > other && other > 0 ? 1 : 0;
  const isElsewhere = (out.device.building ?? port.device.building) !== (port.device.building ?? out.device.building);
  return byVlan + byPower + bySpeed + (isElsewhere ? 32 : 0);
}

function vlanMisfit(out: Port, { port, vlan, vlanOf, others, domainOf }: PlugKind): number | undefined {
  if (hasVlans(port)) {
    if (port.vlan !== undefined && port.trunk === undefined && !out.device.ports.some(hasVlans)) {
      const domain = domainOf(out.device);
      if (domain !== undefined && others.has(domain)) return undefined;
      return (vlanOf(out.device)?.name ?? port.vlan) === port.vlan ? 2 : undefined;
    }
    const alike = out.vlan === port.vlan && out.native === port.native && sameNames(out.trunk, port.trunk);
    return alike ? 0 : undefined;
  }
  if (out.trunk !== undefined) return vlan !== undefined && out.native === vlan.name ? 4 : undefined;
  if (out.vlan === undefined) {
    const domain = domainOf(out.device);
    if (domain !== undefined && others.has(domain)) return undefined;
    const own = out.device.ports.some(hasVlans) ? undefined : (vlanOf(out.device) ?? vlan);
    return own === vlan && !out.device.ports.some(hasVlans) ? 2 : undefined;
  }
  return vlan === undefined || out.vlan === vlan.name ? 0 : undefined;
}

function powerMisfit(out: Port, { pd }: Port, left: number | undefined): number | undefined {
  if (pd === undefined) return out.pse === undefined ? 0 : 2;
  if (out.pse === undefined) return undefined;
  const { maxClass, pseMilliwatts } = portTypes[out.pse];
  const wanted = pd.class ?? 0;
  if (wanted > maxClass) return undefined;
  const allotted = Math.min(powerClasses[wanted]?.pseMilliwatts ?? pseMilliwatts, pseMilliwatts);
  return left !== undefined && allotted > left ? undefined : 0;
}

function sameNames(a: readonly string[] | undefined, b: readonly string[] | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  return [...new Set(a)].sort().join() === [...new Set(b)].sort().join();
}

import { type Fix, fixOf } from '../../site/edit.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import type { Link } from '../../network/link.ts';
import type { Network } from '../../network/network.ts';
import type { Device, Site, Vlan } from '../../site/model.ts';
import { list, asName } from '../../text/words.ts';
import { hasQuerierAddress, queriedFrom } from '../../site/free/querier-address.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const querierAddress: Rule = {
  id: 'querier-address',
  severity: 'hint',
  summary: 'A querier has no address to send queries from.',
  why: `Other switches that snoop learn from the queries where the querier is, and send it reports and groups. Of a
query from 0.0.0.0 they learn nothing, and a switch without an address has no other to send from. Where the switch has
one, write it down; where it has none, give it one.`,
  source: 'RFC 4541 §2.1.1(1), from memory',
  check({ site, network }: RuleContext, report: Report): void {
    for (const [device, vlans] of asking(site)) {
      const without = vlans.filter((vlan) => !hasQuerierAddress(device, vlan));
      if (without.length === 0) continue;
      const heard = without.flatMap((vlan) => {
        const { querier, bridges } = network.tree(network.topology.domainOf(vlan));
        const others = [...bridges.keys()].filter((other) => other.snooping && other !== device);
        return querier === device && others.length > 0 ? [{ vlan, others }] : [];
      });
      const [first] = heard;
      if (first === undefined) continue;
      const cutOff = hasMembersBehind(network, heard);
      report({
        severity: cutOff ? 'warning' : 'hint',
        at: placeOf(first.vlan.item, ['querier']),
        message:
          `${asName(device.name)} asks for memberships in ${list(heard.map(({ vlan }) => vlan.name))} and has no address${device.addresses.length > 0 ? ' there' : ''}: of ` +
          `queries from 0.0.0.0 ${first.others[0]?.name ?? 'another switch'} does not learn where to send reports. ` +
          'Give its address.',
        // A consequence of a gateway without an address there, which is reported.
        effects: heard.map(({ vlan }) => vlan.item),
        acceptAt: [device.name, ...heard.map(({ vlan }) => vlan.name)],
        related: [{ at: namePlace(device.item), message: `${asName(device.name)} is declared here` }],
        fixes: () => addressed(site, device, first.vlan),
      });
    }
  },
};

/** A VLAN, and the other switches of it that snoop. */
interface Heard {
  readonly vlan: Vlan;
  readonly others: readonly Device[];
}

/** Whether a receiver at another switch wants a group of one of the VLANs whose source is not at the same switch. */
function hasMembersBehind({ deliveries, topology }: Network, heard: readonly Heard[]): boolean {
  const othersIn = new Map(heard.map(({ vlan, others }) => [topology.domainOf(vlan), new Set(others)]));
  const next = neighboursIn(topology.links);
  return deliveries.some(({ stream, domains, reaches, source }) => {
    if (stream.group === undefined || reaches.length === 0) return false;
    const others = domains.flatMap((domain) => othersIn.get(domain) ?? []);
    if (others.length === 0) return false;
    const atSource = next.get(source?.name ?? '');
    return reaches.some((name) =>
      [...(next.get(name) ?? [])].some(
        (bridge) => atSource?.has(bridge) !== true && others.some((own) => own.has(bridge)),
      ),
    );
  });
}

/** Each device that has a link, by name, with those at the other ends. */
function neighboursIn(links: readonly Link[]): ReadonlyMap<string, ReadonlySet<Device>> {
  const found = new Map<string, Set<Device>>();
  for (const { a, b } of links)
    for (const { device } of [a, b]) {
      const own = found.get(device.name);
      if (own === undefined) found.set(device.name, new Set([a.device, b.device]));
      else own.add(a.device).add(b.device);
    }
  return found;
}

/** Each switch that is named as querier, with its VLANs. */
function asking({ vlans, deviceByName }: Site): ReadonlyMap<Device, Vlan[]> {
  const found = new Map<Device, Vlan[]>();
  for (const vlan of vlans) {
    const device = vlan.querier === undefined ? undefined : deviceByName.get(vlan.querier);
    if (device?.kind !== 'switch') continue;
    const own = found.get(device);
    if (own === undefined) found.set(device, [vlan]);
    else own.push(vlan);
  }
  return found;
}

function addressed(site: Site, device: Device, vlan: Vlan): Fix[] {
  const given = queriedFrom(site, device, vlan);
  return given === undefined ? [] : fixOf(`Give ${asName(device.name)} ${given.address}`, ...given.edits);
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
#                                                   ^^^^ core asks for memberships in video and has no address
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 16: {trunk: [video]}}}
  barn: {kind: switch, igmp-snooping: true, ports: {1: {trunk: [video]}}}
  recorder: {kind: server, address: 192.168.20.2}
cables:
  - {from: core/1, to: recorder}
  - {from: core/16, to: barn/1}
`,
    good: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}}}
  recorder: {kind: server, address: 192.168.20.2}
cables:
  - {from: core/1, to: recorder}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 16: {trunk: [video]}}, address: 192.168.20.1}
  barn: {kind: switch, igmp-snooping: true, ports: {1: {trunk: [video]}}}
  recorder: {kind: server, address: 192.168.20.2}
cables:
  - {from: core/1, to: recorder}
  - {from: core/16, to: barn/1}
`,
  },
];

import { type Fix, fixOf } from '../../site/edit.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import type { Network } from '../../network/network.ts';
import type { Device, Port, Site, Vlan } from '../../site/model.ts';
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
      const cutOff = heard.some(({ vlan, others }) => hasMembersBehind(network, vlan, others));
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

/** Whether a receiver at another switch wants a group of the VLAN whose source is not at the same switch. */
function hasMembersBehind({ deliveries, topology }: Network, vlan: Vlan, others: readonly Device[]): boolean {
  const domain = topology.domainOf(vlan);
  const isAt = (name: string, bridge: Device): boolean =>
    topology.links.some(({ a, b }) => [a, b].some((port) => port.device.name === name) && [a, b].some(isOf(bridge)));
  return deliveries.some(
    ({ stream, domains, reaches, source }) =>
      stream.group !== undefined &&
      domains.includes(domain) &&
      others.some((bridge) => reaches.some((name) => isAt(name, bridge)) && !isAt(source?.name ?? '', bridge)),
  );
}

function isOf(device: Device): (port: Port) => boolean {
  return (port) => port.device === device;
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

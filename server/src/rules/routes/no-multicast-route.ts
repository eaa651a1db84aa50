import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Interface } from '../../network/interface.ts';
import type { Network } from '../../network/network.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import type { Fix } from '../../site/edit.ts';
import type { Device, Site, Stream } from '../../site/model.ts';
import { sendMulticastBy } from '../../site/multicast-route.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import { isMulticast } from '../../standards/ipv4.ts';
import { few, list, asName } from '../../text/words.ts';

export const noMulticastRoute: Rule = {
  id: 'no-multicast-route',
  severity: 'error',
  summary: 'A host in several networks has no route for a group.',
  why: `Without a route for a group and without a default route a host can neither send to it ("Network is
unreachable") nor join it ("No such device"), since nothing says in which network. Set a route for 224.0.0.0/4 by
the port that is meant. A host with one card needs the route too; there only one is possible, and what
\`plumbline make networkd\` and \`iproute2\` write sets it.`,
  source: 'Measured on Linux 6 (sendto, IP_ADD_MEMBERSHIP); RFC 1122 §3.3.1.1, from memory',
  check({ site, network }: RuleContext, report: Report): void {
    const without = new Map<Device, Use[]>();
    for (const stream of site.streams) {
      const { group, source, receivers } = stream;
      if (group === undefined || !isMulticast(group)) continue;
      const add = (name: string, sends: boolean): void => {
        const device = site.deviceByName.get(name);
        if (device === undefined || network.interfaces.of(device).length < 2) return;
        if (network.interfaces.towardsGroup(device, group) !== undefined) return;
        const uses = without.get(device) ?? [];
        without.set(device, uses);
        uses.push({ stream, sends });
      };
      if (source !== undefined) add(source, true);
      for (const receiver of receivers) if (receiver !== source) add(receiver, false);
    }
    for (const [device, uses] of without) {
      const networks = network.interfaces.of(device).map(({ domain }) => domain.name);
      report({
        at: namePlace(device.item),
        message:
          `${asName(device.name)} is in ${list([...new Set(networks)])} and has no route for multicast, so it ` +
          `${effect(uses)}. Give it the route for 224.0.0.0/4 by the port that is meant.`,
        acceptAt: [device.name, ...uses.map(({ stream }) => stream.name)],
        entails: network.deliveries.flatMap(({ unreached }) =>
          unreached.filter(({ why }) => why.obstacle === 'no-group-route' && why.device === device.name),
        ),
        related: uses.slice(0, 5).map(({ stream, sends }) => ({
          at: placeOf(stream.item, sends ? ['source'] : receiverKeyPath(stream, device.name)),
          message: sends
            ? `${asName(stream.name)} is not sent`
            : `${asName(device.name)} gets nothing of ${asName(stream.name)}`,
        })),
        fixes: () => routesFor(site, network, device, uses),
      });
    }
  },
};

interface Use {
  readonly stream: Stream;
  /** Whether the device sends it; else it receives it. */
  readonly sends: boolean;
}

function effect(uses: readonly Use[]): string {
  const names = (sends: boolean): string[] =>
    uses.filter((use) => use.sends === sends).map(({ stream }) => stream.name);
  const [sent, received] = [names(true), names(false)];
  if (sent.length === 0) return `cannot join ${few(received)}`;
  return received.length === 0 ? `cannot send ${few(sent)}` : `can neither send ${few(sent)} nor join ${few(received)}`;
}

/** A route by each of its interfaces, the one that serves most streams first. */
function routesFor(site: Site, { interfaces }: Network, device: Device, uses: readonly Use[]): Fix[] {
  const isThere = (own: Interface, name: string | undefined): boolean => {
    const other = name === undefined ? undefined : site.deviceByName.get(name);
    return other !== undefined && interfaces.in(other, own.domain) !== undefined;
  };
  const serves = (own: Interface): number =>
    uses.filter(({ stream, sends }) =>
      sends
        ? stream.egress === undefined
          ? stream.receivers.some((name) => name !== device.name && isThere(own, name))
          : stream.egress === own.port.name
        : isThere(own, stream.source),
    ).length;
  return interfaces
    .of(device)
    .map((own) => ({ own, served: serves(own) }))
    .sort((a, b) => b.served - a.served)
    .slice(0, 3)
    .flatMap(({ own }) => sendMulticastBy(device, interfaces.target(own), undefined));
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: house}, 2-3: {vlan: video}}}
  recorder: {kind: server, ports: {lan: {address: 192.168.10.5}, cams: {address: 192.168.20.5}}}
# ^^^^^^^^ recorder is in house and video and has no route for multicast, so it cannot send paddock-live
  stable-screen: {kind: display, address: 192.168.20.61}
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
  - {from: core/3, to: stable-screen}
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [stable-screen]}
`,
    fixed: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: house}, 2-3: {vlan: video}}}
  recorder: {kind: server, ports: {lan: {address: 192.168.10.5}, cams: {address: 192.168.20.5}}, routes: [{to: 224.0.0.0/4, port: cams}]}
  stable-screen: {kind: display, address: 192.168.20.61}
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
  - {from: core/3, to: stable-screen}
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [stable-screen]}
`,
  },
];

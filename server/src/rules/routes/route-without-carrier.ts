import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Obstacle } from '../../network/delivery.ts';
import { type LostReceiver, receiversLostBy } from '../../network/lost.ts';
import type { Network } from '../../network/network.ts';
import { type Fix, fixOf, remove } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Device, type HostRoute, type Port, portName } from '../../site/model.ts';
import { leadBy } from '../../site/multicast-route.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import { formatSubnet, isMulticast } from '../../standards/ipv4.ts';
import { few, asName } from '../../text/words.ts';

export const routeWithoutCarrier: Rule = {
  id: 'route-without-carrier',
  severity: 'error',
  summary: 'A route leads to a port without a cable.',
  why: `Linux keeps a route by a port whose cable is out, and sends by it: nothing leaves, and no program is told. A
less specific route does not step in, and a second one for the same destination is refused. Cable the port, lead the route
to another one, or remove it.`,
  source: 'Measured on Linux 6 (ip route get, counters); ip-sysctl, ignore_routes_with_linkdown, read',
  check({ site, network }: RuleContext, report: Report): void {
    if (site.cables.length === 0) return;
    for (const device of site.devices) {
      // Another rule reports a device without any cable.
      if (device.routes.length === 0 || network.interfaces.of(device).length === 0) continue;
      for (const { by, port, route } of network.interfaces.table(device).declared) {
        if (by !== undefined || route === undefined) continue;
        const lost = receiversLostBy(network, (why) => why.obstacle === 'into-nothing' && why.route === route);
        const alike = receiversLostBy(network, (why) => isBy(port, why));
        const cable =
          network.topology.linkAt(port) === undefined ? 'has no cable' : 'has a cable that carries no network';
        report({
          at: placeOf(device.item, [...route.keyPath, 'port']),
          severity: lost.length > 0 || route.to.prefix === 0 ? 'error' : 'warning',
          message:
            `${portName(port)} ${cable}, and Linux sends by it all the same: ${lossWords(lost, route)}. Cable the ` +
            'port, lead the route to another, or remove it.',
          acceptAt: [portName(port), device.name],
          // A consequence of a cable to a port in no VLAN, which is reported.
          effects: [port],
          // Traffic that goes there without a route is lost for the same cable.
          entails: [...lost, ...alike].flatMap(({ unreached }) => [unreached, unreached.why]),
          related: lost.slice(0, 5).map(({ stream, receiver }) => ({
            at: placeOf(stream.item, receiverKeyPath(stream, receiver)),
            message: `${asName(receiver)} gets nothing of ${asName(stream.name)}`,
          })),
          fixes: () => [...leadElsewhere(network, device, route), ...takeOut(device, route)],
        });
      }
    }
  },
};

/** Whether the obstacle is that it is sent by this port. */
function isBy({ device, name }: Port, why: Obstacle): boolean {
  return why.obstacle === 'into-nothing' && why.device === device.name && why.port === name;
}

function lossWords(lost: readonly LostReceiver[], { to }: HostRoute): string {
  if (lost.length === 0) return `what is for ${to.prefix === 0 ? 'other networks' : formatSubnet(to)} is lost`;
  const streams = [...new Set(lost.map(({ stream }) => stream.name))];
  return `${few(streams)} ${streams.length === 1 ? 'is' : 'are'} lost`;
}

/** Moves the route to a port with a cable: a default route to a network with a gateway, a group's to any. */
function leadElsewhere({ interfaces }: Network, device: Device, route: HostRoute): Fix[] {
  const fitting = interfaces
    .of(device)
    .filter(({ domain }) =>
      route.to.prefix === 0 ? domain.vlan?.gateway !== undefined : isMulticast(route.to.network),
    );
  return fitting.slice(0, 3).flatMap((by) => {
    const target = interfaces.target(by);
    const where = target.vlan === undefined ? target.port : `${target.port}, into ${target.vlan}`;
    return fixOf(`Let the route lead to ${where}`, ...leadBy(device.item, route, target));
  });
}

function takeOut({ item, routes }: Device, route: HostRoute): Fix[] {
  return fixOf('Remove the route', remove(item, routes.length === 1 ? ['routes'] : route.keyPath));
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1-4: {vlan: video}}}
  recorder:
    kind: server
    ports: {cams: {address: 192.168.20.5}, spare: {}}
    routes: [{to: 224.0.0.0/4, port: spare}]
#                                    ^^^^^ recorder/spare has no cable, and Linux sends by it all the same: paddock-live is lost
  kitchen-screen: {kind: display, address: 192.168.20.61}
cables:
  - {from: core/1, to: recorder/cams}
  - {from: core/2, to: kitchen-screen}
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1-4: {vlan: video}}}
  recorder:
    kind: server
    ports: {cams: {address: 192.168.20.5}, spare: {}}
    routes: [{to: 224.0.0.0/4, port: cams}]
  kitchen-screen: {kind: display, address: 192.168.20.61}
cables:
  - {from: core/1, to: recorder/cams}
  - {from: core/2, to: kitchen-screen}
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
`,
  },
];

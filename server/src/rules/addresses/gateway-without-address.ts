import { contains, firstHost, formatAddress, formatSubnet } from '../../standards/ipv4.ts';
import { type AddressUse, isOutside } from '../../network/address-uses.ts';
import { taggingOf } from '../../network/link.ts';
import { type Fix, addEntry, fixOf, nameText, putValue, scalarText, setValue } from '../../site/edit.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import { type Device, type Port, type Site, type Vlan, ownAddresses } from '../../site/model.ts';
import { nextFreeAddress, usedAddresses } from '../../site/free/address.ts';
import { hasBlank } from '../../network/blanks.ts';
import type { Obstacle } from '../../network/delivery.ts';
import { type LostReceiver, receiversLostBy } from '../../network/lost.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

/** Kinds of device that can be set up to forward between their ports. */
const FORWARDING: readonly string[] = ['router', 'server', 'computer'];

export const gatewayWithoutAddress: Rule = {
  id: 'gateway-without-address',
  severity: 'error',
  summary: 'The gateway of a VLAN has no address in it, or does not forward.',
  why: `Hosts send whatever is for another VLAN to the gateway's address in their own subnet. Without one they reach
nothing outside: no picture from another VLAN, no clock from the Internet. Give the router an address in the VLAN, at a
port that carries it, or name another gateway.`,
  source: 'RFC 1122 §3.3.1.1 and RFC 1812 §2.2.1, from memory',
  check(context: RuleContext, report: Report): void {
    const { site } = context;
    const reported = new Map<Device, object>();
    for (const vlan of site.vlans) {
      const device = vlan.gateway === undefined ? undefined : site.deviceByName.get(vlan.gateway);
      if (device?.kind === undefined) continue;
      const at = placeOf(vlan.item, ['gateway']);
      const acceptAt = [vlan.name, device.name];
      const related = [{ at: namePlace(device.item), message: `${asName(device.name)} is declared here` }];
      const { subnet } = vlan;
      if (!FORWARDING.includes(device.kind) && !device.routing) {
        const kind = device.kind.replace('-', ' ');
        const article = /^[aeiou]/.test(kind) ? 'an' : 'a';
        const what = device.bridging ? 'does not forward between VLANs' : 'forwards nothing';
        // For a gateway of several VLANs the first is reported and entails the others.
        const first = reported.get(device);
        const own = first ?? {};
        reported.set(device, own);
        report({
          at,
          acceptAt,
          related,
          effects: first === undefined ? [] : [own],
          entails: [
            ...(first === undefined ? [own, device] : []),
            ...receiversLostBy(context.network, leadsNowhere(device)).flatMap(both),
            ...stoppedBy(context.network, leadsNowhere(device)),
            // It does not forward groups either.
            ...(device.multicastRouting ? receiversLostBy(context.network, isUnforwarded).flatMap(both) : []),
          ],
          message: `${asName(device.name)} is ${article} ${kind}, which ${what}. Name the router as gateway${
            device.kind === 'switch' ? ', or let it route if it can' : ''
          }.`,
          fixes: () =>
            device.kind === 'switch'
              ? [
                  ...(hasAddress(device, vlan) ? [] : nameAnother(site, vlan)),
                  ...(device.ports.some(isLeg) ? sayRouter(device) : []),
                  ...fixOf(`Let ${asName(device.name)} route`, ...putValue(device.item, 'routing', 'true')),
                ]
              : nameAnother(site, vlan),
        });
      } else if (subnet !== undefined && !hasAddress(device, vlan) && !hasBlank(device.item)) {
        const other = leadingFrom(site, vlan);
        report({
          at,
          acceptAt,
          related,
          message:
            `${asName(device.name)} has no address in ${formatSubnet(subnet)}, so hosts in ${asName(vlan.name)} cannot send it ` +
            `anything. ${other === undefined ? 'Give it one there' : `Name ${asName(other.name)}, which has one, or give it one there`}.`,
          // A consequence of a subnet with no hosts, or of its own address outside, which is reported.
          effects: outsideOf(context.network, device, vlan) ?? [subnet],
          entails: [
            ...receiversLostBy(context.network, leadsNowhere(device)).flatMap(both),
            ...stoppedBy(context.network, leadsNowhere(device)),
            // It has no address as a querier either.
            ...(vlan.querier === device.name ? [vlan.item] : []),
          ],
          fixes: () => [...nameAnother(site, vlan), ...giveAddress(context, device, vlan)],
        });
      }
    }
  },
};

/** The only routing device with an address in the VLAN. */
function leadingFrom({ devices }: Site, vlan: Vlan): Device | undefined {
  const [only, another] = devices.filter((device) => device.routing && hasAddress(device, vlan));
  return another === undefined ? only : undefined;
}

function nameAnother(site: Site, vlan: Vlan): Fix[] {
  const other = leadingFrom(site, vlan);
  return other === undefined
    ? []
    : fixOf(`Name ${asName(other.name)} as gateway`, setValue(vlan.item, ['gateway'], scalarText(other.name, true)));
}

/** Whether it is a port with an address by VLAN, like a router's. */
function isLeg({ addresses, trunk }: Port): boolean {
  return addresses.length > 1 && trunk !== undefined;
}

function sayRouter({ name, item }: Device): Fix[] {
  return fixOf(`Say that ${asName(name)} is a router`, setValue(item, ['kind'], 'router'));
}

/** Whether a group is stopped as no router forwards it. */
function isUnforwarded({ obstacle }: Obstacle): boolean {
  return obstacle === 'other-network';
}

/** Whether a receiver gets nothing as packets end at that gateway. */
function leadsNowhere({ name }: Device): (why: Obstacle) => boolean {
  return (why) => (why.obstacle === 'no-route' || why.obstacle === 'no-router') && why.gateway === name;
}

/** The unreached receiver, and the obstacle. */
function both({ unreached }: LostReceiver): object[] {
  return [unreached, unreached.why];
}

function stoppedBy({ traffic }: RuleContext['network'], isWhy: (why: Obstacle) => boolean): Obstacle[] {
  return traffic.flatMap(({ obstacle }) => (obstacle !== undefined && isWhy(obstacle) ? [obstacle] : []));
}

/** An address for the VLAN counts even outside its subnet, which another rule reports. */
function hasAddress(device: Device, { name, subnet }: Vlan): boolean {
  return ownAddresses(device).some(
    ({ address, vlan }) => vlan === name || (vlan === undefined && subnet !== undefined && contains(subnet, address)),
  );
}

/** The device's addresses at ports in the VLAN. */
function outsideOf({ addressUses }: RuleContext['network'], device: Device, vlan: Vlan): AddressUse[] | undefined {
  const own = addressUses.filter(
    (use) => use.device === device && use.vlans.includes(vlan) && isOutside(use, use.vlans),
  );
  return own.length === 0 ? undefined : own;
}

function giveAddress({ site, network }: RuleContext, device: Device, vlan: Vlan): Fix[] {
  if (device.bridging) return giveOwn(site, device, vlan);
  const isThere = (port: Port): boolean => {
    const link = network.topology.linkAt(port);
    return (
      (link !== undefined && taggingOf(link, network.topology.domainOf(vlan)) !== 'no') ||
      port.trunk?.includes(vlan.name) === true
    );
  };
  const port = device.ports.find(isThere);
  const free = addressForGateway(site, vlan);
  // A port of a range has no address of its own.
  if (port === undefined || free === undefined || (port.keyPath.length > 0 && port.keyPath[1] !== port.name)) return [];
  const text = formatAddress(free);
  const plain = port.addresses.some((address) => address.vlan === undefined);
  const [first] = port.addresses;
  const edit =
    first !== undefined && !plain
      ? addEntry(device.item, first.keyPath.slice(0, -1), nameText(vlan.name), text)
      : plain
        ? undefined
        : port.trunk === undefined
          ? addEntry(device.item, port.keyPath, 'address', text)
          : addEntry(device.item, port.keyPath, 'addresses', `{${nameText(vlan.name)}: ${text}}`);
  return fixOf(`Give ${asName(device.name)} ${text} in ${asName(vlan.name)}`, edit);
}

/** Adds an address of the device itself, by VLAN and at no port. */
function giveOwn(site: Site, { name, item, addresses }: Device, vlan: Vlan): Fix[] {
  const free = addressForGateway(site, vlan);
  if (free === undefined) return [];
  const text = formatAddress(free);
  const edit =
    addresses.length > 0
      ? addEntry(item, ['addresses'], nameText(vlan.name), text)
      : addEntry(item, [], 'addresses', `{${nameText(vlan.name)}: ${text}}`);
  return fixOf(`Give ${asName(name)} ${text} in ${asName(vlan.name)}`, edit);
}

/** The lowest host address, as is the custom, if it is free. */
function addressForGateway(site: Site, vlan: Vlan): number | undefined {
  const { subnet, pool } = vlan;
  if (subnet === undefined) return undefined;
  const lowest = firstHost(subnet);
  const pooled = pool !== undefined && lowest >= pool.first && lowest <= pool.last;
  return pooled || usedAddresses(site.devices).has(lowest) ? nextFreeAddress(site, vlan) : lowest;
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: core}
#                                                   ^^^^ core is a switch, which does not forward between VLANs. Name the router as gateway, or let it route if it can.
devices:
  core: {kind: switch, addresses: {house: 192.168.10.1}, ports: {1-8: {vlan: house}}}
`,
    fixed: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: core}
devices:
  core: {kind: switch, addresses: {house: 192.168.10.1}, ports: {1-8: {vlan: house}}, routing: true}
`,
  },
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router}
#                                                   ^^^^^^ router has no address in 192.168.20.0/24
  guests: {id: 30, subnet: 192.168.30.0/24, gateway: paddock-cam}
#                                                    ^^^^^^^^^^^ paddock-cam is a camera, which forwards nothing
devices:
  paddock-cam: {kind: camera, address: 192.168.30.31}
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1}}}}
`,
    good: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router}
devices:
  router: {kind: router, ports: {lan: {trunk: [video], addresses: {video: 192.168.20.1}}}}
`,
    fixed: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router}
  guests: {id: 30, subnet: 192.168.30.0/24, gateway: paddock-cam}
devices:
  paddock-cam: {kind: camera, address: 192.168.30.31}
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
`,
  },
];

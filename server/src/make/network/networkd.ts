/** A host's network as files of systemd-networkd: systemd.network(5), systemd.netdev(5). */

import type { Plan } from '../../plan.ts';
import { placeOf } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { formatAddress } from '../../standards/ipv4.ts';
import { visible } from '../../text/visible.ts';
import { commented, header } from '../header.ts';
import { type Made, type MadeFile, type Output, type Refusal } from '../output.ts';
import { formatMac } from '../../standards/mac.ts';
import { networkdInterface, networkdText } from '../quoting/networkd.ts';
import { bondKeys } from './bond.ts';
import { ofEachHost } from './each-host.ts';
import { type HostInterface, type HostNetwork, type NetworkRoute, destination, hostNetwork } from './host-network.ts';
import { kernelSwitches } from './kernel-switches.ts';
import { textAt } from '../../text/syntax.ts';

export const networkd: Output = {
  kind: 'networkd',
  title: 'Network of a server: systemd-networkd',
  summary: 'files for /etc/systemd/network that give a host its addresses, VLAN interfaces and the multicast route',
  ...ofEachHost(ofHost),
};

const NOTES = [
  'networkd: copy the files of a host into its /etc/systemd/network, then `systemctl enable --now ' +
    'systemd-networkd`, as it may not run yet, and `networkctl reload`. Let nothing else set the same interfaces. ' +
    'A file 60-*.conf, if there is one, belongs in /etc/sysctl.d; without it the host needs no setting of the ' +
    'kernel. An interface without its cable delays, at each start, every unit that waits for the network by two minutes. If ' +
    'you reach the machine through the network that you are about to change, have another way in.',
];

function ofHost(plan: Plan, device: Device): Made {
  const network = hostNetwork(plan, device);
  const head = commented('#', header(plan.site, `make networkd ${device.name}`));
  const refused = [...network.refused, ...unnamedInterfaces(network)];
  const files = network.interfaces
    .filter(isNamed)
    .flatMap((own) => filesOf(network, own, `# Files of ${device.name}.\n${head}`));
  const switches = switchFile(plan, network, `# Of ${device.name}.\n${head}`);
  return { files: [...files, ...switches], refused, notes: [...NOTES, ...network.notes] };
}

function isNamed({ name, tag }: HostInterface): boolean {
  return networkdInterface(name) !== undefined && (tag === undefined || networkdInterface(tag.of) !== undefined);
}

/** Interfaces whose names Linux accepts and systemd-networkd does not. */
export function unnamedInterfaces({ device, interfaces }: HostNetwork): readonly Refusal[] {
  return interfaces.flatMap((own): Refusal[] => {
    // Interfaces of tagged VLANs are named after the port: one message is enough.
    if (isNamed(own) || own.tag !== undefined) return [];
    const message =
      `systemd-networkd takes no interface name such as ${visible(own.name)} of ${device.name}: letters, digits and ` +
      '. _ + @ - alone, and not digits alone. Say the name that the operating system has in `interface`.';
    const rule = own.port.interface === undefined ? 'not-made' : 'interface-name';
    return [{ rule, at: placeOf(device.item, [...own.port.keyPath, 'interface']), message }];
  });
}

/** sysctl.d(5): with a slash first, dots are part of the name of an interface. */
function switchFile(plan: Plan, network: HostNetwork, head: string): MadeFile[] {
  const { device } = network;
  const switches = kernelSwitches(plan, network);
  if (switches.length === 0) return [];
  const lines = switches.map(({ key, value, why }) => `\n# ${visible(why)}\n${key} = ${value}\n`);
  return [{ path: `${device.name}/60-${device.name}.conf`, text: `${head}\n${lines.join('')}` }];
}

/** A tagged VLAN's file comes first: its interface has the MAC address of its card, and the first match counts. */
function filesOf({ device, interfaces, routes }: HostNetwork, own: HostInterface, head: string): MadeFile[] {
  const { name, tag } = own;
  const legs = interfaces.filter((other) => other.tag?.of === name);
  const text = [
    head,
    section('Match', match(own)),
    section('Network', [
      ...described(device, own),
      ...(tag === undefined && own.addresses.length === 0 && own.vlan?.pool !== undefined
        ? [['DHCP', 'ipv4'] as const]
        : []),
      ...legs.map((leg) => ['VLAN', leg.name] as const),
      ...own.addresses.filter(({ metric }) => metric === undefined).map(addressKey),
    ]),
    ...own.addresses
      .filter(({ metric }) => metric !== undefined)
      .map((address) => section('Address', [addressKey(address), ['RouteMetric', String(address.metric)]])),
    ...routes.filter(({ by }) => by === own).map((route) => section('Route', routeKeys(route))),
  ].join('');
  const network = { path: `${device.name}/${tag === undefined ? '20' : '10'}-${name}.network`, text };
  if (own.cards.length > 0) return [...bondFiles(device, own, head), network];
  if (tag === undefined) return [network];
  const netdev = [
    head,
    section('NetDev', [
      ['Name', name],
      ['Kind', 'vlan'],
    ]),
    section('VLAN', [['Id', String(tag.id)]]),
  ].join('');
  return [{ path: `${device.name}/10-${name}.netdev`, text: netdev }, network];
}

function addressKey({ address, prefix }: HostInterface['addresses'][number]): Key {
  return ['Address', `${formatAddress(address)}/${prefix}`];
}

/** The interface that bonds cards, and each of them as a part of it. */
function bondFiles(device: Device, { name, cards }: HostInterface, head: string): MadeFile[] {
  const netdev = [
    head,
    section('NetDev', [
      ['Name', name],
      ['Kind', 'bond'],
    ]),
    section('Bond', bondKeys(cards)),
  ].join('');
  return [
    { path: `${device.name}/10-${name}.netdev`, text: netdev },
    ...cards.map((card) => ({
      path: `${device.name}/20-${card.name}.network`,
      text: [
        head,
        section('Match', match({ ...card, tag: undefined, cards: [] })),
        section('Network', [['Bond', name]]),
      ].join(''),
    })),
  ];
}

type Key = readonly [name: string, value: string];

function section(name: string, keys: readonly Key[]): string {
  return `\n[${name}]\n${keys.map(([key, value]) => `${key}=${value}\n`).join('')}`;
}

function match({ name, port, tag, cards }: Pick<HostInterface, 'name' | 'port' | 'tag' | 'cards'>): Key[] {
  return port.mac === undefined || tag !== undefined || cards.length > 0
    ? [['Name', name]]
    : [['MACAddress', formatMac(port.mac)]];
}

function described({ item }: Device, { port }: HostInterface): Key[] {
  const text = networkdText(textAt(item.data, [...port.keyPath, 'description']) ?? '');
  return text === '' ? [] : [['Description', text]];
}

function routeKeys({ to, via }: NetworkRoute): Key[] {
  if (to.prefix === 0 && via !== undefined) return [['Gateway', formatAddress(via)]];
  return [['Destination', destination(to)], via === undefined ? ['Scope', 'link'] : ['Gateway', formatAddress(via)]];
}

/** A host's network as iproute2 commands: a script that sets it up, and one that checks it. */

import type { Plan } from '../../plan.ts';
import type { Device } from '../../site/model.ts';
import { formatAddress } from '../../standards/ipv4.ts';
import { visible } from '../../text/visible.ts';
import { commented, header } from '../header.ts';
import { type Made, type Output } from '../output.ts';
import { shellWord } from '../quoting/shell.ts';
import { checkScript } from './check-script.ts';
import { bondCommands } from './bond.ts';
import { ofEachHost } from './each-host.ts';
import { type HostInterface, type HostNetwork, type NetworkRoute, destination, hostNetwork } from './host-network.ts';
import { type KernelSwitch, NO_SWITCH, kernelSwitches } from './kernel-switches.ts';

export const iproute2: Output = {
  kind: 'iproute2',
  title: 'Network of a server: iproute2',
  summary: 'scripts that set addresses, VLAN interfaces and the multicast route of a host, and that check them',
  ...ofEachHost(ofHost),
};

const NOTES = [
  'iproute2: what set-network.sh sets is gone when the machine starts again; `make networkd` makes files that ' +
    'stay. If you reach the machine through the network that you are about to change, have another way in.',
];

function ofHost(plan: Plan, device: Device): Made {
  const network = hostNetwork(plan, device);
  const head = header(plan.site, `make iproute2 ${device.name}`);
  const files = [
    { path: `${device.name}/set-network.sh`, text: setScript(plan, network, head), executable: true },
    { path: `${device.name}/check-network.sh`, text: checkScript(plan, network, head), executable: true },
  ];
  return { files, refused: network.refused, notes: [...NOTES, ...network.notes] };
}

function setScript(plan: Plan, network: HostNetwork, head: readonly string[]): string {
  const { device, interfaces, routes } = network;
  const switches = kernelSwitches(plan, network);
  const cards = interfaces
    .filter(({ tag }) => tag === undefined)
    .flatMap(({ name, cards: bonded }) => (bonded.length === 0 ? [name] : bonded.map((card) => card.name)));
  const lines = [
    '',
    `Sets addresses and routes of ${visible(device.name)}. Needs root. What is set already stays as it is, nothing ` +
      'else is taken away,',
    'and all of it lasts until the machine starts again.',
  ];
  return [
    '#!/bin/sh\n',
    commented('#', [...head, ...lines]).replace(/^# $/gm, '#'),
    'set -eu\n',
    ...(cards.length === 0
      ? []
      : [
          '\n# Before anything is changed: all interfaces are there.\n',
          ...cards.map((name) => `ip link show dev ${word(name)} >/dev/null\n`),
        ]),
    ...interfaces.map(setInterface),
    ...(routes.length === 0 ? [] : ['\n', ...[...routes].sort(lessGeneralFirst).map(setRoute)]),
    ...(switches.length === 0 ? [`\n# ${NO_SWITCH}\n`] : ['\n', ...switches.map(setSwitch)]),
  ].join('');
}

function setInterface({ name, port, vlan, tag, addresses, cards }: HostInterface): string {
  const own = word(name);
  const where = [
    port.name === name || cards.length > 0 ? '' : `port ${port.name}`,
    vlan === undefined ? '' : `VLAN ${vlan.name}`,
  ].filter((part) => part !== '');
  const lines = [`\n# ${visible([name, ...where].join(', '))}\n`];
  if (tag !== undefined)
    lines.push(
      `ip link show dev ${own} >/dev/null 2>&1 || ip link add link ${word(tag.of)} name ${own} type vlan id ` +
        `${tag.id}\n`,
    );
  lines.push(...bondCommands(name, cards));
  lines.push(`ip link set dev ${own} up\n`);
  for (const { address, prefix, metric } of addresses) {
    // A /31 and a /32 have no broadcast address (RFC 3021).
    lines.push(
      `ip address replace ${formatAddress(address)}/${prefix}${prefix < 31 ? ' broadcast +' : ''} dev ${own}` +
        `${metric === undefined ? '' : ` metric ${metric}`}\n`,
    );
  }
  return lines.join('');
}

/** The name of an interface may have any character that Linux accepts. */
function setSwitch({ key, value, why }: KernelSwitch): string {
  return `# ${visible(why)}\nprintf '%s\\n' ${value} >${word(`/proc/sys/${key}`)}\n`;
}

/** A gateway may itself be behind a more specific route. */
function lessGeneralFirst(a: NetworkRoute, b: NetworkRoute): number {
  return b.to.prefix - a.to.prefix || a.to.network - b.to.network;
}

function setRoute({ to, by, via }: NetworkRoute): string {
  return (
    `ip route replace ${destination(to)}${via === undefined ? '' : ` via ${formatAddress(via)}`} dev ` +
    `${word(by.name)}\n`
  );
}

/** Interface names are printable ASCII, so each has a word. */
function word(name: string): string {
  return shellWord(name) ?? "''";
}

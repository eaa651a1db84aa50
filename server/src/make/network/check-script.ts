/** A script that compares a host's network with the plan, and changes nothing. */

import type { Plan } from '../../plan.ts';
import { oppositePort } from '../../network/link.ts';
import { portName } from '../../site/model.ts';
import { formatAddress } from '../../standards/ipv4.ts';
import { bitRate } from '../../text/words.ts';
import { visible } from '../../text/visible.ts';
import { commented } from '../header.ts';
import { shellWord } from '../quoting/shell.ts';
import {
  type HostInterface,
  type HostNetwork,
  type NetworkRoute,
  destination,
  interfaceTowardsGroup,
} from './host-network.ts';
import { kernelSwitches } from './kernel-switches.ts';

export function checkScript(plan: Plan, network: HostNetwork, head: readonly string[]): string {
  const { device, interfaces, routes } = network;
  const lines = [
    '',
    `Compares the network of ${visible(device.name)} with the plan and prints what differs. Changes nothing; needs ` +
      'no root.',
    'Exit status: 0, all is as planned; 1, something differs; 2, it cannot be compared.',
  ];
  const calls = [
    ...interfaces.flatMap((own) => interfaceChecks(plan, own)),
    ...routes.map(routeCheck),
    ...kernelSwitches(plan, network).map(({ key, value }) => `switched ${word(key)} ${value}`),
    ...groupsOf(plan, network).flatMap((group) => {
      const by = interfaceTowardsGroup(plan, network, group);
      return by === undefined ? [] : [`leaves ${formatAddress(group)} ${word(by.name)}`];
    }),
  ];
  const comment = commented('#', [...head, ...lines]).replace(/^# $/gm, '#');
  return `#!/bin/sh\n${comment}${FUNCTIONS}\n${calls.join('\n')}\n${END(device.name)}`;
}

function interfaceChecks(plan: Plan, { name, port, tag, addresses, cards }: HostInterface): string[] {
  const own = word(name);
  const link = plan.network.topology.linkAt(port);
  const checks: string[] = [];
  if (tag !== undefined) checks.push(`tagged ${own} ${word(tag.of)} ${tag.id}`);
  // A card without a cable in the plan has no link, and no speed.
  else if (link === undefined) checks.push(`there ${own}`);
  else {
    checks.push(`linked ${own} ${word(visible(portName(oppositePort(link, port)), 100))}`);
    checks.push(...cards.map((card) => `bonded ${word(card.name)} ${own}`));
    const speed = link.capacity ?? port.speed;
    if (speed !== undefined && speed >= 1_000_000)
      checks.push(`runs_at ${own} ${Math.floor(speed / 1_000_000)} ${word(bitRate(speed))}`);
  }
  checks.push(...addresses.map(({ address, prefix }) => `has ${own} ${formatAddress(address)}/${prefix}`));
  return checks;
}

function routeCheck({ to, by, via }: NetworkRoute): string {
  return `routed ${destination(to)} ${word(by.name)}${via === undefined ? '' : ` ${formatAddress(via)}`}`;
}

/** The groups that the host sends or receives, lowest first. */
function groupsOf({ site }: Plan, { device }: HostNetwork): number[] {
  const own = site.streams.filter(({ source, receivers }) => source === device.name || receivers.includes(device.name));
  return [...new Set(own.flatMap(({ group }) => group ?? []))].sort((a, b) => a - b);
}

function word(text: string): string {
  return shellWord(text) ?? "''";
}

/** Interface names are quoted, so that `case` reads no character in them as a pattern. */
const FUNCTIONS = `set -u

command -v ip >/dev/null || { echo 'There is no command ip: it is in the package iproute2.' >&2; exit 2; }
differences=0
differs() { printf '%s\\n' "$1"; differences=$((differences + 1)); }

# there INTERFACE
there() { ip -o link show dev "$1" >/dev/null 2>&1 || differs "$1: there is no such interface"; }

# linked INTERFACE OTHER-END
linked() {
  case $(ip -o link show dev "$1" 2>/dev/null) in
    '') differs "$1: there is no such interface" ;;
    *[\\<,]LOWER_UP[\\>,]*) ;;
    *[\\<,]UP[\\>,]*) differs "$1: no link; look at the cable to $2, and whether both ends are on" ;;
    *) differs "$1: is down" ;;
  esac
}

# runs_at INTERFACE MEGABITS SPEED
runs_at() {
  found=$(cat "/sys/class/net/$1/speed" 2>/dev/null) || found=-1
  if [ "\${found:--1}" -le 0 ]; then echo "$1: its speed cannot be read; the plan counts on $3" >&2
  elif [ "$found" -lt "$2" ]; then differs "$1: runs at $found Mb/s, the plan counts on $3; look at the cable and at what the ports are set to"
  fi
}

# bonded CARD INTERFACE
bonded() {
  case " $(ip -o link show dev "$1" 2>/dev/null) " in
    '  ') differs "$1: there is no such interface" ;;
    *" master $2 "*) ;;
    *) differs "$1: is no part of $2" ;;
  esac
}

# tagged INTERFACE CARD ID
tagged() {
  case " $(ip -d -o link show dev "$1" 2>/dev/null) " in
    '  ') differs "$1: there is no such interface" ;;
    *" $1@$2: "*' vlan protocol 802.1Q id '"$3 "*) ;;
    *) differs "$1: is not the VLAN interface of $2 with the tag $3" ;;
  esac
}

# has INTERFACE ADDRESS/PREFIX
has() {
  case " $(ip -4 -o address show dev "$1" 2>/dev/null) " in
    *" inet $2 "*) ;;
    *) differs "$1: has not the address $2" ;;
  esac
}

# routed DESTINATION INTERFACE [GATEWAY]
routed() {
  found=$(ip -4 route show exact "$1" 2>/dev/null | head -n 1)
  found=\${found% }
  case "$found " in
    ' ') differs "$1: there is no route for it; it should go out of $2" ;;
    *" via \${3-none} dev $2 "*) ;;
    *' via '*) differs "$1: goes as '$found', should go out of $2\${3:+ by way of $3}" ;;
    *" dev $2 "*) [ -z "\${3-}" ] || differs "$1: goes as '$found', should go out of $2 by way of $3" ;;
    *) differs "$1: goes as '$found', should go out of $2\${3:+ by way of $3}" ;;
  esac
}

# switched KEY VALUE
switched() {
  found=$(cat "/proc/sys/$1" 2>/dev/null) || found=missing
  [ "$found" = "$2" ] || differs "/proc/sys/$1: is $found, should be $2"
}

# leaves GROUP INTERFACE
leaves() {
  found=$(ip -4 route get "$1" 2>&1 | head -n 1)
  found=\${found% }
  case "$found " in
    *" dev $2 "*) ;;
    *) differs "$1: leaves as '$found', should leave by $2" ;;
  esac
}
`;

const END = (name: string): string => `
[ "$differences" -eq 0 ] || exit 1
printf '%s\\n' ${word(visible(`${name}: all is as planned`))}
`;

/** A bonding interface of Linux: link aggregation by LACP (802.3ad), or without (balance-xor). */

import { shellWord } from '../quoting/shell.ts';
import type { Card } from './host-network.ts';

/** How often a card's link is checked, milliseconds. */
const LOOK = 100;
/** MAC and IP addresses choose the cable, so that traffic is spread with and without a router in between. */
const HASH = 'layer2+3';

function modeOf([first]: readonly Card[]): string {
  return first?.port.lacp === 'off' ? 'balance-xor' : '802.3ad';
}

/** Commands of iproute2 that bond the cards; a card must be down to be added. Empty without cards. */
export function bondCommands(name: string, cards: readonly Card[]): string[] {
  if (cards.length === 0) return [];
  const own = word(name);
  return [
    `ip link show dev ${own} >/dev/null 2>&1 || ip link add name ${own} type bond mode ${modeOf(cards)} miimon ` +
      `${LOOK} xmit_hash_policy ${HASH}\n`,
    ...cards.flatMap((card) => [
      `ip -o link show dev ${word(card.name)} | grep -q -F ${word(` master ${name} `)} || {\n` +
        `  ip link set dev ${word(card.name)} down\n  ip link set dev ${word(card.name)} master ${own}\n}\n`,
      `ip link set dev ${word(card.name)} up\n`,
    ]),
  ];
}

/** The same settings as keys of systemd.netdev(5), section [Bond]. */
export function bondKeys(cards: readonly Card[]): (readonly [name: string, value: string])[] {
  return [
    ['Mode', modeOf(cards)],
    ['TransmitHashPolicy', HASH],
    ['MIIMonitorSec', `${LOOK}ms`],
  ];
}

function word(text: string): string {
  return shellWord(text) ?? "''";
}

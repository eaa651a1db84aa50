/** The counters of each port, in bytes without preamble, gap and FCS. */

import type { Link, MemberLink } from '../../server/src/network/link.ts';
import type { Device, Port } from '../../server/src/site/model.ts';
import type { Plan } from '../../server/src/plan.ts';
import { interfaceOf } from './addresses.ts';
import type { OpenVSwitch } from './daemons.ts';
import { run } from './run.ts';
import { bridgeOf } from './switches.ts';

export interface Counted {
  readonly received: number;
  readonly sent: number;
}

/** The counters of the switches of Open vSwitch, by name of the interface. */
export async function countedByOpenVSwitch(plan: Plan, daemons: OpenVSwitch): Promise<Map<string, Counted>> {
  const found = new Map<string, Counted>();
  await Promise.all(
    plan.site.devices
      .filter(({ bridging }) => bridging)
      .map(async (device) => {
        const text = await daemons.ofctl(['--names', 'dump-ports', bridgeOf(device)]);
        const lines = /port\s+"?([\w.]+)"?: rx pkts=\d+, bytes=(\d+)[^\n]*\n\s+tx pkts=\d+, bytes=(\d+)/g;
        for (const [, name = '', received, sent] of text.matchAll(lines))
          found.set(name, { received: Number(received), sent: Number(sent) });
      }),
  );
  return found;
}

/** All cables of a link, at one of its devices. */
function together(
  counted: ReadonlyMap<string, Counted>,
  members: readonly MemberLink[],
  device: Device,
): Counted | undefined {
  const own = members.flatMap(({ a, b }) => counted.get(interfaceOf(a.device === device ? a : b)) ?? []);
  if (own.length < members.length) return undefined;
  return own.reduce((sum, { received, sent }) => ({ received: sum.received + received, sent: sum.sent + sent }));
}

async function atHost(namespace: string, port: Port): Promise<Counted> {
  const shown = JSON.parse(await run('ip', ['-n', namespace, '-j', '-s', 'link', 'show', interfaceOf(port)])) as {
    stats64: { rx: { bytes: number }; tx: { bytes: number } };
  }[];
  const stats = shown[0]?.stats64;
  if (stats === undefined) throw new Error(`${interfaceOf(port)} has no counters`);
  return { received: stats.rx.bytes, sent: stats.tx.bytes };
}

/**
 * Bytes by direction of link (2·link from `a` to `b`, 2·link + 1 back), as the switch counts them that sends them, or
 * else the one that receives them, by name of its interface; two hosts on one cable count for themselves.
 */
export async function count(
  plan: Plan,
  counted: ReadonlyMap<string, Counted>,
  namespaceOf: (port: Port) => string,
): Promise<number[]> {
  const at = async (link: Link): Promise<[number, number]> => {
    const a = together(counted, link.members, link.a.device);
    const b = together(counted, link.members, link.b.device);
    if (a !== undefined) return [a.sent, b === undefined ? a.received : b.sent];
    if (b !== undefined) return [b.received, b.sent];
    const host = await atHost(namespaceOf(link.a), link.a);
    return [host.sent, host.received];
  };
  return (await Promise.all(plan.network.topology.links.map(at))).flat();
}

/** Bytes that have left by each cable of a link between two switches: from `a` at position 0, from `b` at 1. */
export async function countCables(
  plan: Plan,
  daemons: OpenVSwitch,
  { members, a, b }: Link,
  position: 0 | 1,
): Promise<number[]> {
  const counted = await countedByOpenVSwitch(plan, daemons);
  const { device } = position === 0 ? a : b;
  return members.map((member) => {
    const port = member.a.device === device ? member.a : member.b;
    const own = counted.get(interfaceOf(port));
    if (own === undefined) throw new Error(`${interfaceOf(port)} has no counters`);
    return own.sent;
  });
}

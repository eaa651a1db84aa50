/** What each port has counted, in bytes without preamble, gap and FCS. */

import type { Link } from '../../server/src/network/link.ts';
import type { Port } from '../../server/src/site/model.ts';
import type { Plan } from '../../server/src/plan.ts';
import { interfaceOf } from './addresses.ts';
import type { OpenVSwitch } from './daemons.ts';
import { run } from './run.ts';
import { bridgeOf } from './switches.ts';

export interface Counted {
  readonly received: number;
  readonly sent: number;
}

/** What the switches of Open vSwitch have counted, by name of the interface. */
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
    const a = counted.get(interfaceOf(link.a));
    const b = counted.get(interfaceOf(link.b));
    if (a !== undefined) return [a.sent, b === undefined ? a.received : b.sent];
    if (b !== undefined) return [b.received, b.sent];
    const host = await atHost(namespaceOf(link.a), link.a);
    return [host.sent, host.received];
  };
  return (await Promise.all(plan.network.topology.links.map(at))).flat();
}

/** Whether this machine can hold a lab. */

import { existsSync } from 'node:fs';
import { clearLeftovers, Place } from './place.ts';
import { run, runIn } from './run.ts';

const TOOLS = [
  'ovsdb-server',
  'ovs-vswitchd',
  'ovs-vsctl',
  'ovs-ofctl',
  'ovs-appctl',
  'ovsdb-tool',
  'ip',
  'ethtool',
  'python3',
];

/** Why there can be no lab here; `undefined` where there can. Clears away the leftovers of a run that was killed. */
export async function whyNoLab(): Promise<string | undefined> {
  if (process.platform !== 'linux') return 'it is built of Linux network namespaces';
  if (process.getuid?.() !== 0) return 'it needs root';
  for (const tool of TOOLS) if (!(await has(tool))) return `${tool} is not installed`;
  if (!existsSync('/dev/net/tun')) return 'no /dev/net/tun';
  const listed = JSON.parse((await run('ip', ['-j', 'netns', 'list'])) || '[]') as { name: string }[];
  clearLeftovers(listed.map(({ name }) => name));
  const place = new Place();
  try {
    await place.addNamespaces(['probe']);
    await runIn(place.namespace('probe'), [
      'ip link add name near type veth peer name far',
      'ethtool -K near tx off',
      `python3 -c 'import socket; socket.socket(socket.AF_PACKET, socket.SOCK_RAW).bind(("near", 0))'`,
    ]);
    return undefined;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  } finally {
    place.clear();
  }
}

async function has(tool: string): Promise<boolean> {
  try {
    await run('which', [tool]);
    return true;
  } catch {
    return false;
  }
}

/** Waits until spanning tree has decided what each port does. */

import type { Plan } from '../../server/src/plan.ts';
import type { OpenVSwitch } from './daemons.ts';
import { sleep } from './run.ts';
import { bondOf, bridgeOf } from './switches.ts';

const PATIENCE = 15_000;
const STEADY = 600;

/** @throws where it has not decided after `PATIENCE` ms */
export async function spanningTreeSettled(plan: Plan, daemons: OpenVSwitch): Promise<void> {
  const bridges = plan.site.devices.filter(({ bridging, spanningTree }) => bridging && spanningTree).map(bridgeOf);
  if (bridges.length === 0) return;
  const until = Date.now() + PATIENCE;
  let before = '';
  let since = Date.now();
  while (Date.now() < until) {
    const shown = (await Promise.all(bridges.map((bridge) => daemons.appctl(['rstp/show', bridge])))).join('');
    const roles = (shown.match(/^\s+p\d+ .*$/gm) ?? []).join('\n');
    if (roles !== before) since = Date.now();
    before = roles;
    if (isDecided(roles) && Date.now() - since >= STEADY) return;
    await sleep(100);
  }
  throw new Error(`spanning tree has not settled after ${PATIENCE} ms:\n${before}`);
}

/** Twice the forward delay of 15 s, and the maximum age of 20 s before it (IEEE 802.1D-1998 §8.10.2, from memory). */
const OLDER_PATIENCE = 90_000;

/** @throws where a port still listens or learns after `OLDER_PATIENCE` ms */
export async function olderSpanningTreeSettled(plan: Plan, daemons: OpenVSwitch): Promise<void> {
  const bridges = plan.site.devices.filter(({ bridging }) => bridging).map(bridgeOf);
  const until = Date.now() + OLDER_PATIENCE;
  for (;;) {
    const shown = (await Promise.all(bridges.map((bridge) => daemons.appctl(['stp/show', bridge])))).join('');
    if (!/listening|learning/.test(shown) && /forwarding/.test(shown)) return;
    if (Date.now() > until) throw new Error(`spanning tree has not settled after ${OLDER_PATIENCE} ms:\n${shown}`);
    await sleep(200);
  }
}

/** @throws where the cables of an aggregated link have not become one after `PATIENCE` ms */
export async function aggregationSettled(plan: Plan, daemons: OpenVSwitch): Promise<void> {
  const bonds = plan.network.topology.links
    .filter(({ members }) => members.length > 1)
    .flatMap(({ a, b }) => [bondOf(a), bondOf(b)]);
  const until = Date.now() + PATIENCE;
  for (const bond of bonds) {
    for (;;) {
      const shown = await daemons.appctl(['bond/show', bond]);
      const isWhole = !/may_enable: false|^member .*: disabled/m.test(shown);
      if (isWhole && /lacp_status: (?:negotiated|off)/.test(shown)) break;
      if (Date.now() > until) throw new Error(`${bond} has not come up after ${PATIENCE} ms:\n${shown}`);
      await sleep(100);
    }
  }
}

function isDecided(roles: string): boolean {
  return !/Learning|(Designated|Root)\s+Discarding/.test(roles);
}

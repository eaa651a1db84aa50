/** Waits until spanning tree has decided what each port does. */

import type { Plan } from '../../server/src/plan.ts';
import type { OpenVSwitch } from './daemons.ts';
import { sleep } from './run.ts';
import { bridgeOf } from './switches.ts';

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

function isDecided(roles: string): boolean {
  return !/Learning|(Designated|Root)\s+Discarding/.test(roles);
}

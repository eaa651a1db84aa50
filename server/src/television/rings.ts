/** Rings of coax that no aerial feeds: what an amplifier sends comes back to its input. */

import type { Connector } from '../site/model.ts';
import { waysOn } from './part.ts';
import type { CoaxRun } from './run.ts';

/** The coax that closes each ring. */
export function ringsOf(runs: readonly CoaxRun[], runAt: ReadonlyMap<Connector, CoaxRun>): readonly CoaxRun[] {
  const rings = new Set<CoaxRun>();
  const done = new Set<Connector>();
  /** Connectors on the path that is being followed. */
  const open = new Set<Connector>();
  const pending: { readonly from: Connector; readonly isFollowed: boolean }[] = [];
  for (const start of runs.flatMap(({ a, b }) => [a, b])) {
    pending.push({ from: start, isFollowed: false });
    for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
      const { from, isFollowed } = next;
      if (isFollowed) {
        open.delete(from);
        done.add(from);
        continue;
      }
      const run = runAt.get(from);
      if (run === undefined || done.has(from) || open.has(from)) continue;
      open.add(from);
      pending.push({ from, isFollowed: true });
      const to = run.a === from ? run.b : run.a;
      for (const name of waysOn(to.device, to.name)) {
        const on = to.device.connectorByName.get(name);
        if (on === undefined) continue;
        if (open.has(on)) rings.add(run);
        else pending.push({ from: on, isFollowed: false });
      }
    }
  }
  return [...rings];
}

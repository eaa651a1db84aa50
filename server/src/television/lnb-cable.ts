/** Cables that carry one polarisation and band of a satellite at a time, from an LNB or a multiswitch to receivers. */

import type { Connector, Device } from '../site/model.ts';
import { waysOn } from './part.ts';
import { isReceiver } from './reception.ts';
import { type CoaxRun, runsByConnector } from './run.ts';

export interface LnbCable {
  /** The output of the LNB or the multiswitch. */
  readonly from: Connector;
  /** The receivers' connectors that hang on it. */
  readonly inputs: readonly Connector[];
  /** The part that lets 13/18 V and 22 kHz of none of them pass. */
  readonly blockedBy: Device | undefined;
}

/** By connector of a receiver. */
export function lnbCables(devices: readonly Device[], runs: readonly CoaxRun[]): ReadonlyMap<Connector, LnbCable> {
  const runAt = runsByConnector(runs);
  const byOutput = new Map<Connector, Way[]>();
  for (const device of devices) {
    if (!isReceiver(device)) continue;
    for (const input of device.connectorByName.values()) {
      const way = wayUp(input, runAt);
      if (way === undefined) continue;
      const known = byOutput.get(way.from);
      if (known === undefined) byOutput.set(way.from, [way]);
      else known.push(way);
    }
  }
  const found = new Map<Connector, LnbCable>();
  for (const [from, ways] of byOutput) {
    const inputs = ways.map(({ input }) => input);
    const blockedBy = ways.every((way) => way.blockedBy !== undefined) ? ways[0]?.blockedBy : undefined;
    for (const input of inputs) found.set(input, { from, inputs, blockedBy });
  }
  return found;
}

interface Way {
  readonly input: Connector;
  readonly from: Connector;
  readonly blockedBy: Device | undefined;
}

/** Up the coax, to the first output that gives what it is asked for. */
function wayUp(input: Connector, runAt: ReadonlyMap<Connector, CoaxRun>): Way | undefined {
  const seen = new Set<Connector>([input]);
  const pending: { readonly at: Connector; readonly blocked: Device | undefined }[] = [
    { at: input, blocked: undefined },
  ];
  for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
    const { at } = next;
    const run = runAt.get(at);
    const to = run?.a === at ? run.b : run?.a;
    if (run === undefined || to === undefined || seen.has(to)) continue;
    seen.add(to);
    const { device } = to;
    const blocked = next.blocked ?? run.through.find((part) => !passesControl(part, 'out'));
    if (device.kind === 'lnb' || (device.kind === 'multiswitch' && to.name.startsWith('out-')))
      return { input, from: to, blockedBy: blocked };
    for (const connector of device.connectorByName.values()) {
      if (seen.has(connector) || !waysOn(device, connector.name).includes(to.name)) continue;
      seen.add(connector);
      pending.push({ at: connector, blocked: blocked ?? (passesControl(device, to.name) ? undefined : device) });
    }
  }
  return undefined;
}

/** Whether direct current that comes in by an output gets through. Of parts that are not named here nobody can say. */
function passesControl({ kind, aerial }: Device, output: string): boolean {
  if (kind !== 'splitter' && kind !== 'amplifier' && kind !== 'isolator') return true;
  const passes = aerial?.powerPass ?? false;
  return typeof passes === 'boolean' ? passes : passes.includes(output);
}

/** Cables that carry one polarisation and band of a satellite at a time, from an LNB or a multiswitch to receivers. */

import type { Connector, Device } from '../site/model.ts';
import { reachedFrom } from './current-path.ts';
import { isSatellite } from '../standards/television/system.ts';
import { isReceiver, systemsAt } from './reception.ts';
import type { CoaxRun } from './run.ts';

export interface LnbCable {
  /** The output of the LNB or the multiswitch. */
  readonly from: Connector;
  /** The connectors of receivers on this cable. */
  readonly inputs: readonly Connector[];
  /** The connectors among them that ask for a satellite. */
  readonly asking: readonly Connector[];
  /** The part that stops 13/18 V and 22 kHz from all that ask. */
  readonly blockedBy: Device | undefined;
}

/** The cables by connector of a receiver. */
export function lnbCables(
  devices: readonly Device[],
  runAt: ReadonlyMap<Connector, CoaxRun>,
): ReadonlyMap<Connector, LnbCable> {
  const found = new Map<Connector, LnbCable>();
  // Multiswitches first: a receiver on one asks that, not the LNB behind it.
  const outputs = [...devices.flatMap(outputsOfMultiswitch), ...devices.flatMap(outputsOfLnb)];
  for (const from of outputs) {
    const reached = reachedFrom(from, runAt).flatMap(({ at, stops }) =>
      at === undefined || !isReceiver(at.device) || found.has(at) ? [] : [{ at, stops }],
    );
    const asking = reached.filter(({ at }) => asksLnb(at));
    const blocking = asking.map(({ stops }) => stops.findLast(({ isCertain }) => isCertain)?.device);
    const blockedBy = blocking.includes(undefined) ? undefined : blocking[0];
    const cable: LnbCable = {
      from,
      inputs: reached.map(({ at }) => at),
      asking: asking.map(({ at }) => at),
      blockedBy,
    };
    for (const { at } of reached) found.set(at, cable);
  }
  return found;
}

/** Whether a connector asks for a satellite: by its systems; if undeclared, whether it supplies an LNB. */
function asksLnb(at: Connector): boolean {
  return systemsAt(at)?.some(isSatellite) ?? at.device.coaxInputs.get(at.name)?.supplies !== undefined;
}

function outputsOfMultiswitch({ kind, connectorByName }: Device): Connector[] {
  return kind === 'multiswitch' ? [...connectorByName.values()].filter(({ name }) => name.startsWith('out-')) : [];
}

function outputsOfLnb({ kind, connectorByName }: Device): Connector[] {
  return kind === 'lnb' ? [...connectorByName.values()] : [];
}

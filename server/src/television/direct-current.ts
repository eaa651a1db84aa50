/** Direct current along coax: which supply reaches which amplifier and LNB, and what is lost on the way. */

import type { Connector, Device } from '../site/model.ts';
import { type CurrentLeg, type Reached, reachedFrom } from './current-path.ts';
import type { CoaxRun } from './run.ts';

/** A source of current on coax: an inserter, or a receiver by one of its connectors. */
export interface CurrentSource {
  readonly device: Device;
  /** The connector of a receiver. */
  readonly connector: Connector | undefined;
  /** Millivolts; `undefined` for a receiver that feeds an LNB with 13 or 18 V. */
  readonly voltage: number | undefined;
  /** The most that it gives, mA. */
  readonly current: number | undefined;
}

/** A supply that reaches a consumer. */
export interface CurrentFeed {
  readonly supply: CurrentSource;
  /** The coax at the supply, with those between it and the consumer. */
  readonly by: CurrentLeg;
}

/** A device that needs current from the coax. */
export interface CurrentConsumer {
  readonly device: Device;
  readonly connector: Connector;
  readonly feeds: readonly CurrentFeed[];
  /** Parts that stop the current of supplies on its coax. */
  readonly stoppedBy: readonly Device[];
}

export interface DirectCurrent {
  readonly consumers: readonly CurrentConsumer[];
  /** Supplies that reach an aerial, which is often a short circuit for them. */
  readonly intoAerials: readonly { readonly aerial: Device; readonly supply: CurrentSource }[];
}

export function directCurrentOf(devices: readonly Device[], runAt: ReadonlyMap<Connector, CoaxRun>): DirectCurrent {
  const consumers = devices.flatMap((device) =>
    takesBy(device).map((connector): CurrentConsumer => ({ device, connector, ...suppliesOf(connector, runAt) })),
  );
  const intoAerials = devices
    .filter(({ kind }) => kind === 'aerial')
    .flatMap((aerial) =>
      [...aerial.connectorByName.values()].flatMap((connector) =>
        suppliesOf(connector, runAt).feeds.map(({ supply }) => ({ aerial, supply })),
      ),
    );
  return { consumers, intoAerials };
}

/** The connectors by which a device takes its current from the coax. */
function takesBy({ kind, aerial, connectorByName }: Device): Connector[] {
  if (kind === 'lnb') return [...connectorByName.values()];
  const by =
    kind === 'amplifier' && aerial?.poweredBy !== undefined ? connectorByName.get(aerial.poweredBy) : undefined;
  return by === undefined ? [] : [by];
}

function suppliesOf(
  from: Connector,
  runAt: ReadonlyMap<Connector, CoaxRun>,
): Pick<CurrentConsumer, 'feeds' | 'stoppedBy'> {
  const feeds: CurrentFeed[] = [];
  const stoppedBy = new Set<Device>();
  for (const reached of reachedFrom(from, runAt)) {
    const supply = supplyAt(reached);
    if (supply === undefined) continue;
    if (reached.stops.length === 0) feeds.push({ supply, by: reached.by });
    for (const { device } of reached.stops) stoppedBy.add(device);
  }
  return { feeds, stoppedBy: [...stoppedBy] };
}

function supplyAt({ at, device }: Reached): CurrentSource | undefined {
  if (device.kind === 'power-inserter') {
    const { supply: voltage, current } = device.aerial ?? {};
    return at === undefined || at.name === 'aerial' ? { device, connector: undefined, voltage, current } : undefined;
  }
  const input = at === undefined || device.kind === 'combiner' ? undefined : device.coaxInputs.get(at.name);
  return input?.supplies === undefined
    ? undefined
    : { device, connector: at, voltage: input.supply, current: input.supplies };
}

/**
 * Direct current along coax: which supply reaches which amplifier and LNB, and what is lost on the way.
 *
 * A coax passes it, and so does an earth block; other passive parts only where they say so. An inserter feeds towards
 * the aerial; an amplifier takes what comes in by the connector that powers it, and passes none on.
 */

import type { Connector, Device, Site } from '../site/model.ts';
import { type CoaxRun, loopResistance } from './run.ts';
import type { Signals } from './signals.ts';

/** What puts current onto coax: an inserter, or a receiver by one of its connectors. */
export interface Supply {
  readonly device: Device;
  /** Of a receiver. */
  readonly connector: Connector | undefined;
  /** Millivolts; `undefined` of a receiver that feeds an LNB, which gets 13 or 18 V. */
  readonly voltage: number | undefined;
  /** The most that it gives, mA. */
  readonly current: number | undefined;
}

/** A supply that reaches a consumer. */
export interface Feed {
  readonly supply: Supply;
  /** Ohms of the coax between them; of a coax without a length nothing is counted. */
  readonly resistance: number;
}

/** What needs current from the coax. */
export interface Consumer {
  readonly device: Device;
  readonly connector: Connector;
  readonly feeds: readonly Feed[];
  /** Parts that stop the current, where no supply reaches it; those nearest to it. */
  readonly stoppedBy: readonly Device[];
}

export interface DirectCurrent {
  readonly consumers: readonly Consumer[];
  /** Supplies that reach an aerial, which is a short circuit for them as often as not. */
  readonly intoAerials: readonly { readonly aerial: Device; readonly supply: Supply }[];
}

export function directCurrentOf(
  { devices }: Pick<Site, 'devices'>,
  runs: readonly CoaxRun[],
  signals: Signals,
): DirectCurrent {
  const runAt = new Map<Connector, CoaxRun>();
  for (const run of runs) runAt.set(run.a, run).set(run.b, run);
  const trace = (from: Connector): Traced => follow(from, runAt, signals);
  const consumers = devices.flatMap((device) =>
    takesBy(device).map((connector): Consumer => ({ device, connector, ...trace(connector) })),
  );
  const intoAerials = devices
    .filter(({ kind }) => kind === 'aerial')
    .flatMap((aerial) =>
      [...aerial.connectorByName.values()].flatMap((connector) =>
        trace(connector).feeds.map(({ supply }) => ({ aerial, supply })),
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

type Traced = Pick<Consumer, 'feeds' | 'stoppedBy'>;

/** From a connector outwards to all supplies that reach it. */
function follow(from: Connector, runAt: ReadonlyMap<Connector, CoaxRun>, signals: Signals): Traced {
  const feeds: Feed[] = [];
  const stoppedBy: Device[] = [];
  const seen = new Set<Connector>([from]);
  const pending: (readonly [at: Connector, resistance: number])[] = [[from, 0]];
  for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
    const [at, before] = next;
    const run = runAt.get(at);
    if (run === undefined) continue;
    const resistance = before + (loopResistance(run.cable) ?? 0);
    const passed = alongRun(run, at, signals);
    if (passed !== undefined) {
      if ('supply' in passed) feeds.push({ supply: passed.supply, resistance });
      else stoppedBy.push(passed.stop);
      continue;
    }
    const to = run.a === at ? run.b : run.a;
    if (seen.has(to)) continue;
    seen.add(to);
    const supply = supplyAt(to);
    if (supply !== undefined) {
      feeds.push({ supply, resistance });
      continue;
    }
    const on = onwards(to);
    if (on.length === 0 && to.device.aerial !== undefined && to.device.kind !== 'aerial') stoppedBy.push(to.device);
    for (const connector of on) {
      if (seen.has(connector)) continue;
      seen.add(connector);
      pending.push([connector, resistance]);
    }
  }
  return { feeds, stoppedBy };
}

/** What a coax is led through: an inserter feeds towards where signals come from; an isolator passes nothing. */
function alongRun(
  run: CoaxRun,
  from: Connector,
  signals: Signals,
): { readonly supply: Supply } | { readonly stop: Device } | undefined {
  const parts = from === run.a ? run.through : [...run.through].reverse();
  for (const device of parts) {
    if (device.kind === 'isolator') return { stop: device };
    if (device.kind !== 'power-inserter') continue;
    return isTowardsAerial(run, from, signals) ? { supply: inserted(device) } : { stop: device };
  }
  return undefined;
}

/** Whether a connector is on the side of a coax that signals come from. */
function isTowardsAerial(run: CoaxRun, at: Connector, signals: Signals): boolean {
  const other = run.a === at ? run.b : run.a;
  const steps = (connector: Connector): number => signals.at(connector)[0]?.steps.length ?? Infinity;
  return steps(at) <= steps(other);
}

function inserted(device: Device): Supply {
  return { device, connector: undefined, voltage: device.aerial?.supply, current: device.aerial?.current };
}

function supplyAt(connector: Connector): Supply | undefined {
  const { device, name } = connector;
  if (device.kind === 'power-inserter') return name === 'aerial' ? inserted(device) : undefined;
  const input = device.coaxInputs.get(name);
  if (input?.supplies === undefined || device.kind === 'combiner') return undefined;
  return { device, connector, voltage: input.supply, current: input.supplies };
}

/** By which connectors current goes on that comes in by one. */
function onwards({ device, name }: Connector): readonly Connector[] {
  const { kind, aerial, connectorByName } = device;
  if (aerial === undefined || kind === 'amplifier' || kind === 'isolator' || kind === 'power-inserter') return [];
  const others = [...connectorByName.values()].filter((connector) => connector.name !== name);
  if (kind === 'earth-block' || kind === 'multiswitch') return others;
  const { powerPass } = aerial;
  if (powerPass === false) return [];
  if (powerPass === true) return others;
  const passes = (connector: string): boolean => powerPass.includes(connector);
  // Current goes between the input and the outputs that pass it.
  return passes(name) ? others.filter((other) => !passes(other.name)) : others.filter((other) => passes(other.name));
}

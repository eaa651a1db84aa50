/**
 * Signals on their way from aerials and LNBs along coax: their level, and the added noise, at every connector.
 *
 * Where several sources are joined, each is followed by itself: none changes the level of another.
 */

import { perObject } from '../memo.ts';
import type { Connector, Device, Site } from '../site/model.ts';
import type { Multiplex } from '../site/television/facts.ts';
import { levelFromField } from '../standards/television/level.ts';
import { type Chain, NO_CHAIN, type Stage, lengthened, lossy } from '../standards/television/noise.ts';
import { planeOf } from '../standards/television/satellite.ts';
import { isSatellite } from '../standards/television/system.ts';
import { coaxFrequency, skyFrequency } from '../site/television/channel.ts';
import { passage, waysOn } from './part.ts';
import { ringsOf } from './rings.ts';
import { type CoaxRun, cableLoss, runsByConnector } from './run.ts';

/** One step on the way of a signal: a coax, or a part. */
export interface SignalStep extends Stage {
  readonly by: { readonly cable: CoaxRun['cable'] } | { readonly device: Device };
  readonly assumed: boolean;
}

/** Whether the level is unknown, as an amplifier on the way declares no gain that can be read. */
export function isUnknown({ steps }: Pick<Signal, 'steps'>): boolean {
  return steps.some(
    ({ by }) => 'device' in by && by.device.kind === 'amplifier' && by.device.aerial?.gain === undefined,
  );
}

/** A multiplex at a connector. */
export interface Signal {
  readonly multiplex: Multiplex;
  readonly source: Connector;
  readonly at: Connector;
  /** On the coax, Hz. */
  readonly frequency: number;
  /** dBµV */
  readonly level: number;
  /** All steps from its source. */
  readonly steps: readonly SignalStep[];
  /** The steps as one stage. */
  readonly chain: Chain;
}

/** A multiplex that a part stops, at the connector where it comes in. */
export interface StoppedSignal {
  readonly signal: Signal;
  readonly device: Device;
}

/** A coax that leads a source's signals back to a connector that they have passed. */
export interface Loop {
  readonly run: CoaxRun;
  readonly source: Connector;
}

export interface Signals {
  /** In the order of the sources, along each of their ways, and of the multiplexes. */
  readonly all: readonly Signal[];
  readonly at: (connector: Connector) => readonly Signal[];
  readonly stopped: readonly StoppedSignal[];
  readonly loops: readonly Loop[];
  /** Where no signal of an aerial goes round: coaxes that lead an amplifier's output back to its input. */
  readonly rings: readonly CoaxRun[];
}

type Facts = Pick<Site, 'devices' | 'multiplexes' | 'channelPlan'>;

/**
 * Signals are followed no further than so many steps: no house has more, and the sums over the way of each signal would
 * grow with the square.
 */
const MOST_STEPS = 200;

export function signalsOf(site: Facts, runs: readonly CoaxRun[]): Signals {
  const runAt = runsByConnector(runs);
  const all: Signal[] = [];
  const stopped: StoppedSignal[] = [];
  const loops: Loop[] = [];
  for (const device of site.devices)
    for (const source of sourcesOf(device)) follow({ runAt, all, stopped, loops }, source, received(site, source));
  const byConnector = new Map<Connector, Signal[]>();
  for (const signal of all) {
    const known = byConnector.get(signal.at);
    if (known === undefined) byConnector.set(signal.at, [signal]);
    else known.push(signal);
  }
  const at = perObject((connector: Connector) => byConnector.get(connector) ?? []);
  return { all, at, stopped, loops, rings: loops.length === 0 ? ringsOf(runs, runAt) : [] };
}

function sourcesOf({ kind, connectorByName }: Device): readonly Connector[] {
  return kind === 'aerial' || kind === 'lnb' ? [...connectorByName.values()] : [];
}

/** The signals that an aerial or an LNB gives at a connector. */
function received(site: Facts, source: Connector): Signal[] {
  const { device } = source;
  const part = device.aerial;
  if (part === undefined) return [];
  return site.multiplexes.flatMap((multiplex): Signal[] => {
    const frequency = coaxFrequency(site, multiplex);
    const field = part.field.get(multiplex.name);
    const sky = skyFrequency(site, multiplex);
    const level =
      part.receives.get(multiplex.name) ??
      (field === undefined || sky === undefined ? undefined : levelFromField(field, part.gain ?? 0, sky));
    if (frequency === undefined || level === undefined || !isOnPlane(source, multiplex, sky)) return [];
    return [{ multiplex, source, at: source, frequency, level, steps: [], chain: NO_CHAIN }];
  });
}

/** Outputs of a quattro LNB have one plane each. */
function isOnPlane({ device, name }: Connector, { system, polarisation }: Multiplex, sky: number | undefined): boolean {
  if (device.aerial?.lnb !== 'quattro' || device.kind !== 'lnb') return true;
  if (system === undefined || !isSatellite(system) || polarisation === undefined || sky === undefined) return true;
  const { volts, tone } = planeOf(polarisation, sky);
  return name === `${volts === 13 ? 'v' : 'h'}${tone ? 'h' : 'l'}`;
}

interface Found {
  readonly runAt: ReadonlyMap<Connector, CoaxRun>;
  readonly all: Signal[];
  readonly stopped: StoppedSignal[];
  readonly loops: Loop[];
}

/** Follows signals from a connector by which they leave a device. */
function follow(found: Found, source: Connector, signals: readonly Signal[]): void {
  const entered = new Set<Connector>([source]);
  const pending: (readonly [from: Connector, signals: readonly Signal[]])[] = [[source, signals]];
  for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
    const [from, leaving] = next;
    found.all.push(...leaving);
    const run = found.runAt.get(from);
    if (run === undefined) continue;
    const to = run.a === from ? run.b : run.a;
    if (entered.has(to)) {
      found.loops.push({ run, source });
      continue;
    }
    entered.add(to);
    const arriving = leaving.flatMap((signal) => along(found, run, to, signal));
    found.all.push(...arriving);
    const on = waysOn(to.device, to.name).flatMap((name) => to.device.connectorByName.get(name) ?? []);
    // Reversed, as `pending` is a stack.
    const passed = new Set<Signal>();
    for (const connector of on.reverse()) {
      const left = through(arriving, connector, passed);
      if (entered.has(connector)) {
        if (left.length > 0) found.loops.push({ run, source });
        continue;
      }
      entered.add(connector);
      pending.push([connector, left]);
    }
    if (on.length > 0)
      for (const signal of arriving) if (!passed.has(signal)) found.stopped.push({ signal, device: to.device });
  }
}

function along(found: Found, run: CoaxRun, to: Connector, signal: Signal): Signal[] {
  const loss = cableLoss(run.cable, signal.frequency);
  if (signal.steps.length + run.through.length >= MOST_STEPS) return [];
  let passed = stepped(signal, to, { by: { cable: run.cable }, assumed: false, ...lossy(loss) });
  for (const device of run.through) {
    const [by = '', on = ''] = device.connectorByName.keys();
    const step = passage(device, by, on, signal.frequency);
    if (step === undefined) {
      found.stopped.push({ signal, device });
      return [];
    }
    passed = stepped(passed, to, { by: { device }, ...step });
  }
  return [passed];
}

/** The arriving signals that leave by a connector; adds them to `passed`. */
function through(arriving: readonly Signal[], to: Connector, passed: Set<Signal>): Signal[] {
  const left: Signal[] = [];
  for (const signal of arriving) {
    const step = passage(to.device, signal.at.name, to.name, signal.frequency);
    if (step === undefined) continue;
    passed.add(signal);
    left.push(stepped(signal, to, { by: { device: to.device }, ...step }));
  }
  return left;
}

function stepped(signal: Signal, at: Connector, step: SignalStep): Signal {
  const { multiplex, source, frequency, level, steps, chain } = signal;
  return {
    multiplex,
    source,
    at,
    frequency,
    level: level + step.gain,
    steps: [...steps, step],
    chain: lengthened(chain, step),
  };
}

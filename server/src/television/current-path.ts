/**
 * The paths of direct current along coax, from the consumer to the supply.
 *
 * A coax, an earth block and a multiswitch towards its LNB pass it; other parts only where they declare it. A splitter,
 * an amplifier and an isolator that declare nothing stop it; for the rest that is unknown. An inserter feeds only
 * towards the aerial.
 */

import type { Cable, Connector, Device } from '../site/model.ts';
import { waysOn } from './part.ts';
import type { CoaxRun } from './run.ts';

/** A part that does not pass current, as far as the site declares. */
export interface CurrentStop {
  readonly device: Device;
  /** `false` where the site declares nothing. */
  readonly isCertain: boolean;
}

/** A coax on the way, with those before it. */
export interface CurrentLeg {
  readonly cable: Cable;
  readonly before: CurrentLeg | undefined;
}

/** A connector or an inserter that is reached. */
export interface Reached {
  /** `undefined` at an inserter that a coax is led through. */
  readonly at: Connector | undefined;
  readonly device: Device;
  /** The last coax on the way. */
  readonly by: CurrentLeg;
  /** The stops on the way, from the start; none where current gets here. */
  readonly stops: readonly CurrentStop[];
}

/** The search ends behind so many stops: the nearest ones show what is in the way. */
const MOST_STOPS = 100;

type Pending = Pick<Reached, 'stops'> & { readonly at: Connector; readonly by: CurrentLeg | undefined };

/** All connectors at the ends of coax, outwards from one, each once, whether current gets there or not. */
export function reachedFrom(from: Connector, runAt: ReadonlyMap<Connector, CoaxRun>): Reached[] {
  const found: Reached[] = [];
  const seen = new Set<Connector>([from]);
  const pending: Pending[] = [{ at: from, by: undefined, stops: [] }];
  // An amplifier that is fed by its input has the aerial, not the receivers, in front of it.
  const isTowardsAerial = from.device.kind === 'amplifier' && from.name === 'in';
  for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
    const run = runAt.get(next.at);
    if (run === undefined) continue;
    const to = run.a === next.at ? run.b : run.a;
    if (seen.has(to)) continue;
    seen.add(to);
    const by: CurrentLeg = { cable: run.cable, before: next.by };
    let { stops } = next;
    for (const device of run.a === next.at ? run.through : [...run.through].reverse()) {
      if (device.kind === 'power-inserter' && !isTowardsAerial) found.push({ at: undefined, device, by, stops });
      const stop = stopAlong(device);
      if (stop !== undefined) stops = [...stops, stop];
    }
    found.push({ at: to, device: to.device, by, stops });
    if (stops.length >= MOST_STOPS) continue;
    for (const name of waysOn(to.device, to.name).toReversed()) {
      const on = to.device.connectorByName.get(name);
      if (on === undefined || seen.has(on)) continue;
      seen.add(on);
      const stop = stopBetween(to.device, to.name, name);
      pending.push({ at: on, by, stops: stop === undefined ? stops : [...stops, stop] });
    }
  }
  return found;
}

function stopAlong(device: Device): CurrentStop | undefined {
  const [by = '', to = ''] = device.connectorByName.keys();
  return stopBetween(device, by, to);
}

function stopBetween(device: Device, by: string, to: string): CurrentStop | undefined {
  const { kind, aerial } = device;
  const isOpen = kind === 'earth-block' || (kind === 'multiswitch' && by !== 'tv' && to !== 'tv');
  if (isOpen || passesAsDeclared(device, by, to)) return undefined;
  const isSaid = aerial?.powerPass !== undefined;
  return { device, isCertain: isSaid || kind === 'splitter' || kind === 'amplifier' || kind === 'isolator' };
}

/**
 * `power-pass` names outputs, or the inputs of a part that combines several; for a part with two connectors, either.
 */
function passesAsDeclared({ kind, aerial, connectorByName }: Device, by: string, to: string): boolean {
  const passes = aerial?.powerPass ?? false;
  if (typeof passes === 'boolean') return passes;
  if (connectorByName.size === 2) return passes.includes(by) || passes.includes(to);
  if (kind === 'multiswitch') return passes.includes(by) || passes.includes(to);
  const trunk = kind === 'combiner' || kind === 'diplexer' ? 'out' : 'in';
  return passes.includes(by === trunk ? to : by);
}

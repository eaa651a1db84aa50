/** The loss of a coax, and the parts that it is led through. */

import { type Cable, type Connector, type Device, type Site, connectorAt } from '../site/model.ts';
import { LOOP_RESISTANCE, coaxLoss, isCoax } from '../standards/television/coax.ts';
import { valueAt } from './part.ts';

/** A coax between two connectors. */
export interface CoaxRun {
  readonly cable: Cable;
  readonly a: Connector;
  readonly b: Connector;
  /** Inserters, isolators and earth blocks on its way, from `a`. */
  readonly through: readonly Device[];
}

export function coaxRuns(site: Pick<Site, 'cables' | 'deviceByName'>): CoaxRun[] {
  const taken = new Set<Connector>();
  return site.cables.flatMap((cable): CoaxRun[] => {
    const a = connectorAt(site, cable.from);
    const b = connectorAt(site, cable.to);
    if (a === undefined || b === undefined || a.device === b.device || taken.has(a) || taken.has(b)) return [];
    taken.add(a).add(b);
    const through = cable.through.flatMap(({ device }) => {
      const found = site.deviceByName.get(device);
      return found?.aerial === undefined ? [] : [found];
    });
    return [{ cable, a, b, through }];
  });
}

/** Loss in dB at a frequency in Hz; 0 where length or type are undeclared. */
export function cableLoss({ type, length, coax }: Cable, frequency: number): number {
  if (length === undefined) return 0;
  const metres = length / 1000;
  if (coax.attenuation !== undefined) return (valueBySkin(coax.attenuation, frequency) * metres) / 100;
  return isCoax(type) ? coaxLoss(type, metres, frequency) : 0;
}

/** Interpolates between the frequencies of a data sheet; outside of them loss goes by the root of the frequency. */
function valueBySkin(values: readonly (readonly [number, number])[], frequency: number): number {
  const [lowest, highest] = [values[0], values.at(-1)];
  const nearest = lowest !== undefined && frequency < lowest[0] ? lowest : highest;
  if (nearest === undefined) return 0;
  const isOutside = lowest !== undefined && highest !== undefined && (frequency < lowest[0] || frequency > highest[0]);
  return isOutside ? nearest[1] * Math.sqrt(frequency / nearest[0]) : valueAt(values, frequency);
}

/**
 * The resistance of core and screen, ohms; `undefined` where the length is undeclared. An undeclared core counts as
 * clad steel.
 */
export function loopResistance({ length, coax }: Cable): number | undefined {
  return length === undefined ? undefined : (LOOP_RESISTANCE[coax.core ?? 'clad-steel'] * length) / 1000;
}

/** The coaxes by the connector at either end. */
export function runsByConnector(runs: readonly CoaxRun[]): ReadonlyMap<Connector, CoaxRun> {
  const found = new Map<Connector, CoaxRun>();
  for (const run of runs) found.set(run.a, run).set(run.b, run);
  return found;
}

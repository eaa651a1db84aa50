/** Predicted and counted bytes, port by port. */

import { directionsOf } from '../directions.ts';
import { type Direction, oppositePort } from '../../server/src/network/link.ts';
import { trafficRates } from '../../server/src/network/traffic.ts';
import type { Plan } from '../../server/src/plan.ts';
import { type Port, portName } from '../../server/src/site/model.ts';

/**
 * Bytes in a window that no stream sends: ARP, IGMP, spanning tree. Up to so many a port that is predicted to be idle
 * may carry.
 */
const NOISE = 3000;

/** As much of what is predicted a loaded port may be off by: of what streams send, and of TCP's acknowledgements. */
const TOLERANCE = 0.01;

/**
 * A receiver may acknowledge fewer segments than we count: TCP joins segments that come in while it is busy. More than
 * one for two are allowed (RFC 5681 §4.2, read), but not what Linux does with the full segments that the lab sends.
 */
const FEWER_ACKNOWLEDGEMENTS = 0.25;

/** Bytes that may be added where the noise is more than one per cent of a small prediction. */
const NOISE_ON_LITTLE = 3000;

export interface Row {
  readonly port: Port;
  readonly to: Port;
  /** Bytes in the window, without FCS. */
  readonly predicted: number;
  readonly measured: number;
  readonly agrees: boolean;
}

export function rowsOf(plan: Plan, counted: readonly number[], seconds: number, scale: number): Row[] {
  return directionsOf(plan).map((direction, index): Row => {
    const { link, out: port } = direction;
    const bytes = (bitsPerSecond: number): number => (bitsPerSecond * seconds * scale) / 8;
    const predicted = bytes(plan.network.load(link, port).frame.nominal);
    const replies = bytes(repliesIn(plan, direction));
    const measured = counted[index] ?? 0;
    const over = measured - predicted;
    const allowed = Math.max(TOLERANCE * predicted, NOISE_ON_LITTLE);
    const agrees =
      predicted === 0 ? measured <= NOISE : over <= allowed && over >= -allowed - FEWER_ACKNOWLEDGEMENTS * replies;
    return { port, to: oppositePort(link, port), predicted, measured, agrees };
  });
}

/** Predicted bit/s that are acknowledgements. */
export function repliesIn(plan: Plan, { link, out }: Direction): number {
  let total = 0;
  for (const { stream, repliesUntagged, repliesTagged } of plan.network.copies(link, out)) {
    const { reply } = plan.network.rates(stream);
    total += repliesUntagged * reply.untagged.frame.nominal + repliesTagged * reply.tagged.frame.nominal;
  }
  for (const { traffic, ...copies } of plan.network.trafficCopies(link, out)) {
    const there = trafficRates({ ...traffic, rate: 0 });
    const { reply } = trafficRates({ ...traffic, back: 0 });
    total += copies.untagged * there.untagged.frame.nominal + copies.tagged * there.tagged.frame.nominal;
    total += copies.repliesUntagged * reply.untagged.frame.nominal + copies.repliesTagged * reply.tagged.frame.nominal;
  }
  return total;
}

/** The greatest part by which a port that carries no acknowledgements is off, and the most that an idle one carried. */
export function worst(plan: Plan, rows: readonly Row[]): { loaded: number; idle: number } {
  let loaded = 0;
  let idle = 0;
  const directions = directionsOf(plan);
  rows.forEach(({ predicted, measured }, index) => {
    const direction = directions[index];
    if (direction === undefined) return;
    if (predicted === 0) idle = Math.max(idle, measured);
    else if (repliesIn(plan, direction) === 0) loaded = Math.max(loaded, Math.abs(measured - predicted) / predicted);
  });
  return { loaded, idle };
}

export function tableOf(rows: readonly Row[]): string {
  const cells = rows.map(({ port, to, predicted, measured, agrees }) => [
    `${portName(port)} → ${portName(to)}`,
    predicted.toFixed(0),
    measured.toFixed(0),
    predicted === 0 ? 'idle' : `${(((measured - predicted) / predicted) * 100).toFixed(2)} %`,
    agrees ? '' : '← disagrees',
  ]);
  const lines = [['port', 'predicted', 'measured', 'difference', ''], ...cells];
  const widths = [0, 1, 2, 3].map((column) => Math.max(...lines.map((line) => line[column]?.length ?? 0)));
  return lines
    .map((line) => {
      const padded = line.map((cell, column) =>
        column === 0 ? cell.padEnd(widths[0] ?? 0) : column < 4 ? cell.padStart(widths[column] ?? 0) : cell,
      );
      return `      ${padded.join('  ').trimEnd()}`;
    })
    .join('\n');
}

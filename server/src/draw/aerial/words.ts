/** What is written in a picture of an aerial system. */

import type { Plan } from '../../plan.ts';
import { weakestOf } from '../../report/answer/television.ts';
import type { Connector, Device } from '../../site/model.ts';
import { type Point as Arrived, isReceiver } from '../../television/reception.ts';
import type { CoaxRun } from '../../television/run.ts';
import { decibels, level as levelWords } from '../../text/radio-words.ts';
import { count, metres } from '../../text/words.ts';
import type { Part } from './branch.ts';

/** The connector at which a picture is wanted: of an outlet, or of a receiver. */
export function endOf({ device, by }: Part): Connector | undefined {
  if (device.kind === 'outlet') return device.connectorByName.get('tv');
  return isReceiver(device) ? by : undefined;
}

/** What it does to the level. */
export function ownWords({ television }: Plan, device: Device): string[] {
  const { aerial } = device;
  if (device.kind === 'amplifier') {
    const headroom = television.amplifier(device)?.headroom;
    const gain = aerial?.gain === undefined ? 'gain not said' : `gain ${decibels(aerial.gain)}`;
    return headroom === undefined || headroom < 0 ? [gain] : [gain, `${decibels(headroom)} below its limit`];
  }
  if (device.kind === 'aerial' || device.kind === 'lnb')
    return [
      count(
        new Set(
          television.signals.all.filter(({ source }) => source.device === device).map(({ multiplex }) => multiplex),
        ).size,
        'multiplex',
        'multiplexes',
      ),
    ];
  return [];
}

export function amplifierFaults({ television }: Plan, device: Device): string[] {
  const headroom = device.kind === 'amplifier' ? television.amplifier(device)?.headroom : undefined;
  return headroom !== undefined && headroom < 0 ? [`driven ${decibels(-headroom)} over its limit`] : [];
}

/** `47.1–49.2 dBµV` and the least margin. */
export function arrivesWords(plan: Plan, at: Connector): string[] {
  const points = plan.television.reception.pointsAt(at);
  const weakest = weakestOf(points);
  if (weakest === undefined) return ['nothing arrives'];
  return [
    rangeWords(points),
    `${weakest.signal.multiplex.name}: margin ${weakest.margin === undefined ? '?' : decibels(weakest.margin)}`,
  ];
}

function rangeWords(points: readonly Arrived[]): string {
  const levels = points.map(({ signal }) => signal.level);
  const [least, most] = [levelWords(Math.min(...levels)), levelWords(Math.max(...levels))];
  return least === most ? least : `${least.replace(' dBµV', '')} to ${most}`;
}

/** What is wrong where something arrives, in few words. */
export function faultsAt({ television: { reception } }: Plan, at: Connector): string[] {
  const points = reception.pointsAt(at);
  const receiver = reception.receivers.find((one) => one.at === at);
  const names = (wrong: readonly Arrived[]): string => {
    const [first, ...others] = wrong.map(({ signal }) => signal.multiplex.name);
    return `${first ?? ''}${others.length === 0 ? '' : ` and ${others.length} more`}`;
  };
  const low = points.filter(({ signal, window }) => window !== undefined && signal.level < window.min);
  const high = points.filter(({ signal, window }) => window !== undefined && signal.level > window.max);
  const noisy = points.filter((point) => remarkOf(point, receiver?.systems) === '▲ too little carrier to noise');
  return [
    ...(low.length === 0 ? [] : [`too low: ${names(low)}`]),
    ...(high.length === 0 ? [] : [`too high: ${names(high)}`]),
    ...(noisy.length === 0 ? [] : [`too noisy: ${names(noisy)}`]),
    ...(receiver !== undefined && receiver.composite > receiver.maxInput
      ? [`too much together: ${levelWords(receiver.composite)}`]
      : []),
  ];
}

export function remarkOf({ signal, window, margin }: Arrived, systems: readonly string[] | undefined): string {
  const { level, multiplex } = signal;
  if (window !== undefined && level < window.min) return '▲ too low';
  if (window !== undefined && level > window.max) return '▲ too high';
  // Of what a receiver does not receive nothing is needed.
  if (systems !== undefined && multiplex.system !== undefined && !systems.includes(multiplex.system))
    return 'not received';
  return margin !== undefined && margin < 0 ? '▲ too little carrier to noise' : '';
}

/** `coax-6` and `14 m`, with its label. */
export function cableWords({ cable }: CoaxRun): [string, string] {
  return [cable.type ?? 'coax', cable.length === undefined ? '? m' : metres(cable.length)];
}

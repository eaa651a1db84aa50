/** Compares the traffic of ports with the plan. */

import { type Link, memberLinkAt, oppositePort } from '../../network/link.ts';
import type { Plan } from '../../plan.ts';
import { type Port, portName } from '../../site/model.ts';
import { type FlowBalance, flowOf } from './flow.ts';
import { type CountedDirection, NOTHING, type PlannedCounters, plannedIn } from './planned.ts';
import type { Counted } from './ports.ts';

export interface Options {
  /** Ten-thousandths by which measured and planned rates may differ. */
  readonly tolerance: number;
  /** bit/s of other traffic that a port may carry: ARP, IGMP, spanning tree, RTCP, requests for streams. */
  readonly other: number;
  /** Milliseconds: the shortest stretch that counts as busiest. */
  readonly over: number;
}

/** Common practice, no source. */
export const USUAL_LIMITS: Options = { tolerance: 1000, other: 100_000, over: 10_000 };

export type RateVerdict =
  /** Above the peak in its busiest stretch, above the nominal rate on average. */
  | 'above-peak'
  | 'above'
  | 'below'
  | 'agrees'
  /** The counters show nothing. */
  | 'unknown';

/** One direction of a counted port. */
export interface Row {
  readonly port: Port;
  readonly sends: boolean;
  /** `core/5 → recorder/cams`; for a port without a cable, `core/13 sends`. */
  readonly title: string;
  readonly at: CountedDirection | undefined;
  readonly flow: FlowBalance;
  readonly planned: PlannedCounters;
  /** bit/s more than planned, on average. */
  readonly difference: number;
  readonly verdict: RateVerdict;
}

export function rowsOf(plan: Plan, counted: readonly Counted[], options: Options): Row[] {
  return counted.flatMap(({ port, samples }) => {
    const has = (sends: boolean): boolean =>
      samples.some(({ sent, received }) => (sends ? sent : received) !== undefined);
    return port === undefined
      ? []
      : [true, false].filter(has).map((sends) => rowOf(plan, port, samples, sends, options));
  });
}

function rowOf(plan: Plan, port: Port, samples: Counted['samples'], sends: boolean, options: Options): Row {
  const link = plan.network.topology.linkAt(port);
  const octets = samples[0]?.withFcs === true ? 'frameWithFcs' : 'frame';
  const out = link === undefined || sends ? port : oppositePort(link, port);
  const at = link === undefined ? undefined : ({ link, out, octets } as const);
  const flow = flowOf(
    samples,
    ({ sent, received }) => (sends ? sent : received),
    (link === undefined ? undefined : memberLinkAt(link, port)?.capacity) ?? port.speed,
    options.over,
  );
  const planned = at === undefined ? NOTHING : plannedIn(plan, at);
  const title =
    link === undefined
      ? `${portName(port)} ${sends ? 'sends' : 'receives'}`
      : `${portName(out)} → ${portName(oppositePort(link, out))}`;
  return {
    port,
    sends,
    title,
    at,
    flow,
    planned,
    difference: flow.mean - planned.nominal,
    verdict: ofMember(link, verdictOf(flow, planned, options)),
  };
}

/** The verdict on a cable of an aggregated link, which carries an unknown part of the link's load. */
function ofMember(link: Link | undefined, verdict: RateVerdict): RateVerdict {
  return link !== undefined && link.members.length > 1 && verdict === 'below' ? 'agrees' : verdict;
}

function verdictOf(
  { milliseconds, mean, busiest }: FlowBalance,
  { nominal, peak, replies }: PlannedCounters,
  { tolerance, other }: Options,
): RateVerdict {
  if (milliseconds === 0) return 'unknown';
  const above = (rate: number, bound: number): boolean => rate > bound * (1 + tolerance / 10_000) + other;
  if (above(busiest, peak + replies.peak)) return 'above-peak';
  if (above(mean, nominal + replies.nominal)) return 'above';
  return mean < (nominal - replies.nominal) * (1 - tolerance / 10_000) ? 'below' : 'agrees';
}

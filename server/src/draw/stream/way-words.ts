/** What is written in a picture of the way of a stream. */

import { drawingKindWords } from '../kind-words.ts';
import { taggingOf } from '../../network/link.ts';
import { obstacleWords } from '../../network/obstacle-words.ts';
import type { Plan } from '../../plan.ts';
import { sumWords } from '../../report/answer/words.ts';
import { isRateKnown } from '../../site/media.ts';
import { type Device, type Stream, isRtsp } from '../../site/model.ts';
import { formatAddress } from '../../standards/ipv4.ts';
import type { DrawingOptions } from '../drawing.ts';
import type { Hop, StreamStop } from './branch.ts';

/** `RTSP` or the group: how who wants it gets it. */
export function addressWords({ group, transport, port }: Stream): string {
  if (group !== undefined) return `group ${formatAddress(group)}${port === undefined ? '' : `:${port}`}`;
  return isRtsp(transport) ? 'asked for by RTSP' : 'sent to each receiver';
}

/** Below the name of a device: what it is, and what it has to do with the stream. */
export function saidOf(plan: Plan, { device, role, missed, sends }: StreamStop, by: Hop | undefined): string[] {
  if (missed !== undefined) return ['▲ gets nothing:', missedWords(device, missed)];
  const kind = drawingKindWords(device);
  if (role === 'sends') {
    const [first] = sends;
    const source = first?.stream.source;
    return [source === undefined || source === device.name ? kind : `${kind}, for ${source}`];
  }
  if (role === 'receives') return [`${kind}, receives it`];
  const reason = by?.leadsTo !== 'nobody' ? undefined : causeWords(plan, by, role);
  return [kind, ...(reason === undefined ? [] : [reason])];
}

export function missedWords({ name }: Device, { stream, why }: NonNullable<StreamStop['missed']>): string {
  const { what, remedy } = obstacleWords(why, name, stream);
  return `${what}; ${remedy}`;
}

/** Why nobody wanted it there. */
function causeWords({ network }: Plan, { cause, out, link, domain }: Hop, role: StreamStop['role']): string {
  if (role === 'does not take it')
    return link.blocked === undefined ? `takes no ${domain.name} here: lost` : 'blocked by spanning tree: lost here';
  switch (cause) {
    case 'querier': {
      const { querier } = network.tree(domain);
      return querier === undefined
        ? 'gets it unasked: a port set towards routers'
        : `gets it unasked: towards the querier, ${querier.name}, or a router`;
    }
    case 'unsnooped':
      return `gets it unasked: ${out.device.name} does not snoop`;
    case 'unregistered':
      return `gets it unasked: ${out.device.name} floods what nobody there has joined`;
    case undefined:
      return 'gets it unasked';
  }
}

export interface HopWords {
  /** Over its line: the rate. */
  readonly over: string;
  /** Under it: the port that it leaves by, and the VLAN. */
  readonly under: string;
  /** In the table. */
  readonly vlan: string;
}

export function hopWords(
  { site, network }: Plan,
  { stream, link, out, domain, copies }: Hop,
  { rate }: DrawingOptions,
): HopWords {
  const { untagged, tagged } = network.rates(stream);
  const isTagged = taggingOf(link, domain) === 'tagged';
  const each = sumWords((isTagged ? tagged : untagged).line[rate], isRateKnown(site, stream));
  const own = network.copies(link, out).find((one) => one.stream === stream);
  const chosen = copies - (own === undefined ? 0 : own.untagged + own.tagged);
  const some = chosen > 0 && chosen < copies ? `${chosen} of ${copies} ` : '';
  return {
    over: copies === 1 ? each : `${copies} × ${each}`,
    under: `${out.name} · ${domain.vlan === undefined ? 'no VLAN' : domain.name}${chosen > 0 ? `, ${some}if shown` : ''}`,
    vlan: `${domain.name}${isTagged ? ', tagged' : ''}${chosen > 0 ? `, ${some}while it is shown` : ''}`,
  };
}

/** What a hop is there for. */
export function whatFor(plan: Plan, by: Hop, stop: StreamStop): string {
  if (stop.role === 'receives') return 'receives it';
  return by.leadsTo !== 'nobody' ? 'passes it on' : causeWords(plan, by, stop.role);
}

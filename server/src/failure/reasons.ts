/** Why a stream is lost, in words. */

import type { Stream } from '../site/model.ts';
import { senderOf } from '../site/sender.ts';
import { few } from '../text/words.ts';
import type { Element, Works } from './element.ts';
import type { Failure } from './failure.ts';

/** Why a stream no longer reaches a receiver. */
type Reason =
  | { readonly why: 'fails' | 'dark'; readonly device: string }
  | { readonly why: 'carries'; readonly carried: string; readonly at: string }
  | { readonly why: 'forgotten'; readonly receiver: string; readonly after: number }
  | { readonly why: 'no-way'; readonly from: string; readonly to: string };

function whyOf(plan: Works, failure: Failure, stream: Stream, receiver: string): Reason {
  const { site } = plan;
  const { element, devices } = failure;
  const sender = senderOf(site, stream);
  for (const device of [sender, site.deviceByName.get(receiver)]) {
    if (device === undefined) continue;
    if (element.devices.includes(device)) return { why: 'fails', device: device.name };
    if (devices.includes(device)) return { why: 'dark', device: device.name };
  }
  const from = sender?.name ?? stream.source ?? '';
  const carried = stream.carries === undefined ? undefined : site.streamByName.get(stream.carries);
  if (carried !== undefined && !failure.available.isFed(stream))
    return { why: 'carries', carried: carried.name, at: from };
  const after = failure.pictures.find((one) => one.stream === stream && one.receiver === receiver)?.after ?? 0;
  return after > 0 ? { why: 'forgotten', receiver, after } : { why: 'no-way', from, to: receiver };
}

/** `paddock-cam has no power`, `it carries paddock, which does not reach recorder` */
export function reasonOf(plan: Works, failure: Failure, stream: Stream, receiver: string): string {
  const reason = whyOf(plan, failure, stream, receiver);
  switch (reason.why) {
    case 'fails':
      return `${reason.device} fails`;
    case 'dark':
      return `${reason.device} has no power`;
    case 'carries':
      return `it carries ${reason.carried}, which does not reach ${reason.at}`;
    case 'forgotten':
      return `there is no IGMP querier left, so switches forget after ${reason.after} s that ${reason.receiver} has joined`;
    case 'no-way':
      return `no way is left from ${reason.from} to ${reason.to}`;
  }
}

/** All reasons at once: `paddock-cam and 5 others have no power; what is sent on lacks what it carries`. */
export function reasonsWords(plan: Works, failure: Failure): string {
  const { site } = plan;
  const recorded = failure.recordings.flatMap(({ stream, volume }): Reason[] => {
    const of = site.streamByName.get(stream ?? '');
    const to = site.volumeByName.get(volume ?? '');
    const isLost = failure.footage.some((one) => one.fate === 'lost' && one.volume === to);
    return of === undefined || to?.host === undefined || isLost ? [] : [whyOf(plan, failure, of, to.host)];
  });
  const all = [...recorded, ...failure.pictures.map(({ stream, receiver }) => whyOf(plan, failure, stream, receiver))];
  const names = (nameOf: (reason: Reason) => string | undefined): string[] => [
    ...new Set(all.flatMap((reason) => nameOf(reason) ?? [])),
  ];
  const failing = names((one) => (one.why === 'fails' ? one.device : undefined));
  const dark = names((one) => (one.why === 'dark' ? one.device : undefined));
  const carried = names((one) => (one.why === 'carries' ? one.carried : undefined));
  const forgetful = names((one) => (one.why === 'forgotten' ? one.receiver : undefined));
  const apart = names((one) => (one.why === 'no-way' ? `${one.from} to ${one.to}` : undefined));
  return [
    ...(failing.length === 0 ? [] : [`${few(failing)} ${failing.length === 1 ? 'fails' : 'fail'}`]),
    ...(dark.length === 0 ? [] : [`${few(dark)} ${dark.length === 1 ? 'has' : 'have'} no power`]),
    ...(apart.length === 0 ? [] : [`no way is left from ${few(apart)}`]),
    ...(carried.length === 0
      ? []
      : [
          `${few(carried)} ${carried.length === 1 ? 'does' : 'do'} not reach the server that re-sends ${carried.length === 1 ? 'it' : 'them'}`,
        ]),
    ...(forgetful.length === 0
      ? []
      : [
          `there is no IGMP querier left, so switches forget that ${few(forgetful)} ${forgetful.length === 1 ? 'has' : 'have'} joined`,
        ]),
  ].join('; ');
}

/** A remedy against the loss; empty where nothing is lost, or no simple remedy helps. */
export function remedyWords(
  plan: Works,
  { element, recordings, cameras, pictures, footage, takeovers }: Failure,
): string {
  if (footage.some(({ fate }) => fate === 'lost'))
    return 'Disks with redundancy outlive one of them, and a copy in another place outlives them all.';
  const over = takeovers.some(({ fits }) => fits === false);
  if (over) return 'A faster link there, or lower rates, would bear what takes over.';
  if (recordings.length + cameras.length + pictures.length === 0) return '';
  return REMEDIES[kindOf(plan, element)];
}

type RemedyKind = 'joint' | 'server' | 'end' | 'source' | 'bridge' | 'rack';

const REMEDIES: Readonly<Record<RemedyKind, string>> = {
  joint: 'A second cable along another way, with spanning tree on the switches, would take over.',
  server: 'A second cable, in a link aggregation group (`lag`), would carry on.',
  end: '',
  source: 'Feed them from more than one UPS or circuit, so that not all go dark at once.',
  bridge: 'Keep a spare with the same settings, or spread what hangs on it over two.',
  rack: 'Put what takes over into another rack.',
};

function kindOf({ network }: Works, { kind, cables, devices }: Element): RemedyKind {
  if (kind === 'rack') return 'rack';
  const members = network.topology.links.flatMap((link) => link.members).filter(({ cable }) => cables.includes(cable));
  if (members.some(({ a, b }) => a.forwards && b.forwards)) return 'joint';
  if (members.some(({ a, b }) => a.device.kind === 'server' || b.device.kind === 'server')) return 'server';
  const [device] = devices;
  if (device === undefined) return 'end';
  if (device.kind === 'ups' || device.kind === 'circuit') return 'source';
  return device.bridging || device.routing || device.kind === 'server' ? 'bridge' : 'end';
}

/** The refusals that making everything would bring, without making it. */

import { grouped } from '../grouped.ts';
import type { Plan } from '../plan.ts';
import type { Device, Stream } from '../site/model.ts';
import { senderOf } from '../site/sender.ts';
import { unserved } from './addresses/dnsmasq.ts';
import { audiences, describable, undescribable } from './announcements/describe.ts';
import { unlisted } from './announcements/playlist.ts';
import { hostedRecordings, unrecordable } from './media/recording-consumer.ts';
import { relaysOf, unrelayable } from './media/relay-consumer.ts';
import { setUpHosts } from './network/each-host.ts';
import { hostNetwork } from './network/host-network.ts';
import { unnamedInterfaces } from './network/networkd.ts';
import type { Refusal } from './output.ts';

/**
 * Refusals of things that the site asks for: `credentials`, audio or a picture of a stream, a `dhcp-pool`, and a server
 * that would receive from itself. Others may be among them. Each is listed once, however many kinds of files it
 * concerns. This runs at every keystroke, so streams without any of these are skipped.
 */
export function askedRefusals(plan: Plan): readonly Refusal[] {
  const { site } = plan;
  const asksItself = (input: Stream | undefined, host: Device): boolean =>
    input !== undefined && senderOf(site, input) === host;
  const asks = (name: string | undefined, host: Device): boolean => {
    const input = name === undefined ? undefined : site.streamByName.get(name);
    return asksForSome(plan, input) || asksItself(input, host);
  };
  const all = [
    ...site.vlans.filter(({ pool }) => pool !== undefined).flatMap((vlan) => unserved(vlan) ?? []),
    ...site.streams
      .filter((stream) => describable(stream) && asksForSome(plan, stream))
      .flatMap((stream) => audiences(stream).flatMap((receiver) => undescribable(plan, stream, receiver) ?? [])),
    ...(site.streams.some(({ credentials }) => credentials !== undefined) ? unlisted(plan) : []),
    ...relaysOf(plan)
      .filter(({ stream, host }) => asksForSome(plan, stream) || asks(stream.carries, host))
      .flatMap((relay) => unrelayable(plan, relay) ?? []),
    ...hostedRecordings(plan)
      .filter(({ recording, host }) => asks(recording.stream, host))
      .flatMap((hosted) => unrecordable(plan, hosted) ?? []),
  ];
  return [...grouped(all, ({ at }) => at.piece).values()].flatMap((here) => [
    ...new Map(here.map((refusal) => [`${refusal.at.start} ${refusal.message}`, refusal])).values(),
  ]);
}

/** Whether the stream names a file of credentials, or has media that some outputs cannot use. */
function asksForSome({ site }: Plan, stream: Stream | undefined): boolean {
  if (stream === undefined) return false;
  if (stream.credentials !== undefined) return true;
  const { video, audio } = site.media(stream);
  return audio !== undefined || video?.codec === 'mjpeg';
}

/** The parts of hosts' networks that cannot be set up. */
export function networkRefusals(plan: Plan): readonly Refusal[] {
  return setUpHosts(plan).flatMap((host) => {
    const network = hostNetwork(plan, host);
    return [...network.refused, ...unnamedInterfaces(network)];
  });
}

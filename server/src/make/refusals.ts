/** All that would be refused if everything were made, without making it. */

import { grouped } from '../grouped.ts';
import type { Plan } from '../plan.ts';
import { unserved } from './addresses/dnsmasq.ts';
import { hostNames } from './addresses/host-names.ts';
import { audiences, describable, undescribable } from './announcements/describe.ts';
import { unlisted } from './announcements/playlist.ts';
import { unannouncing } from './announcements/units.ts';
import { undeleted } from './media/deletion.ts';
import { unhandled } from './media/ffmpeg-units.ts';
import { setUpHosts } from './network/each-host.ts';
import { hostNetwork } from './network/host-network.ts';
import { unnamedInterfaces } from './network/networkd.ts';
import type { Refusal } from './output.ts';

/** Each once, however many kinds of files it concerns. */
export function refusalsOf(plan: Plan): readonly Refusal[] {
  const all = [
    ...networkRefusals(plan),
    ...hostNames(plan).refused,
    ...plan.site.vlans.filter(({ pool }) => pool !== undefined).flatMap((vlan) => unserved(vlan) ?? []),
    ...plan.site.streams
      .filter(describable)
      .flatMap((stream) => audiences(stream).flatMap((receiver) => undescribable(plan, stream, receiver) ?? [])),
    ...unannouncing(plan),
    ...unlisted(plan),
    ...unhandled(plan),
    ...undeleted(plan),
  ];
  return [...grouped(all, ({ at }) => at.piece).values()].flatMap((here) => [
    ...new Map(here.map((refusal) => [`${refusal.at.start} ${refusal.message}`, refusal])).values(),
  ]);
}

/** What of a host's network cannot be set up. */
export function networkRefusals(plan: Plan): readonly Refusal[] {
  return setUpHosts(plan).flatMap((host) => {
    const network = hostNetwork(plan, host);
    return [...network.refused, ...unnamedInterfaces(network)];
  });
}

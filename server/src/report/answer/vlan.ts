import type { Plan } from '../../plan.ts';
import { isRateKnown } from '../../site/media.ts';
import type { Vlan } from '../../site/model.ts';
import { count } from '../../text/words.ts';
import { hostsIn } from '../explain/address.ts';
import { digitsGrouped } from '../explain/figure.ts';
import { answer, sumWords } from './words.ts';

/** `12 of 254 addresses in use · querier core · 5 streams, 34 Mb/s at peak` */
export function vlanAnswer({ site, network }: Plan, vlan: Vlan): string {
  const domain = network.topology.domainOf(vlan);
  const used = new Set(network.addressUses.filter(({ home }) => home === vlan).map(({ address }) => address)).size;
  const all = vlan.subnet === undefined ? '?' : digitsGrouped(hostsIn(vlan.subnet));
  const { querier } = network.tree(domain);
  const streams = network.deliveries.filter(({ domains }) => domains.includes(domain)).map(({ stream }) => stream);
  const peak = streams.reduce((sum, stream) => sum + network.rates(stream).untagged.line.peak, 0);
  const isKnown = streams.every((stream) => isRateKnown(site, stream));
  return answer(
    `${digitsGrouped(used)} of ${all} addresses in use`,
    querier === undefined ? 'no querier' : `querier ${querier.name}`,
    streams.length === 0 ? 'no streams' : `${count(streams.length, 'stream')}, ${sumWords(peak, isKnown)} at peak`,
  );
}

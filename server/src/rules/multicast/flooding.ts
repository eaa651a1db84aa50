import { oppositePort } from '../../network/link.ts';
import type { BroadcastDomain } from '../../network/vlan-membership.ts';
import { bestQuerier } from '../../network/querier.ts';
import { type Fix, addEntry, fixOf, nameText, putValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Device, type Site, portName } from '../../site/model.ts';
import type { Network } from '../../network/network.ts';
import { bitRate, few, asName } from '../../text/words.ts';
import { grouped } from '../../grouped.ts';
import { type Overload, unwantedStreams } from '../../network/overload.ts';
import { placeOfEnd } from '../../site/places.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const flooding: Rule = {
  id: 'flooding',
  severity: 'error',
  summary: 'A switch floods multicast over a link that is too slow for it.',
  why: `A switch that does not snoop sends every group out of every port of the VLAN, and one that snoops does so with
groups that nobody has joined, unless it is set to drop them; some flood all groups until a querier asks. A camera or screen on 100 Mb/s then drowns in what it
never asked for. Turn IGMP snooping on, with a querier in the VLAN, and let it drop what is not registered.`,
  source: 'RFC 4541 §2.1.2, read; measured on Open vSwitch. The thresholds are common practice.',
  check({ plan, site, network }: RuleContext, report: Report): void {
    const overloads = plan.overloads.filter(({ reason }) => reason === 'flooded');
    for (const [device, flooded] of grouped(overloads, ({ out }) => out.device)) {
      const [worst] = [...flooded].sort((a, b) => b.unwanted / b.capacity - a.unwanted / a.capacity);
      if (worst === undefined) continue;
      const snoops = device.snooping;
      // A querier ends the flooding: without one no membership is registered.
      const unasked = [...worst.domains].find((domain) => network.tree(domain).bridges.get(device)?.snoops === false);
      const asks = !snoops || unasked === undefined;
      const cause = !snoops ? 'does not snoop' : asks ? 'floods what nobody has joined' : `floods without a querier`;
      const remedy = !snoops
        ? 'Turn igmp-snooping on'
        : asks
          ? 'Let it drop them'
          : `Name a querier of ${asName(unasked.name)}`;
      const others = flooded.length - 1;
      const alike = others === 0 ? '' : others === 1 ? '; so does 1 other link' : `; so do ${others} other links`;
      report({
        at: placeOf(device.item, [!snoops ? 'igmp-snooping' : asks ? 'unregistered-multicast' : 'without-querier']),
        severity: flooded.some(({ over }) => over === 'limit') ? 'error' : 'warning',
        message:
          `${asName(device.name)} ${cause}, so ${portName(worst.out)} ` +
          `→ ${portName(oppositePort(worst.link, worst.out))} carries ${bitRate(worst.unwanted)} of ` +
          `${few(unwantedStreams(network, worst))} that nobody behind asked for, too much for ` +
          `${bitRate(worst.capacity)}${alike}. ${remedy}.`,
        acceptAt: [device.name],
        // A consequence of a mistyped rate, which is reported.
        effects: flooded.map(({ link, out }) => network.load(link, out)),
        entails: flooded.map(({ link, out }) => network.load(link, out)),
        related: flooded.map(({ link, out }) => ({
          at: placeOfEnd(link, out),
          message: `${portName(out)} is flooded`,
        })),
        fixes: () => (asks ? prune(site, network, device, flooded) : nameQuerier(site, network, unasked)),
      });
    }
  },
};

function nameQuerier(site: Site, network: Network, domain: BroadcastDomain): Fix[] {
  const { vlan } = domain;
  const best = vlan === undefined || vlan.querier !== undefined ? undefined : bestQuerier(site, network, domain);
  if (vlan === undefined || best === undefined) return [];
  return fixOf(
    `Name ${asName(best.name)} as querier of ${asName(vlan.name)}`,
    addEntry(vlan.item, [], 'querier', nameText(best.name)),
  );
}

/** Turns snooping on, and names a querier where there is none: without one receivers would be cut off. */
function prune(site: Site, network: Network, device: Device, flooded: readonly Overload[]): Fix[] {
  if (device.snooping) {
    const edits = putValue(device.item, 'unregistered-multicast', 'drop');
    return fixOf(`Let ${asName(device.name)} drop unregistered multicast`, ...edits);
  }
  const edits = putValue(device.item, 'igmp-snooping', 'true');
  if (edits.length === 0) return [];
  const domains = new Set(flooded.flatMap((overload) => [...overload.domains]));
  for (const domain of domains) {
    const { vlan } = domain;
    const tree = network.tree(domain);
    const component = tree.bridges.get(device)?.component;
    if (vlan === undefined || vlan.querier !== undefined || (component !== undefined && tree.queried.has(component)))
      continue;
    const querier = bestQuerier(site, network, domain, device);
    const edit = querier === undefined ? undefined : addEntry(vlan.item, [], 'querier', nameText(querier.name));
    if (edit !== undefined) edits.push(edit);
  }
  const title =
    edits.length === 1
      ? `Turn IGMP snooping on at ${asName(device.name)}`
      : `Turn IGMP snooping on at ${asName(device.name)}, with a querier`;
  return fixOf(title, ...edits);
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20}
devices:
  core: {kind: switch, ports: {1: {speed: 1 Gb/s, vlan: video}, 2: {speed: 1 Gb/s, vlan: video}, 3: {speed: 1 Gb/s, vlan: video}}}
# ^^^^ core does not snoop, so core/2 → paddock-cam/eth carries 134 Mb/s of tv that nobody behind asked for, too much for 100 Mb/s
  headend: {kind: server, speed: 1 Gb/s}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
  kitchen-screen: {kind: display, speed: 1 Gb/s}
cables:
  - {from: core/1, to: headend}
  - {from: core/2, to: paddock-cam}
  - {from: core/3, to: kitchen-screen}
streams:
  tv: {source: headend, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 126.36 Mb/s, receivers: [kitchen-screen]}
`,
    fixed: `
vlans:
  video: {id: 20, querier: core}
devices:
  core: {kind: switch, ports: {1: {speed: 1 Gb/s, vlan: video}, 2: {speed: 1 Gb/s, vlan: video}, 3: {speed: 1 Gb/s, vlan: video}}, igmp-snooping: true}
  headend: {kind: server, speed: 1 Gb/s}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
  kitchen-screen: {kind: display, speed: 1 Gb/s}
cables:
  - {from: core/1, to: headend}
  - {from: core/2, to: paddock-cam}
  - {from: core/3, to: kitchen-screen}
streams:
  tv: {source: headend, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 126.36 Mb/s, receivers: [kitchen-screen]}
`,
  },
  {
    bad: `
vlans:
  video: {id: 20, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, unregistered-multicast: flood, ports: {1: {speed: 1 Gb/s, vlan: video}, 2: {speed: 1 Gb/s, vlan: video}}}
#                                                                   ^^^^^ core floods what nobody has joined
  headend: {kind: server, speed: 1 Gb/s}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
cables:
  - {from: core/1, to: headend}
  - {from: core/2, to: paddock-cam}
streams:
  tv: {source: headend, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 75 Mb/s}
`,
    fixed: `
vlans:
  video: {id: 20, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, ports: {1: {speed: 1 Gb/s, vlan: video}, 2: {speed: 1 Gb/s, vlan: video}}}
  headend: {kind: server, speed: 1 Gb/s}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
cables:
  - {from: core/1, to: headend}
  - {from: core/2, to: paddock-cam}
streams:
  tv: {source: headend, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 75 Mb/s}
`,
  },
  {
    bad: `
vlans:
  tv: {id: 40, querier: core}
devices:
  core: {kind: switch, address: 192.168.40.2, igmp-snooping: true, unregistered-multicast: flood, ports: {1: {speed: 1 Gb/s, vlan: tv}, 2: {speed: 100 Mb/s, vlan: tv}}}
#                                                                                          ^^^^^ core floods what nobody has joined, so core/2 → parlour-screen/eth carries 50.8 Mb/s of tv-two that nobody behind asked for
  tv-tuner: {kind: tuner, speed: 1 Gb/s}
  parlour-screen: {kind: display, speed: 100 Mb/s, decoders: 1}
cables:
  - {from: core/1, to: tv-tuner}
  - {from: core/2, to: parlour-screen}
streams:
  tv-one: {source: tv-tuner, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 50 Mb/s, receivers: [parlour-screen]}
  tv-two: {source: tv-tuner, transport: ts-rtp, group: 239.192.30.2, port: 5004, mux-rate: 48 Mb/s, receivers: [parlour-screen]}
`,
    fixed: `
vlans:
  tv: {id: 40, querier: core}
devices:
  core: {kind: switch, address: 192.168.40.2, igmp-snooping: true, unregistered-multicast: drop, ports: {1: {speed: 1 Gb/s, vlan: tv}, 2: {speed: 100 Mb/s, vlan: tv}}}
  tv-tuner: {kind: tuner, speed: 1 Gb/s}
  parlour-screen: {kind: display, speed: 100 Mb/s, decoders: 1}
cables:
  - {from: core/1, to: tv-tuner}
  - {from: core/2, to: parlour-screen}
streams:
  tv-one: {source: tv-tuner, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 50 Mb/s, receivers: [parlour-screen]}
  tv-two: {source: tv-tuner, transport: ts-rtp, group: 239.192.30.2, port: 5004, mux-rate: 48 Mb/s, receivers: [parlour-screen]}
`,
  },
];

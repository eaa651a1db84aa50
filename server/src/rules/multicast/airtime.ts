import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Air } from '../../network/airtime.ts';
import { oppositePort } from '../../network/link.ts';
import type { Network } from '../../network/network.ts';
import { addEntry, fixOf } from '../../site/edit.ts';
import { namePlace } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { bitRate, few, percentOver, threshold, asName } from '../../text/words.ts';

export const airtime: Rule = {
  id: 'airtime',
  severity: 'error',
  summary: 'Multicast fills the air of an access point.',
  why: `An access point sends a group once for all its stations, at its lowest rate, and without acknowledgement: a
stream that takes 1 % of a cable can take all of the air, and phones and laptops in the cell stall, whether anybody there
watches or not. Keep multicast away from it: with IGMP snooping at the switch before it, and groups that nobody has joined
dropped; with a VLAN for video that the access point does not carry. Otherwise let it send a group to each station
separately (\`multicast-to-unicast\`), or raise its basic rate.`,
  source: 'RFC 9119 §3.1.1 and §3.1.2, read; the arithmetic held against ns-3. The thresholds are common practice.',
  check({ plan, site, network }: RuleContext, report: Report): void {
    const { warn, limit } = site.policies.airtime;
    for (const air of plan.air) {
      const { device, share, streams } = air;
      const taken = share.peak * 10_000;
      if (taken <= Math.min(warn, limit)) continue;
      // Reported by flooding, for the same link.
      if (plan.overloads.some(({ link, out }) => oppositePort(link, out).device === device)) continue;
      const isOver = taken > limit;
      const bound = isOver
        ? `more than the limit of ${threshold(limit)}`
        : `more than the ${threshold(warn)} that policy warns at`;
      const from = flooding(network, device, streams);
      const names = few(
        streams.map(({ stream }) => stream.name),
        3,
      );
      report({
        at: namePlace(device.item),
        severity: isOver ? 'error' : 'warning',
        message:
          `${asName(device.name)} sends ${names} into the air at ${bitRate(device.basicRate)}, which takes ` +
          `${percentOver(share.peak, 1, isOver ? limit : warn)} of the time, ${bound}. ` +
          (from === undefined
            ? 'Keep the groups away from it, let it send to each station separately, or raise its basic-rate.'
            : `${from} floods them: let it snoop and drop what nobody has joined.`),
        acceptAt: [device.name, ...(from === undefined ? [] : [from])],
        effects: [air],
        fixes: () =>
          fixOf(
            `Let ${asName(device.name)} send groups to each station separately`,
            addEntry(device.item, [], 'multicast-to-unicast', 'true'),
          ),
      });
    }
  },
};

/** The switch in front of the access point that floods these streams, where there is one. */
function flooding({ topology, tree, delivery }: Network, device: Device, streams: Air['streams']): string | undefined {
  for (const port of device.ports) {
    const link = topology.linkAt(port);
    const before = link === undefined ? undefined : oppositePort(link, port).device;
    if (link === undefined || before?.kind !== 'switch') continue;
    const isFlooded = streams.some(({ stream }) =>
      delivery(stream).domains.some((domain) => {
        const bridge = tree(domain).bridges.get(before);
        return bridge !== undefined && (!before.snooping || !bridge.routerLinks.includes(link));
      }),
    );
    if (isFlooded) return before.name;
  }
  return undefined;
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  lan: {id: 10, querier: core}
devices:
  core: {kind: switch, address: 192.168.10.2, ports: {1-3: {speed: 1 Gb/s, vlan: lan}}}
  recorder: {kind: server, speed: 1 Gb/s}
  kitchen-screen: {kind: display, speed: 1 Gb/s}
  stable-ap: {kind: access-point, speed: 1 Gb/s}
# ^^^^^^^^^ stable-ap sends paddock-live into the air at 6 Mb/s, which takes 114 % of the time, more than the limit of 70 %. core floods them
cables:
  - {from: core/1, to: recorder}
  - {from: core/2, to: kitchen-screen}
  - {from: core/3, to: stable-ap}
streams:
  paddock-live:
    source: recorder
    transport: rtp
    port: 5004
    group: 239.192.20.31
    video: {codec: h264, bitrate: 6 Mb/s}
    receivers: [kitchen-screen]
`,
    good: `
vlans:
  lan: {id: 10, querier: core}
devices:
  core:
    kind: switch
    address: 192.168.10.2
    igmp-snooping: true
    unregistered-multicast: drop
    ports: {1-3: {speed: 1 Gb/s, vlan: lan}}
  recorder: {kind: server, speed: 1 Gb/s}
  kitchen-screen: {kind: display, speed: 1 Gb/s}
  stable-ap: {kind: access-point, speed: 1 Gb/s}
cables:
  - {from: core/1, to: recorder}
  - {from: core/2, to: kitchen-screen}
  - {from: core/3, to: stable-ap}
streams:
  paddock-live:
    source: recorder
    transport: rtp
    port: 5004
    group: 239.192.20.31
    video: {codec: h264, bitrate: 6 Mb/s}
    receivers: [kitchen-screen]
`,
    fixed: `
vlans:
  lan: {id: 10, querier: core}
devices:
  core: {kind: switch, address: 192.168.10.2, ports: {1-3: {speed: 1 Gb/s, vlan: lan}}}
  recorder: {kind: server, speed: 1 Gb/s}
  kitchen-screen: {kind: display, speed: 1 Gb/s}
  stable-ap: {kind: access-point, speed: 1 Gb/s, multicast-to-unicast: true}
cables:
  - {from: core/1, to: recorder}
  - {from: core/2, to: kitchen-screen}
  - {from: core/3, to: stable-ap}
streams:
  paddock-live:
    source: recorder
    transport: rtp
    port: 5004
    group: 239.192.20.31
    video: {codec: h264, bitrate: 6 Mb/s}
    receivers: [kitchen-screen]
`,
  },
];

import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { groupTables } from '../../network/group-tables.ts';
import { placeOf } from '../../site/item.ts';

export const groupTable: Rule = {
  id: 'group-table',
  severity: 'error',
  summary: 'A switch is to keep more groups apart than its table holds.',
  why: `A switch that snoops keeps a list of which group goes to which port, and the list is of a fixed length. What finds no
place in it is flooded to all ports of the VLAN, or dropped, depending on the switch: screens stay dark, or cameras of 100 Mb/s
drown. A group is in the list of each switch between a receiver and the querier. Take fewer groups, put the querier nearer to
the receivers, or take a switch with a larger table.`,
  source: 'RFC 4541 §2.1.1, read; the length of the table is that of the papers of the switch.',
  check({ site, network }: RuleContext, report: Report): void {
    for (const [device, number] of groupTables(site, network)) {
      const { groupTable: most } = device;
      if (most === undefined || number <= most) continue;
      report({
        at: placeOf(device.item, ['group-table']),
        message:
          `${device.name} is to keep ${number} groups apart, and its table holds ${most}: the rest is flooded or ` +
          'dropped. Take fewer groups, or a switch with a larger table.',
        acceptAt: [device.name],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core:
    kind: switch
    igmp-snooping: true
    address: 192.168.20.2
    group-table: 1
#                ^ core is to keep 2 groups apart, and its table holds 1
    ports: {1-2: {speed: 1 Gb/s, vlan: video}}
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
  screen: {kind: display, address: 192.168.20.6, speed: 1 Gb/s}
cables:
  - {from: core/1, to: recorder, type: cat6, length: 2 m}
  - {from: core/2, to: screen, type: cat6, length: 9 m}
streams:
  gate:
    source: recorder
    transport: rtp
    group: 239.255.20.1
    port: 5004
    video: {codec: h264, bitrate: 6 Mb/s}
    receivers: [screen]
  yard:
    source: recorder
    transport: rtp
    group: 239.255.20.2
    port: 5004
    video: {codec: h264, bitrate: 6 Mb/s}
    receivers: [screen]
`,
    good: `vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core:
    kind: switch
    igmp-snooping: true
    address: 192.168.20.2
    group-table: 256
    ports: {1-2: {speed: 1 Gb/s, vlan: video}}
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
  screen: {kind: display, address: 192.168.20.6, speed: 1 Gb/s}
cables:
  - {from: core/1, to: recorder, type: cat6, length: 2 m}
  - {from: core/2, to: screen, type: cat6, length: 9 m}
streams:
  gate:
    source: recorder
    transport: rtp
    group: 239.255.20.1
    port: 5004
    video: {codec: h264, bitrate: 6 Mb/s}
    receivers: [screen]
`,
  },
];

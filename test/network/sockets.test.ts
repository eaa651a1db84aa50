// A device that both switches and routes is held against the same house with a switch and a router of their own, joined
// by a trunk: what IEEE 802.1Q and RFC 1812 say of each half does not depend on whether they share a case.
import assert from 'node:assert/strict';
import { planOf } from '../../server/src/plan.ts';
import { portName } from '../../server/src/site/model.ts';
import { check } from '../../server/src/check.ts';
import { folderOf } from '../site.ts';

const VLANS = `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: ROUTER, querier: SWITCH}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: ROUTER, querier: SWITCH}
`;

const HOSTS = `
  paddock-cam: {kind: camera, address: 192.168.20.31, speed: 1 Gb/s}
  yard-cam: {kind: camera, address: 192.168.20.32, speed: 1 Gb/s}
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
  office: {kind: computer, address: 192.168.10.20, speed: 1 Gb/s}
  kitchen-screen: {kind: display, address: 192.168.10.41, speed: 1 Gb/s}
  stable-screen: {kind: display, address: 192.168.20.41, speed: 1 Gb/s}
cables:
  - {from: SWITCH/1, to: paddock-cam}
  - {from: SWITCH/2, to: yard-cam}
  - {from: SWITCH/3, to: recorder}
  - {from: SWITCH/4, to: stable-screen}
  - {from: SWITCH/5, to: office}
  - {from: SWITCH/6, to: kitchen-screen}
`;

const STREAMS = `
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder, office]}
  yard: {source: yard-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [kitchen-screen]}
  live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, ttl: 4, video: {codec: h264, bitrate: 5 Mb/s}, receivers: [kitchen-screen, stable-screen]}
  door: {source: recorder, transport: rtp, group: 239.192.20.32, port: 5006, ttl: 4, video: {codec: h264, bitrate: 3 Mb/s}, receivers: [stable-screen]}
`;

const PORTS = 'ports: {1-4: {speed: 1 Gb/s, vlan: video}, 5-8: {speed: 1 Gb/s, vlan: house}}';
const ADDRESSES = 'addresses: {house: 192.168.10.1, video: 192.168.20.1}';
const APART =
  'ports: {1-4: {speed: 1 Gb/s, vlan: video}, 5-8: {speed: 1 Gb/s, vlan: house}, 9: {speed: 10 Gb/s, trunk: [house, video]}}';

interface How {
  readonly multicast: boolean;
  readonly snooping: boolean;
}

const site = (devices: string, at: string, router = at): string =>
  `${VLANS}devices:\n  ${devices}${HOSTS}${STREAMS}`.replaceAll('SWITCH', at).replaceAll('ROUTER', router);

const sets = ({ multicast, snooping }: How): string =>
  `multicast-routing: ${multicast}, igmp-snooping: ${snooping}, spanning-tree: true`;

const homeRouter = (how: How): string => site(`box: {kind: router, ${sets(how)}, ${PORTS}, ${ADDRESSES}}`, 'box');
const layer3 = (how: How): string =>
  site(`box: {kind: switch, routing: true, ${sets(how)}, ${PORTS}, ${ADDRESSES}}`, 'box');
const atSocket = (how: How): string =>
  site(
    `box: {kind: router, ${sets(how)}, ports: {1: {speed: 1 Gb/s, vlan: video, address: 192.168.20.1}, ` +
      '2-4: {speed: 1 Gb/s, vlan: video}, 5: {speed: 1 Gb/s, vlan: house}, ' +
      '6-8: {speed: 1 Gb/s, vlan: house}, 9: {vlan: house, address: 192.168.10.1}}}',
    'box',
  );
const inRange = (how: How): string =>
  site(
    `box: {kind: router, ${sets(how)}, ports: {1-4: {speed: 1 Gb/s, vlan: video, address: 192.168.20.1}, ` +
      '5-8: {speed: 1 Gb/s, vlan: house, address: 192.168.10.1}}}',
    'box',
  );
const apart = ({ multicast, snooping }: How): string =>
  site(
    `core: {kind: switch, igmp-snooping: ${snooping}, spanning-tree: true, addresses: {house: 192.168.10.2, video: 192.168.20.2}, ${APART}}\n` +
      `  router: {kind: router, multicast-routing: ${multicast}, ports: {lan: {speed: 10 Gb/s, trunk: [house, video], ${ADDRESSES}}}}`,
    'core',
    'router',
  ).replace('cables:\n', 'cables:\n  - {from: core/9, to: router}\n');

/** What leaves by each port of the hosts and towards them, and whom each stream reaches. */
function figures(text: string): object {
  const plan = planOf(folderOf({ 'a.site.yaml': text }).site());
  const { topology, load, deliveries } = plan.network;
  const hosts = topology.links.filter(({ a, b }) => a.forwards !== b.forwards && b.device.kind !== 'router');
  return {
    loads: hosts.map((link) => [portName(link.b), load(link, link.a), load(link, link.b)]),
    reaches: deliveries.map(({ stream, reaches, unreached }) => [
      stream.name,
      reaches,
      unreached.map(({ receiver, why }) => [receiver, why.obstacle]),
    ]),
  };
}

const ways = {
  'a home router with sockets': homeRouter,
  'a layer-3 switch': layer3,
  'addresses at sockets': atSocket,
  'addresses at ranges of sockets': inRange,
};

describe('a device that switches and routes', () => {
  for (const [name, made] of Object.entries(ways)) {
    for (const multicast of [true, false]) {
      for (const snooping of [true, false]) {
        const how = { multicast, snooping };
        it(`as ${name}, is like a switch and a router of their own: ${JSON.stringify(how)}`, () => {
          assert.deepEqual(figures(made(how)), figures(apart(how)));
        });
      }
    }
  }

  it('is right as it is written: nothing is found', () => {
    for (const made of Object.values(ways)) {
      const { diagnostics } = check(folderOf({ 'a.site.yaml': made({ multicast: true, snooping: true }) }));
      assert.deepEqual(
        diagnostics.map(({ rule, message }) => `${rule.id}: ${message}`),
        [],
      );
    }
  });

  it('needs no VLAN: a router with one address beside its ports', () => {
    const text = `
vlans: {lan: {subnet: 192.168.1.0/24, gateway: box}}
devices:
  box: {kind: router, address: 192.168.1.1, ports: {1-4: {speed: 1 Gb/s}, wan: {address: 192.0.2.2}}}
  cam: {kind: camera, address: 192.168.1.21, speed: 1 Gb/s}
  nas: {kind: server, address: 192.168.1.10, speed: 1 Gb/s}
  provider: {kind: router, address: 192.0.2.1}
cables:
  - {from: box/2, to: cam}
  - {from: box/3, to: nas}
  - {from: box/wan, to: provider}
streams:
  s: {source: cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [nas]}
  g: {source: nas, transport: rtp, group: 239.255.0.1, port: 5004, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [cam]}
`;
    const { network, site: declared } = planOf(folderOf({ 'a.site.yaml': text }).site());
    const sent = network.topology.links.map((link) => network.copies(link, link.a).map(({ stream }) => stream.name));
    assert.deepEqual(
      network.deliveries.map(({ reaches }) => reaches),
      [['nas'], ['cam']],
    );
    // The group is flooded to the sockets, and not to the provider.
    assert.deepEqual(sent, [['s', 'g'], ['s'], []]);
    const box = declared.deviceByName.get('box');
    assert.deepEqual(
      box?.ports.map(({ name, forwards }) => [name, forwards]),
      [
        ['1', true],
        ['2', true],
        ['3', true],
        ['4', true],
        ['wan', false],
      ],
    );
  });

  it('does not switch legs of its own: ports in a VLAN each, or with an address each', () => {
    for (const ports of [
      '1: {vlan: house, address: 192.168.10.1}, 2: {vlan: video, address: 192.168.20.1}',
      '1: {vlan: video, address: 192.168.20.1}, 2: {vlan: video, address: 192.168.20.2}',
      '1: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}',
    ]) {
      const read = folderOf({ 'a.site.yaml': `devices: {box: {kind: router, ports: {${ports}}}}` }).site();
      assert.ok(
        read.ports.every(({ forwards }) => !forwards),
        ports,
      );
    }
  });
});

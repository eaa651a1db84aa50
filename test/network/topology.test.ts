import assert from 'node:assert/strict';
import { networkOf } from '../../server/src/network/network.ts';
import { portName } from '../../server/src/site/model.ts';
import { siteOf } from '../site-of.ts';

const VLANS = `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}`;

/** What each cable carries, by its far end: `untagged house, tagged video`. */
function carriedBy(text: string): Record<string, string> {
  const { topology } = networkOf(siteOf(text));
  return Object.fromEntries(
    topology.links.map(({ b, untagged, tagged }) => [
      portName(b),
      [
        ...(untagged === undefined ? [] : [`untagged ${untagged.name}`]),
        ...(tagged.length === 0 ? [] : [`tagged ${tagged.map(({ name }) => name).join(' ')}`]),
      ].join(', '),
    ]),
  );
}

// Access ports, trunks and the native VLAN as IEEE 802.1Q has them (from memory). That a switch without settings passes
// frames on as they come, tag and all, is common practice, no source.
describe('Which VLAN a cable carries', () => {
  it('from an access port: its own, without a tag, whatever the host says of itself', () => {
    assert.deepEqual(
      carriedBy(`${VLANS}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 2: {vlan: house}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  stray-cam: {kind: camera, address: 192.168.20.32}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: stray-cam}
`),
      { 'paddock-cam/eth': 'untagged video', 'stray-cam/eth': 'untagged house' },
    );
  });

  it('between trunks: what both have, with a tag, and the native VLAN without one', () => {
    const trunks = (core: string, barn: string): string => `${VLANS}
devices:
  core: {kind: switch, ports: {16: {${core}}}}
  barn: {kind: switch, ports: {1: {${barn}}}}
cables:
  - {from: core/16, to: barn/1}
`;
    assert.deepEqual(carriedBy(trunks('trunk: [house, video]', 'trunk: [video, house]')), {
      'barn/1': 'tagged house video',
    });
    assert.deepEqual(carriedBy(trunks('trunk: [house, video]', 'trunk: [video]')), { 'barn/1': 'tagged video' });
    const native = 'trunk: [house, video], native: house';
    assert.deepEqual(carriedBy(trunks(native, native)), { 'barn/1': 'untagged house, tagged video' });
    assert.deepEqual(carriedBy(trunks(native, 'trunk: [house, video]')), { 'barn/1': 'tagged video' });
    assert.deepEqual(carriedBy(trunks('vlan: house', 'vlan: video')), { 'barn/1': '' });
  });

  it('to a server with a trunk: what it has, so that it stands in each with an address', () => {
    const { interfaces, topology, ...rest } = networkOf(
      siteOf(`${VLANS}
devices:
  core: {kind: switch, ports: {16: {trunk: [house, video]}}}
  recorder: {kind: server, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.5, video: 192.168.20.5}}}}
cables:
  - {from: core/16, to: recorder/lan}
`),
    );
    const [link] = topology.links;
    assert.ok(link !== undefined && rest.deliveries.length === 0);
    assert.deepEqual(
      interfaces.of(link.b.device).map(({ domain, address }) => [domain.name, address]),
      [
        ['house', 0xc0a80a05],
        ['video', 0xc0a81405],
      ],
    );
  });

  it('to a host without a trunk, from a trunk: the native VLAN alone', () => {
    assert.deepEqual(
      carriedBy(`${VLANS}
devices:
  core: {kind: switch, ports: {1: {trunk: [house, video], native: house}, 2: {trunk: [house, video]}}}
  office-pc: {kind: computer}
  lost-pc: {kind: computer}
cables:
  - {from: core/1, to: office-pc}
  - {from: core/2, to: lost-pc}
`),
      { 'office-pc/eth': 'untagged house', 'lost-pc/eth': '' },
    );
  });

  it('behind a switch without VLANs: that of the port it is cabled to', () => {
    assert.deepEqual(
      carriedBy(`${VLANS}
devices:
  core: {kind: switch, ports: {1: {vlan: video}}}
  stable: {kind: switch, ports: {1-5: {}}}
  loft: {kind: switch, ports: {1-5: {}}}
  hayloft-cam: {kind: camera}
cables:
  - {from: loft/1, to: hayloft-cam}
  - {from: stable/2, to: loft/5}
  - {from: core/1, to: stable/1}
`),
      { 'hayloft-cam/eth': 'untagged video', 'loft/5': 'untagged video', 'stable/1': 'untagged video' },
    );
  });

  it('through media converters: all that the trunks at both ends have', () => {
    assert.deepEqual(
      carriedBy(`${VLANS}
devices:
  core: {kind: switch, ports: {16: {trunk: [house, video]}}}
  barn: {kind: switch, ports: {1: {trunk: [house, video]}}}
  core-converter: {kind: media-converter, ports: {copper: {}, fibre: {}}}
  barn-converter: {kind: media-converter, ports: {copper: {}, fibre: {}}}
cables:
  - {from: core/16, to: core-converter/copper}
  - {from: core-converter/fibre, to: barn-converter/fibre, type: os2}
  - {from: barn-converter/copper, to: barn/1}
`),
      {
        'core-converter/copper': 'tagged house video',
        'barn-converter/fibre': 'tagged house video',
        'barn/1': 'tagged house video',
      },
    );
  });

  it('on a flat wiring: the VLAN whose subnet the hosts are in, else a network of its own', () => {
    const flat = (vlans: string): string => `${vlans}
devices:
  core: {kind: switch, ports: {1-8: {}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  recorder: {kind: server, address: 192.168.20.5}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
`;
    assert.deepEqual(carriedBy(flat(VLANS)), { 'paddock-cam/eth': 'untagged video', 'recorder/eth': 'untagged video' });
    const own = 'untagged the network of core';
    assert.deepEqual(carriedBy(flat('')), { 'paddock-cam/eth': own, 'recorder/eth': own });
  });

  it('between two hosts cabled directly: a network of their own', () => {
    assert.deepEqual(
      carriedBy(`
devices:
  paddock-cam: {kind: camera}
  recorder: {kind: server}
cables:
  - {from: recorder, to: paddock-cam}
`),
      { 'paddock-cam/eth': 'untagged the link recorder – paddock-cam' },
    );
  });

  it('nothing, at a port without VLANs of a switch that has some', () => {
    assert.deepEqual(
      carriedBy(`${VLANS}
devices:
  core: {kind: switch, ports: {1: {}, 2: {vlan: video}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
cables:
  - {from: core/1, to: paddock-cam}
`),
      { 'paddock-cam/eth': '' },
    );
  });
});

describe('Links', () => {
  it('run at the slower of their ends, or at the one that is known', () => {
    const { topology } = networkOf(
      siteOf(`
devices:
  core: {kind: switch, ports: {1-3: {speed: 1 Gb/s}, 4: {}}}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
  yard-cam: {kind: camera}
  gate-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: yard-cam}
  - {from: core/4, to: gate-cam}
`),
    );
    assert.deepEqual(
      topology.links.map(({ capacity }) => capacity),
      [100_000_000, 1_000_000_000, undefined],
    );
  });

  it('need a port of their own at both ends: a second cable, one to itself and one that ends at a panel are left out', () => {
    assert.deepEqual(
      Object.keys(
        carriedBy(`
devices:
  core: {kind: switch, ports: {1-8: {}}}
  panel-a: {kind: patch-panel, ports: {1-24: {}}}
  paddock-cam: {kind: camera}
  yard-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam, through: [panel-a/1]}
  - {from: core/1, to: yard-cam}
  - {from: core/2, to: core/3}
  - {from: core/4, to: panel-a/2}
`),
      ),
      ['paddock-cam/eth'],
    );
  });
});

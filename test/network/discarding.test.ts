/** What is flooded in a ring that spanning tree cuts. */

import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { SiteFolder } from '../../server/src/site/folder.ts';
import { planOf } from '../../server/src/plan.ts';

function streamsOnIdleSide(snooping: string): string[][] {
  const folder = new SiteFolder();
  const tree = `kind: switch, spanning-tree: true, ${snooping}`;
  folder.set(
    'file:///harrow-lane/ring.site.yaml',
    `
vlans:
  video: {id: 20, querier: s1}
devices:
  s1: {${tree}, spanning-tree-priority: 4096, ports: {1-3: {speed: 1 Gb/s, vlan: video}}}
  s2: {${tree}, ports: {1-2: {speed: 1 Gb/s, vlan: video}}}
  s3: {${tree}, ports: {1-3: {speed: 1 Gb/s, vlan: video}}}
  server: {kind: server, speed: 1 Gb/s}
  screen: {kind: display, speed: 1 Gb/s}
cables:
  - {from: s2/2, to: s3/2}
  - {from: s1/1, to: s2/1}
  - {from: s1/2, to: s3/1}
  - {from: s1/3, to: server}
  - {from: s3/3, to: screen}
streams:
  paddock-live: {source: server, transport: rtp, group: 239.192.20.31, port: 5004, video: {bitrate: 6 Mb/s}, receivers: [screen]}
  chime: {source: server, transport: rtp, group: 224.0.0.200, port: 5006, audio: {codec: pcma, bitrate: 64 kb/s}}
`,
  );
  const { network } = planOf(folder.site());
  const idle = network.topology.links[0];
  assert.ok(idle !== undefined);
  assert.equal(idle.blocked?.device.name, 's3');
  return [idle.a, idle.b].map((out) => network.copies(idle, out).map(({ stream }) => stream.name));
}

// Source: measured on Open vSwitch with rapid spanning tree (test/lab, the rings): the port at the nearer end is a
// designated port and forwards; its neighbour discards. IEEE 802.1D-2004 §7.4, from memory.
describe('the side of a ring where spanning tree has one end discard', () => {
  it('carries towards that end what every switch floods, and nothing back', () => {
    assert.deepEqual(streamsOnIdleSide('igmp-snooping: true, unregistered-multicast: drop'), [['chime'], []]);
  });

  it('carries every group where the switches do not snoop', () => {
    assert.deepEqual(streamsOnIdleSide('igmp-snooping: false'), [['paddock-live', 'chime'], []]);
  });
});

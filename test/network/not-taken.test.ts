/** What a port sends into a link whose other end does not take it. */

import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { networkOf } from '../../server/src/network/network.ts';
import { portOf, siteOf } from '../site-of.ts';

/** A switch with a trunk at port 3, and what leaves by each port that is asked for: the streams, and bit/s at peak. */
function sent(devices: string, cables: string, ports: readonly string[], snooping = false): Record<string, string> {
  const site = siteOf(`
vlans:
  house: {id: 10}
  video: {id: 20}
devices:
  core:
    kind: switch
    igmp-snooping: ${snooping}
    ports: {1-2: {speed: 1 Gb/s, vlan: video}, 3: {speed: 1 Gb/s, trunk: [house, video], native: house}}
  server: {kind: server, speed: 1 Gb/s}
  screen: {kind: display, speed: 1 Gb/s}
${devices}
cables:
  - {from: core/1, to: server}
  - {from: core/2, to: screen}
${cables}
streams:
  paddock-live:
    {source: server, transport: rtp, group: 239.192.20.31, port: 5004, video: {bitrate: 5.6 Mb/s}, receivers: [screen]}
`);
  const network = networkOf(site);
  return Object.fromEntries(
    ports.map((name) => {
      const port = portOf(site, name);
      const link = network.topology.linkAt(port);
      assert.ok(link !== undefined, `${name} is cabled`);
      return [
        name,
        `${network
          .copies(link, port)
          .map(({ stream }) => stream.name)
          .join()} ${network.load(link, port).line.peak}`,
      ];
    }),
  );
}

// 5.6 Mb/s in packets of 1400 B are 500 a second, and half a packet more for each of 25 pictures, as none holds parts
// of two (RFC 6184 §5.1); each takes 12 RTP + 8 UDP + 20 IPv4 + 14 Ethernet + 4 tag + 4 FCS + 20 B of preamble and gap
// on the line besides its media: 5.936 Mb/s. IEEE 802.3 arithmetic, RFC 3550 §5.1, RFC 768, RFC 791.
const TAGGED = 5_600_000 + 512.5 * (12 + 8 + 20 + 14 + 4 + 4 + 20) * 8;

// Source: IEEE 802.1Q (from memory): what a VLAN is flooded with leaves by every port in its member set; the device
// at the far end decides for itself whether to take the frame.
describe('what is flooded into a link whose other end does not take it', () => {
  it('loads the link to a host that has no tagged VLANs, and does not reach it', () => {
    const devices = '  panel: {kind: display, speed: 1 Gb/s}';
    const found = sent(devices, '  - {from: core/3, to: panel}', ['core/3', 'panel/eth']);
    assert.deepEqual(found, { 'core/3': `paddock-live ${TAGGED}`, 'panel/eth': ' 0' });
  });

  it('passes a switch without VLANs, to each of its hosts', () => {
    const devices = [
      '  small: {kind: switch, ports: {1-3: {speed: 1 Gb/s}}}',
      '  panel: {kind: display, speed: 1 Gb/s}',
    ].join('\n');
    const cables = ['  - {from: core/3, to: small/1}', '  - {from: small/2, to: panel}'].join('\n');
    assert.deepEqual(sent(devices, cables, ['core/3', 'small/2', 'small/1']), {
      'core/3': `paddock-live ${TAGGED}`,
      'small/2': `paddock-live ${TAGGED}`,
      'small/1': ' 0',
    });
  });

  it('ends at a switch whose port is not in the VLAN, even where another cable leads it there', () => {
    const devices = `  barn:
    kind: switch
    ports: {1: {speed: 1 Gb/s, trunk: [house], native: house}, 2-3: {speed: 1 Gb/s, vlan: video}}
  yard: {kind: switch, ports: {1-2: {speed: 1 Gb/s, vlan: video}}}
  panel: {kind: display, speed: 1 Gb/s}`;
    const cables = [
      '  - {from: core/3, to: barn/1}',
      '  - {from: barn/2, to: yard/1}',
      '  - {from: barn/3, to: panel}',
    ].join('\n');
    assert.deepEqual(sent(devices, cables, ['core/3', 'barn/2', 'barn/3']), {
      'core/3': `paddock-live ${TAGGED}`,
      'barn/2': ' 0',
      'barn/3': ' 0',
    });
  });

  it('is not sent by a switch that snoops and knows where the group is wanted', () => {
    const devices = '  panel: {kind: display, speed: 1 Gb/s}';
    const found = sent(devices, '  - {from: core/3, to: panel}', ['core/2', 'core/3'], true);
    assert.deepEqual(found, { 'core/2': `paddock-live ${TAGGED - 512.5 * 4 * 8}`, 'core/3': ' 0' });
  });
});

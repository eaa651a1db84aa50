/** Streams that take their rate from what is on air. */

import assert from 'node:assert/strict';
import { planOf } from '../../server/src/plan.ts';
import { siteOf } from '../site-of.ts';

const SITE = `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40214645 b/s}
  mux-c:
    system: dvb-t2
    channel: 24
    modulation: 256qam
    code-rate: 2/3
    guard-interval: 1/128
    frame: {size: 32, symbols: 60, blocks: 202}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s, peak-rate: 7 Mb/s}
devices:
  tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf: {}}}
  screen: {kind: display, address: 192.168.20.60}
  recorder: {kind: server, address: 192.168.20.5}
streams:
  tv-news: {source: tuner, service: news, transport: ts-rtp, group: 239.255.30.1, port: 5004, receivers: [screen]}
  all-a: {source: tuner, multiplex: mux-a, transport: ts-rtp, group: 239.255.30.2, port: 5004, receivers: [screen]}
  all-b: {source: tuner, multiplex: mux-b, transport: ts-rtp, group: 239.255.30.3, port: 5004, receivers: [screen]}
  all-c: {source: tuner, multiplex: mux-c, transport: ts-udp, group: 239.255.30.4, port: 5004, receivers: [screen]}
  again: {source: recorder, carries: tv-news, transport: ts-rtp, port: 5004, receivers: [screen]}
`;

describe('Streams of television', () => {
  const plan = planOf(siteOf(SITE));
  const line = (name: string): { nominal: number; peak: number } => {
    const stream = plan.site.streamByName.get(name);
    assert.ok(stream);
    return plan.network.rates(stream).untagged.line;
  };

  // By hand: seven packets of 188 bytes in 1394 bytes of line, with the net rates of EN 300 744 and EN 302 755.
  it('have the rate of their multiplex', () => {
    assert.equal(line('all-a').nominal, 25_558_441);
    assert.equal(line('all-b').nominal, 42_598_188);
    assert.equal(line('all-c').nominal, Math.round((40_214_645 * 1382) / 1316));
  });

  it('have the rate of their programme, with two tables every 100 ms', () => {
    assert.equal(line('tv-news').nominal, 4_480_799);
    assert.equal(line('tv-news').peak, Math.round(((7_000_000 + 30_080) * 1394) / 1316));
  });

  it('keep it when a server sends them on', () => {
    assert.deepEqual(line('again'), line('tv-news'));
  });
});

describe('A tuner that is plugged into a server', () => {
  const plan = planOf(
    siteOf(`
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1-2: {vlan: video, speed: 1 Gb/s}}, igmp-snooping: true, address: 192.168.20.2}
  recorder: {kind: server, address: 192.168.20.5, buses: {usb-a: {kind: usb-2, usable: 300 Mb/s}}}
  stick: {kind: tuner, host: recorder, bus: usb-a, tuners: {1: {systems: [dvb-t]}}}
  screen: {kind: display, address: 192.168.20.60}
cables:
  - {from: core/1, to: recorder}
  - {from: core/2, to: screen}
streams:
  all-a: {source: stick, multiplex: mux-a, transport: ts-rtp, group: 239.192.30.2, port: 5004, receivers: [screen, recorder]}
`),
  );

  it('sends by the port of the server, and to it without the network', () => {
    const [delivery] = plan.network.deliveries;
    assert.equal(delivery?.source?.name, 'recorder');
    assert.deepEqual(delivery?.reaches, ['screen', 'recorder']);
    const [link] = plan.network.topology.links;
    assert.ok(link);
    assert.equal(plan.network.load(link, link.b).line.nominal, 25_558_441);
    assert.equal(plan.network.load(link, link.a).line.nominal, 0);
  });
});

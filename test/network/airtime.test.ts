import assert from 'node:assert/strict';
import { planOf } from '../../server/src/plan.ts';
import { airExplained } from '../../server/src/report/explain/air.ts';
import { explanationText } from '../../server/src/report/explain/explanation.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { siteOf } from '../site-of.ts';

interface House {
  readonly core?: string;
  readonly ap?: string;
  readonly ports?: string;
  readonly screen?: string;
}

function house({ core = '', ap = '', ports = '', screen = 'core/2' }: House): string {
  return `
vlans: {lan: {id: 10, querier: core}}
devices:
  core: {kind: switch, address: 192.168.10.2, ${core}ports: {1-3: {speed: 1 Gb/s, vlan: lan}}}
  recorder: {kind: server, speed: 1 Gb/s}
  screen: {kind: display, speed: 1 Gb/s}
  ap: {kind: access-point${ap}, ports: {eth: {speed: 1 Gb/s}${ports}}}
cables:
  - {from: core/1, to: recorder}
  - {from: ${screen}, to: screen}
  - {from: core/3, to: ap/eth}
streams:
  live: {source: recorder, transport: rtp, port: 5004, group: 239.192.20.31, packet-size: 1400 B, video: {codec: h264, bitrate: 3 Mb/s, peak-bitrate: 6 Mb/s}, receivers: [screen]}
`;
}

const air = (of: House): ReturnType<typeof reportOf>['air'] => reportOf(planOf(siteOf(house(of)))).air;

describe('What groups take of the air of an access point', () => {
  // A table of airtime by the arithmetic that ns-3 confirms, in test/standards/wifi.test.ts: an RTP packet of 1400
  // bytes of a stream of 3 Mb/s at 1, 6, 12 and 24 Mb/s takes 12.504, 2.1265, 1.1305 and 0.6305 ms. Half a packet more
  // for each of 25 pictures makes 280.357 a second of 1337.6 bytes, which take 8 bits over the rate less for each byte.
  it('is the packets times what each takes at the basic rate', () => {
    for (const [rate, nominal, peak] of [
      ['1 Mb/s', 336.65, 671.89],
      ['6 Mb/s', 57.38, 114.38],
      ['12 Mb/s', 30.57, 60.88],
      ['24 Mb/s', 17.12, 34.13],
    ] as const)
      assert.deepEqual(air({ ap: `, basic-rate: ${rate}` })[0]?.share, { nominal, peak }, rate);
  });

  it('is 6 Mb/s where nothing is said', () => {
    assert.deepEqual(air({}), air({ ap: ', basic-rate: 6 Mb/s' }));
  });

  it('is nothing where the groups are kept from it', () => {
    assert.deepEqual(air({ core: 'igmp-snooping: true, unregistered-multicast: drop, ' }), []);
    assert.deepEqual(air({ ap: ', multicast-to-unicast: true' }), []);
    assert.deepEqual(air({ ap: ', igmp-snooping: true, unregistered-multicast: drop' }), []);
  });

  it('is that of a group that a host on a socket of the access point has joined, unless it snoops', () => {
    const socket = { ports: ', lan: {speed: 1 Gb/s}', screen: 'ap/lan', core: 'igmp-snooping: true, ' };
    assert.equal(air(socket)[0]?.share.peak, 114.38);
    assert.deepEqual(air({ ...socket, ap: ', igmp-snooping: true' }), []);
  });

  it('is shown with its packets', () => {
    const [cell] = planOf(siteOf(house({}))).air;
    assert.ok(cell !== undefined);
    const text = explanationText(airExplained(cell));
    assert.match(
      text,
      /video packets +280\.357 packets\/s +548\.214 packets\/s +2,046\.5 µs each, at peak 2,086\.5 µs/,
    );
    assert.match(text, /of the time +57\.38 % +114\.38 %/);
  });
});

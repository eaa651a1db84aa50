import assert from 'node:assert/strict';
import { networkOf } from '../../server/src/network/network.ts';
import type { StreamRates } from '../../server/src/network/rates.ts';
import { siteOf } from '../site-of.ts';

function ratesOf(stream: string): StreamRates {
  const site = siteOf(`streams:\n  paddock: {source: paddock-cam, port: 5004, ${stream}}\n`);
  const [paddock] = site.streams;
  assert.ok(paddock !== undefined);
  const rates = networkOf(site).rates(paddock);
  return rates;
}

function megabits(bitsPerSecond: number): string {
  return (bitsPerSecond / 1e6).toFixed(3);
}

/**
 * Bytes around the media: IPv4 20 (RFC 791 §3.1, read), UDP 8 (RFC 768, read), RTP 12 (RFC 3550 §5.1, read), Ethernet
 * header 14 and FCS 4 (Linux if_ether.h, read), tag 4 (RFC 5180 App. A, read; 802.1Q itself not), preamble with start
 * delimiter 8 and gap 12 (RFC 5180 App. A.1, RFC 2544 App. B, read). Rates derived from these by hand.
 */
describe('Rates of a stream of 7.5 Mb/s', () => {
  const rtp = 'transport: rtp, packet-size: 1400 B, video: {codec: h264, bitrate: 7.5 Mb/s}';

  // No packet holds parts of two pictures (RFC 6184 §5.1, read): half a packet more for each of 25 a second.
  it('in RTP packets of up to 1400 bytes: 669.643 full ones and 12.5 more, 58 bytes each with FCS, 78 on the wire', () => {
    const { runs, payload, untagged } = ratesOf(rtp);
    assert.equal(runs[0]?.perSecond.nominal.toFixed(3), '682.143');
    assert.equal(payload.nominal, 7_500_000);
    assert.equal(megabits(untagged.frame.nominal), '7.795');
    assert.equal(megabits(untagged.frameWithFcs.nominal), '7.817');
    assert.equal(megabits(untagged.line.nominal), '7.926');
  });

  it('the same with a VLAN tag, 4 bytes more a packet', () => {
    const { tagged } = ratesOf(rtp);
    assert.equal(megabits(tagged.frameWithFcs.nominal), '7.838');
    assert.equal(megabits(tagged.line.nominal), '7.947');
  });

  it('1400 bytes are what is taken where no packet size is given', () => {
    assert.deepEqual(
      ratesOf('transport: rtp, video: {codec: h264, bitrate: 7.5 Mb/s}').untagged,
      ratesOf(rtp).untagged,
    );
  });

  // Whole packets: RFC 2250 §2, read; seven of them are common practice.
  it('as a transport stream in RTP, seven packets of 188 bytes each time', () => {
    const { runs, untagged, tagged } = ratesOf('transport: ts-rtp, mux-rate: 7.5 Mb/s');
    assert.equal(runs[0]?.perSecond.nominal.toFixed(3), '712.386');
    assert.equal(megabits(untagged.frameWithFcs.nominal), '7.831');
    assert.equal(megabits(untagged.line.nominal), '7.945');
    assert.equal(megabits(tagged.frameWithFcs.nominal), '7.853');
    assert.equal(megabits(tagged.line.nominal), '7.967');
  });

  it('as a transport stream in plain UDP', () => {
    const { untagged } = ratesOf('transport: ts-udp, mux-rate: 7.5 Mb/s');
    assert.equal(megabits(untagged.frameWithFcs.nominal), '7.762');
    assert.equal(megabits(untagged.line.nominal), '7.876');
  });
});

describe('Rates of a stream', () => {
  it('what a switch counted of transport streams in RTP: packets × (1316 + 12 + 8 + 20 + 14), 4 more on a trunk', () => {
    // Open vSwitch 3.1 counters, without FCS, preamble and gap; measured within 0.06 % at 4 + 2 + 1 Mb/s.
    for (const rate of [1_000_000, 2_000_000, 4_000_000]) {
      const { untagged, tagged } = ratesOf(`transport: ts-rtp, mux-rate: ${rate / 1e6} Mb/s`);
      const packets = rate / (1316 * 8);
      assert.equal(untagged.frame.nominal, Math.round(packets * (1316 + 12 + 8 + 20 + 14) * 8));
      assert.equal(tagged.frame.nominal, Math.round(packets * (1316 + 12 + 8 + 20 + 14 + 4) * 8));
    }
  });

  it('the peak is the nominal rate where none is declared, and its own where one is', () => {
    const plain = ratesOf('transport: rtp, video: {codec: h264, bitrate: 6 Mb/s}');
    assert.equal(plain.untagged.line.peak, plain.untagged.line.nominal);
    const moving = ratesOf('transport: rtp, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s}');
    assert.deepEqual(moving.payload, { nominal: 6_000_000, peak: 9_000_000 });
    assert.equal(moving.untagged.line.nominal, plain.untagged.line.nominal);
    assert.equal(moving.untagged.line.peak, Math.round(9_000_000 + (9_000_000 / 11_200 + 25 / 2) * 78 * 8));
  });

  // What was counted of H.264 at 25 pictures a second, sent by FFmpeg in packets of up to 1400 bytes: line rate over
  // media. Below one packet a picture its spread counts too, by half a per cent.
  for (const [rate, counted] of [
    ['128 kb/s', 1.129],
    ['256 kb/s', 1.082],
    ['1 Mb/s', 1.064],
  ] as const) {
    it(`of ${rate} of pictures is ${counted} times that on the line, as counted, within 0.8 %`, () => {
      const { payload, untagged } = ratesOf(`transport: rtp, video: {codec: h264, bitrate: ${rate}, frame-rate: 25}`);
      const ratio = untagged.line.nominal / payload.nominal;
      assert.ok(Math.abs(ratio / counted - 1) < 0.008, ratio.toFixed(4));
    });
  }

  it('G.711 sound goes out 50 times a second, 160 bytes each: 64 kb/s of sound are 97.6 kb/s on the wire', () => {
    // 20 ms a packet: RFC 3551 §4.2, read. 160 + 12 + 8 + 20 + 14 + 4 + 20 bytes, 50 times a second.
    const { runs, untagged } = ratesOf('transport: rtp, audio: {codec: pcma, bitrate: 64 kb/s}');
    assert.equal(runs[0]?.perSecond.nominal, 50);
    assert.equal(runs[0]?.media.nominal, 160);
    assert.equal(untagged.line.nominal, (160 + 12 + 8 + 20 + 14 + 4 + 20) * 8 * 50);
  });

  it('RTSP over TCP fills segments of 1448 bytes, and an acknowledgement of 66 bytes goes back for every other one', () => {
    // 1500 − 20 IPv4 − 20 TCP − 12 timestamps (RFC 7323 App. A, from memory); each RTP packet has 4 bytes of
    // interleaving before it (RFC 2326 §10.12, from memory). Acknowledgements: RFC 5681 §4.2 (read); their 66 bytes
    // without FCS were seen with tshark.
    const { untagged, reply } = ratesOf('transport: rtsp, video: {codec: h264, bitrate: 6 Mb/s}');
    const sent = (6_000_000 / 8) * ((1400 + 12 + 4) / 1400);
    // The last segment of each of 25 pictures is short: half a segment more for each.
    const segments = sent / 1448 + 25 / 2;
    const rtp = 1448 * (16 / 1416);
    assert.equal(untagged.line.nominal, Math.round((750_000 + segments * (8 + 14 + 52 + rtp + 4 + 12)) * 8));
    assert.equal(reply.untagged.frame.nominal, Math.round((segments / 2) * 66 * 8));
    assert.deepEqual(reply.untagged.payload, { nominal: 0, peak: 0 });
  });

  it('RTSP over UDP sends what RTP does, and nothing goes back but RTCP, which is left out', () => {
    // Asked for by RTSP, the same packets (RFC 2326 §12.39, from memory). Counted over UDP: 2,155 kb/s of frames of a
    // camera of 2 Mb/s with sound, and 0.7 kb/s back.
    const media = 'video: {codec: h264, bitrate: 6 Mb/s}, audio: {codec: pcma, bitrate: 64 kb/s}';
    const [asked, sent] = [ratesOf(`transport: rtsp-udp, ${media}`), ratesOf(`transport: rtp, ${media}`)];
    assert.deepEqual(asked.untagged, sent.untagged);
    assert.equal(asked.reply.untagged.line.peak, 0);
  });

  it('each packet of sound among them is acknowledged by itself', () => {
    // Every 20 ms (RFC 3551 §4.2, read) comes one alone. That Linux does so was seen with tshark: 50 a second, at
    // leisure and on a busy machine.
    const video = 'video: {codec: h264, bitrate: 6 Mb/s}';
    const silent = ratesOf(`transport: rtsp, ${video}`).reply.untagged.frame.nominal;
    const { reply } = ratesOf(`transport: rtsp, ${video}, audio: {codec: pcma, bitrate: 64 kb/s}`);
    assert.ok(Math.abs(reply.untagged.frame.nominal - silent - 50 * 66 * 8) <= 1);
  });

  it('is nothing, not an error, where no rate is known', () => {
    const { runs, untagged } = ratesOf('transport: rtp, video: {codec: h264}');
    assert.deepEqual(runs, []);
    assert.deepEqual(untagged.line, { nominal: 0, peak: 0 });
  });
});

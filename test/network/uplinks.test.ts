import assert from 'node:assert/strict';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { explanationText } from '../../server/src/report/explain/explanation.ts';
import { uplinkExplained } from '../../server/src/report/explain/uplink.ts';
import { uplinksOf } from '../../server/src/network/uplinks.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { siteOf } from '../site-of.ts';

interface House {
  readonly video?: string;
  readonly house?: string;
  readonly more: string;
}

function plan({ video = '', house = '', more }: House): Plan {
  return planOf(
    siteOf(`
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router${house}}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router${video}}
devices:
  provider: {kind: internet, down: 100 Mb/s, up: 20 Mb/s}
  router:
    kind: router
    ports:
      wan: {speed: 1 Gb/s}
      lan: {speed: 1 Gb/s, trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}
  core: {kind: switch, ports: {1: {speed: 1 Gb/s, trunk: [house, video]}, 2: {speed: 1 Gb/s, vlan: house}, 3-4: {speed: 1 Gb/s, vlan: video}}}
  office-pc: {kind: computer, address: 192.168.10.20, speed: 1 Gb/s}
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
  gate-cam: {kind: camera, address: 192.168.20.31, speed: 1 Gb/s}
cables:
  - {from: router/wan, to: provider}
  - {from: core/1, to: router/lan}
  - {from: core/2, to: office-pc}
  - {from: core/3, to: recorder}
  - {from: core/4, to: gate-cam}
${more}
`),
  );
}

const ofTraffic = (words: string): string => `traffic: {viewing: {${words}}}`;

describe('The line to the Internet', () => {
  // Full segments of TCP: 1448 bytes of data in a frame of 1518 with FCS; an acknowledgement is 70. RFC 793 §3.1,
  // RFC 7323 §3.2; by hand.
  it('carries what goes there up, and its acknowledgements down, against the two rates', () => {
    const { uplinks } = reportOf(plan({ more: ofTraffic('from: recorder, to: provider, rate: 8 Mb/s') }));
    const segments = 8_000_000 / 8 / 1448;
    assert.deepEqual(uplinks, [
      {
        device: 'provider',
        down: {
          rate: 100_000_000,
          nominal: Math.round((segments / 2) * 70 * 8),
          peak: Math.round((segments / 2) * 70 * 8),
        },
        up: { rate: 20_000_000, nominal: Math.round(segments * 1518 * 8), peak: Math.round(segments * 1518 * 8) },
      },
    ]);
  });

  it('carries what comes from there, and streams that are watched from there', () => {
    const comes = reportOf(plan({ more: ofTraffic('from: provider, to: office-pc, rate: 50 Mb/s') })).uplinks[0];
    assert.ok(comes !== undefined && comes.down.peak > 50e6 && comes.up.peak < 2e6);
    const watched = reportOf(
      plan({
        more: 'streams: {gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [provider]}}',
      }),
    );
    assert.deepEqual(watched.streams[0]?.reaches, ['provider']);
    const up = watched.uplinks[0]?.up.peak ?? 0;
    assert.ok(up > 6e6 && up < 6.6e6, String(up));
  });

  it('is shown with what crosses it', () => {
    const of = plan({ more: ofTraffic('from: recorder, to: provider, rate: 8 Mb/s') });
    const [uplink] = uplinksOf(of.site.devices, of.network);
    assert.ok(uplink !== undefined);
    const text = uplinkExplained(of, uplink).map(explanationText).join('');
    assert.match(text, /provider: up, from the house/);
    assert.match(text, /viewing .*other traffic/);
    assert.match(text, /the line gives +20,000,000 b\/s/);
  });
});

describe('What VLANs may ask', () => {
  const pull =
    'streams: {gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [office-pc]}}';
  const push =
    'streams: {gate: {source: gate-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [office-pc]}}';
  const reached = (of: Plan): boolean => of.network.deliveries[0]?.reaches.includes('office-pc') === true;
  const crosses = (of: Plan): boolean =>
    of.network.topology.links.some(
      (link) =>
        link.b.device.name === 'office-pc' &&
        of.network.load(link, link.a).line.peak + of.network.load(link, link.b).line.peak > 0,
    );

  it('is everything where nothing is said', () => {
    assert.ok(reached(plan({ more: pull })) && reached(plan({ more: push })));
  });

  it('decides by who asks: the receiver of what is pulled, the source of what is sent', () => {
    // Both that they may and that they may not, for each side.
    for (const [house, video, pulled, pushed] of [
      [', reaches: []', '', false, true],
      ['', ', reaches: []', true, false],
      [', reaches: [video]', ', reaches: [house]', true, true],
      [', reaches: []', ', reaches: []', false, false],
    ] as const) {
      const said = `house${house} video${video}`;
      for (const [more, is] of [
        [pull, pulled],
        [push, pushed],
      ] as const) {
        assert.equal(reached(plan({ house, video, more })), is, said);
        assert.equal(crosses(plan({ house, video, more })), is, said);
      }
    }
  });

  it('lets other traffic pass where either end may ask, in the direction that it has', () => {
    const more = ofTraffic('from: recorder, to: office-pc, rate: 8 Mb/s');
    const toOffice = (of: Plan): number => {
      const link = of.network.topology.links.find(({ b }) => b.device.name === 'office-pc') ?? assert.fail();
      return of.network.load(link, link.a).line.peak;
    };
    const all = toOffice(plan({ more }));
    assert.ok(all > 8e6);
    assert.equal(toOffice(plan({ more, house: ', reaches: []' })), all);
    assert.equal(toOffice(plan({ more, video: ', reaches: []' })), all);
    assert.equal(toOffice(plan({ more, house: ', reaches: []', video: ', reaches: []' })), 0);
  });

  it('can leave the Internet out, whoever asks', () => {
    const more = ofTraffic('from: recorder, to: provider, rate: 8 Mb/s');
    const up = (of: Plan): number => reportOf(of).uplinks[0]?.up.peak ?? 0;
    assert.ok(up(plan({ more })) > 8e6);
    assert.ok(up(plan({ more, house: ', internet: false' })) > 8e6);
    const kept = plan({ more, video: ', internet: false' });
    assert.equal(up(kept), 0);
    assert.match(reportOf(kept).traffic[0]?.reason ?? '', /video is kept from the Internet/);
  });
});

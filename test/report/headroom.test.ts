import assert from 'node:assert/strict';
import { planOf } from '../../server/src/plan.ts';
import { deviceHeadroom, headroomWords, outHeadroom, streamHeadroom } from '../../server/src/report/headroom.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';

function planFrom(text: string): ReturnType<typeof planOf> {
  const folder = new SiteFolder();
  folder.set('file:///harrow-lane.site.yaml', text);
  return planOf(folder.site());
}

/** 7 Mb/s in packets of 1400 B is 625 packets of 1478 B on the line: 7.39 Mb/s (RFC 5180 App. A.1). */
const site = (uplink: string, budget = '200 W', capacity = '100 TB'): string => `
devices:
  core: {kind: switch, poe-budget: ${budget}, ports: {1-8: {speed: 1 Gb/s, poe: af}, up: {speed: ${uplink}}}}
  paddock-cam: {kind: camera, speed: 100 Mb/s, poe: {class: 3}}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/up, to: recorder}
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 7 Mb/s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: ${capacity}}
recordings:
  paddock: {stream: paddock, volume: archive, keep: 10 d}
`;

function words(text: string, of: 'stream' | 'camera'): string | undefined {
  const plan = planFrom(text);
  const [stream] = plan.site.streams;
  const camera = plan.site.deviceByName.get('paddock-cam');
  assert.ok(stream !== undefined && camera !== undefined);
  const found = of === 'stream' ? streamHeadroom(plan, stream) : deviceHeadroom(plan, camera);
  return found === undefined ? undefined : headroomWords(found);
}

describe('headroom', () => {
  it('of a stream counts against the first link on its way that is full', () => {
    // 90 Mb/s less 7.39, by 7.39: 11 more; the camera's own link has as much.
    assert.equal(
      words(site('100 Mb/s'), 'stream'),
      '11 more like this, then paddock-cam/eth → core/1 reaches 90 % of 100 Mb/s.',
    );
  });

  it('of a camera leaves its own cable out, and counts free ports', () => {
    assert.equal(words(site('1 Gb/s'), 'camera'), '7 more like this, then core has no further port like 1.');
  });

  it('of a camera counts power', () => {
    // Class 3 takes 15.4 W (IEEE 802.3): 40 W feed one and one more.
    assert.equal(words(site('1 Gb/s', '40 W'), 'camera'), '1 more like this, then core feeds 40 W at most.');
  });

  it('counts the disk', () => {
    // 7 Mb/s × 86 400 s / 8 × 10 d = 756 GB of 900 GB that the limit leaves: not twice.
    assert.equal(words(site('1 Gb/s', '200 W', '1 TB'), 'stream'), 'No more like this: archive reaches 90 % of 1 TB.');
  });

  // A copy on the uplink bears a VLAN tag, 1482 B on the line: 7.41 Mb/s. The bell
  // takes 50 × 250 B there, 0.1 Mb/s: (90 − 7.51) ÷ 7.41 is 11.1.
  it('of a link is that of its heaviest stream, in each direction that is in use', () => {
    const plan = planFrom(`
vlans:
  video: {id: 20}
  house: {id: 10}
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s, vlan: video}, up: {speed: 100 Mb/s, trunk: [house, video]}}}
  barn: {kind: switch, ports: {1-8: {speed: 1 Gb/s, vlan: video}, up: {speed: 100 Mb/s, trunk: [house, video]}}}
  paddock-cam: {kind: camera, speed: 1 Gb/s}
  barn-screen: {kind: display, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/up, to: barn/up}
  - {from: barn/1, to: barn-screen}
streams:
  bell: {source: paddock-cam, transport: rtp, port: 5006, audio: {codec: pcma, bitrate: 64 kb/s}, receivers: [barn-screen]}
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 7 Mb/s}, receivers: [barn-screen]}
`);
    const [, uplink] = plan.network.topology.links;
    assert.ok(uplink !== undefined);
    const found = outHeadroom(plan, uplink, uplink.a);
    assert.equal(found?.stream.name, 'paddock');
    assert.equal(
      found.headroom && headroomWords(found.headroom, 'paddock'),
      '11 more like paddock, then core/up → barn/up reaches 90 % of 100 Mb/s.',
    );
    assert.equal(outHeadroom(plan, uplink, uplink.b), undefined);
  });

  it('agrees with what a site of so many more does', () => {
    const more = 11;
    const text = site('100 Mb/s');
    const copies = Array.from(
      { length: more + 1 },
      (_, i) =>
        `  paddock-${i}: {source: paddock-cam, transport: rtp, port: ${6000 + 2 * i}, video: {codec: h264, bitrate: 7 Mb/s}, receivers: [recorder]}\n`,
    );
    const load = (number: number): number => {
      const { network } = planFrom(text.replace('volumes:\n', `${copies.slice(0, number).join('')}volumes:\n`));
      return Math.max(
        ...network.topology.links.flatMap((link) => [link.a, link.b].map((out) => network.load(link, out).line.peak)),
      );
    };
    assert.ok(load(more) <= 90e6);
    assert.ok(load(more + 1) > 90e6);
  });
});

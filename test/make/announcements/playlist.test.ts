import assert from 'node:assert/strict';
import fc from 'fast-check';
import { before, describe, it } from 'mocha';
import { playlist } from '../../../server/src/make/announcements/playlist.ts';
import { hostileText } from '../hostile.ts';
import { needsXmllint, validated } from './xspf.ts';
import { fileOf, planOfData, planOfText, planOfTexts, sampleTexts } from '../made.ts';

const harrowLane = planOfTexts(sampleTexts('harrow-lane'));

function locations(xml: string): readonly string[] {
  return [...xml.matchAll(/<location>(.*)<\/location>/g)].map((match) => match[1] ?? '');
}

describe('make playlist', function () {
  it('lists what each screen and computer receives', () => {
    const made = playlist.make(harrowLane);
    assert.deepEqual(made.refused, []);
    assert.deepEqual(
      made.files.map(({ path }) => path),
      ['office-pc.xspf', 'kitchen-screen.xspf', 'parlour-screen.xspf', 'stable-screen.xspf'],
    );
    assert.deepEqual(locations(fileOf(made, 'parlour-screen.xspf')), [
      'porch-live.sdp',
      'foaling-box-live.sdp',
      'rtp://@239.192.30.1:5004',
      'rtp://@239.192.30.2:5004',
    ]);
    assert.deepEqual(locations(fileOf(made, 'office-pc.xspf')), ['gate-office.sdp']);
  });

  it('takes titles from descriptions, and paths as an address has them', () => {
    const xml = fileOf(
      playlist.make(
        planOfText(`
devices:
  core: {kind: switch, ports: {1-2: {}}}
  paddock-cam: {kind: camera, address: 192.168.20.41}
  screen: {kind: display, address: 192.168.20.61}
cables: [{from: core/1, to: paddock-cam}, {from: core/2, to: screen}]
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, path: "/live one?x=1&y=%20", description: "Mares & foals", receivers: [screen]}
  yard: {source: paddock-cam, transport: ts-udp, group: 239.192.20.1, port: 1234, receivers: [screen]}
`),
      ),
      'screen.xspf',
    );
    assert.match(xml, /<title>Mares &amp; foals<\/title>/);
    assert.deepEqual(locations(xml), ['rtsp://192.168.20.41/live%20one?x=1&amp;y=%20', 'udp://@239.192.20.1:1234']);
  });

  describe('by libxml2', () => {
    before(function () {
      needsXmllint(this);
    });

    it('is valid', async () => {
      for (const { text } of playlist.make(harrowLane).files) assert.equal((await validated(text)).complaints, '');
    });

    it('is not valid without what is tested here', async () => {
      const text = playlist.make(harrowLane).files[0]?.text ?? '';
      for (const broken of [
        text.replace('version="1"', ''),
        text.replaceAll('trackList', 'tracklist'),
        text.replace('<title>', '<titel>'),
      ]) {
        assert.notEqual((await validated(broken)).complaints, '');
      }
    });

    it('is valid whatever streams, descriptions, paths and the site are called', async () => {
      await fc.assert(
        fc.asyncProperty(hostileText, hostileText, hostileText, async (name, description, path) => {
          const plan = planOfData({
            site: { name },
            devices: {
              cam: { kind: 'camera', address: '192.168.20.41' },
              screen: { kind: 'display', address: '192.168.20.61' },
            },
            streams: {
              asked: { source: 'cam', transport: 'rtsp', path: `/${path}`, description, receivers: ['screen'] },
              sent: {
                source: 'cam',
                transport: 'ts-udp',
                group: '239.192.20.1',
                port: 1234,
                description,
                receivers: ['screen'],
              },
            },
          });
          const { files } = playlist.make(plan);
          const xml = files[0]?.text ?? '';
          assert.equal((await validated(xml)).complaints, '');
          for (const location of locations(xml))
            assert.doesNotThrow(() => new URL(location.replaceAll('&amp;', '&')), location);
        }),
        { numRuns: 40 },
      );
    });
  });
});

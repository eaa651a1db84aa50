import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import fc from 'fast-check';
import { before, describe, it } from 'mocha';
import { announcements } from '../../../server/src/make/announcements/units.ts';
import { sdp } from '../../../server/src/make/announcements/sdp.ts';
import type { MadeFile } from '../../../server/src/make/output.ts';
import { unavailable } from '../../availability.ts';
import { hostileText } from '../hostile.ts';
import { fileOf, inFolder, planOfData, planOfText, planOfTexts, sampleTexts } from '../made.ts';

const UNIT = 'recorder/plumbline-announce-192.168.20.5.service';

const harrowLane = planOfTexts(sampleTexts('harrow-lane'));

/** What systemd says of a unit; nothing where it is right. */
function complaints(files: readonly MadeFile[], path: string): Promise<string> {
  return inFolder(files, (folder) => {
    const { status, stderr } = spawnSync('systemd-analyze', ['verify', join(folder, path)], { encoding: 'utf8' });
    return status === 0 ? stderr : `exit ${status}: ${stderr}`;
  });
}

describe('make announcements', function () {
  it('has a server announce what it sends, and what no server sends into its network', () => {
    const made = announcements.make(harrowLane);
    assert.deepEqual(made.refused, []);
    assert.deepEqual(announcements.subjects(harrowLane), ['recorder']);
    const described = made.files.filter(({ path }) => path.endsWith('.sdp'));
    assert.equal(described.length, 10, 'the eight that the recorder sends, and the two of the tuner');
    for (const { path, text } of described)
      assert.equal(text, fileOf(sdp.make(harrowLane), path.split('/').at(-1) ?? ''));
    assert.match(
      fileOf(made, UNIT),
      /^ExecStart=\/usr\/bin\/env plumbline announce \/etc\/plumbline\/announced-192\.168\.20\.5 --interface 192\.168\.20\.5$/m,
    );
  });

  it('says how it is begun, and where the program has to be for a unit that sees no home folders', () => {
    const made = announcements.make(harrowLane);
    assert.match(fileOf(made, UNIT), /^ProtectHome=yes$/m);
    const told = made.notes.join('\n');
    assert.match(told, /`systemctl enable --now plumbline-announce-192\.168\.20\.5\.service`/);
    assert.match(told, /npm install --global --install-links \.`.* home folder does not do/);
  });

  it('says of a group that no RFC says where it is announced, and refuses an interface without an address', () => {
    const streams = (group: string): string => `
devices:
  core: {kind: switch}
  recorder: {kind: server, ADDRESS}
cables: [{from: core, to: recorder}]
streams:
  live: {source: recorder, transport: rtp, group: ${group}, port: 5004, video: {codec: h264}}
`;
    const text = streams('239.16.32.1').replace('{kind: switch}', '{kind: switch, ports: {1: {}}}');
    const noScope = announcements.make(planOfText(text.replace('ADDRESS', 'address: 192.168.20.5')));
    assert.match(noScope.notes.join(), /no RFC says on which group/);
    const noAddress = announcements.make(planOfText(text.replace(', ADDRESS', '')));
    assert.match(noAddress.refused[0]?.message ?? '', /has no address/);
    assert.deepEqual([...noScope.files, ...noAddress.files], []);
  });

  it('says what nobody announces', () => {
    const { notes } = announcements.make(
      planOfText(`
devices:
  core: {kind: switch, ports: {1: {}}}
  tv-tuner: {kind: tuner, address: 192.168.20.9}
cables: [{from: core/1, to: tv-tuner}]
streams:
  tv-one: {source: tv-tuner, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 12 Mb/s}
`),
    );
    assert.match(notes.join('\n'), /nobody announces tv-one/);
  });

  describe('by systemd', () => {
    before(function () {
      if (spawnSync('systemd-analyze', ['--version']).status !== 0)
        unavailable(this, 'systemd-analyze is not installed');
    });

    it('is a unit without complaint', async () => {
      assert.equal(await complaints(announcements.make(harrowLane).files, UNIT), '');
    });

    it('is a unit without complaint whatever the site is called', async () => {
      await fc.assert(
        fc.asyncProperty(hostileText, async (name) => {
          const plan = planOfData({
            site: { name },
            devices: {
              core: { kind: 'switch', ports: { 1: {} } },
              recorder: { kind: 'server', address: '192.168.20.5' },
            },
            cables: [{ from: 'core/1', to: 'recorder' }],
            streams: {
              live: {
                source: 'recorder',
                transport: 'rtp',
                group: '239.192.20.41',
                port: 5004,
                video: { codec: 'h264' },
              },
            },
          });
          const made = announcements.make(plan);
          const lines = (text: string): readonly string[] =>
            text.split(/\r\n|[\r\n]/).filter((line) => !line.startsWith('#') && !line.startsWith('Description='));
          assert.deepEqual(lines(fileOf(made, UNIT)), lines(fileOf(announcements.make(harrowLane), UNIT)));
          assert.equal(await complaints(made.files, UNIT), '');
        }),
        { numRuns: 15 },
      );
    });
  });
});

import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, it } from 'mocha';
import { relays } from '../../../server/src/make/media/relays.ts';
import { check } from '../../../server/src/check.ts';
import { needs } from '../../availability.ts';
import { folderOf } from '../../site.ts';
import { planOfText } from '../made.ts';

const SITE = `
vlans: {video: {id: 20, subnet: 192.168.20.0/24}}
devices:
  core: {kind: switch, ports: {1-2: {vlan: video}}}
  recorder: {kind: server, address: 192.168.20.5}
  paddock-cam: {kind: camera, address: 192.168.20.31}
cables: [{from: core/1, to: recorder}, {from: core/2, to: paddock-cam}]
streams:
  paddock: {source: paddock-cam, transport: rtsp, credentials: barn, video: {codec: h264}, receivers: [recorder]}
  live: {source: recorder, carries: paddock, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [recorder]}
`;

describe('the note on credentials', () => {
  it('makes with its command, on a server that has none yet, a file that only its owner can read', function () {
    needs(this, 'install', 'coreutils');
    const folder = mkdtempSync(join(tmpdir(), 'plumbline-credentials-'));
    try {
      const [, command = assert.fail()] =
        /`(install [^`]*)`/.exec(relays.make(planOfText(SITE)).notes.join('\n')) ?? [];
      const { status, stderr } = spawnSync(
        'sh',
        ['-ec', command.replaceAll('/etc/plumbline', join(folder, 'plumbline'))],
        { encoding: 'utf8' },
      );
      assert.equal(status, 0, stderr);
      assert.equal(statSync(join(folder, 'plumbline/credentials/barn')).mode & 0o777, 0o600);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

describe('the name of credentials', () => {
  for (const [title, name] of [
    ['longer than a file may be named', 'a'.repeat(300)],
    ['of a megabyte', 'a'.repeat(1_000_000)],
    ['that leads elsewhere', '../../shadow'],
    ['without a letter or digit', '--'],
  ] as const)
    it(`${title} is refused, and a check finds it`, () => {
      const text = SITE.replace('credentials: barn', `credentials: ${JSON.stringify(name)}`);
      const { files, refused } = relays.make(planOfText(text));
      assert.deepEqual(files, []);
      assert.match(refused[0]?.message ?? '', /No file can be named after the credentials of paddock/);
      const found = check(folderOf({ 'a.site.yaml': text })).diagnostics.filter(
        ({ rule }) => rule.id === 'malformed-value',
      );
      assert.equal(found.length, 1);
      assert.ok(found.every(({ message }) => message.length < 1000));
    });
});

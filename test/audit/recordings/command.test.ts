/** `plumbline audit recordings` as it is called. */

import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { OFFSET, recorded } from './folder.ts';
import { type Result, plumblineHere } from '../../cli/run.ts';

const START = Date.parse('2026-06-01T00:00:00Z');

describe('plumbline audit recordings', function () {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-audit-'));
    mkdirSync(join(folder, 'site'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  /** @param volumes the path of each, with its host; a recording of its name is on each */
  function site(volumes: Readonly<Record<string, { readonly path?: string; readonly host?: string }>>): void {
    const lines = Object.entries(volumes).map(
      ([name, { path, host = 'recorder' }]) =>
        `  ${name}: {host: ${host}${path === undefined ? '' : `, path: ${JSON.stringify(join(folder, path))}`}}`,
    );
    const recordings = Object.keys(volumes).map(
      (name) =>
        `  ${name}: {stream: gate, volume: ${name}, segment: 60 s, file: ${JSON.stringify(OFFSET.replace('gate', name))}}`,
    );
    writeFileSync(
      join(folder, 'site', 'a.site.yaml'),
      `site: {name: Harrow Lane, timezone: Europe/London}
devices:
  gate-cam: {kind: camera}
  recorder: {kind: server}
  spare: {kind: server}
streams:
  gate: {source: gate-cam, transport: rtsp, video: {codec: h264, bitrate: 1 kb/s, keyframe-interval: 2 s}, receivers: [recorder]}
volumes:
${lines.join('\n')}
recordings:
${recordings.join('\n')}
`,
    );
  }

  function files(root: string, name: string, count = 10, from = START): void {
    for (const { path, modified } of recorded(from, count, { pattern: OFFSET.replace('gate', name) })) {
      const at = join(folder, root, path);
      mkdirSync(dirname(at), { recursive: true });
      // 1 kb/s.
      writeFileSync(at, Buffer.alloc(7500));
      utimesSync(at, modified / 1000, modified / 1000);
    }
  }

  const audit = (...words: string[]): Promise<Result> =>
    plumblineHere(['audit', 'recordings', '--site', 'site', ...words], { cwd: folder });

  it('looks at the path of each volume, and says in a table what is there', async () => {
    site({ archive: { path: 'a' }, entrance: { path: 'b' } });
    files('a', 'archive');
    files('b', 'entrance', 5);
    const { out, status } = await audit('--now', '2026-06-01T01:10:30');
    assert.equal(status, 1);
    assert.match(out, /Nothing of entrance has been begun since .*\[recording-stopped\]/);
    assert.match(out, /^archive +10 .*\nentrance +5 .*\n15 files looked at\.$/m);
    assert.ok(!(await audit('--now', '2026-06-01T01:10:30', '--volume', 'archive')).out.includes('entrance'));
  });

  it('holds a copy against one volume, at the time of its newest file', async () => {
    site({ archive: { path: 'nowhere' }, entrance: { path: 'nowhere' } });
    files('copy', 'archive');
    const { err, status } = await audit('copy');
    assert.equal(status, 2);
    assert.match(err, /^plumbline: Say with --volume whose files lie in copy: archive, entrance\.$/m);
    assert.equal((await audit('copy', '--volume', 'archive', '--now', 'newest')).status, 0);
    assert.equal((await audit('copy', '--volume', 'archive')).status, 1);
  });

  it('may be given a link to the folder', async () => {
    site({ archive: {} });
    files('real', 'archive');
    symlinkSync(join(folder, 'real'), join(folder, 'link'));
    assert.equal((await audit('link', '--now', 'newest')).status, 0);
  });

  it('reports a volume that is not there where others of its host are, and only then', async () => {
    site({ archive: { path: 'a' }, entrance: { path: 'gone' }, far: { host: 'spare' } });
    files('a', 'archive');
    const { out, status } = await audit('--now', 'newest');
    assert.equal(status, 1);
    assert.match(
      out,
      /error There is no folder .*gone on this machine, which has other volumes of recorder\. Is the disk of entrance mounted\? \[volume-absent\]/,
    );
    // The site does not say where it is mounted there.
    assert.match(out, /^far was left out: \/srv\/far is not on this machine, but may be on spare\.$/m);
    assert.equal(out.match(/\[[a-z-]+\]$/gm)?.length, 1, out);
  });

  it('takes a volume within another for itself', async () => {
    site({ archive: { path: 'a' }, entrance: { path: 'a/entrance' } });
    files('a', 'archive');
    files('a/entrance', 'entrance');
    const { out, status } = await audit('--now', 'newest');
    assert.equal(status, 0, out);
  });

  it('says what cannot be done', async () => {
    site({ archive: { path: 'nowhere' } });
    const refused: readonly (readonly [words: readonly string[], message: RegExp])[] = [
      [[], /nowhere, the path of archive, is no folder on this machine\. Name the FOLDER/],
      [['nowhere'], /nowhere is no folder on this machine\./],
      [['site/a.site.yaml'], /a\.site\.yaml is no folder on this machine\./],
      [['--volume', 'attic'], /The site has no volume attic\. It records to archive\./],
      [['.', '--now', 'yesterday'], /--now: yesterday is no time of ISO 8601/],
      [['.', '--since', '2026-10-25T01:30'], /--since: Clocks in Europe\/London showed 2026-10-25T01:30 twice/],
      [['.', '--probe', 'many'], /--probe is many: it is a number of files, or `all`\./],
    ];
    for (const [words, message] of refused) {
      const { err, status } = await audit(...words);
      assert.equal(status, 2, err);
      assert.match(err, message);
    }
  });
});

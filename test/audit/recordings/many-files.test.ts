/** Folders on a real disk with very many files. */

import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { LOCAL, pathAt, siteText } from './folder.ts';
import { Survey } from '../../../server/src/audit/recordings/survey.ts';
import { program } from '../../cli/run.ts';
import { siteOf } from '../../site-of.ts';

const START = Date.parse('2026-06-01T00:00:00Z');

describe('a tree of folders', function () {
  let root: string;
  beforeEach(() => (root = mkdtempSync(join(tmpdir(), 'plumbline-files-'))));
  afterEach(() => rmSync(root, { recursive: true, force: true }));

  it('of 50 000 files takes no more memory than of a few', () => {
    const site = join(root, 'site');
    mkdirSync(site);
    writeFileSync(join(site, 'a.site.yaml'), siteText({ keep: '60 d', file: LOCAL }));
    writeFileSync(
      join(root, 'peak.cjs'),
      "process.on('exit', () => process.stderr.write(`peak ${process.resourceUsage().maxRSS} KiB`));",
    );
    const peak = (count: number): number => {
      mkdirSync(join(root, String(count), 'gate'), { recursive: true });
      const first = join(root, String(count), pathAt(START, LOCAL));
      writeFileSync(first, '');
      truncateSync(first, 45_000_000);
      for (let index = 1; index < count; index++) {
        // The zone has one offset in these weeks.
        const path = join(
          root,
          String(count),
          `gate/${new Date(START + 3_600_000 + index * 60_000).toISOString().slice(0, 19).replace('T', '_').replaceAll(':', '-')}.mp4`,
        );
        writeFileSync(path, '');
        truncateSync(path, 45_000_000);
      }
      const { status, stdout, stderr } = spawnSync(
        process.execPath,
        [
          '--require',
          join(root, 'peak.cjs'),
          program,
          'audit',
          'recordings',
          join(root, String(count)),
          '--site',
          site,
          '--now',
          'newest',
        ],
        { encoding: 'utf8' },
      );
      assert.equal(status, 0, stdout + stderr);
      assert.match(stdout, new RegExp(`^gate +${count.toString()} `, 'm'));
      return Number(/peak (\d+) KiB/.exec(stderr)?.[1]) / 1024;
    };
    const [few, many] = [peak(500), peak(50_000)];
    assert.ok(many - few < 64, `${few.toFixed(0)} MiB of 500 files, ${many.toFixed(0)} MiB of 50 000`);
  });

  it('of 300 000 files leaves fewer than 50 bytes of each in memory', () => {
    setFlagsFromString('--expose-gc');
    const collect = runInNewContext('gc') as () => void;
    const used = (): number => {
      // Buffers go with the second.
      collect();
      collect();
      const { heapUsed, arrayBuffers } = process.memoryUsage();
      return heapUsed + arrayBuffers;
    };
    const site = siteOf(siteText({ file: LOCAL }));
    const survey = new Survey(site, site.recordings);
    const before = used();
    const folder = survey.enter('gate/');
    for (let index = 0; index < 300_000; index++) {
      const name = `${new Date(START + index * 60_000).toISOString().slice(0, 19).replace('T', '_').replaceAll(':', '-')}.mp4`;
      folder.file(name, 45_000_000, 0);
    }
    const each = (used() - before) / 300_000;
    assert.equal(survey.recordings[0]?.rows.length, 300_000);
    assert.ok(each < 50, `${each.toFixed(0)} bytes of each`);
  });
});

/** Folders on a real disk: names of any bytes, links, what may not be read, and very many files. */

import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  chmodSync,
  mkdirSync,
  mkdtempSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { LOCAL, pathAt, siteText } from './folder.ts';
import { Survey } from '../../../server/src/audit/recordings/survey.ts';
import type { Visitor } from '../../../server/src/audit/recordings/visitor.ts';
import { readTree } from '../../../server/src/machine/tree.ts';
import { unavailable } from '../../availability.ts';
import { plumbline, program } from '../../cli/run.ts';
import { siteOf } from '../../site-of.ts';

const START = Date.parse('2026-06-01T00:00:00Z');

describe('a tree of folders', function () {
  let root: string;
  beforeEach(() => (root = mkdtempSync(join(tmpdir(), 'plumbline-tree-'))));
  afterEach(() => rmSync(root, { recursive: true, force: true }));

  /** What is shown, as lines. */
  function seen(apart: readonly string[] = []): string[] {
    const lines: string[] = [];
    const visitor: Visitor = {
      enter: (path) => ({
        file: (name, size) => lines.push(`${path}${name} ${size.toString()}`),
        other: (name) => lines.push(`${path}${name} other`),
        leave: (emptied) => lines.push(`${path} is ${emptied ? 'emptied' : 'read'}`),
      }),
      unreadable: (path, why) => lines.push(`${path} ${why}`),
    };
    readTree(root, visitor, { reasonOf: (code) => code, apart: new Set(apart) });
    return lines.sort();
  }

  const write = (path: string | Buffer, text = ''): void => writeFileSync(path, text);

  it('is shown file by file, without following a link', () => {
    mkdirSync(join(root, 'gate/2026'), { recursive: true });
    write(join(root, 'gate/2026/a.mp4'), 'abc');
    symlinkSync(root, join(root, 'gate/loop'));
    symlinkSync(join(root, 'gate/2026/a.mp4'), join(root, 'b.mp4'));
    symlinkSync('/nowhere', join(root, 'c.mp4'));
    assert.deepEqual(seen(), [
      ' is read',
      'b.mp4 other',
      'c.mp4 other',
      'gate/ is read',
      'gate/2026/ is read',
      'gate/2026/a.mp4 3',
      'gate/loop other',
    ]);
  });

  it('leaves out what is found by fsck, and folders that belong to another volume', () => {
    for (const path of ['lost+found', 'other', 'gate/lost+found']) mkdirSync(join(root, path), { recursive: true });
    write(join(root, 'other/a'));
    assert.deepEqual(seen(['other/']), [' is read', 'gate/ is read', 'gate/lost+found/ is read']);
  });

  it('tells a folder that was emptied from one in which nothing ever was', function () {
    for (const path of ['never', 'emptied']) mkdirSync(join(root, path));
    if (statSync(join(root, 'never')).birthtimeMs === 0)
      unavailable(this, 'a file system that keeps when files were made is needed, such as ext4');
    // As a file that comes and goes does it.
    utimesSync(join(root, 'emptied'), Date.now() / 1000, Date.now() / 1000 + 60);
    assert.deepEqual(seen(), [' is read', 'emptied/ is emptied', 'never/ is read']);
  });

  it('is of names of any bytes', () => {
    const long = 'x'.repeat(251) + '.mp4';
    for (const name of [
      long,
      '__proto__',
      'constructor',
      'a\nb',
      ' ',
      '%s',
      '-rf',
      'küche',
      '\u202egpj.mp4',
      '$(reboot)',
    ])
      write(join(root, name));
    write(Buffer.concat([Buffer.from(`${root}/`), Buffer.from([0xff, 0xfe, 0x80])]));
    mkdirSync(Buffer.concat([Buffer.from(`${root}/`), Buffer.from([0xc3])]));
    const lines = seen();
    assert.ok(
      lines.includes(`${long} 0`) && lines.includes('__proto__ 0') && lines.includes('a\nb 0'),
      lines.join('\n'),
    );
    assert.ok(
      lines.includes('\ufffd\ufffd\ufffd other') && lines.includes('\ufffd/ its name is no UTF-8 text'),
      lines.join('\n'),
    );
    assert.equal(lines.length, 13);
  });

  it('is read to a depth', () => {
    mkdirSync(join(root, ...Array.from({ length: 200 }, () => 'd')), { recursive: true });
    assert.deepEqual(
      seen().filter((line) => !line.includes('is read')),
      [`${'d/'.repeat(64)} it is more than 64 folders deep`],
    );
  });

  it('reports what may not be read', function () {
    mkdirSync(join(root, 'closed'));
    chmodSync(join(root, 'closed'), 0);
    // Root may read everything; somebody else may not.
    const look = spawnSync('ls', [join(root, 'closed')], { uid: 65_534, gid: 65_534 });
    if (process.getuid?.() === 0) {
      if (look.error !== undefined) unavailable(this, 'a process of another user is needed');
      chmodSync(root, 0o755);
      const site = join(root, 'site');
      mkdirSync(site);
      write(join(site, 'a.site.yaml'), siteText());
      // Where the repository is, somebody else may not be let in.
      for (const file of ['plumbline.cjs', 'programs/plumbline.cjs'])
        cpSync(join(dirname(program), file), join(site, file));
      const run = spawnSync(
        process.execPath,
        [join(site, 'plumbline.cjs'), 'audit', 'recordings', root, '--site', site, '--now', 'newest'],
        { uid: 65_534, gid: 65_534, encoding: 'utf8' },
      );
      assert.match(
        run.stdout,
        /Of archive 1 folder could not be looked into: closed\/ \(permission is denied\)\..*\[folder-unreadable\]/,
        run.stderr,
      );
    } else assert.deepEqual(seen(), [' is read', 'closed/ EACCES']);
  });

  it('nothing of such names gets to the terminal', () => {
    const site = join(root, 'site');
    mkdirSync(site);
    mkdirSync(join(root, 'files/\u001b[31mred\n'), { recursive: true });
    write(join(site, 'a.site.yaml'), siteText());
    write(join(root, 'files/\u001b[31mred\n', 'a\u001b]0;title\u0007\n.mp4'));
    for (const format of ['text', 'json', 'sarif', 'github']) {
      const { out, err, status } = plumbline([
        'audit',
        'recordings',
        join(root, 'files'),
        '--site',
        site,
        '--format',
        format,
      ]);
      assert.equal(status, 1, err);
      assert.ok(!/[\u001b\u0007]/.test(out) && out.includes('file-unplanned'), out);
    }
  });

  it('of 50 000 files takes no more memory than of a few', () => {
    const site = join(root, 'site');
    mkdirSync(site);
    write(join(site, 'a.site.yaml'), siteText({ keep: '60 d', file: LOCAL }));
    write(
      join(root, 'peak.cjs'),
      "process.on('exit', () => process.stderr.write(`peak ${process.resourceUsage().maxRSS} KiB`));",
    );
    const peak = (count: number): number => {
      mkdirSync(join(root, String(count), 'gate'), { recursive: true });
      const first = join(root, String(count), pathAt(START, LOCAL));
      write(first);
      truncateSync(first, 45_000_000);
      for (let index = 1; index < count; index++) {
        // The zone has one offset in these weeks.
        const path = join(
          root,
          String(count),
          `gate/${new Date(START + 3_600_000 + index * 60_000).toISOString().slice(0, 19).replace('T', '_').replaceAll(':', '-')}.mp4`,
        );
        write(path);
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

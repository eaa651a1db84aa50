/** Folders on a real disk: names of any bytes, links, and what may not be read. */

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
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { siteText } from './folder.ts';
import type { Visitor } from '../../../server/src/audit/recordings/visitor.ts';
import { readTree } from '../../../server/src/machine/tree.ts';
import { unavailable } from '../../availability.ts';
import { plumbline, program } from '../../cli/run.ts';

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
});

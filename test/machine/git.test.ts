import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CannotDo } from '../../server/src/machine/cannot-do.ts';
import { siteAtRevision } from '../../server/src/machine/git.ts';
import { plumblineHere } from '../cli/run.ts';

const EARLIER = 'site: {name: Earlier}\ndevices: {core: {kind: switch, poe-budget: 130 W, ports: {1: {poe: af}}}}\n';
const LATER = EARLIER.replace('Earlier', 'Later')
  .replace('130 W', '10 W')
  .concat('cables: [{from: core/1, to: cam}]\n');

// Source: git itself, which makes the repository.
describe('a site in a revision of git', () => {
  let root = '';
  let folder = '';
  const git = (...words: readonly string[]): void => {
    const { status, stderr } = spawnSync(
      'git',
      ['-C', root, '-c', 'user.name=a', '-c', 'user.email=a@example.org', ...words],
      { encoding: 'utf8' },
    );
    assert.equal(status, 0, stderr);
  };

  before(() => {
    root = mkdtempSync(join(tmpdir(), 'plumbline-git-'));
    folder = join(root, 'a house');
    mkdirSync(folder);
    writeFileSync(join(folder, 'a.site.yaml'), EARLIER);
    mkdirSync(join(folder, 'deeper'));
    writeFileSync(join(folder, 'deeper', 'other.site.yaml'), 'site: {name: Other}\n');
    symlinkSync('/etc/hostname', join(folder, 'link.site.yaml'));
    git('init', '--quiet');
    git('add', '.');
    git('commit', '--quiet', '-m', 'first');
    git('tag', 'v1');
    writeFileSync(join(folder, 'a.site.yaml'), LATER);
    writeFileSync(join(folder, 'new.site.yaml'), 'devices: {cam: {kind: camera, poe: {class: 3}}}\n');
  });
  after(() => rmSync(root, { recursive: true, force: true }));

  it('has the files of that folder as they were, following no link and no folder below, and the tree stays', () => {
    const site = siteAtRevision(folder, 'v1');
    assert.deepEqual(
      site.files.map(({ text, unreadable }) => unreadable ?? text),
      [EARLIER, 'it is a link, and none is followed in a revision'],
    );
    assert.equal(readFileSync(join(folder, 'a.site.yaml'), 'utf8'), LATER);
  });

  for (const revision of [
    '--upload-pack=touch owned',
    '-c',
    'v1;touch owned',
    '$(touch owned)',
    'v1\nHEAD',
    '',
    'nowhere',
    'HEAD:a house/a.site.yaml',
  ])
    it(`refuses ${JSON.stringify(revision)}`, () => {
      assert.throws(() => siteAtRevision(folder, revision), CannotDo);
      assert.ok(!existsSync(join(folder, 'owned')) && !existsSync('owned'));
    });

  it('runs nothing that the repository asks for', () => {
    const mark = join(root, 'ran');
    git('config', 'core.fsmonitor', `touch ${mark}`);
    git('config', 'diff.external', `touch ${mark}`);
    git('config', 'core.pager', `touch ${mark}`);
    git('config', 'filter.x.smudge', `touch ${mark}`);
    writeFileSync(join(root, '.gitattributes'), '*.yaml filter=x\n');
    siteAtRevision(folder, 'v1');
    assert.ok(!existsSync(mark));
  });

  it('fetches nothing that is missing, by a git that knows no GIT_NO_LAZY_FETCH', () => {
    const mark = join(root, 'fetched');
    const path = process.env['PATH'] ?? '';
    const real = execFileSync('sh', ['-c', 'command -v git'], { encoding: 'utf8' }).trim();
    const older = mkdtempSync(join(tmpdir(), 'plumbline-git-'));
    writeFileSync(join(older, 'git'), `#!/bin/sh\nunset GIT_NO_LAZY_FETCH\nexec ${real} "$@"\n`, { mode: 0o755 });
    git('config', 'core.repositoryformatversion', '1');
    git('config', 'extensions.partialClone', 'origin');
    git('config', 'remote.origin.url', `ext::touch ${mark}`);
    git('config', 'remote.origin.promisor', 'true');
    git('config', 'protocol.ext.allow', 'always');
    const blob = execFileSync('git', ['-C', folder, 'rev-parse', 'v1:./a.site.yaml'], { encoding: 'utf8' }).trim();
    const object = join(root, '.git', 'objects', blob.slice(0, 2), blob.slice(2));
    renameSync(object, `${object}.away`);
    process.env['PATH'] = `${older}:${path}`;
    try {
      siteAtRevision(folder, 'v1');
    } finally {
      process.env['PATH'] = path;
      renameSync(`${object}.away`, object);
      rmSync(older, { recursive: true });
    }
    assert.ok(!existsSync(mark));
  });

  it('is reported where there is no repository', () => {
    const outside = mkdtempSync(join(tmpdir(), 'plumbline-none-'));
    writeFileSync(join(outside, 'a.site.yaml'), EARLIER);
    assert.throws(() => siteAtRevision(outside, 'HEAD'), /is in no repository of git/);
    rmSync(outside, { recursive: true });
  });

  it('is compared with what it is now: exit status 1 only where that is asked for', async () => {
    const { status, out } = await plumblineHere(['compare', folder, '--against', 'v1']);
    assert.equal(status, 0);
    assert.match(out, /New findings\n {2}error core must feed 15\.4 W/);
    assert.match(out, /Install \+ cam, camera/);
    const failed = await plumblineHere([
      'compare',
      folder,
      '--against',
      'v1',
      '--fail-on',
      'error',
      '--format',
      'json',
    ]);
    assert.equal(failed.status, 1);
    const compared = JSON.parse(failed.out) as { findings: { new: { rule: string }[] } };
    assert.deepEqual(
      compared.findings.new.map(({ rule }) => rule),
      ['poe-budget'],
    );
    assert.equal((await plumblineHere(['compare', folder])).status, 2);
  });
});

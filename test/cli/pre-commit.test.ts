// The hook of .pre-commit-hooks.yaml, done as pre-commit's documentation says of `language: node` (from memory):
// the package is packed and installed, and `entry` is run with the changed files that `files` fits.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, posix } from 'node:path';
import { parse } from 'yaml';
import { needs } from '../availability.ts';
import { mistakes } from '../first-draft.ts';

interface Hook {
  readonly id: string;
  readonly entry: string;
  readonly language: string;
  readonly files: string;
}

describe('the pre-commit hook', function () {
  const [hook, ...others] = parse(readFileSync('.pre-commit-hooks.yaml', 'utf8')) as Hook[];
  let folder: string;
  let entry: string[];

  before(function () {
    assert.ok(hook !== undefined && others.length === 0 && hook.language === 'node');
    folder = mkdtempSync(join(tmpdir(), 'plumbline-hook-'));
    needs(this, 'tar');
    execFileSync('npm', ['pack', '--ignore-scripts', '--silent', '--pack-destination', folder]);
    const packed = readdirSync(folder).find((name) => name.endsWith('.tgz')) ?? '';
    execFileSync('tar', ['-xzf', packed], { cwd: folder });
    const { bin } = JSON.parse(readFileSync(join(folder, 'package', 'package.json'), 'utf8')) as {
      bin: Readonly<Record<string, string>>;
    };
    const [name = '', ...words] = hook.entry.split(' ');
    entry = [join(folder, 'package', bin[name] ?? ''), ...words];
    cpSync('samples', join(folder, 'samples'), { recursive: true });
  });
  after(() => rmSync(folder, { recursive: true }));

  const commit = (changed: readonly string[]) => {
    const fitting = changed.filter((file) => new RegExp(hook?.files ?? '').test(file));
    return spawnSync(process.execPath, [...entry, ...fitting], { cwd: folder, encoding: 'utf8' });
  };

  it('checks each site that has changed files, once and whole', () => {
    const changed = ['README.md', 'cables', 'streams'].map((name) =>
      posix.join('samples', 'first-draft', name === 'README.md' ? name : `${name}.site.yaml`),
    );
    const { status, stdout } = commit(changed);
    assert.equal(status, 1);
    assert.equal(stdout.match(/^samples\S+:\d+:\d+ /gm)?.length, mistakes.length);
  });

  it('lets a clean site pass', () => {
    assert.equal(commit(['samples/harrow-lane/cameras.site.yaml']).status, 0);
  });
});

// The contents of the extension's package beside its programs.
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { PackageManager, listFiles } from '@vscode/vsce';

/** The programs that are packed, and where each part of them comes from: esbuild says so above the part. */
const PROGRAMS = [
  'extension.cjs',
  'server.cjs',
  'programs/server.cjs',
  'programs/plumbline.cjs',
  'browser/extension.cjs',
  'browser/server.js',
];
const ORIGIN =
  /^\s*\/\/ (node_modules\/\S*?node_modules\/)?(?:node_modules\/)?((?:@[^/\s]+\/)?[^/\s]+)\/\S+\.[cm]?js$/gm;

describe('the package', () => {
  const read = (path: string): string => readFileSync(path, 'utf8');

  it('carries the name, version and licence of each package that is bundled', () => {
    const notices = read('dist/NOTICES.txt');
    const bundled = new Set<string>();
    for (const program of PROGRAMS)
      for (const [line, , name = ''] of read(`dist/${program}`).matchAll(ORIGIN))
        if (line.includes('// node_modules/')) bundled.add(name);
    assert.ok(bundled.size > 15, `only ${[...bundled].join(', ')}: this needs a build that is not for production`);
    for (const name of bundled) {
      const folder = `node_modules/${name}`;
      const { version } = JSON.parse(read(`${folder}/package.json`)) as { readonly version: string };
      assert.ok(notices.includes(`\n${name} ${version} (`), `${name} ${version}`);
      const file = ['LICENSE', 'LICENSE.md', 'License.txt'].find((candidate) => existsSync(`${folder}/${candidate}`));
      assert.ok(file !== undefined && notices.includes(read(`${folder}/${file}`).trim()), `the licence of ${name}`);
    }
  });

  it('has programs that an engine keeps in one byte a character', () => {
    for (const program of PROGRAMS)
      assert.deepEqual(read(`dist/${program}`).match(/[^\u0000-\u00ff]/gu) ?? [], [], program);
  });

  it('takes with it the notices, and each picture and page that its README and its walkthrough lead to', async () => {
    const files = await listFiles({ cwd: '.', packageManager: PackageManager.None });
    for (const file of ['dist/NOTICES.txt', 'README.md', 'LICENSE', 'dist/server.cjs'])
      assert.ok(files.includes(file), `${file} is not in ${files.join(', ')}`);
    const pages = ['README.md', ...files.filter((file) => file.startsWith('client/walkthrough/'))];
    const pictures = pages.flatMap((page) =>
      [...read(page).matchAll(/!\[[^\]]*\]\(([^)]+)\)/g)].map(([, path = '']) => posix.join(posix.dirname(page), path)),
    );
    assert.ok(pictures.length > 6);
    assert.deepEqual(
      pictures.filter((picture) => !files.includes(picture)),
      [],
    );
  });
});

import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { plumbline } from './run.ts';

describe('plumbline check --stdin-filename', () => {
  let folder: string;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-stdin-'));
    cpSync('samples/harrow-lane', folder, { recursive: true });
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  const cameras = (): string => readFileSync(join(folder, 'cameras.site.yaml'), 'utf8');

  it('takes the text of a file from standard input, and the other files from its folder', () => {
    const input = cameras().replace('192.168.20.32', '192.168.20.31');
    for (const [file, cwd] of [
      [join(folder, 'cameras.site.yaml'), undefined],
      ['cameras.site.yaml', folder],
    ] as const) {
      const { status, out } = plumbline(['check', '--stdin-filename', file], { input, ...(cwd && { cwd }) });
      assert.equal(status, 1);
      assert.match(out, /cameras\.site\.yaml:\d+:\d+ error .*192\.168\.20\.31/);
      assert.doesNotMatch(out, /unknown-name/, 'the switches of the other files are known');
    }
    assert.deepEqual(plumbline(['check', '--stdin-filename', 'cameras.site.yaml'], { input: cameras(), cwd: folder }), {
      status: 0,
      out: '',
      err: '',
    });
  });

  it('takes a file that is not on disk yet, and the others from a folder that is named', () => {
    const input = 'devices:\n  porch-screen: {kind: display, address: 192.168.20.31}\n';
    const { status, out } = plumbline(['check', '--stdin-filename', join(folder, 'porch.site.yaml'), folder], {
      input,
    });
    assert.equal(status, 1);
    assert.match(out, /porch\.site\.yaml:2:\d+ error .*gate-cam/);
  });

  it('refuses what is no file of a site, and a second folder', () => {
    for (const words of [['notes.yaml'], ['a.site.yaml', folder, folder]]) {
      const { status, err } = plumbline(['check', '--stdin-filename', ...words]);
      assert.equal(status, 2);
      assert.match(err, /no file of a site|one FOLDER/);
    }
  });
});

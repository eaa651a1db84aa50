import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Result, plumbline, plumblineHere } from './run.ts';

const run = (...words: string[]): Promise<Result> => plumblineHere(words);

interface JsonDiagnostic {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly severity: string;
  readonly rule: string;
  readonly message: string;
  readonly related: readonly unknown[];
  readonly fixes: readonly unknown[];
}

describe('plumbline', () => {
  let folder: string;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-cli-'));
  });

  afterEach(() => rmSync(folder, { recursive: true }));

  describe('check', () => {
    it('prints nothing of a clean site, and exits with 0', () => {
      assert.deepEqual(plumbline(['check', 'samples/harrow-lane']), { status: 0, out: '', err: '' });
    });

    it('exits with 1 where something is found', () => {
      const { status, out } = plumbline(['check', 'samples/first-draft']);
      assert.equal(status, 1);
      assert.match(out, /samples\/first-draft\/\S+\.site\.yaml:\d+:\d+ error /);
    });

    it('exits with 2 where it cannot do it, and says why', async () => {
      for (const [args, why] of [
        [['check', join(folder, 'nowhere')], /does not exist/],
        [['check', folder], /holds no \*\.site\.yaml/],
        [['check', 'package.json'], /is a file/],
        [['check', '--format', 'papyrus'], /papyrus/],
        [['chekc'], /chekc/],
      ] as const) {
        const { status, out, err } = await run(...args);
        assert.equal(status, 2, args.join(' '));
        assert.equal(out, '');
        assert.match(err, why);
      }
    });

    it('fails on what it is told to', async () => {
      writeFileSync(
        join(folder, 'a.site.yaml'),
        'lint:\n  accept:\n    - {rule: cable-length, at: core, because: none}\n',
      );
      assert.equal((await run('check', folder)).status, 0);
      assert.equal((await run('check', '--fail-on', 'warning', folder)).status, 1);
    });

    it('writes JSON with lines and columns from 1 that bound the words', async () => {
      const { out } = await run('check', '--format', 'json', 'samples/first-draft');
      const { diagnostics } = JSON.parse(out) as { diagnostics: JsonDiagnostic[] };
      assert.ok(diagnostics.length > 12);
      const clash = diagnostics.find(({ rule }) => rule === 'duplicate-address');
      assert.ok(clash !== undefined);
      const line = readFileSync(clash.file, 'utf8').split('\n')[clash.line - 1] ?? '';
      assert.match(line.slice(clash.column - 1, clash.endColumn - 1), /^\d+\.\d+\.\d+\.\d+$/);
      assert.equal(clash.severity, 'error');
      for (const key of ['endLine', 'message', 'related', 'fixes'] as const) assert.ok(key in clash);
    });

    it('writes workflow commands', async () => {
      const { out } = await run('check', '--format', 'github', 'samples/first-draft');
      for (const line of out.trimEnd().split('\n'))
        assert.match(line, /^::(error|warning|notice) file=[^,]+,line=\d+,.*title=[a-z-]+::./);
    });

    it('takes several sites, and a file for the folder that it is in; each is checked once', async () => {
      const once = (await run('check', 'samples/first-draft')).out;
      const { status, out } = await run(
        'check',
        'samples/harrow-lane',
        'samples/first-draft/cables.site.yaml',
        'samples/first-draft',
      );
      assert.deepEqual({ status, out }, { status: 1, out: once });
    });

    it('says in its help what each exit status means', async () => {
      for (const words of [['--help'], ['check', '--help']]) {
        const { status, out } = await run(...words);
        assert.equal(status, 0);
        assert.match(out, /Exit status:\n {2}0 .+\n {2}1 .+\n {2}2 .+/);
        assert.match(out, /Examples:\n {2}plumbline /);
      }
    });
  });

  describe('report', () => {
    it('is the same each time, and the same text for a person', async () => {
      const once = (await run('report', '--format', 'json', 'samples/harrow-lane')).out;
      assert.equal(plumbline(['report', '--format', 'json', 'samples/harrow-lane']).out, once);
      assert.equal((JSON.parse(once) as { site: string }).site, 'Harrow Lane');
      assert.match((await run('report', 'samples/harrow-lane')).out, /Harrow Lane/);
      assert.match((await run('report', '--format', 'html', 'samples/harrow-lane')).out, /^<!doctype html>/i);
    });
  });

  describe('explain', () => {
    it("prints a rule's page", async () => {
      assert.match((await run('explain', 'link-load')).out, /^# link-load\n/);
    });

    it('prints how a figure comes about', async () => {
      assert.match(
        (await run('explain', 'links', 'core/16', 'forward', 'peak', '--site', 'samples/harrow-lane')).out,
        /b\/s/,
      );
    });

    it('says which rule is near', async () => {
      const { status, err } = await run('explain', 'link-laod');
      assert.equal(status, 2);
      assert.match(err, /link-load/);
    });
  });

  describe('fix', () => {
    it('shows a diff and writes nothing when it is dry; then writes just that, once', async () => {
      cpSync('samples/first-draft', folder, { recursive: true });
      const before = (await run('check', '--format', 'json', folder)).out;
      const dry = await run('fix', '--dry-run', folder);
      assert.equal(dry.status, 0);
      assert.equal((await run('check', '--format', 'json', folder)).out, before);
      await run('fix', folder);
      assert.equal((await run('fix', '--dry-run', folder)).out, '');
    });

    it('says what it could not fill in, and why', async () => {
      const devices = 'devices:\n  a: {kind: camera, address: auto}\n  b: {kind: camera, address: auto}\n';
      writeFileSync(join(folder, 'a.site.yaml'), devices);
      const { status, err } = await run('fix', folder);
      assert.equal(status, 0);
      assert.match(err, /0 safe fixes applied\.\nLeft as ‘auto’:\n {2}‘a’: no address, because no other address shows/);
      writeFileSync(join(folder, 'a.site.yaml'), `${devices}  c: {kind: camera, address: 10.0.0.31}\n`);
      assert.doesNotMatch((await run('fix', folder)).err, /Left/);
      assert.match(readFileSync(join(folder, 'a.site.yaml'), 'utf8'), /a: .*10\.0\.0\.32\}\n.*10\.0\.0\.33/);
    });
  });
});

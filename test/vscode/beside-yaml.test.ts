// Plumbline beside an extension that checks any YAML against contributed schemas, both active in a real VS Code:
// yaml-language-server, started by test/vscode/general-yaml.
import assert from 'node:assert/strict';
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Browser } from 'playwright-core';
import { repository } from '../../client/open/install.ts';
import { type ServedEditor, serveEditor } from '../../client/open/serve.ts';
import { launchBrowser } from './browser.ts';
import { eventually } from './eventually.ts';
import { editorAndBrowser } from './requirements.ts';
import { type SiteCopy, copySample } from './site-copy.ts';
import { Workbench } from './workbench.ts';

describe('beside an extension for any YAML, in a real VS Code', function () {
  const file = 'streams.site.yaml';
  let site: SiteCopy;
  let other: string;
  let served: ServedEditor;
  let browser: Browser;
  let workbench: Workbench;

  before(async function () {
    this.timeout(600_000); // in CI the editor is fetched here
    const { editor, chromium } = await editorAndBrowser(this);
    site = await copySample('first-draft');
    // The modeline names the schema beside the samples; a copy of a sample has only the extension's schema.
    const path = join(site.folder, file);
    await writeFile(path, (await readFile(path, 'utf8')).replace(/^# yaml-language-server:.*\n/, ''));
    other = join(await mkdtemp(join(tmpdir(), 'plumbline-yaml-')), 'general-yaml');
    await cp(join(repository, 'test', 'vscode', 'general-yaml', 'package.json'), join(other, 'package.json'));
    await cp(join(repository, 'dist', 'test', 'general-yaml', 'extension.cjs'), join(other, 'extension.cjs'));
    const server = join(
      dirname(createRequire(import.meta.url).resolve('yaml-language-server/package.json')),
      'out',
      'server',
      'src',
      'server.js',
    );
    served = await serveEditor(editor, {
      extensions: [repository, other],
      environment: { PLUMBLINE_YAML_SERVER: server },
    });
    browser = await launchBrowser(chromium);
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.setDefaultTimeout(300_000);
    await page.goto(served.address({ folder: site.folder }));
    workbench = new Workbench(page);
    await workbench.open(file);
    await workbench.squiggles().first().waitFor({ state: 'attached' });
    await workbench.command('Problems: Focus on Problems View');
  });

  afterEach(async function () {
    if (this.currentTest?.isFailed()) await workbench.picture(`failed: ${this.currentTest.title}`);
  });

  after(async () => {
    await browser?.close();
    await served?.stop();
    await site?.remove();
    if (other) await rm(dirname(other), { recursive: true });
  });

  /** How many problems contain a text, by who reports them. */
  async function tellers(text: string): Promise<{ ours: number; theirs: number }> {
    await workbench.filterProblems(text);
    await workbench.problems(/\[Ln /).first().waitFor();
    return {
      ours: await workbench.problems('plumbline').count(),
      theirs: await workbench.problems('yaml-schema').count(),
    };
  }

  it('reports an unknown key once, and what the whole site shows', async () => {
    await eventually(async () => assert.deepEqual(await tellers('framerate'), { ours: 0, theirs: 1 }));
    await workbench.picture('beside-yaml');
    await eventually(async () => assert.deepEqual(await tellers('kichen-screen'), { ours: 1, theirs: 0 }));
  });

  it('leaves it to the other to describe a key, and adds units and figures', async () => {
    await workbench.focusEditor();
    const lines = (await readFile(join(site.folder, file), 'utf8')).split('\n');
    const line = lines.findIndex((text) => text.includes('bitrate: 6 Mb/s'));
    const described = 'The rate of the encoded video on average';
    for (const [word, ours] of [
      ['bitrate:', 'Units:'],
      ['6 Mb/s', '750 kB/s'],
    ] as const) {
      await workbench.goTo(line + 1, (lines[line] ?? '').indexOf(word) + 1);
      await workbench.hoverAtCursor((text) => {
        assert.ok(text.includes(ours), text);
        assert.equal(text.split(described).length, 2, text);
      });
      await workbench.picture('beside-yaml-hover');
      await workbench.page.keyboard.press('Escape');
    }
  });

  it('reports it beside the other where it is told to, as soon as it is', async () => {
    await mkdir(join(site.folder, '.vscode'));
    await writeFile(
      join(site.folder, '.vscode', 'settings.json'),
      JSON.stringify({ 'plumbline.schemaFeatures': 'on' }),
    );
    await eventually(async () => assert.deepEqual(await tellers('framerate'), { ours: 1, theirs: 1 }));
  });
});

// `npm run pictures`: takes the pictures of the README from the real editor, with today's build.
// Needs Chromium, and FFmpeg to make them small.
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Locator, Page } from 'playwright-core';
import { chromiumPath, launchBrowser } from '../../test/vscode/browser.ts';
import { eventually } from '../../test/vscode/eventually.ts';
import { addressClash, uplink } from '../../test/vscode/first-draft.ts';
import { copySample } from '../../test/vscode/site-copy.ts';
import { Workbench } from '../../test/vscode/workbench.ts';
import { installEditor, repository } from '../open/install.ts';
import { serveEditor } from '../open/serve.ts';
import { fewColours } from './few-colours.ts';

const folder = fileURLToPath(new URL('.', import.meta.url));
const size = { width: 1120, height: 740 };
const files = ['streams', 'devices', 'cables'].map((name) => `${name}.site.yaml`);

/** Shows only the text: no panes, and no marks at the cursor. */
const settings = {
  'workbench.colorTheme': 'Default Light Modern',
  'workbench.activityBar.location': 'hidden',
  'workbench.statusBar.visible': false,
  'workbench.layoutControl.enabled': false,
  'window.commandCenter': false,
  'window.menuBarVisibility': 'hidden',
  'breadcrumbs.enabled': false,
  'editor.fontSize': 14,
  'editor.minimap.enabled': false,
  'editor.lightbulb.enabled': 'off',
  'editor.hover.above': false,
  'editor.renderLineHighlight': 'none',
  'editor.occurrencesHighlight': 'off',
  'editor.selectionHighlight': false,
  'editor.guides.indentation': false,
  'editor.matchBrackets': 'never',
  'editor.stickyScroll.enabled': false,
  'editor.scrollbar.horizontal': 'hidden',
  'editor.scrollbar.vertical': 'hidden',
  'editor.scrollBeyondLastLine': false,
};

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const chromium = chromiumPath();
if (!chromium) throw new Error('There is no Chromium on the PATH, and CHROMIUM names none.');
const site = await copySample('first-draft');
await mkdir(join(site.folder, '.vscode'));
await writeFile(join(site.folder, '.vscode', 'settings.json'), JSON.stringify(settings));
const served = await serveEditor(await installEditor(console.log), { extensions: [repository] });
const browser = await launchBrowser(chromium);
const large = await mkdtemp(join(tmpdir(), 'plumbline-pictures-'));
try {
  const page = await browser.newPage({ viewport: size, deviceScaleFactor: 1.5 });
  page.setDefaultTimeout(60_000);
  await page.goto(served.address({ folder: site.folder }));
  await takeAll(page, new Workbench(page));
} finally {
  await browser.close();
  await served.stop();
  await site.remove();
  await rm(large, { recursive: true });
}

async function takeAll(page: Page, workbench: Workbench): Promise<void> {
  for (const file of files) await workbench.open(file);
  await page.keyboard.press('Control+B');
  await page.locator('.explorer-folders-view').waitFor({ state: 'hidden' });
  await page.addStyleTag({ content: '.cursor, .notifications-toasts { visibility: hidden !important; }' });

  // Problems, in the text and in the list below it.
  await goTo(uplink.file, 'cables:');
  await workbench.command('Problems: Focus on Problems View');
  await workbench.problems('plumbline').first().waitFor();
  await workbench.focusEditor();
  await take('problems', { x: 0, y: 0, ...size });
  await page.keyboard.press('Control+J');
  await page.locator('.markers-panel').waitFor({ state: 'hidden' });

  // How full the uplink is, and of what. A hover is at most a quarter as high as the editor.
  await page.setViewportSize({ width: size.width, height: 1270 });
  await goTo(uplink.file, uplink.to, uplink.line);
  await workbench.hoverAtCursor((text) => {
    if (!text.includes('link-load') || !text.includes('of the speed')) throw new Error(text);
  });
  await take('hover', await around(line('to: office-pc'), page.locator('.monaco-hover:visible').first(), 1080));
  await page.keyboard.press('Escape');
  await page.setViewportSize(size);

  // The report beside the text.
  await page.locator('.tab').filter({ hasText: uplink.file }).click();
  await workbench.command('Plumbline: Show report');
  const report = page.frameLocator('iframe.webview.ready').first().frameLocator('#active-frame');
  await report.locator('.verdict').waitFor();
  await goTo(uplink.file, 'cables:');
  await take('report', { x: 0, y: 0, ...size });
  const tab = page.locator('.tab[aria-label^="Report of"]');
  await tab.hover();
  await tab.locator('.tab-actions .action-label').click();
  await tab.waitFor({ state: 'detached' });

  // Another cable: the ports of the switch that are free.
  await goTo(uplink.file, 'length: 11 m}', 'to: stable-screen', 'length: 11 m}'.length);
  await page.keyboard.press('Enter');
  await page.keyboard.type('- {from: core/');
  const offers = page.locator('.suggest-widget:visible');
  await offers.locator('.monaco-list-row').nth(1).waitFor();
  await take('completion', await around(line('to: foaling-box-cam'), offers, 800));
  await page.keyboard.press('Escape');

  // The fix of a clash of addresses.
  await goTo(addressClash.file, addressClash.address, addressClash.line);
  const menu = page.locator('.action-widget:visible').first();
  await eventually(async () => {
    // The keys open nothing while the server still reads the typed text.
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+.');
    await menu.getByText(addressClash.fix).waitFor({ timeout: 3000 });
  });
  await take('fix', await around(line('# farmhouse'), menu, 1030));
  await page.keyboard.press('Escape');

  // The rate of each stream on the line.
  await goTo('streams.site.yaml', 'streams:');
  await eventually(async () => {
    if (!(await line('paddock:').innerText()).includes('Mb/s')) throw new Error('the figures are still to come');
  });
  await take('figures', await around(line('streams:'), line('framerate:'), 1090));

  /** Puts the cursor on a word, or behind so many characters of it, in a file that is open and has been checked. */
  async function goTo(file: string, word: string, holds = word, behind = 0): Promise<void> {
    await page.locator('.tab').filter({ hasText: file }).click();
    await workbench.squiggles().first().waitFor({ state: 'attached' });
    const lines = (await readFile(join(site.folder, file), 'utf8')).split('\n');
    const index = lines.findIndex((text) => text.includes(holds));
    await workbench.goTo(index + 1, (lines[index] ?? '').indexOf(word) + 1 + behind);
  }

  function line(text: string): Locator {
    return page.locator('.editor-group-container.active .view-line').filter({ hasText: text }).first();
  }

  /** The box from a line down to another, or to all lines that something covers. */
  async function around(top: Locator, other: Locator, width: number): Promise<Box> {
    const [first, last] = [await top.boundingBox(), await other.boundingBox()];
    if (!first || !last) throw new Error('a part of the picture is not to be seen');
    const lines = Math.ceil((last.y + last.height + 6 - first.y) / first.height);
    return { x: 10, y: first.y - 2, width: width - 10, height: lines * first.height };
  }

  async function take(name: string, clip: Box): Promise<void> {
    const path = join(large, `${name}.png`);
    await page.screenshot({ path, clip, animations: 'disabled' });
    fewColours(path, join(folder, `${name}.png`));
    console.log(`${name}.png`);
  }
}

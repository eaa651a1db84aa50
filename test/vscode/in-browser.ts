// A copy of a sample in the editor, in a browser, with a file of it open, as several tests begin.
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, FrameLocator } from 'playwright-core';
import { repository } from '../../client/open/install.ts';
import { type ServedEditor, serveEditor } from '../../client/open/serve.ts';
import { launchBrowser } from './browser.ts';
import { editorAndBrowser } from './requirements.ts';
import { type SiteCopy, copySample } from './site-copy.ts';
import { Workbench } from './workbench.ts';

export interface InBrowser {
  readonly folder: string;
  readonly workbench: Workbench;
  chooseTheme(theme: string): Promise<void>;
  /** The page in front that is beside the text. */
  inPage(): FrameLocator;
}

interface Begin {
  /** Is open, and has squiggles. */
  readonly file: string;
  readonly theme: string;
  readonly width: number;
}

/** Begins before the tests of a `describe`, ends after them, and leaves a picture of each that fails. */
export function inBrowser({ file, theme, width }: Begin): InBrowser {
  let site: SiteCopy;
  let served: ServedEditor;
  let browser: Browser;
  let workbench: Workbench;

  const chooseTheme = (name: string): Promise<void> =>
    writeFile(join(site.folder, '.vscode', 'settings.json'), JSON.stringify({ 'workbench.colorTheme': name }));

  before(async function () {
    this.timeout(600_000); // in CI the editor is fetched here
    const { editor, chromium } = await editorAndBrowser(this);
    site = await copySample('first-draft');
    await mkdir(join(site.folder, '.vscode'));
    await chooseTheme(theme);
    served = await serveEditor(editor, { extensions: [repository] });
    browser = await launchBrowser(chromium);
    const page = await browser.newPage({ viewport: { width, height: 800 }, acceptDownloads: true });
    page.setDefaultTimeout(300_000);
    await page.goto(served.address({ folder: site.folder }));
    workbench = new Workbench(page);
    await workbench.open(file);
    await workbench.squiggles().first().waitFor({ state: 'attached' });
  });

  afterEach(async function () {
    if (this.currentTest?.isFailed()) await workbench.picture(`failed: ${this.currentTest.title}`);
  });

  after(async () => {
    await browser?.close();
    await served?.stop();
    await site?.remove();
  });

  return {
    get folder() {
      return site.folder;
    },
    get workbench() {
      return workbench;
    },
    chooseTheme,
    inPage: () => workbench.page.frameLocator('iframe.webview.ready').last().frameLocator('#active-frame'),
  };
}

// Runs an extension's tests in the embedded editor, by the command line of VS Code's desktop.
import { setTimeout as pause } from 'node:timers/promises';
import type { Browser } from 'playwright-core';
import { installedEditor } from '../../client/open/install.ts';
import { serveEditor } from '../../client/open/serve.ts';
import { chromiumPath, launchBrowser } from './browser.ts';

const mostSeconds = 270; // within that of the test in extension-host.test.ts

/**
 * Opens a folder in the embedded editor and runs tests in its extension host.
 *
 * @param words the desktop's words: `--extensionDevelopmentPath=…`, `--extensionTestsPath=…`, a folder; others are
 * ignored
 * @returns the tests' exit code
 */
export async function runTestsEmbedded(words: readonly string[]): Promise<number> {
  const given = (name: string): string[] =>
    words.filter((word) => word.startsWith(`--${name}=`)).map((word) => word.slice(name.length + 3));
  const folder = words.find((word) => !word.startsWith('-'));
  const tests = given('extensionTestsPath')[0];
  const editor = installedEditor();
  const chromium = chromiumPath();
  if (!folder || !tests) throw new Error('a folder and --extensionTestsPath=PATH are needed');
  if (!editor || !chromium) throw new Error('the embedded editor and Chromium are needed');

  const served = await serveEditor(editor, { testDriver: true });
  let browser: Browser | undefined;
  try {
    browser = await launchBrowser(chromium);
    const page = await browser.newPage();
    const finished = new Promise<number>((resolve) => {
      void page.exposeFunction('codeAutomationExit', (code: number) => resolve(code));
    });
    const said: string[] = [];
    await page.exposeFunction('codeAutomationLog', (_type: string, values: readonly unknown[]) => {
      said.push(values.map(String).join(' '));
    });
    const remote = (path: string): string => `vscode-remote://${new URL(served.address()).host}${path}`;
    const payload = [
      ...given('extensionDevelopmentPath').map((path) => ['extensionDevelopmentPath', remote(path)]),
      ['extensionTestsPath', remote(tests)],
      ['skipWelcome', 'true'],
      ['skipReleaseNotes', 'true'],
    ];
    await page.goto(served.address({ folder, payload: JSON.stringify(payload) }));
    const late = pause(mostSeconds * 1000, undefined, { ref: false }).then(() => {
      throw new Error(`the tests did not end within ${mostSeconds} s; the editor said:\n${served.log().slice(-4000)}`);
    });
    const code = await Promise.race([finished, late]);
    // The embedded editor logs much about native modules that it lacks, which matters only after a failure.
    if (code !== 0) console.log(said.join('\n'));
    return code;
  } finally {
    await browser?.close();
    await served.stop();
  }
}

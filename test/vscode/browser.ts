// Headless Chromium of this machine, for driving the embedded editor.
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';
import type { Browser } from 'playwright-core';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** The browser of this machine: what CHROMIUM names, else the first on the PATH; undefined where there is none. */
export function chromiumPath(): string | undefined {
  const named = process.env['CHROMIUM'];
  if (named) return named;
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter(Boolean);
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).find((path) => existsSync(path));
}

/** Starts the browser with nothing that goes to the network by itself. */
export function launchBrowser(executablePath: string): Promise<Browser> {
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox', // CI runs as root, where Chromium has no sandbox; it only opens our own loopback address
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

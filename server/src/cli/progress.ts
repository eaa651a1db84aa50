/** Progress in one line on standard error that is overwritten; nothing where that is no terminal. */

import { replaceLine } from './print.ts';

const shown = process.stderr.isTTY;
let last = 0;

export function progress(text: string): void {
  const now = Date.now();
  if (!shown || now - last < 100) return;
  last = now;
  replaceLine(text);
}

export function progressDone(): void {
  if (shown) replaceLine('');
}

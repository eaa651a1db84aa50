/** Latencies of a language server as an editor meets them, over standard input and output. */

import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import type { Position } from 'vscode-languageserver-protocol/node';
import { Client } from '../lsp/client.ts';

export interface Spread {
  readonly median: number;
  readonly p95: number;
}

export interface Latencies {
  /** From an edit of one digit to the diagnostics of its version, ms. */
  readonly keystroke: Spread;
  /** A hover asked for right after an edit, ms. */
  readonly hover: Spread;
  /** Of a burst of edits, from the last to its diagnostics, ms. */
  readonly burst: number;
  /** Most memory that the process held, MiB; undefined where the system does not tell. */
  readonly memory: number | undefined;
}

/** How long the first diagnostics of a large site may take, ms. */
export const PATIENCE = 120_000;

const EDITS = 60;
const WARM_UP = 10;
const BURST = 20;
const BURSTS = 5;
/** Between two edits of a burst, ms: faster than anybody types. */
const BURST_PACE = 20;
const SPOTS = 8;

export function spread(samples: readonly number[]): Spread {
  const sorted = [...samples].sort((a, b) => a - b);
  const at = (part: number): number => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? NaN;
  return { median: at(0.5), p95: at(0.95) };
}

/** Edits go to the last digit of lines near the middle of the text that match `line`. */
export async function measure(
  command: readonly string[],
  path: string,
  text: string,
  line: RegExp,
): Promise<Latencies> {
  const client = await Client.start(command);
  const uri = await client.open(path, text);
  await client.diagnostics(uri, undefined, PATIENCE);

  const spots = digitsNearMiddle(text, line, SPOTS);
  let digit = 0;
  const edit = async (i: number): Promise<Position> => {
    const at = spots[i % spots.length];
    if (at === undefined) throw new Error(`no line matches ${String(line)}`);
    digit = (digit % 9) + 1; // not as many as there are spots: no edit writes what is there
    await client.change(uri, String(digit), { start: at, end: { line: at.line, character: at.character + 1 } });
    return at;
  };
  const keystrokes: number[] = [];
  const hovers: number[] = [];
  for (let i = 0; i < EDITS + WARM_UP; i++) {
    const typed = performance.now();
    await edit(i);
    await client.diagnostics(uri);
    if (i >= WARM_UP) keystrokes.push(performance.now() - typed);
  }
  for (let i = 0; i < EDITS + WARM_UP; i++) {
    const at = await edit(i);
    const asked = performance.now();
    await client.hover(uri, at);
    if (i >= WARM_UP) hovers.push(performance.now() - asked);
    await client.diagnostics(uri);
  }
  const bursts: number[] = [];
  for (let round = 0; round < BURSTS; round++) {
    for (let i = 0; i < BURST; i++) {
      if (i > 0) await new Promise((resolve) => setTimeout(resolve, BURST_PACE));
      await edit(round + i);
    }
    const last = performance.now();
    await client.diagnostics(uri);
    bursts.push(performance.now() - last);
  }
  const burst = spread(bursts).median;
  const memory = peakMemory(client.process.pid);
  await client.stop();
  return { keystroke: spread(keystrokes), hover: spread(hovers), burst, memory };
}

function digitsNearMiddle(text: string, pattern: RegExp, count: number): Position[] {
  const lines = text.split('\n');
  const found = lines.flatMap((content, line) => {
    const match = pattern.exec(content);
    return match === null ? [] : [{ line, character: match.index + match[0].length - 1 }];
  });
  const middle = lines.length / 2;
  return found.sort((a, b) => Math.abs(a.line - middle) - Math.abs(b.line - middle)).slice(0, count);
}

/** High-water mark of the resident set (Linux, proc(5)). */
function peakMemory(pid: number | undefined): number | undefined {
  if (process.platform !== 'linux' || pid === undefined) return undefined;
  const kilobytes = /^VmHWM:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return kilobytes === undefined ? undefined : Number(kilobytes) / 1024;
}

/** What an editor waits for after a keystroke, over standard input and output. */

import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import type { Position, Range } from 'vscode-languageserver-protocol/node';
import { Client } from '../lsp/client.ts';
import { type Spread, spread } from './spread.ts';

interface Edit {
  /** Up to the character that is edited. */
  readonly before: RegExp;
  /** How many places of that kind are edited in turn, those nearest to the middle of the text. */
  readonly places: number;
  readonly at: (place: Position, turn: number) => { readonly range: Range; readonly text: string };
}

/** There are more digits than places, so that no edit writes what is there. */
const digit: Omit<Edit, 'before'> = {
  places: 8,
  at: ({ line, character }, turn) => ({
    range: { start: { line, character }, end: { line, character: character + 1 } },
    text: String(1 + (turn % 9)),
  }),
};

/** A line break that comes and goes, so that all that stands below it moves. */
const lineBreak: Omit<Edit, 'before'> = {
  places: 1,
  at: ({ line }, turn) => ({
    range: { start: { line, character: 0 }, end: { line: line + (turn % 2), character: 0 } },
    text: turn % 2 === 0 ? '\n' : '',
  }),
};

export const EDITS: Readonly<Record<string, Edit>> = {
  'a bit rate': { before: /^ +bitrate: (?=\d)/, ...digit },
  'a speed': { before: /^ {4}speed: (?=\d)/, ...digit },
  'a line break': { before: /^(?= {2}live-\d+:$)/, ...lineBreak },
};

export interface Keystrokes {
  /** From the edit to the diagnostics of its version, ms. */
  readonly latency: Spread;
  /** Most memory that the process held, MiB; `undefined` where the system does not say. */
  readonly memory: number | undefined;
}

/** How long the first diagnostics of a large site may take, ms. */
export const PATIENCE = 120_000;

const WARM_UP = 20;
const SAMPLES = 100;

export async function keystrokes(
  command: readonly string[],
  path: string,
  text: string,
  edit: Edit,
): Promise<Keystrokes> {
  const client = await Client.start(command);
  const uri = await client.open(path, text);
  await client.diagnostics(uri, undefined, PATIENCE);
  const places = placesOf(edit, text);
  const latencies: number[] = [];
  for (let turn = 0; turn < WARM_UP + SAMPLES; turn++) {
    const place = places[turn % places.length];
    if (place === undefined) throw new Error(`no line matches ${String(edit.before)}`);
    const { range, text: written } = edit.at(place, turn);
    const typed = performance.now();
    await client.change(uri, written, range);
    await client.diagnostics(uri);
    if (turn >= WARM_UP) latencies.push(performance.now() - typed);
  }
  const memory = peakMemory(client.process.pid);
  await client.stop();
  return { latency: spread(latencies), memory };
}

function placesOf({ before, places }: Edit, text: string): Position[] {
  const lines = text.split('\n');
  const found = lines.flatMap((content, line) => {
    const match = before.exec(content);
    return match === null ? [] : [{ line, character: match[0].length }];
  });
  const middle = lines.length / 2;
  return found.sort((a, b) => Math.abs(a.line - middle) - Math.abs(b.line - middle)).slice(0, places);
}

/** High-water mark of the resident set (Linux, proc(5)). */
function peakMemory(pid: number | undefined): number | undefined {
  if (process.platform !== 'linux' || pid === undefined) return undefined;
  const kilobytes = /^VmHWM:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return kilobytes === undefined ? undefined : Number(kilobytes) / 1024;
}

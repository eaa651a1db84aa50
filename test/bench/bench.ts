/**
 * Prints how fast the server answers, for sites of several sizes, beside what the YAML library takes for its bare
 * parse of the same text in the same minutes.
 *
 *   npm run bench [-- SIZE …] [-- --against "COMMAND OF ANOTHER SERVER"]
 */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { parseArgs } from 'node:util';
import { parseDocument } from 'yaml';
import { generatedSite } from './generated-site.ts';
import { type Latencies, type Spread, measure, spread } from './measure.ts';

const SERVER = [process.execPath, 'dist/server.cjs', '--stdio'];
const EDITED: Readonly<Record<string, RegExp>> = {
  'a stream’s bit rate': / bitrate: \d/,
  'a device’s speed': /kind: camera, .*speed: \d/,
};

const { values, positionals } = parseArgs({ allowPositionals: true, options: { against: { type: 'string' } } });
const sizes = positionals.length === 0 ? [300, 3000, 30_000] : positionals.map(Number);

/** Median of the library's parse without any check, ms. */
export function bareParse(text: string): Spread {
  const samples: number[] = [];
  for (let i = 0; i < 7; i++) {
    const begun = performance.now();
    parseDocument(text, { uniqueKeys: false });
    samples.push(performance.now() - begun);
  }
  return spread(samples.slice(2));
}

function row(cells: readonly string[]): string {
  return `| ${cells.join(' | ')} |`;
}

const ms = (value: number): string => (value < 10 ? value.toFixed(1) : value.toFixed(0));
const pair = ({ median, p95 }: Spread): string => `${ms(median)} / ${ms(p95)}`;

function print(name: string, edited: string, lines: number, parse: Spread, found: Latencies): void {
  const ratio = (found.keystroke.median / parse.median).toFixed(2);
  const memory = found.memory === undefined ? '?' : `${found.memory.toFixed(0)} MiB`;
  const cells = [name, String(lines), edited, pair(found.keystroke), pair(found.hover), ms(found.burst), ms(found.start), memory, ms(parse.median), ratio];
  process.stdout.write(`${row(cells)}\n`);
}

const head = ['server', 'lines', 'edited', 'keystroke', 'hover after edit', 'burst', 'start', 'memory', 'bare parse', 'keystroke ÷ parse'];
process.stdout.write(`Milliseconds; median / 95th percentile.\n\n${row(head)}\n${row(head.map(() => '---'))}\n`);
const folder = mkdtempSync(join(tmpdir(), 'plumbline-bench-'));
try {
  for (const size of sizes) {
    const text = generatedSite(size);
    const lines = text.split('\n').length - 1;
    const parse = bareParse(text);
    for (const [edited, line] of Object.entries(EDITED)) {
      print('plumbline', edited, lines, parse, await measure(SERVER, join(folder, `bench-${size}.site.yaml`), text, line));
      if (values.against === undefined) continue;
      print('other', edited, lines, parse, await measure(values.against.split(' '), join(folder, `bench-${size}.yaml`), text, line));
    }
  }
} finally {
  rmSync(folder, { recursive: true });
}

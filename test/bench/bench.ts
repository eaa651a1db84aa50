/**
 * Prints how fast the server answers, for sites of several sizes, beside what the YAML library takes for its bare
 * parse of the same text in the same minutes.
 *
 *   npm run bench [-- SIZE …] [-- --against "COMMAND OF ANOTHER SERVER"]
 */

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { generatedSite } from './generated-site.ts';
import { bareParse } from './bare-parse.ts';
import { coldCheck, coldServer } from './cold.ts';
import { type Latencies, type Spread, measure } from './measure.ts';

const SERVER = [process.execPath, 'dist/server.cjs', '--stdio'];
const PROGRAM = 'dist/plumbline.cjs';
/** Where a general server for YAML takes the schema from. */
const MODELINE = `# yaml-language-server: $schema=${pathToFileURL('schemas/site.schema.json').href}\n`;
const EDITED: Readonly<Record<string, RegExp>> = {
  'a stream’s bit rate': / bitrate: \d/,
  'a device’s speed': /kind: camera, .*speed: \d/,
};

const { values, positionals } = parseArgs({ allowPositionals: true, options: { against: { type: 'string' } } });
const sizes = positionals.length === 0 ? [300, 3000, 30_000] : positionals.map(Number);

function row(cells: readonly string[]): string {
  return `| ${cells.join(' | ')} |`;
}

const ms = (value: number): string => (value < 10 ? value.toFixed(1) : value.toFixed(0));
const pair = ({ median, p95 }: Spread): string => `${ms(median)} / ${ms(p95)}`;

function print(name: string, edited: string, lines: number, parse: Spread, found: Latencies): void {
  const ratio = (found.keystroke.median / parse.median).toFixed(2);
  const memory = found.memory === undefined ? '?' : `${found.memory.toFixed(0)} MiB`;
  const cells = [
    name,
    String(lines),
    edited,
    pair(found.keystroke),
    pair(found.hover),
    ms(found.burst),
    memory,
    ms(parse.median),
    ratio,
  ];
  process.stdout.write(`${row(cells)}\n`);
}

function head(...names: readonly string[]): void {
  process.stdout.write(`\n${row(names)}\n${row(names.map(() => '---'))}\n`);
}

process.stdout.write('Milliseconds; median / 95th percentile.\n');
const folder = mkdtempSync(join(tmpdir(), 'plumbline-bench-'));
try {
  const texts = sizes.map((size) => {
    const text = generatedSite(size);
    const path = join(mkdtempSync(join(folder, `${size}-`)), 'bench.site.yaml');
    writeFileSync(path, text);
    return { size, text, path, lines: text.split('\n').length - 1 };
  });
  head('lines', 'start to first problems', 'plumbline check', 'Node by itself');
  for (const { text, path, lines } of texts) {
    const { server, node } = await coldServer(SERVER, path, text);
    const check = coldCheck(PROGRAM, path);
    process.stdout.write(`${row([String(lines), pair(server), pair(check), pair(node)])}\n`);
  }
  head(
    'server',
    'lines',
    'edited',
    'keystroke',
    'hover after edit',
    'burst',
    'memory',
    'bare parse',
    'keystroke ÷ parse',
  );
  for (const { size, text, path, lines } of texts) {
    const parse = bareParse(text);
    for (const [edited, line] of Object.entries(EDITED)) {
      print('plumbline', edited, lines, parse, await measure(SERVER, path, text, line));
      if (values.against === undefined) continue;
      print(
        'other',
        edited,
        lines,
        parse,
        await measure(values.against.split(' '), join(folder, `bench-${size}.yaml`), MODELINE + text, line),
      );
    }
  }
} finally {
  rmSync(folder, { recursive: true });
}

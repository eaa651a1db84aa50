// Hostile sizes: the time and the memory for any text of up to four million characters.
import assert from 'node:assert/strict';
import { execFile, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, it } from 'mocha';
import { LARGEST_TEXT } from '../../server/src/site/folder.ts';
import type { Texts } from '../site.ts';
import { Client } from '../lsp/client.ts';
import { shapeAtRandom } from './hostile-shapes.ts';
import { Random } from './random.ts';

/** How much more work four times the text may be: sorting it is five times as much, its square sixteen times. */
const MOST_GROWTH = 7;
const SHAPES = 50;
/** Seconds of processor time for the largest text, on the machine that this was written on. */
const MOST_SECONDS = 5;
/** Beside other tests the same work takes up to twice the processor time, as they share its caches. */
const BESIDE = 2;
const MOST_MEGABYTES = 600;
/** Megabytes of the heap. Without a bound V8 takes all memory that it finds, and collects later. */
const HEAP = '--max-old-space-size=450';

/** Four sections of so much have as many entries as are read. */
const PART = 280_000;

/** As many entries as there is room for. */
const filled = (begin: string, entry: (index: number) => string, end = '', room = LARGEST_TEXT): Texts => {
  const parts = [begin];
  let length = begin.length + end.length;
  for (let index = 0; ; index++) {
    const next = entry(index);
    length += next.length;
    if (length > room) return { 'a.site.yaml': `${parts.join('')}${end}` };
    parts.push(next);
  }
};
const address = (index: number): string => `10.${(index >> 16) & 255}.${(index >> 8) & 255}.${index & 255}`;

const LARGEST: Readonly<Record<string, () => Texts>> = {
  'devices in one flow mapping': () =>
    filled('devices: {', (i) => `c${i}: {kind: camera, address: ${address(i)}},`, '}'),
  'cameras that are right': () =>
    filled('vlans: {v: {id: 20, subnet: 10.0.0.0/8}}\ndevices:\n', (i) => {
      return `  c${i}: {kind: camera, address: ${address(i + 1)}, speed: 100 Mb/s}\n`;
    }),
  'equal addresses, subnets, groups and files': () => {
    const sections = [
      filled('devices:\n', (i) => `  c${i}: {kind: camera, address: 10.0.0.1}\n`, '', PART),
      filled('vlans:\n', (i) => `  v${i}: {id: ${1 + (i % 4094)}, subnet: 10.0.0.0/8}\n`, '', PART),
      filled('streams:\n', (i) => `  s${i}: {source: cam, transport: rtp, group: 239.192.0.1, port: 5004}\n`, '', PART),
      filled(
        'volumes: {v: {host: r, capacity: 1 TB}}\nrecordings:\n',
        (i) => `  s${i}: {stream: x, volume: v, segment: 60 s, keep: 1 d, file: "%Y.mp4"}\n`,
        '',
        PART,
      ),
    ];
    return { 'a.site.yaml': sections.map((texts) => texts['a.site.yaml']).join('') };
  },
  'elements of a list that say nothing': () => filled('cables:\n', () => ' - {}\n'),
  'items without a value in one pair of brackets': () => filled('vlans: {', (i) => `${i}:,`, '}'),
  'keys that are misspelled in one pair of brackets': () =>
    filled('devices: {', (i) => `c${i}: {kind: camera, adress: 10.0.0.1},`, '}'),
  'names that are not declared': () =>
    filled('streams:\n', (i) => `  s${i}: {source: unknown-${i}, transport: rtp, group: 239.192.0.1, port: 5004}\n`),
  'keys of one device': () => filled('devices: {a: {', (i) => `k${i}: 1, `, '}}'),
  'sections that there are not': () => filled('', (i) => `s${i}:\n`),
  'UPS that feed each other in a row': () =>
    filled('devices:\n', (i) => `  u${i}: {kind: ups, battery: 216 Wh, power: {from: u${i - 1}}}\n`),
  'switches that are asked for as points of failure': () => {
    const n = 8000;
    const of = (entry: (i: number) => string): string => Array.from({ length: n }, (_, i) => entry(i)).join('');
    return {
      'a.site.yaml':
        `lint: {rules: {single-point-of-failure: hint}}\ndevices:\n  core: {kind: switch, ports: {1-800: {}}}\n` +
        `${of((i) => `  s${i}: {kind: switch, ports: {1-2: {}}}\n`)}cables:\n` +
        of((i) => `  - {from: ${i < 800 ? `core/${i + 1}` : `s${i - 800}/2`}, to: s${i}/1, duct: d${i}}\n`),
    };
  },
  'hashes on one line': () => ({ 'a.site.yaml': '#'.repeat(LARGEST_TEXT) }),
};

interface Cost {
  /** Seconds of processor time. */
  readonly seconds: number;
  readonly megabytes: number;
}

/** The resources of a program from start to end. */
async function costOf(program: readonly string[]): Promise<Cost> {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-use-'));
  const use = join(folder, 'use.json');
  const child = spawn(process.execPath, [HEAP, '--require', './test/fuzz/use.cjs', ...program], {
    env: { ...process.env, USE_FILE: use },
    stdio: 'ignore',
  });
  await new Promise((resolve) => child.once('exit', resolve));
  const own = used(use);
  rmSync(folder, { recursive: true });
  return own;
}

function used(file: string): Cost {
  const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(readFileSync(file, 'utf8')) as NodeJS.ResourceUsage;
  return { seconds: (userCPUTime + systemCPUTime) / 1e6, megabytes: maxRSS / 1000 };
}

/** The same work on any machine: a busy one, and one that is slower, take longer for it. */
const SAME_WORK =
  'let all = []; for (let i = 0; i < 12; i++) all = JSON.parse(JSON.stringify(Array.from({ length: 60000 }, (_, k) =>' +
  ' ({ name: "c" + ((k * 7919) % 60000), at: [k, i] })))).sort((a, b) => (a.name < b.name ? -1 : 1));';
/** Its time on that machine, alone. */
const THERE = 1.4;

/** With the seconds as that machine would count them. */
async function likeThere({ seconds, megabytes }: Cost): Promise<Cost> {
  // Only where it matters, as the work for comparison takes a second too.
  if (seconds < MOST_SECONDS) return { seconds, megabytes };
  const here = await costOf(['--eval', SAME_WORK]);
  return { seconds: (seconds * THERE) / Math.max(THERE, here.seconds), megabytes };
}

/** The resources of a check of a site. */
async function cost(texts: Texts): Promise<Cost> {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-sizes-'));
  for (const [name, text] of Object.entries(texts)) writeFileSync(join(folder, name), text);
  const own = await costOf(['dist/programs/plumbline.cjs', 'check', folder]);
  rmSync(folder, { recursive: true });
  return likeThere(own);
}

const OF_AN_EDITOR = [
  'codeAction',
  'inlayHint',
  'codeLens',
  'semanticTokens/full',
  'foldingRange',
  'documentSymbol',
  'documentLink',
  'hover',
  'completion',
  'references',
];

describe('hostile sizes', () => {
  it('are no more work than they grow, of shapes at random', async () => {
    const { stdout } = await promisify(execFile)(
      process.execPath,
      ['--import', 'tsx', 'test/fuzz/shape-growth.ts', '1', String(SHAPES)],
      { maxBuffer: 1e8 },
    );
    const counts = JSON.parse(stdout) as readonly [string, number, number][];
    assert.equal(counts.length, SHAPES);
    for (const [title, small, large] of counts)
      assert.ok(large < MOST_GROWTH * small + 100_000, `${title}: ${large} operations, where a quarter takes ${small}`);
  });

  for (const [title, texts] of Object.entries(LARGEST))
    it(`of the largest text: ${title}`, async () => {
      const { seconds, megabytes } = await cost(texts());
      assert.ok(seconds < BESIDE * MOST_SECONDS, `${seconds} s`);
      assert.ok(megabytes < MOST_MEGABYTES, `${megabytes} MB`);
    });

  it('of the largest text, in an editor that asks for all there is', async () => {
    const text = filled('devices:\n', (i) => `  c${i}: {kind: camera, address: 10.0.0.1}\n`)['a.site.yaml'] ?? '';
    const end = { line: text.split('\n').length, character: 0 };
    const asked = {
      textDocument: { uri: '' },
      range: { start: { line: 0, character: 0 }, end },
      position: { line: 1000, character: 5 },
      context: { diagnostics: [], includeDeclaration: true },
    };
    const folder = mkdtempSync(join(tmpdir(), 'plumbline-editor-'));
    const use = join(folder, 'use.json');
    const client = await Client.start(
      [process.execPath, HEAP, '--require', './test/fuzz/use.cjs', 'dist/programs/plumbline.cjs', 'lsp', '--stdio'],
      {},
      { USE_FILE: use },
    );
    const uri = await client.open(join(folder, 'a.site.yaml'), text);
    await client.diagnostics(uri);
    asked.textDocument.uri = uri;
    for (const what of OF_AN_EDITOR) await client.connection.sendRequest(`textDocument/${what}`, asked);
    await client.change(uri, ' ', { start: asked.position, end: asked.position });
    await client.diagnostics(uri);
    assert.equal(await client.stop(), 0);
    const { seconds, megabytes } = await likeThere(used(use));
    rmSync(folder, { recursive: true });
    assert.ok(seconds < BESIDE * MOST_SECONDS, `${seconds} s`);
    assert.ok(megabytes < MOST_MEGABYTES, `${megabytes} MB`);
  });

  it('of the largest text, of a shape at random', async () => {
    // In forty files, each of which was once read as if it were alone; `SHAPE_SEED` sets another.
    const seed = Number(process.env['SHAPE_SEED'] ?? 3024);
    const { title, texts } = shapeAtRandom(new Random(seed));
    const { seconds, megabytes } = await cost(texts(LARGEST_TEXT - 1000));
    assert.ok(
      seconds < BESIDE * MOST_SECONDS && megabytes < MOST_MEGABYTES,
      `seed ${seed}, ${title}: ${seconds} s, ${megabytes} MB`,
    );
  });
});

// Hostile sizes: whatever a text of up to four million characters is made of, the time and the memory that it takes.
import assert from 'node:assert/strict';
import { execFile, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, it } from 'mocha';
import { LARGEST_TEXT } from '../../server/src/site/folder.ts';
import type { Texts } from '../site.ts';
import { shapeAtRandom } from './hostile-shapes.ts';
import { Random } from './random.ts';

/** How much more work four times the text may be: sorting it is five times as much, its square sixteen times. */
const MOST_GROWTH = 7;
const SHAPES = 50;
/** Of the processor, for the largest text: far more than the 5 s that an idle machine takes. What grows is counted. */
const MOST_SECONDS = 30;
const MOST_MEGABYTES = 600;
/** Of the heap, of the megabytes. Without a bound V8 takes what it finds, and collects later. */
const HEAP_MEGABYTES = 450;

const QUARTER = LARGEST_TEXT / 4;

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
      filled('devices:\n', (i) => `  c${i}: {kind: camera, address: 10.0.0.1}\n`, '', QUARTER),
      filled('vlans:\n', (i) => `  v${i}: {id: ${1 + (i % 4094)}, subnet: 10.0.0.0/8}\n`, '', QUARTER),
      filled(
        'streams:\n',
        (i) => `  s${i}: {source: cam, transport: rtp, group: 239.192.0.1, port: 5004}\n`,
        '',
        QUARTER,
      ),
      filled(
        'volumes: {v: {host: r, capacity: 1 TB}}\nrecordings:\n',
        (i) => `  s${i}: {stream: x, volume: v, segment: 60 s, keep: 1 d, file: "%Y.mp4"}\n`,
        '',
        QUARTER,
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
  'hashes on one line': () => ({ 'a.site.yaml': '#'.repeat(LARGEST_TEXT) }),
};

/** Seconds of the processor, and megabytes, that a check of a site takes from start to end. */
async function cost(texts: Texts): Promise<{ readonly seconds: number; readonly megabytes: number }> {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-sizes-'));
  for (const [name, text] of Object.entries(texts)) writeFileSync(join(folder, name), text);
  const use = join(folder, 'use.json');
  const child = spawn(
    process.execPath,
    [
      `--max-old-space-size=${HEAP_MEGABYTES}`,
      '--require',
      './test/fuzz/use.cjs',
      'dist/programs/plumbline.cjs',
      'check',
      folder,
    ],
    {
      env: { ...process.env, USE_FILE: use },
      stdio: 'ignore',
    },
  );
  await new Promise((resolve) => child.once('exit', resolve));
  const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(readFileSync(use, 'utf8')) as NodeJS.ResourceUsage;
  rmSync(folder, { recursive: true });
  return { seconds: (userCPUTime + systemCPUTime) / 1e6, megabytes: maxRSS / 1000 };
}

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
      assert.ok(seconds < MOST_SECONDS, `${seconds} s`);
      assert.ok(megabytes < MOST_MEGABYTES, `${megabytes} MB`);
    });

  it('of the largest text, of a shape at random', async () => {
    // One that once took 79 s; `SHAPE_SEED` sets another.
    const seed = Number(process.env['SHAPE_SEED'] ?? 472_957);
    const { title, texts } = shapeAtRandom(new Random(seed));
    const { seconds, megabytes } = await cost(texts(LARGEST_TEXT - 1000));
    assert.ok(
      seconds < MOST_SECONDS && megabytes < MOST_MEGABYTES,
      `seed ${seed}, ${title}: ${seconds} s, ${megabytes} MB`,
    );
  });
});

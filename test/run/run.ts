/**
 * `npm test`: runs the groups of tests side by side, prints the output of each as it ends, and sums up.
 * `npm test -- core media` runs only these groups. The output of a group is in `dist/tests/GROUP.log` meanwhile.
 *
 * A file that fails runs once more, by itself, where its group counts in real time or drives other programs: beside
 * other work an editor or a switch may be late. Tests that failed the first time are named at the end.
 *
 * The last line is "N passed, N failed, N skipped". It exits with 1 where a test failed or a group ran none, and in CI
 * where one was skipped.
 */

import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, openSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { bundled } from './bundled.ts';
import { GROUPS, type Group, ROWS, groupOf } from './groups.ts';

/** The tests that ran in a file, as reporter.cjs writes them. */
interface Ran {
  readonly passed: number;
  /** Titles. */
  readonly failed: readonly string[];
  /** Reasons. */
  readonly skipped: readonly string[];
}

interface Outcome {
  readonly group: Group;
  readonly seconds: number;
  /** By the path of the file. */
  readonly files: ReadonlyMap<string, Ran>;
}

const repository = fileURLToPath(new URL('../..', import.meta.url));
process.chdir(repository);

const chosen = process.argv.slice(2);
const unknown = chosen.find((name) => !GROUPS.some((group) => group.name === name));
if (unknown !== undefined) {
  console.error(`There is no group ${unknown}; there are ${GROUPS.map(({ name }) => name).join(', ')}.`);
  process.exit(2);
}

const folder = 'dist/tests';
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });

const paths = new Map<Group, string[]>(GROUPS.map((group) => [group, []]));
for (const path of readdirSync('test', { recursive: true, encoding: 'utf8' }).sort()) {
  if (!path.endsWith('.test.ts')) continue;
  const group = groupOf(path.replaceAll('\\', '/'));
  paths.get(group)?.push(`test/${path}`);
}

const SEED = 'test/seed.ts';
/** Where the files are bundled, by their paths in the sources. */
const bundles = await bundled(
  [SEED, ...[...paths].flatMap(([{ name }, own]) => (isChosen(name) ? own : []))],
  `${folder}/bundled`,
);
const sources = new Map([...bundles].map(([source, bundle]) => [bundle, source]));

/** Titles of tests that failed at first and passed when their file ran by itself. */
const passedLater: string[] = [];
const outcomes: Outcome[] = [];
for (const outcome of (await Promise.all(ROWS.map(runRow))).flat()) outcomes.push(await againWhatFailed(outcome));
process.exitCode = summedUp(outcomes) ? 0 : 1;

function isChosen(group: string): boolean {
  return chosen.length === 0 || chosen.includes(group);
}

async function runRow(row: readonly string[]): Promise<Outcome[]> {
  const ended: Outcome[] = [];
  for (const name of row.filter(isChosen)) {
    const [found] = [...paths].filter(([group]) => group.name === name);
    if (found === undefined) throw new Error(`no group is called ${name}`);
    ended.push(await run(...found));
  }
  return ended;
}

async function againWhatFailed(outcome: Outcome): Promise<Outcome> {
  const { group, files } = outcome;
  const failing = [...files].filter(([, { failed }]) => failed.length > 0).map(([path]) => path);
  if (group.bare === true || failing.length === 0) return outcome;
  // Where mocha ended before it was done, no file is known.
  const second = await run({ ...group, jobs: 1 }, failing.includes('') ? (paths.get(group) ?? []) : failing);
  const failed = [...second.files.values()].flatMap((ran) => ran.failed);
  const before = failing.flatMap((path) => files.get(path)?.failed ?? []);
  passedLater.push(...before.filter((title) => !failed.includes(title)).map((title) => `${group.name}: ${title}`));
  const kept = [...files].filter(([path]) => !failing.includes(path));
  return { group, seconds: outcome.seconds + second.seconds, files: new Map([...kept, ...second.files]) };
}

function bundleOf(path: string): string {
  const bundle = bundles.get(path);
  if (bundle === undefined) throw new Error(`${path} is not bundled`);
  return `./${bundle}`;
}

async function run(group: Group, files: readonly string[]): Promise<Outcome> {
  const [log, file] = [`${folder}/${group.name}.log`, `${folder}/${group.name}.json`];
  rmSync(file, { force: true });
  const started = performance.now();
  const reporter = ['--reporter', 'test/run/reporter.cjs', '--reporter-option', `file=${file}`];
  const parallel = group.jobs === 1 ? [] : ['--parallel', '--jobs', String(group.jobs)];
  const output = openSync(log, 'w');
  const program = 'node_modules/mocha/lib/cli/cli.js';
  const mocha = ['--enable-source-maps', program, '--no-config', '--timeout', '600000', '--require', bundleOf(SEED)];
  const child = spawn(process.execPath, [...mocha, ...reporter, ...parallel, ...files.map(bundleOf)], {
    stdio: ['ignore', output, output],
    env: { ...process.env, ...(process.stdout.isTTY && { FORCE_COLOR: '1' }) },
  });
  const code = await new Promise<number | null>((resolve, reject) => child.on('error', reject).on('exit', resolve));
  const outcome = { group, seconds: (performance.now() - started) / 1000, files: read(file, code) };
  console.log(`\n━━ ${group.name}\n${readFileSync(log, 'utf8').trimEnd()}\n━━ ${line(outcome)}`);
  return outcome;
}

/** What ran, and as a failure of no file where it is not known or nothing ran. */
function read(file: string, code: number | null): ReadonlyMap<string, Ran> {
  const failure = (why: string): [string, Ran] => ['', { passed: 0, failed: [why], skipped: [] }];
  if (!existsSync(file)) return new Map([failure(`mocha ended with ${code} before it was done`)]);
  const ran = Object.entries(JSON.parse(readFileSync(file, 'utf8')) as Record<string, Ran>);
  const files = new Map(ran.map(([bundle, tests]) => [sources.get(bundle) ?? bundle, tests]));
  if (files.size === 0) return new Map([failure('no test ran')]);
  const hasFailed = [...files.values()].some(({ failed }) => failed.length > 0);
  return code !== 0 && !hasFailed ? new Map([...files, failure(`mocha ended with ${code}`)]) : files;
}

function line({ group, seconds, files }: Outcome): string {
  return `${group.name}: ${counts([...files.values()])} in ${seconds.toFixed(0)} s`;
}

function counts(ran: readonly Ran[]): string {
  const sum = (of: (each: Ran) => number): number => ran.reduce((total, each) => total + of(each), 0);
  const [passed, failed, skipped] = [sum((r) => r.passed), sum((r) => r.failed.length), sum((r) => r.skipped.length)];
  return `${passed} passed, ${failed} failed, ${skipped} skipped`;
}

/** Prints the sum; returns whether all is well. */
function summedUp(ended: readonly Outcome[]): boolean {
  console.log('');
  for (const outcome of ended) console.log(line(outcome));
  const ran = ended.flatMap(({ files }) => [...files.values()]);
  const failed = ended.flatMap(({ group, files }) =>
    [...files.values()].flatMap((each) => each.failed.map((title) => `${group.name}: ${title}`)),
  );
  const skipped = ran.flatMap((each) => each.skipped);
  const reasons = new Map<string, number>();
  for (const reason of skipped) reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
  for (const [reason, count] of reasons) console.log(`skipped ${count}: ${reason}`);
  for (const title of passedLater) console.log(`passed only when its file ran once more: ${title}`);
  for (const title of failed) console.log(`failed: ${title}`);
  console.log(counts(ran));
  if (process.env['CI'] && skipped.length > 0) {
    console.error('In CI no test may be skipped.');
    return false;
  }
  return failed.length === 0;
}

/**
 * `npm test`: runs the groups of tests side by side, prints the output of each as it ends, and sums up.
 * `npm test -- core media` runs only these groups. What a group says meanwhile stands in `dist/tests/GROUP.log`.
 *
 * The last line is "N passed, N failed, N skipped". It exits with 1 where a test failed or a group ran none, and in CI
 * where one was skipped.
 */

import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, openSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { GROUPS, type Group, ROWS, groupOf } from './groups.ts';

/** What reporter.cjs writes. */
interface Ran {
  readonly passed: number;
  /** Titles. */
  readonly failed: readonly string[];
  /** Reasons. */
  readonly skipped: readonly string[];
}

interface Outcome extends Ran {
  readonly name: string;
  readonly seconds: number;
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

const files = new Map<Group, string[]>(GROUPS.map((group) => [group, []]));
for (const path of readdirSync('test', { recursive: true, encoding: 'utf8' }).sort()) {
  if (!path.endsWith('.test.ts')) continue;
  const group = groupOf(path.replaceAll('\\', '/'));
  files.get(group)?.push(`test/${path}`);
}

const outcomes = (await Promise.all(ROWS.map(runRow))).flat();
process.exitCode = summedUp(outcomes) ? 0 : 1;

async function runRow(row: readonly string[]): Promise<Outcome[]> {
  const ended: Outcome[] = [];
  for (const name of row.filter((each) => chosen.length === 0 || chosen.includes(each))) {
    const [found] = [...files].filter(([group]) => group.name === name);
    if (found === undefined) throw new Error(`no group is called ${name}`);
    ended.push(await runGroup(...found));
  }
  return ended;
}

async function runGroup({ name, jobs }: Group, paths: readonly string[]): Promise<Outcome> {
  const [log, file] = [`${folder}/${name}.log`, `${folder}/${name}.json`];
  const started = performance.now();
  const reporter = ['--reporter', 'test/run/reporter.cjs', '--reporter-option', `file=${file}`];
  const parallel = jobs === 1 ? [] : ['--parallel', '--jobs', String(jobs)];
  const output = openSync(log, 'w');
  const mocha = ['--import', 'tsx', 'node_modules/mocha/lib/cli/cli.js'];
  const child = spawn(process.execPath, [...mocha, ...reporter, ...parallel, ...paths], {
    stdio: ['ignore', output, output],
    env: { ...process.env, ...(process.stdout.isTTY && { FORCE_COLOR: '1' }) },
  });
  const code = await new Promise<number | null>((resolve, reject) => child.on('error', reject).on('exit', resolve));
  const outcome = { name, seconds: (performance.now() - started) / 1000, ...read(file, code) };
  console.log(`\n━━ ${name}\n${readFileSync(log, 'utf8').trimEnd()}\n━━ ${line(outcome)}`);
  return outcome;
}

/** What ran, and as a failure where it is not known or nothing ran. */
function read(file: string, code: number | null): Ran {
  if (!existsSync(file)) return { passed: 0, failed: [`mocha ended with ${code} before it was done`], skipped: [] };
  const ran = JSON.parse(readFileSync(file, 'utf8')) as Ran;
  if (ran.passed + ran.failed.length + ran.skipped.length === 0) return { ...ran, failed: ['no test ran'] };
  if (code !== 0 && ran.failed.length === 0) return { ...ran, failed: [`mocha ended with ${code}`] };
  return ran;
}

function line({ name, seconds, passed, failed, skipped }: Outcome): string {
  return `${name}: ${counts(passed, failed.length, skipped.length)} in ${seconds.toFixed(0)} s`;
}

function counts(passed: number, failed: number, skipped: number): string {
  return `${passed} passed, ${failed} failed, ${skipped} skipped`;
}

/** Prints the sum; returns whether all is well. */
function summedUp(ended: readonly Outcome[]): boolean {
  console.log('');
  for (const outcome of ended) console.log(line(outcome));
  const failed = ended.flatMap((outcome) => outcome.failed.map((title) => `${outcome.name}: ${title}`));
  const skipped = ended.flatMap((outcome) => outcome.skipped);
  for (const title of failed) console.log(`failed: ${title}`);
  const reasons = new Map<string, number>();
  for (const reason of skipped) reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
  for (const [reason, count] of reasons) console.log(`skipped ${count}: ${reason}`);
  const passed = ended.reduce((sum, outcome) => sum + outcome.passed, 0);
  console.log(counts(passed, failed.length, skipped.length));
  if (process.env['CI'] && skipped.length > 0) {
    console.error('In CI no test may be skipped.');
    return false;
  }
  return failed.length === 0;
}

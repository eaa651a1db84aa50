/** Runs programs, and reports their errors where they fail. */

import { execFileSync, spawn, spawnSync } from 'node:child_process';

/**
 * Runs a program to its end.
 *
 * @param input its standard input
 * @returns its standard output
 * @throws Error with its standard error, where it fails
 */
export function run(
  program: string,
  args: readonly string[],
  { input = '', environment = {} }: RunOptions = {},
): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { env: { ...process.env, ...environment }, stdio: 'pipe' });
    const out: Buffer[] = [];
    const complaints: Buffer[] = [];
    child.stdout.on('data', (data: Buffer) => out.push(data));
    child.stderr.on('data', (data: Buffer) => complaints.push(data));
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0) resolve(Buffer.concat(out).toString());
      else {
        const command = [program, ...args].join(' ').slice(0, 300);
        reject(new Error(`${command}: exit ${code}: ${Buffer.concat(complaints).toString().trim()}`));
      }
    });
    // A program that ends before it has read everything is reported by its exit code.
    child.stdin.on('error', () => undefined);
    child.stdin.end(input);
  });
}

interface RunOptions {
  readonly input?: string;
  readonly environment?: Readonly<Record<string, string>>;
}

/** Runs a shell script in a network namespace; the first command that fails ends it. */
export async function runIn(namespace: string, commands: readonly string[]): Promise<void> {
  if (commands.length > 0)
    await run('ip', ['netns', 'exec', namespace, 'sh', '-e'], { input: `${commands.join('\n')}\n` });
}

/** Runs a program in a network namespace, and returns its output even where it fails. */
export function answer(
  namespace: string,
  command: readonly string[],
): { readonly status: number | null; readonly out: string; readonly err: string } {
  const { status, stdout, stderr } = spawnSync('ip', ['netns', 'exec', namespace, ...command], { encoding: 'utf8' });
  return { status, out: stdout, err: stderr };
}

/** Runs a program whose failure does not matter, as the process that it ends may have ended already. */
export function runAnyway(
  program: string,
  args: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): void {
  try {
    execFileSync(program, args, { env: { ...process.env, ...environment }, stdio: 'ignore', timeout: 10_000 });
  } catch {
    // As it says.
  }
}

export function sleep(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

/** Ends a process that was not waited for, and its namespaces' hold with it. */
export function killProcess(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error;
  }
}

/** Waits for all of them, also where one fails, so that nothing runs any more when this returns or throws. */
export async function allOf<const T extends readonly Promise<unknown>[]>(
  begun: T,
): Promise<{ -readonly [K in keyof T]: Awaited<T[K]> }> {
  await Promise.allSettled(begun);
  return Promise.all(begun) as Promise<{ -readonly [K in keyof T]: Awaited<T[K]> }>;
}

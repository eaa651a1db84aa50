// The command line as it is bundled, in a process of its own; or in this one, which takes no time to start.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const program = join(fileURLToPath(new URL('../..', import.meta.url)), 'dist', 'plumbline.cjs');

export interface Result {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

export interface How {
  /** Standard input. */
  readonly input?: string;
  readonly cwd?: string;
  /** Milliseconds after which it is killed. */
  readonly timeout?: number;
  /** What is set in the environment beside NO_COLOR; `undefined` unsets. */
  readonly env?: Readonly<Record<string, string | undefined>>;
}

export function plumbline(words: readonly string[], { input = '', cwd, timeout, env }: How = {}): Result {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    encoding: 'utf8',
    input,
    cwd,
    timeout,
    killSignal: 'SIGKILL',
    env: { ...process.env, NO_COLOR: '1', ...env },
  });
  return { status, out: stdout, err: stderr };
}

/** The same, for tests of what a command does: all but how the process starts, reads its input and ends. */
export async function plumblineHere(words: readonly string[], { cwd }: Pick<How, 'cwd'> = {}): Promise<Result> {
  const { stdout, stderr, argv, exitCode } = process;
  const before = { cwd: process.cwd(), out: stdout.write, err: stderr.write };
  const printed = { out: '', err: '' };
  const into = (stream: keyof typeof printed) => (text: string | Uint8Array) => {
    printed[stream] += text.toString();
    return true;
  };
  const run = await commandLine();
  process.argv = [process.execPath, program, ...words];
  process.exitCode = undefined;
  if (cwd !== undefined) process.chdir(cwd);
  stdout.write = into('out');
  stderr.write = into('err');
  try {
    await run(words);
    return { status: exitStatus(), ...printed };
  } finally {
    stdout.write = before.out;
    stderr.write = before.err;
    process.chdir(before.cwd);
    process.argv = argv;
    process.exitCode = exitCode;
  }
}

const exitStatus = (): number => Number(process.exitCode ?? 0);

/** As it is where neither its output nor its errors go to a terminal, which it looks at when it is loaded. */
async function commandLine(): Promise<(words: readonly string[]) => Promise<void>> {
  const { NO_COLOR: colour } = process.env;
  const { isTTY } = process.stderr;
  process.env['NO_COLOR'] = '1';
  process.stderr.isTTY = false;
  try {
    return (await import('../../server/src/cli/command-line.ts')).run;
  } finally {
    process.stderr.isTTY = isTTY;
    if (colour === undefined) delete process.env['NO_COLOR'];
    else process.env['NO_COLOR'] = colour;
  }
}

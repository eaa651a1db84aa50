// The command line as it is bundled, in a process of its own.
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
  /** What is set in the environment beside NO_COLOR; `undefined` unsets. */
  readonly env?: Readonly<Record<string, string | undefined>>;
}

export function plumbline(words: readonly string[], { input = '', cwd, env }: How = {}): Result {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    encoding: 'utf8',
    input,
    cwd,
    env: { ...process.env, NO_COLOR: '1', ...env },
  });
  return { status, out: stdout, err: stderr };
}

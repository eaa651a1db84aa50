/** FFmpeg's programs, started without a shell and stopped with us. */

import { spawn } from 'node:child_process';
import type { Ran } from '../footage/tools.ts';
import { codeOf } from './failures.ts';
import { CannotDo } from './cannot-do.ts';

export interface FfmpegOptions {
  readonly cwd?: string;
  readonly signal?: AbortSignal;
  /** Takes each line of the output, which is then not kept. */
  readonly line?: (line: string) => void;
}

/** @throws CannotDo where the program is not on this machine */
export function run(
  program: 'ffmpeg' | 'ffprobe',
  words: readonly string[],
  { cwd, signal, line }: FfmpegOptions = {},
): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(program, words, {
      cwd,
      signal,
      killSignal: 'SIGKILL',
      stdio: ['ignore', 'pipe', 'pipe'],
      windowsHide: true,
    });
    const out: string[] = [];
    let rest = '';
    let err = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      if (line === undefined) out.push(text);
      else {
        const lines = (rest + text).split('\n');
        rest = lines.pop() ?? '';
        lines.forEach(line);
      }
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => (err = (err + text).slice(-8000)));
    child.on('error', (error) => {
      reject(
        codeOf(error) === 'ENOENT'
          ? new CannotDo(`${program} is not on this machine. Install FFmpeg, 5.1 or later.`)
          : error,
      );
    });
    child.on('close', (status) => resolve({ status, out: out.join(''), err }));
  });
}

/** The first line of its version: `ffmpeg version 7.1`. */
export async function versionOf(): Promise<string> {
  const { out } = await run('ffmpeg', ['-version']);
  return /^ffmpeg version (\S+)/.exec(out)?.[1] ?? 'unknown';
}

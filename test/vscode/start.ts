// Runs `npm start -- --embedded FOLDER` as at a terminal.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { repository } from '../../client/open/install.ts';

export interface Started {
  /** The address that was printed. */
  readonly address: string;
  /** Ctrl+C; fulfilled with the exit code. */
  readonly interrupt: () => Promise<number | null>;
  /** Its output so far. */
  readonly output: () => string;
}

/** Starts it on a folder, and returns once it has printed its address. */
export async function start(folder: string): Promise<Started> {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', join(repository, 'client', 'open', 'index.ts'), '--embedded', folder],
    { cwd: repository, stdio: ['ignore', 'pipe', 'pipe'] },
  );
  const exited = new Promise<number | null>((resolve) => child.once('exit', resolve));
  let output = '';
  const address = await new Promise<string>((resolve, reject) => {
    const read = (data: Buffer): void => {
      output += data.toString();
      const printed = /http:\/\/127\.0\.0\.1:\d+\/\S*(?=\s)/.exec(output);
      if (printed) resolve(printed[0]);
    };
    child.stdout.on('data', read);
    child.stderr.on('data', read);
    void exited.then((code) => reject(new Error(`it ended with ${code}:\n${output}`)));
  });
  const interrupt = (): Promise<number | null> => {
    child.kill('SIGINT');
    return exited;
  };
  return { address, interrupt, output: () => output };
}

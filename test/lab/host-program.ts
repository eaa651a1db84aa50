/** A program that runs on a host of a lab. */

import { type ChildProcessByStdio, spawn } from 'node:child_process';
import type { Readable } from 'node:stream';
import { type Place, URGENT } from './place.ts';
import { PATIENCE } from './until.ts';

export class HostProgram {
  /** Its exit status; -1 for a signal. */
  readonly ended: Promise<number>;
  private readonly child: ChildProcessByStdio<null, Readable, Readable>;
  private written = '';
  private readonly listeners: (() => void)[] = [];

  constructor(place: Place, namespace: string, program: string, args: readonly string[]) {
    this.child = spawn('ip', ['netns', 'exec', namespace, 'nice', ...URGENT, program, ...args], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    place.atEnd(() => this.child.kill('SIGKILL'));
    for (const stream of [this.child.stdout, this.child.stderr]) {
      stream.on('data', (data: Buffer) => {
        this.written += data.toString();
        for (const listener of this.listeners) listener();
      });
    }
    this.ended = new Promise((resolve, reject) => {
      this.child.on('error', reject);
      this.child.on('close', (code) => resolve(code ?? -1));
    });
  }

  /** Its output so far. */
  get output(): string {
    return this.written;
  }

  /** @throws where it ends before it has written that, or does not write it for a long time */
  async says(text: string): Promise<void> {
    if (!(await this.comesTo((output) => output.includes(text))))
      throw new Error(`it did not say '${text}': ${this.written}`);
  }

  /** Waits until what it has written is so; returns whether that was before it ended, or a long time was over. */
  comesTo(isSo: (output: string) => boolean): Promise<boolean> {
    const met = new Promise<boolean>((resolve) => {
      const listen = (): void => (isSo(this.written) ? resolve(true) : undefined);
      this.listeners.push(listen);
      listen();
    });
    const late = new Promise<boolean>((resolve) => setTimeout(() => resolve(false), PATIENCE).unref());
    return Promise.race([met, late, this.ended.then(() => false)]);
  }

  /**
   * Each program before it has been replaced by the next, so that this is its own; `undefined` where it did not start.
   */
  get pid(): number | undefined {
    return this.child.pid;
  }

  /** Asks it to end in good order, as systemd does (systemd.kill(5)); a shell waiting for a program misses SIGINT. */
  stop(): void {
    this.child.kill('SIGTERM');
  }

  /** Kills it, like a crash. */
  kill(): void {
    this.child.kill('SIGKILL');
  }
}

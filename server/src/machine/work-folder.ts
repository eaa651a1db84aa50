/** A folder beside the result in which it is made, so that an unfinished file never has the result's name. */

import { mkdirSync, realpathSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { codeOf, reasonOf } from './failures.ts';
import { clearLeftovers, unfinishedIn } from './leftovers.ts';
import { CannotDo } from './cannot-do.ts';

export class WorkFolder {
  readonly path: string;
  /** Fires when the process is told to stop. */
  readonly stopped = new AbortController();
  private readonly onSignal = (): void => this.stopped.abort();

  /** @throws CannotDo where nothing can be written there */
  constructor(result: string) {
    const folder = dirname(result);
    // Before the folder is made, so that no signal can leave it behind.
    for (const signal of SIGNALS) process.on(signal, this.onSignal);
    try {
      const real = realpathSync(folder);
      clearLeftovers(real);
      this.path = unfinishedIn(real);
      mkdirSync(this.path, { mode: 0o700 });
    } catch (error) {
      this.letSignalsPass();
      const code = codeOf(error);
      if (code === undefined) throw error;
      throw new CannotDo(`Nothing can be written in ${folder}: ${reasonOf(code)}.`);
    }
  }

  file(name: string): string {
    return join(this.path, name);
  }

  remove(): void {
    this.letSignalsPass();
    rmSync(this.path, { recursive: true, force: true });
  }

  private letSignalsPass(): void {
    for (const signal of SIGNALS) process.off(signal, this.onSignal);
  }
}

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

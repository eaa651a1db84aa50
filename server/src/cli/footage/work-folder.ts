/** A folder beside the result, in which it is made: what is not finished never bears the result's name. */

import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { codeOf, reasonOf } from '../../machine/failures.ts';
import { CannotDo } from '../../machine/cannot-do.ts';

export class WorkFolder {
  readonly path: string;
  /** Fires where somebody stops us. */
  readonly stopped = new AbortController();
  private readonly onSignal = (): void => this.stopped.abort();

  /** @throws CannotDo where nothing can be written there */
  constructor(result: string) {
    const folder = dirname(result);
    try {
      this.path = mkdtempSync(join(realpathSync(folder), '.plumbline-'));
    } catch (error) {
      const code = codeOf(error);
      if (code === undefined) throw error;
      throw new CannotDo(`Nothing can be written in ${folder}: ${reasonOf(code)}.`);
    }
    for (const signal of SIGNALS) process.on(signal, this.onSignal);
  }

  file(name: string): string {
    return join(this.path, name);
  }

  remove(): void {
    for (const signal of SIGNALS) process.off(signal, this.onSignal);
    rmSync(this.path, { recursive: true, force: true });
  }
}

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

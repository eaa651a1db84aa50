/** Files of session descriptions on disk, as they come, change and go. */

import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { CannotDo, Stopped } from '../machine/cannot-do.ts';
import { codeOf, reasonOf } from '../machine/failures.ts';
import { wholeText } from '../machine/input.ts';
import type { DescriptionFile } from '../announce/announcer.ts';

const SUFFIX = '.sdp';
/** A packet holds no more. */
const LARGEST = 65_536;

interface Known {
  /** Of the file as it was seen last. */
  readonly stamp: string;
  /** Whether it was read, or tried to be, as it was seen last. */
  readonly read: boolean;
  readonly taken: DescriptionFile | undefined;
}

export class DescriptionFiles {
  private readonly paths: readonly string[];
  private readonly known = new Map<string, Known>();
  private readonly report: (line: string) => void;
  private readonly signal: AbortSignal;

  /**
   * @param paths folders, of which all *.sdp are meant, and files
   * @param signal ends a look that a disk does not answer
   */
  constructor(paths: readonly string[], report: (line: string) => void, signal: AbortSignal) {
    this.paths = paths;
    this.report = report;
    this.signal = signal;
  }

  /**
   * What is there now; throws Stopped where it is ended. A file that cannot be read for the moment is as it was before.
   */
  async look(): Promise<readonly DescriptionFile[]> {
    const there = await this.list();
    for (const path of this.known.keys()) if (!there.has(path)) this.known.delete(path);
    for (const path of there) {
      const known = await this.lookAt(path, this.known.get(path));
      if (known === undefined) this.known.delete(path);
      else this.known.set(path, known);
    }
    return [...this.known.values()].flatMap(({ taken }) => taken ?? []);
  }

  /** A file that has changed may still be being written: it is read when it is the same at the next look. */
  private async lookAt(path: string, known: Known | undefined): Promise<Known | undefined> {
    try {
      const { mtimeMs, size } = await stat(path);
      const stamp = `${mtimeMs} ${size}`;
      if (known !== undefined && known.stamp !== stamp) return { ...known, stamp, read: false };
      return known?.read === true
        ? known
        : { stamp, read: true, taken: (await this.read(path, mtimeMs)) ?? known?.taken };
    } catch (error) {
      const code = codeOf(error);
      if (code === undefined) throw error;
      if (code === 'ENOENT') return undefined;
      if (known?.stamp !== code) this.report(`${path} cannot be read: ${reasonOf(code)}`);
      return { stamp: code, read: false, taken: known?.taken };
    }
  }

  private async read(path: string, modified: number): Promise<DescriptionFile | undefined> {
    try {
      return { path, text: await wholeText(path, LARGEST, { signal: this.signal }), modified };
    } catch (error) {
      if (!(error instanceof CannotDo) || error instanceof Stopped) throw error;
      this.report(error.message);
      return undefined;
    }
  }

  private async list(): Promise<ReadonlySet<string>> {
    const found: string[] = [];
    for (const path of this.paths) {
      try {
        const names = (await stat(path)).isDirectory() ? await readdir(path) : undefined;
        if (names === undefined) found.push(path);
        else
          found.push(
            ...names
              .filter((name) => name.endsWith(SUFFIX))
              .sort()
              .map((name) => join(path, name)),
          );
      } catch (error) {
        if (codeOf(error) === undefined) throw error;
      }
    }
    return new Set(found);
  }
}

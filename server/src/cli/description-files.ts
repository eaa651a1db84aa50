/** Files of session descriptions on disk, as they come, change and go. */

import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { CannotDo, Stopped } from '../machine/cannot-do.ts';
import { codeOf, reasonOf } from '../machine/failures.ts';
import { wholeText } from '../machine/input.ts';
import type { DescriptionFile } from '../announce/announcer.ts';

const SUFFIX = '.sdp';
/** Bytes; a packet holds no more. */
const LARGEST = 65_536;

interface Known {
  /** Identifies the state of the file at the last look. */
  readonly stamp: string;
  /** Whether that state was read, or failed to be read. */
  readonly read: boolean;
  readonly taken: DescriptionFile | undefined;
}

export class DescriptionFiles {
  private readonly paths: readonly string[];
  private readonly known = new Map<string, Known>();
  private readonly report: (line: string) => void;
  private readonly signal: AbortSignal;

  /**
   * @param paths files, and folders whose *.sdp files are taken
   * @param signal ends a look at a disk that does not answer
   */
  constructor(paths: readonly string[], report: (line: string) => void, signal: AbortSignal) {
    this.paths = paths;
    this.report = report;
    this.signal = signal;
  }

  /**
   * The files that exist now; throws Stopped where it is ended. A file that cannot be read now keeps its last text.
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

  /** A changed file may not be complete yet: it is read once it is the same at two looks. */
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

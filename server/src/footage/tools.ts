/** The files and programs that exporting footage needs. A path comes from the machine or from the user. */

import type { FileNames } from '../recordings/file-names.ts';
import type { CandidateFile } from './candidates.ts';

export interface FoundFiles {
  readonly found: readonly CandidateFile[];
  /** Files named like the recording's whose time does not exist in the zone. */
  readonly skipped: readonly string[];
}

export interface FileState {
  /** Neither a folder, a device nor a pipe. */
  readonly isFile: boolean;
  /** Bytes. */
  readonly size: number;
  /** When it was last written to, in milliseconds since 1970. */
  readonly modified: number;
  /** Changes when another file gets the name, or the file is written to, even if `modified` stays the same. */
  readonly stamp: string;
}

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  /** The end of its standard error, some thousand characters. */
  readonly err: string;
}

/** Questions about paths, before anything is made. */
export interface Places {
  /** The kind of what has the name, links not followed; `undefined` where nothing has it. */
  kindOf(path: string): 'folder' | 'other' | undefined;
  /** Whether it is a folder, or a link to one. */
  isFolder(path: string): boolean;
  /** Whether a file or folder is another or is inside it, with all links followed. */
  isWithin(path: string, other: string): boolean;
  /** Whether two names are of one file. */
  isSame(path: string, other: string): boolean;
  folderOf(path: string): string;
  baseName(path: string): string;
  absolute(path: string): string;
}

/** All but `reasonOf` and `progress` throw the system's errors, which `reasonOf` puts into words. */
export interface FootageTools extends Places {
  readonly versions: { readonly plumbline: string; readonly ffmpeg: string };
  /** All files under the root that have a name of the recording. */
  find(root: string, names: FileNames): FoundFiles;
  /** The path of a file of the recordings, which is named from their root with forward slashes. */
  recorded(root: string, path: string): string;
  /** The path of a file in the work folder, where everything is made. */
  workFile(name: string): string;
  /** Milliseconds since 1970. */
  now(): number;
  stat(path: string): Promise<FileState>;
  /** The first `length` bytes, or fewer where the file is shorter. */
  head(path: string, length: number): Promise<Uint8Array>;
  copy(from: string, to: string): Promise<void>;
  write(path: string, text: string): Promise<void>;
  /** Returns once the bytes are on the disk. */
  sync(path: string): Promise<void>;
  /** SHA-256 (FIPS 180-4) in hexadecimal; `read` is called with the number of bytes of each part. */
  hash(path: string, read: (bytes: number) => void): Promise<string>;
  /** Runs a program of FFmpeg in the work folder; `line` takes each line of its output, which is then not kept. */
  run(program: 'ffmpeg' | 'ffprobe', words: readonly string[], line?: (line: string) => void): Promise<Ran>;
  /** Bytes that still fit beside a path. */
  freeBeside(path: string): number;
  /** Moves files of the work folder to their targets, the sidecar last. */
  save(files: readonly Finished[], sidecar: { readonly path: string; readonly text: string }): void;
  progress(text: string): void;
  /** The reason of a system error, as a clause; `undefined` for any other failure. */
  reasonOf(error: unknown): string | undefined;
}

export interface Finished {
  readonly file: string;
  readonly out: string;
}

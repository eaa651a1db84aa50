/** What getting footage out needs of the machine. A path is one that the machine gave, or that a person typed. */

import type { FileNames } from '../recordings/file-names.ts';
import type { Found } from './candidates.ts';

export interface FoundFiles {
  readonly found: readonly Found[];
  /** Files of the recording's shape whose time no clock of the zone ever showed. */
  readonly skipped: readonly string[];
}

export interface FileState {
  /** Neither a folder, a device nor a pipe. */
  readonly isFile: boolean;
  /** Bytes. */
  readonly size: number;
  /** When it was last written to, in milliseconds since 1970. */
  readonly modified: number;
  /** Another one once another file bears the name, or anything was written to it, whatever `modified` says. */
  readonly stamp: string;
}

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  /** Its last words, of some thousand characters. */
  readonly err: string;
}

/** Where things are, before anything is made. */
export interface Places {
  /** What bears the name itself, a link too; `undefined` where nothing does. */
  kindOf(path: string): 'folder' | 'other' | undefined;
  /** Whether it is a folder, or leads to one. */
  isFolder(path: string): boolean;
  /** Whether a file or folder is another or lies in it, with all links followed. */
  isWithin(path: string, other: string): boolean;
  /** Whether two names are of one file. */
  isSame(path: string, other: string): boolean;
  folderOf(path: string): string;
  baseName(path: string): string;
  absolute(path: string): string;
}

/** All but `reasonOf` and `progress` throw what the system refuses, which `reasonOf` puts in words. */
export interface FootageTools extends Places {
  readonly versions: { readonly plumbline: string; readonly ffmpeg: string };
  /** All files under the root that have a name of the recording. */
  find(root: string, names: FileNames): FoundFiles;
  /** The path of a file of the recordings, which is named from their root with forward slashes. */
  recorded(root: string, path: string): string;
  /** The path of a file in the work folder, where all is made until it is finished. */
  workFile(name: string): string;
  /** Milliseconds since 1970. */
  now(): number;
  stat(path: string): Promise<FileState>;
  /** So many bytes from the start, or fewer where there are no more. */
  head(path: string, length: number): Promise<Uint8Array>;
  copy(from: string, to: string): Promise<void>;
  write(path: string, text: string): Promise<void>;
  /** Returns once the bytes are on the disk, and not only on their way. */
  sync(path: string): Promise<void>;
  /** SHA-256 (FIPS 180-4) in hexadecimal; `read` is called with the number of bytes of each part. */
  hash(path: string, read: (bytes: number) => void): Promise<string>;
  /** Runs a program of FFmpeg in the work folder; `line` takes each line of its output, which is not kept then. */
  run(program: 'ffmpeg' | 'ffprobe', words: readonly string[], line?: (line: string) => void): Promise<Ran>;
  /** Bytes that still fit beside a path. */
  freeBeside(path: string): number;
  /** Gives files of the work folder their names, and the sidecar last. */
  save(files: readonly Finished[], sidecar: { readonly path: string; readonly text: string }): void;
  progress(text: string): void;
  /** Why the system refused, as a clause; `undefined` for a failure that is none of the system's. */
  reasonOf(error: unknown): string | undefined;
}

export interface Finished {
  readonly file: string;
  readonly out: string;
}

/** What is shown of a tree of folders to whom it is read for, one thing after the other. */

export interface Visitor {
  /** @param path from the root, with forward slashes and one at the end; empty for the root itself */
  enter(path: string): FolderVisitor;
  /** A folder cannot be read; `why` as a clause. */
  unreadable(path: string, why: string): void;
}

/** Between its calls for one folder there may be others for folders below it. */
export interface FolderVisitor {
  /** @param size in bytes @param modified milliseconds since 1970 */
  file(name: string, size: number, modified: number): void;
  /** Neither file nor folder, such as a link; or a file that cannot be asked for, since its name is no UTF-8. */
  other(name: string): void;
  /** All of it has been seen. @param emptied nothing is in it, and something has been */
  leave(emptied: boolean): void;
}

/** Several things as their number and two of them. */
export class Examples {
  count = 0;
  bytes = 0;
  first: string | undefined;
  last: string | undefined;

  add(path: string, bytes = 0): void {
    this.count++;
    this.bytes += bytes;
    if (this.first === undefined || path < this.first) this.first = path;
    if (this.last === undefined || path > this.last) this.last = path;
  }
}

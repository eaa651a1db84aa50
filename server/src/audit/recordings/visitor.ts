/** The visitor of a tree of folders, called for one thing after the other. */

export interface Visitor {
  /** @param path from the root, with forward slashes and one at the end; empty for the root itself */
  enter(path: string): FolderVisitor;
  /** Called for a folder that cannot be read; `why` is a clause. */
  unreadable(path: string, why: string): void;
}

/** Between its calls for one folder there may be others for folders below it. */
export interface FolderVisitor {
  /** @param size in bytes @param modified milliseconds since 1970 */
  file(name: string, size: number, modified: number): void;
  /** Called for a thing that is neither file nor folder, such as a link, and for a file whose name is no UTF-8. */
  other(name: string): void;
  /** Called at the end of the folder. @param emptied whether it is empty and once had something in it */
  leave(emptied: boolean): void;
}

/** The number of several things, and two of them as examples. */
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

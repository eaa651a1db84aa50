/** Finds the sites of the workspace and has each checked, open or not; open ones come first. */

import { type FileSource, MAX_UNOPENED, type OpenSite, type Sites } from './sites.ts';
import { LATE, PATIENCE, within } from './within.ts';
import type { Workspace } from './workspace.ts';

/** The most folders to search below one of the workspace, the nearest first: a home folder may have a million. */
const MAX_FOLDERS = 10_000;

/** Folders that programs keep for themselves. */
const NOT_LOOKED_INTO = /\/(?:\.[^/]*|node_modules)$/;

export interface WorkspaceParts {
  readonly source: FileSource;
  readonly sites: Sites;
  readonly workspace: Workspace;
  readonly checkSoon: (site: OpenSite) => void;
  /** Resolves when nothing is being checked. */
  readonly idle: () => Promise<void>;
  readonly log: (message: string) => void;
  /** How long it waits for the contents of a folder before it goes on with the next, ms. */
  readonly patience?: number;
}

export class WorkspaceSites {
  private readonly parts: WorkspaceParts;
  private last: Promise<void> = Promise.resolve();

  constructor(parts: WorkspaceParts) {
    this.parts = parts;
  }

  /** Has all sites in and below a folder checked, one folder after the other, as long as it is in the workspace. */
  look(folder: string): void {
    this.goOn({ top: folder, folders: [folder], next: 0 });
  }

  private goOn(search: Search): void {
    this.last = this.last.then(() => this.lookInto(search)).catch((error: unknown) => this.parts.log(String(error)));
  }

  private async lookInto(search: Search): Promise<void> {
    const { source, workspace, idle, log, patience = PATIENCE } = this.parts;
    const { top, folders } = search;
    while (search.next < folders.length && search.next < MAX_FOLDERS) {
      const folder = folders[search.next++] ?? top;
      if (!workspace.holds(folder)) return;
      await idle();
      const asked = Promise.all([source.list(folder), source.folders(folder)]);
      const found = await within(asked, patience);
      if (found === LATE) this.takeLate(search, folder, asked);
      else if (!(await this.take(search, folder, found))) {
        log(
          `${top}: the workspace has more than ${MAX_UNOPENED} sites, and of the others only open files are checked.`,
        );
        return;
      }
    }
    if (folders.length > MAX_FOLDERS)
      log(`${top} has more than ${MAX_FOLDERS} folders: in the others only sites with an open file are shown.`);
  }

  /** Takes the contents of a folder: its site files, and the folders in it. @returns whether there was room for it */
  private async take({ folders }: Search, folder: string, [files, below]: Contents): Promise<boolean> {
    const { sites, checkSoon } = this.parts;
    for (const inner of below) if (!NOT_LOOKED_INTO.test(inner)) folders.push(inner);
    if (files.length === 0 || sites.in(folder) !== undefined) return true;
    if (sites.isFull) return false;
    const site = await sites.kept(folder);
    if (site !== undefined) checkSoon(site);
    return true;
  }

  /** Takes the contents of a folder once they come, and goes on below it. */
  private takeLate(search: Search, folder: string, asked: Promise<Contents>): void {
    asked
      .then((found) => this.take(search, folder, found))
      .then(() => this.goOn(search))
      .catch((error: unknown) => this.parts.log(String(error)));
  }
}

type Contents = readonly [files: readonly string[], folders: readonly string[]];

/** A search below a folder, the nearest folders first. */
interface Search {
  readonly top: string;
  readonly folders: string[];
  /** The next of the folders to look into. */
  next: number;
}

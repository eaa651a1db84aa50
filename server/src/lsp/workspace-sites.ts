/** Finds the sites of the workspace and has each checked, open or not; open ones come first. */

import type { FileSource, OpenSite, Sites } from './sites.ts';
import type { Workspace } from './workspace.ts';

/** The most folders to search below one of the workspace, the nearest first: a home folder may have a million. */
const MAX_FOLDERS = 10_000;

/** The most sites that are shown without an open file. */
const MAX_SITES = 200;

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
}

export class WorkspaceSites {
  private readonly parts: WorkspaceParts;
  private last: Promise<void> = Promise.resolve();

  constructor(parts: WorkspaceParts) {
    this.parts = parts;
  }

  /** Has all sites in and below a folder checked, one folder after the other, as long as it is in the workspace. */
  look(folder: string): void {
    this.last = this.last.then(() => this.lookInto(folder)).catch((error: unknown) => this.parts.log(String(error)));
  }

  private async lookInto(top: string): Promise<void> {
    const { source, sites, workspace, checkSoon, idle, log } = this.parts;
    const folders = [top];
    let found = 0;
    for (let next = 0; next < folders.length && next < MAX_FOLDERS; next++) {
      const folder = folders[next] ?? top;
      if (!workspace.holds(folder)) return;
      await idle();
      const [files, below] = await Promise.all([source.list(folder), source.folders(folder)]);
      for (const inner of below) if (!NOT_LOOKED_INTO.test(inner)) folders.push(inner);
      if (files.length === 0 || sites.in(folder) !== undefined) continue;
      if (++found > MAX_SITES) {
        log(`${top} has more than ${MAX_SITES} sites: of the others is shown only what has an open file.`);
        return;
      }
      const site = await sites.kept(folder);
      if (site !== undefined) checkSoon(site);
    }
    if (folders.length > MAX_FOLDERS)
      log(`${top} has more than ${MAX_FOLDERS} folders: in the others only sites with an open file are shown.`);
  }
}

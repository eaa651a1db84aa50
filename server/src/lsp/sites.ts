/** The sites that have a file open: a folder each, kept up to date with the editor and the disk. */

import type { Checked } from '../lint/check.ts';
import { check } from '../check.ts';
import { SiteFolder } from '../site/folder.ts';

/** Where the files of a folder that are not open come from. */
export interface FileSource {
  /** The `*.site.yaml` files of a folder. */
  list(folder: string): Promise<readonly string[]>;
  /** The text of a file, or why it cannot be read; `undefined` where there is no such file. */
  read(uri: string): Promise<{ readonly text: string } | { readonly unreadable: string } | undefined>;
}

export class OpenSite {
  readonly folder: string;
  readonly texts = new SiteFolder();
  readonly open = new Set<string>();
  /** Resolves when the files of the folder that are not open have been read. */
  readonly loaded: Promise<void>;
  private readonly changed = new Map<string, () => string>();
  private checked: Checked | undefined;
  /** What was computed last, before the edits since; its rules may have been left half-way. */
  private previous: Checked | undefined;

  constructor(folder: string, load: (site: OpenSite) => Promise<void>) {
    this.folder = folder;
    this.loaded = load(this);
  }

  set(uri: string, text: string): void {
    this.change(uri, () => text);
  }

  /** An edit; its text is taken when the site is next asked for, so that of several edits only the last is read. */
  change(uri: string, text: () => string): void {
    this.changed.set(uri, text);
    this.checked = undefined;
  }

  setUnreadable(uri: string, reason: string): void {
    this.changed.delete(uri);
    this.texts.setUnreadable(uri, reason);
    this.checked = undefined;
  }

  delete(uri: string): void {
    this.changed.delete(uri);
    this.texts.delete(uri);
    this.checked = undefined;
  }

  has(uri: string): boolean {
    return this.changed.has(uri) || this.texts.get(uri) !== undefined;
  }

  /** The site as it stands now; computed once for each change, and its rules run when what they find is asked for. */
  now(): Checked {
    for (const [uri, text] of this.changed) this.texts.set(uri, text());
    this.changed.clear();
    if (this.checked === undefined) this.checked = this.previous = check(this.texts, this.previous);
    return this.checked;
  }
}

export class Sites {
  private readonly sites = new Map<string, OpenSite>();
  private readonly source: FileSource;

  constructor(source: FileSource) {
    this.source = source;
  }

  all(): Iterable<OpenSite> {
    return this.sites.values();
  }

  of(uri: string): OpenSite | undefined {
    return this.sites.get(folderOf(uri));
  }

  /** The site of a folder as it stands now: of files that are open, or else read for this once. */
  async look(folder: string): Promise<Checked> {
    const site = this.sites.get(folder) ?? new OpenSite(folder, (opening) => this.load(opening));
    await site.loaded;
    return site.now();
  }

  /** The site of a folder, where a file of it is open. */
  in(folder: string): OpenSite | undefined {
    return this.sites.get(folder);
  }

  opened(uri: string, text: string): OpenSite {
    const folder = folderOf(uri);
    let site = this.sites.get(folder);
    if (site === undefined) {
      site = new OpenSite(folder, (opening) => this.load(opening));
      this.sites.set(folder, site);
    }
    site.open.add(uri);
    site.set(uri, text);
    return site;
  }

  /** The file is the disk's again. A site without an open file is let go; its files are returned. */
  async closed(uri: string): Promise<{ readonly site: OpenSite; readonly gone: boolean } | undefined> {
    const site = this.of(uri);
    if (site === undefined) return undefined;
    site.open.delete(uri);
    if (site.open.size === 0) {
      this.sites.delete(site.folder);
      return { site, gone: true };
    }
    await this.readFromDisk(site, uri);
    return { site, gone: false };
  }

  /** A file was made, changed or deleted on disk. */
  async changedOnDisk(uri: string, deleted: boolean): Promise<OpenSite | undefined> {
    const site = this.of(uri);
    if (site === undefined || site.open.has(uri)) return undefined;
    if (deleted) site.delete(uri);
    else await this.readFromDisk(site, uri);
    return site;
  }

  private async load(site: OpenSite): Promise<void> {
    const files = await this.source.list(site.folder);
    await Promise.all(files.map((uri) => this.readFromDisk(site, uri)));
  }

  private async readFromDisk(site: OpenSite, uri: string): Promise<void> {
    if (site.open.has(uri)) return;
    const read = await this.source.read(uri);
    // It may have been opened in the meantime.
    if (site.open.has(uri)) return;
    if (read === undefined) site.delete(uri);
    else if ('text' in read) site.set(uri, read.text);
    else site.setUnreadable(uri, read.unreadable);
  }
}

export function folderOf(uri: string): string {
  return uri.slice(0, uri.lastIndexOf('/'));
}

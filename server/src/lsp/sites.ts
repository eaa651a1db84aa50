/** The sites that are open: a folder each, kept up to date with the editor and the disk. */

import type { Checked } from '../lint/check.ts';
import { check } from '../check.ts';
import { SiteFolder, SUFFIX } from '../site/folder.ts';

/** The source of files that are not open in the editor. */
export interface FileSource {
  /** The `*.site.yaml` files of a folder. */
  list(folder: string): Promise<readonly string[]>;
  /** The folders in a folder, without those that are links. */
  folders(folder: string): Promise<readonly string[]>;
  /** The text of a file, or why it cannot be read; `undefined` where there is no such file. */
  read(uri: string): Promise<{ readonly text: string } | { readonly unreadable: string } | undefined>;
}

export class OpenSite {
  readonly folder: string;
  readonly texts = new SiteFolder();
  readonly open = new Set<string>();
  /** Resolves when the files of the folder that are not open have been read. */
  readonly loaded: Promise<void>;
  /** The last reading that was begun, for each file that is being read: only that one counts. */
  readonly reading = new Map<string, symbol>();
  private readonly changed = new Map<string, () => string>();
  private checked: Checked | undefined;
  /** The last check, from before the edits since; its rules may not all have run. */
  private previous: Checked | undefined;

  constructor(folder: string, load: (site: OpenSite) => Promise<void>) {
    this.folder = folder;
    this.loaded = load(this);
  }

  set(uri: string, text: string): void {
    this.change(uri, () => text);
  }

  /** Notes an edit; its text is read when the site is next asked for, so that only the last of several is read. */
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

  /** Addresses of its files. */
  get uris(): ReadonlySet<string> {
    return new Set([...this.texts.files.map(({ uri }) => uri), ...this.changed.keys()]);
  }

  /** The site as it is now; computed once for each change, and its rules run when their findings are asked for. */
  now(): Checked {
    for (const [uri, text] of this.changed) this.texts.set(uri, text());
    this.changed.clear();
    if (this.checked === undefined) this.checked = this.previous = check(this.texts, this.previous);
    return this.checked;
  }

  /** Whether nothing has changed since that check. */
  isAt(checked: Checked): boolean {
    return this.checked === checked;
  }
}

/** Decides which sites without an open file are kept. */
export interface Keeping {
  /** Whether the site of a folder is kept. */
  keeps(folder: string): boolean;
  /** Called when a site is released, to forget all that is kept for it. */
  forget(site: OpenSite): void;
}

export class Sites {
  private readonly sites = new Map<string, OpenSite>();
  private readonly source: FileSource;
  private readonly keeping: Keeping;

  constructor(source: FileSource, keeping: Keeping) {
    this.source = source;
    this.keeping = keeping;
  }

  all(): Iterable<OpenSite> {
    return this.sites.values();
  }

  of(uri: string): OpenSite | undefined {
    return this.sites.get(folderOf(uri));
  }

  /** The site of a folder as it is now; where it is not open, its files are read for this call only. */
  async look(folder: string): Promise<Checked> {
    const site = this.sites.get(folder) ?? new OpenSite(folder, (opening) => this.load(opening));
    await site.loaded;
    return site.now();
  }

  /** The site of a folder, where it is open. */
  in(folder: string): OpenSite | undefined {
    return this.sites.get(folder);
  }

  /** Whether the site has not been released. */
  has(site: OpenSite): boolean {
    return this.sites.get(site.folder) === site;
  }

  opened(uri: string, text: string): OpenSite {
    const site = this.hold(folderOf(uri));
    site.open.add(uri);
    site.set(uri, text);
    return site;
  }

  /**
   * The site of a folder on disk, without an open file; `undefined` where it is not to be kept, or is empty.
   */
  async kept(folder: string): Promise<OpenSite | undefined> {
    if (!this.keeping.keeps(folder)) return undefined;
    const site = this.hold(folder);
    await site.loaded;
    this.letGoIfUnused(site);
    this.letGoIfEmpty(site);
    return this.has(site) ? site : undefined;
  }

  private hold(folder: string): OpenSite {
    let site = this.sites.get(folder);
    if (site === undefined) {
      site = new OpenSite(folder, (opening) => this.load(opening));
      this.sites.set(folder, site);
    }
    return site;
  }

  /** A document was closed: its file is read from the disk again. */
  async closed(uri: string): Promise<void> {
    const site = this.of(uri);
    if (site?.open.delete(uri) !== true) return;
    this.letGoIfUnused(site);
    if (!this.has(site)) return;
    await Promise.all([site.loaded, this.readFromDisk(site, uri)]);
    this.letGoIfEmpty(site);
  }

  /** Takes a change on disk, of a site file or of a folder with sites below it. @returns the sites that it affects */
  async changedOnDisk(uri: string): Promise<readonly OpenSite[]> {
    const own = uri.endsWith(SUFFIX) ? (this.of(uri) ?? (await this.kept(folderOf(uri)))) : undefined;
    const below = [...this.sites.values()].filter(({ folder }) => isAtOrBelow(folder, uri));
    await Promise.all([
      ...(own === undefined ? [] : [own.loaded, this.readFromDisk(own, uri)]),
      ...below.map((site) => this.load(site)),
    ]);
    const changed = own === undefined ? below : [own, ...below];
    for (const site of changed) this.letGoIfEmpty(site);
    return changed;
  }

  /** Releases the sites that are not kept any more. */
  tidy(): void {
    for (const site of this.sites.values()) this.letGoIfUnused(site);
  }

  private letGoIfUnused(site: OpenSite): void {
    if (site.open.size === 0 && !this.keeping.keeps(site.folder)) this.letGo(site);
  }

  private letGoIfEmpty(site: OpenSite): void {
    if (site.open.size === 0 && site.uris.size === 0) this.letGo(site);
  }

  private letGo(site: OpenSite): void {
    if (!this.has(site)) return;
    this.sites.delete(site.folder);
    this.keeping.forget(site);
  }

  /** Reads all files of a site that are not open, also those that were there before. */
  private async load(site: OpenSite): Promise<void> {
    const files = new Set([...(await this.source.list(site.folder)), ...site.uris]);
    await Promise.all([...files].map((uri) => this.readFromDisk(site, uri)));
  }

  private async readFromDisk(site: OpenSite, uri: string): Promise<void> {
    if (site.open.has(uri)) return;
    const own = Symbol(uri);
    site.reading.set(uri, own);
    const read = await this.source.read(uri);
    // The file may have been opened, or read again, in the meantime.
    if (site.reading.get(uri) !== own) return;
    site.reading.delete(uri);
    if (site.open.has(uri)) return;
    if (read === undefined) site.delete(uri);
    else if ('text' in read) site.set(uri, read.text);
    else site.setUnreadable(uri, read.unreadable);
  }
}

export function folderOf(uri: string): string {
  return uri.slice(0, uri.lastIndexOf('/'));
}

export function isAtOrBelow(folder: string, above: string): boolean {
  return folder === above || folder.startsWith(`${above}/`);
}

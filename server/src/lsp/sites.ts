/** The sites that are open: a folder each, kept up to date with the editor and the disk. */

import type { Checked } from '../lint/check.ts';
import { check } from '../check.ts';
import { grouped } from '../grouped.ts';
import { SiteFolder, SUFFIX } from '../site/folder.ts';
import { LATE, PATIENCE, eachOf, within } from './within.ts';

/** The most sites that are kept without an open file. */
export const MAX_UNOPENED = 200;

/** Files or folders that are read at the same time after changes on disk, of which there may be a hundred thousand. */
const AT_ONCE = 64;

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
  /** Resolves when the files of the folder that are not open have been read, or have been waited for long enough. */
  readonly loaded: Promise<void>;
  /** Whether `loaded` waits no more; files may still come in. */
  isWaitOver = false;
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
  /** Called when a file of a site comes in that nobody waits for any more. */
  late(site: OpenSite): void;
  /** Called with why the files of a site cannot be read, where nobody waits for them any more. */
  failed(error: unknown): void;
}

export class Sites {
  private readonly sites = new Map<string, OpenSite>();
  private readonly source: FileSource;
  private readonly keeping: Keeping;
  private readonly patience: number;

  /** @param patience ms */
  constructor(source: FileSource, keeping: Keeping, patience = PATIENCE) {
    this.source = source;
    this.keeping = keeping;
    this.patience = patience;
  }

  all(): Iterable<OpenSite> {
    return this.sites.values();
  }

  of(uri: string): OpenSite | undefined {
    return this.sites.get(folderOf(uri));
  }

  /** The site of a folder as it is now; where it is not open, its files are read for this call only. */
  async look(folder: string): Promise<Checked> {
    const site = this.sites.get(folder) ?? new OpenSite(folder, (opening) => this.begin(opening));
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

  /** Whether no more sites are kept without an open file. */
  get isFull(): boolean {
    let unopened = 0;
    for (const { open } of this.sites.values()) if (open.size === 0) unopened++;
    return unopened >= MAX_UNOPENED;
  }

  /**
   * The site of a folder on disk, without an open file; `undefined` where it is not to be kept, is empty, or is one too
   * many.
   */
  async kept(folder: string): Promise<OpenSite | undefined> {
    if (!this.keeping.keeps(folder) || (!this.sites.has(folder) && this.isFull)) return undefined;
    const site = this.hold(folder);
    await site.loaded;
    this.letGoIfUnused(site);
    this.letGoIfEmpty(site);
    return this.has(site) ? site : undefined;
  }

  private hold(folder: string): OpenSite {
    let site = this.sites.get(folder);
    if (site === undefined) {
      site = new OpenSite(folder, (opening) => this.begin(opening));
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

  /**
   * Takes changes on disk, of site files or of folders with sites below them.
   *
   * @param changed takes each site that they affect, once it has been read
   */
  async changedOnDisk(changes: Iterable<string>, changed: (site: OpenSite) => void): Promise<void> {
    const uris = new Set(changes);
    const below = [...this.sites.values()].filter(({ folder }) => isAtOrBelowOne(folder, uris));
    const files = grouped(
      [...uris].filter((uri) => uri.endsWith(SUFFIX)),
      folderOf,
    );
    const read = async (site: OpenSite, reading: () => Promise<void>): Promise<void> => {
      await reading();
      this.letGoIfEmpty(site);
      changed(site);
    };
    await Promise.all([
      ...below.map((site) => read(site, () => this.load(site))),
      eachOf(files, AT_ONCE, async ([folder, own]) => {
        const site = this.sites.get(folder) ?? (await this.kept(folder));
        if (site === undefined) return;
        await site.loaded;
        await read(site, () => eachOf(own, AT_ONCE, (uri) => this.readFromDisk(site, uri)));
      }),
    ]);
  }

  /** Releases the sites that are not kept any more. */
  tidy(): void {
    for (const site of this.sites.values()) this.letGoIfUnused(site);
  }

  private letGoIfUnused(site: OpenSite): void {
    if (site.open.size === 0 && !this.keeping.keeps(site.folder)) this.letGo(site);
  }

  private letGoIfEmpty(site: OpenSite): void {
    if (site.open.size === 0 && site.uris.size === 0 && site.reading.size === 0) this.letGo(site);
  }

  private letGo(site: OpenSite): void {
    if (!this.has(site)) return;
    this.sites.delete(site.folder);
    this.keeping.forget(site);
  }

  /** Loads a site, and waits for it no longer than its patience. */
  private async begin(site: OpenSite): Promise<void> {
    const loading = this.load(site);
    try {
      if ((await within(loading, this.patience)) === LATE)
        loading.catch((error: unknown) => this.keeping.failed(error));
    } finally {
      site.isWaitOver = true;
    }
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
    if (site.isWaitOver) this.keeping.late(site);
  }
}

export function folderOf(uri: string): string {
  return uri.slice(0, uri.lastIndexOf('/'));
}

export function isAtOrBelow(folder: string, above: string): boolean {
  return folder === above || folder.startsWith(`${above}/`);
}

/** Whether a folder is one of these, or below one of them. */
function isAtOrBelowOne(folder: string, above: ReadonlySet<string>): boolean {
  for (let end = folder.length; end > 0; end = folder.lastIndexOf('/', end - 1))
    if (above.has(folder.slice(0, end))) return true;
  return false;
}

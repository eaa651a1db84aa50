/** Follows typing, and holds findings back in an item until the cursor leaves it or nobody types for a while. */

import { type Copied, copiedAfter } from '../lint/copied.ts';
import { type TextCursor, type Findings, isElsewhere, isLowest, diagnosticsToShow } from '../lint/held-back.ts';
import type { Diagnostic } from '../lint/rule.ts';
import type { SiteText } from '../site/folder.ts';
import type { OpenSite } from './sites.ts';

/** All findings are shown so long after the last edit, ms. */
const PAUSE = 1000;

/** A site in which somebody types. */
interface Typed {
  cursor: TextCursor;
  /** Where the cursor was when findings were last shown. */
  last: TextCursor | undefined;
  /** The files as they were before the typing. */
  readonly before: readonly SiteText[];
  isDownward: boolean;
  copied: Copied | undefined;
  timer: ReturnType<typeof setTimeout>;
}

export class Typing {
  private readonly typed = new Map<OpenSite, Typed>();
  private readonly shown = new Map<OpenSite, Findings>();
  private readonly checkSoon: (site: OpenSite) => void;

  constructor(checkSoon: (site: OpenSite) => void) {
    this.checkSoon = checkSoon;
  }

  /** Notes an edit that ends at the cursor. */
  edited(site: OpenSite, cursor: TextCursor): void {
    const known = this.typed.get(site);
    clearTimeout(known?.timer);
    const before = known?.before ?? this.shown.get(site)?.files ?? [];
    const timer = setTimeout(() => this.end(site), PAUSE);
    const { last, isDownward, copied } = known ?? { last: undefined, isDownward: true, copied: undefined };
    this.typed.set(site, { cursor, last, before, isDownward, copied, timer });
  }

  /** Takes the cursor from the client: where it has left the typed item, all findings are shown. */
  moved(site: OpenSite, cursor: TextCursor): void {
    const typed = this.typed.get(site);
    if (typed === undefined) return;
    typed.cursor = cursor;
    if (isElsewhere(site.now().files, typed.before, cursor)) this.end(site);
    else this.checkSoon(site);
  }

  /** The findings that are shown now. */
  diagnosticsToShow(site: OpenSite, now: Findings): readonly Diagnostic[] {
    const typed = this.typed.get(site);
    if (typed?.isDownward === true) typed.isDownward = isLowest(now.files, typed.before, typed.cursor);
    const shown = this.shown.get(site) ?? { files: [], diagnostics: [] };
    if (typed !== undefined) typed.copied = copiedAfter(typed.copied, shown.files, now.files, typed.cursor);
    const diagnostics = typed === undefined ? now.diagnostics : diagnosticsToShow({ shown, ...typed }, now);
    this.shown.set(site, { files: now.files, diagnostics });
    if (typed !== undefined) typed.last = typed.cursor;
    return diagnostics;
  }

  /** The findings that were last shown. */
  last(site: OpenSite): Findings | undefined {
    return this.shown.get(site);
  }

  forget(site: OpenSite): void {
    clearTimeout(this.typed.get(site)?.timer);
    this.typed.delete(site);
    this.shown.delete(site);
  }

  private end(site: OpenSite): void {
    clearTimeout(this.typed.get(site)?.timer);
    this.typed.delete(site);
    this.checkSoon(site);
  }
}

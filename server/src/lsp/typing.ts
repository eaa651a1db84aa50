/** Who types where: holds back what is only not there yet, until the item is left or nobody has typed for a while. */

import { type Cursor, type Findings, isElsewhere, isLowest, told } from '../lint/held-back.ts';
import type { Diagnostic } from '../lint/rule.ts';
import type { SiteText } from '../site/folder.ts';
import type { OpenSite } from './sites.ts';

/** So long after the last edit all is told, ms. */
const PAUSE = 1000;

/** A site in which somebody types. */
interface Typed {
  cursor: Cursor;
  /** Where it was when the site was shown last. */
  last: Cursor | undefined;
  /** As it was before. */
  readonly before: readonly SiteText[];
  isDownward: boolean;
  timer: ReturnType<typeof setTimeout>;
}

export class Typing {
  private readonly typed = new Map<OpenSite, Typed>();
  private readonly shown = new Map<OpenSite, Findings>();
  private readonly checkSoon: (site: OpenSite) => void;

  constructor(checkSoon: (site: OpenSite) => void) {
    this.checkSoon = checkSoon;
  }

  /** An edit ends at the cursor. */
  edited(site: OpenSite, cursor: Cursor): void {
    const known = this.typed.get(site);
    clearTimeout(known?.timer);
    const before = known?.before ?? this.shown.get(site)?.files ?? [];
    const timer = setTimeout(() => this.end(site), PAUSE);
    this.typed.set(site, { cursor, last: known?.last, before, isDownward: known?.isDownward ?? true, timer });
  }

  /** A client says where the cursor is: for what is typed, and whether it has left that. */
  moved(site: OpenSite, cursor: Cursor): void {
    const typed = this.typed.get(site);
    if (typed === undefined) return;
    typed.cursor = cursor;
    if (isElsewhere(site.now().files, typed.before, cursor)) this.end(site);
    else this.checkSoon(site);
  }

  /** What of the findings is shown now. */
  told(site: OpenSite, now: Findings): readonly Diagnostic[] {
    const typed = this.typed.get(site);
    if (typed?.isDownward === true) typed.isDownward = isLowest(now.files, typed.before, typed.cursor);
    const diagnostics =
      typed === undefined
        ? now.diagnostics
        : told({ shown: this.shown.get(site) ?? { files: [], diagnostics: [] }, ...typed }, now);
    this.shown.set(site, { files: now.files, diagnostics });
    if (typed !== undefined) typed.last = typed.cursor;
    return diagnostics;
  }

  /** What was shown last. */
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

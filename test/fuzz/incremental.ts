/** Compares a site that is updated by edits with the same site read from scratch. */

import assert from 'node:assert/strict';
import { hover } from '../../server/src/features/hover/hover.ts';
import { reportOf } from '../../server/src/report/report.ts';
import type { Checked } from '../../server/src/lint/check.ts';
import { check } from '../../server/src/check.ts';
import { SiteFolder, spanOf } from '../../server/src/site/folder.ts';
import { type Place, fileOf } from '../../server/src/site/item.ts';
import { type Texts, folderOf } from '../site.ts';
import { deepFreeze } from '../freeze.ts';
import { Random } from './random.ts';

const HOVERS = 3;

/** A site that is updated from its state before the edit. */
export class KeptSite {
  readonly folder = new SiteFolder();
  private checked: Checked | undefined;

  /** Takes the texts as they are now: only those that changed are set. */
  turnTo(texts: Texts): Checked {
    for (const { uri } of this.folder.files) if (texts[uri] === undefined) this.folder.delete(uri);
    for (const [uri, text] of Object.entries(texts)) this.folder.set(uri, text);
    this.checked = check(this.folder, this.checked);
    // A later change in place throws.
    deepFreeze([this.checked.plan, this.checked.files]);
    return this.checked;
  }
}

/**
 * Throws where an edit has left a part of the old site. `seed` selects the parts that are compared in detail; for one
 * seed in four another edit comes before all rules have run.
 */
export function compare(kept: KeptSite, texts: Texts, seed: number): void {
  const now = kept.turnTo(texts);
  if (seed % 4 === 3) {
    let left = seed % 61;
    now.proceed(() => left-- <= 0);
    return;
  }
  const afresh = check(folderOf(texts));
  mustEqual(told(now), told(afresh));
  deepFreeze(now.diagnostics);
  mustEqual(reportOf(now.plan), reportOf(afresh.plan));
  const random = new Random(seed);
  for (let left = HOVERS; left > 0; left--) {
    const file = random.below(now.files.length);
    const offset = random.below((now.files[file]?.text.length ?? 0) + 1);
    mustEqual(hoverIn(now, file, offset), hoverIn(afresh, file, offset));
  }
}

/** Compares as text, which is fastest; where it differs, as data, which shows where. */
function mustEqual(kept: unknown, afresh: unknown): void {
  const [one, two] = [JSON.stringify(kept) ?? '', JSON.stringify(afresh) ?? ''];
  if (one !== two) assert.deepEqual(JSON.parse(one), JSON.parse(two));
}

/** All findings of a site with their places and fixes. */
function told(checked: Checked): unknown {
  return checked.diagnostics.map(({ at, rule, severity, message, acceptAt, related = [], fixes }) => ({
    rule: rule.id,
    severity,
    message,
    acceptAt,
    at: placed(checked, at),
    related: related.map((other) => ({ message: other.message, at: placed(checked, other.at) })),
    fixes: (fixes?.() ?? []).map(({ title, safe, edits }) => ({
      title,
      safe,
      edits: edits.map((edit) => ({ text: edit.text, at: placed(checked, edit.at) })),
    })),
  }));
}

function placed({ files }: Checked, place: Place): string {
  const { uri } = fileOf(place);
  const file = files.find((candidate) => candidate.uri === uri);
  assert.ok(file !== undefined, `a place in ${uri}, which is not of the site`);
  const { start, end } = spanOf(file, place);
  return `${uri} ${start}-${end}`;
}

function hoverIn(checked: Checked, index: number, offset: number): unknown {
  const file = checked.files[index];
  const found = file === undefined ? undefined : hover(checked, file, offset);
  return found === undefined ? undefined : { markdown: found.markdown, at: placed(checked, found.at) };
}

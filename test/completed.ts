/** The findings that offers of completion add to a site, when taken with their defaults. */

import { type Completion, complete } from '../server/src/features/completion/completion.ts';
import type { Offer } from '../server/src/features/completion/offer.ts';
import { check } from '../server/src/check.ts';
import type { Checked } from '../server/src/lint/check.ts';
import type { Diagnostic } from '../server/src/lint/rule.ts';
import { SiteFolder, type SiteText, spanOf } from '../server/src/site/folder.ts';
import { fileOf } from '../server/src/site/item.ts';
import { SECTION_NAMES } from '../server/src/site/shape.ts';
import { type Taken, taken } from './taken.ts';
import type { Texts } from './site.ts';

/**
 * Whether there is room for what is put in is for the plan to tell: a stream more, a camera more may be one too many,
 * and that is no fault of how it is written.
 */
const ROOM = [
  'link-load',
  'airtime',
  'internet-load',
  'volume-fill',
  'write-rate',
  'poe-budget',
  'aggregation-load',
  'mux-rate-too-low',
  'port-speed-mismatch',
  'cable-speed',
];

/** Rules about a network's fitness for groups, which report at a VLAN or switch once the first group is sent. */
const NOT_THERE_YET = ['no-querier', 'flooding'];

/** Rules about texts that are not of the language. */
export const LANGUAGE = [
  'yaml-syntax',
  'duplicate-key',
  'duplicate-name',
  'unknown-key',
  'unknown-name',
  'unknown-rule',
  'key-not-of-kind',
  'wrong-type',
  'value-not-allowed',
  'malformed-value',
  'out-of-range',
  'quantity',
  'repeated-value',
];

/** A site that is edited and checked again and again. */
export class Edited {
  private readonly folder = new SiteFolder();
  private checked: Checked;

  constructor(texts: Texts) {
    for (const [uri, text] of Object.entries(texts)) this.folder.set(uri, text);
    this.checked = check(this.folder);
  }

  with(uri: string, text: string): Checked {
    this.folder.set(uri, text);
    this.checked = check(this.folder, this.checked);
    return this.checked;
  }

  /** The offers at an offset of a text, which becomes the site's text. */
  offered(uri: string, text: string, offset: number): { file: SiteText; found: Completion } | undefined {
    const checked = this.with(uri, text);
    const file = checked.files.find((candidate) => candidate.uri === uri);
    const found = file === undefined ? undefined : complete(checked, file, offset, { schemaFeatures: true });
    return file === undefined || found === undefined ? undefined : { file, found };
  }

  get diagnostics(): readonly Diagnostic[] {
    return this.checked.diagnostics;
  }

  /** New findings of a text since `before`, without those about values still to be typed. */
  added(uri: string, { text, blanks }: Taken, before: readonly Diagnostic[]): Diagnostic[] {
    const { diagnostics, files } = this.with(uri, text);
    const at = (diagnostic: Diagnostic): { own: boolean; start: number; end: number } => {
      const file = files.find((candidate) => candidate.uri === fileOf(diagnostic.at).uri);
      return { own: file?.uri === uri, ...(file === undefined ? { start: 0, end: 0 } : spanOf(file, diagnostic.at)) };
    };
    // The rate is that of the carried stream.
    const lacksRate = blanks.some((blank) => /(?:carries|service): ?$/.test(text.slice(0, blank)));
    const isBlank = (diagnostic: Diagnostic): boolean => {
      if (diagnostic.rule.id === 'rate-missing' && lacksRate) return true;
      const { own, start, end } = at(diagnostic);
      return own && blanks.some((blank) => start <= blank + 1 && blank <= end + 2);
    };
    return diagnostics.filter(
      (diagnostic) =>
        (diagnostic.severity === 'error' || diagnostic.severity === 'warning') &&
        !ROOM.includes(diagnostic.rule.id) &&
        !NOT_THERE_YET.includes(diagnostic.rule.id) &&
        !before.some((other) => isAlike(other, diagnostic)) &&
        !isBlank(diagnostic),
    );
  }

  take(
    uri: string,
    offered: { file: SiteText; found: Completion },
    offer: Offer,
    before: readonly Diagnostic[],
  ): { taken: Taken; added: Diagnostic[] } {
    const put = taken(offered.file, offered.found, offer);
    return { taken: put, added: this.added(uri, put, before) };
  }
}

/** A finding that an offer adds. */
export interface Told {
  readonly place: string;
  readonly offer: Offer;
  readonly first: boolean;
  readonly text: string;
  readonly diagnostic: Diagnostic;
}

/** The findings that ready-made items add to a site, each in a file of its own below the key of its section. */
export function addedByReadyMade(
  texts: Texts,
  sections: readonly string[] = SECTION_NAMES,
): { tried: number; told: Told[] } {
  const told: Told[] = [];
  let tried = 0;
  const uri = 'new.site.yaml';
  const site = new Edited(texts);
  const original = site.diagnostics;
  for (const section of sections) {
    const text = `${section}:\n  `;
    const there = site.offered(uri, text, text.length);
    const before = [...original, ...site.diagnostics];
    for (const offer of there?.found.offers.filter(({ kind }) => kind === 'snippet') ?? []) {
      if (there === undefined) continue;
      const put = taken(there.file, there.found, offer);
      for (const whole of new Set([put, withLength(put)])) {
        tried++;
        for (const diagnostic of site.added(uri, whole, before))
          told.push({ place: section, offer, first: true, text: whole.text, diagnostic });
      }
    }
  }
  return { tried, told };
}

/** The text with the length of a cable typed, which only a person can measure. */
function withLength(put: Taken): Taken {
  const at = put.text.lastIndexOf('length: ') + 'length: '.length;
  if (!put.blanks.includes(at)) return put;
  const by = '12 m';
  const text = put.text.slice(0, at) + by + put.text.slice(at);
  const blanks = put.blanks.filter((blank) => blank !== at).map((blank) => (blank > at ? blank + by.length : blank));
  return { text, span: { start: put.span.start, end: put.span.end + by.length }, blanks };
}

/**
 * What offers add at places of a text where something is missing: what stands there is taken out first, unless it is a
 * key with its colon. Words and amounts say what the equipment is, and names further down the list are for whoever
 * knows better: those must be right by the language alone. What comes first must add no error at all, nor a warning where `findings` says so.
 */
export function addedAtPlaces(
  texts: Texts,
  offsetsIn: (text: string) => readonly number[],
  most = 30,
  findings: 'errors' | 'warnings too' = 'errors',
): { tried: number; told: Told[] } {
  const told: Told[] = [];
  let tried = 0;
  const site = new Edited(texts);
  const original = site.diagnostics;
  for (const [uri, text] of Object.entries(texts)) {
    for (const offset of offsetsIn(text)) {
      const at = site.offered(uri, text, offset);
      if (at === undefined) continue;
      const { start, end } = spanOf(at.file, at.found.at);
      if (/^["']?[ ]*:/.test(text.slice(end, end + 3))) continue;
      const without = text.slice(0, start) + text.slice(end);
      const there = site.offered(uri, without, start);
      if (there === undefined) continue;
      const before = [...original, ...site.diagnostics];
      there.found.offers.slice(0, most).forEach((offer, index) => {
        tried++;
        const { taken: put, added } = site.take(uri, there, offer, before);
        const isFact =
          ['key', 'section', 'word', 'quantity', 'number'].includes(offer.kind) || offer.detail === 'for example';
        const isStrict = index === 0 && !isFact;
        for (const diagnostic of added) {
          if (diagnostic.severity !== 'error' && !(isStrict && findings === 'warnings too')) continue;
          if (!isStrict && !LANGUAGE.includes(diagnostic.rule.id)) continue;
          const place = `${uri}:${text.slice(0, offset).split('\n').length}`;
          told.push({
            place,
            offer,
            first: index === 0,
            text: put.text.slice(put.span.start, put.span.end),
            diagnostic,
          });
        }
      });
    }
    site.with(uri, text);
  }
  return { tried, told };
}

export function words({ place, offer, text, diagnostic }: Told): string {
  return `${place} ${offer.kind} ${offer.label}: ${diagnostic.rule.id} ${diagnostic.message}\n${text}`;
}

/** Whether two findings are of one rule and share a thing: a finding may name more things than before. */
function isAlike(a: Diagnostic, b: Diagnostic): boolean {
  return a.rule === b.rule && (a.acceptAt.length === 0 || a.acceptAt.some((name) => b.acceptAt.includes(name)));
}

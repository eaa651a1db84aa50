/** The requests for pages beside the text of a site, whose names lead back to their places in it. */

import { RequestType } from 'vscode-languageserver-protocol';
import type { Location, Position } from 'vscode-languageserver-protocol';
import type { AuditKind } from '../audit/audited.ts';

/** The kinds of pages. */
export type PageKind = 'report' | 'drawing' | 'comparison';

export interface PageWanted {
  /** Address of the folder of the site, without a slash at its end. */
  readonly folder: string;
  readonly page: PageKind;
  /** The drawing, where the page is one. */
  readonly drawing?: DrawingWanted;
}

export interface DrawingWanted {
  readonly kind: string;
  /** The thing that it shows; empty for the whole site. */
  readonly subject: string;
  readonly rate?: 'nominal' | 'peak' | undefined;
  readonly vlan?: string | undefined;
  readonly stream?: string | undefined;
}

/** A kind of drawing that the site has something for. */
export interface DrawingOffer {
  readonly kind: string;
  readonly title: string;
  readonly summary: string;
  /** The things that it can show; empty where it shows the whole site. */
  readonly subjects: readonly string[];
  /** VLANs of which it can highlight one. */
  readonly vlans: readonly string[];
  readonly streams: readonly string[];
  /** The audit whose readings it shows, whether it needs them, and the subjects that have some. */
  readonly measured?: { readonly by: AuditKind; readonly needed: boolean; readonly read: readonly string[] };
}

/** All that can be drawn of a site. */
export const drawings = new RequestType<{ readonly folder: string }, readonly DrawingOffer[], void>(
  'plumbline/drawings',
);

/**
 * A whole HTML document without scripts. An element leads to a place where it has `data-names` and `data-name`, in a
 * drawing `data-names` and `data-at`, to be asked for by `placeOfName`, or `data-uri`, `data-line` and
 * `data-character`.
 */
export interface Page {
  readonly title: string;
  readonly html: string;
}

/** Answered for the site with all changes so far, once they have been checked. */
export const page = new RequestType<PageWanted, Page, void>('plumbline/page');

export interface NameWanted {
  readonly folder: string;
  /** A section, or `ports` for a port or a coax connector: `core/16`. */
  readonly names: string;
  readonly name: string;
}

/** Where something is declared; null where the site has no such thing any more. */
export const placeOfName = new RequestType<NameWanted, Location | null, void>('plumbline/placeOfName');

/** The hover of a thing, as at a mention of it in the text, in Markdown; null where the site has no such thing. */
export const hoverOfName = new RequestType<NameWanted, string | null, void>('plumbline/hoverOfName');

/**
 * The things at a place in a text, the nearest first, by the names that drawings use: the name at the place, the ports
 * of the cable, the item.
 */
export const thingsAt = new RequestType<
  { readonly uri: string; readonly position: Position },
  readonly { readonly names: string; readonly name: string }[],
  void
>('plumbline/thingsAt');

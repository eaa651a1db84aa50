/** What a client asks for to show a page of a site beside its text, which leads back to places in it. */

import { RequestType } from 'vscode-languageserver-protocol';
import type { Location } from 'vscode-languageserver-protocol';

/** The pages that there are. */
export type PageKind = 'report';

export interface PageWanted {
  /** Address of the folder of the site, without a slash at its end. */
  readonly folder: string;
  readonly page: PageKind;
}

/**
 * A whole HTML document without scripts. An element leads to a place where it has `data-names` and `data-name`, to be
 * asked for by `placeOfName`, or `data-uri`, `data-line` and `data-character`.
 */
export interface Page {
  readonly title: string;
  readonly html: string;
}

/** Answered after what has changed has been checked, as the site then is. */
export const page = new RequestType<PageWanted, Page, void>('plumbline/page');

export interface NameWanted {
  readonly folder: string;
  /** A section, or `ports` for a port or a coax connector: `core/16`. */
  readonly names: string;
  readonly name: string;
}

/** Where something is declared; null where the site has no such thing any more. */
export const placeOfName = new RequestType<NameWanted, Location | null, void>('plumbline/placeOfName');

/** The request to fill in all values that are `auto`, and its answer. */

import { RequestType } from 'vscode-languageserver-protocol';
import type { Location } from 'vscode-languageserver-protocol';

/** A value that was filled in or left, with its place now. */
export interface FillLine {
  readonly at: Location;
  readonly words: string;
}

export interface FillAnswer {
  /** In a sentence or two. */
  readonly summary: string;
  readonly filled: readonly FillLine[];
  readonly left: readonly FillLine[];
}

/** Takes the address of a file of the site. `null` where it is in no site, or the client refused the edit. */
export const fillIn = new RequestType<{ readonly uri: string }, FillAnswer | null, void>('plumbline/fillIn');

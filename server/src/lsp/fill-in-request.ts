/** The request to fill in all values written as `auto`, and to show what came of it. */

import { RequestType } from 'vscode-languageserver-protocol';
import type { Location } from 'vscode-languageserver-protocol';

/** What was filled in, or left, where it stands now. */
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

/** Takes the address of a file of the site. `null` where it is in none, or the client did not take the edit. */
export const fillIn = new RequestType<{ readonly uri: string }, FillAnswer | null, void>('plumbline/fillIn');

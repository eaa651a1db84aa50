/** The requests for files made for the equipment. The server writes and runs nothing. */

import { RequestType } from 'vscode-languageserver-protocol';
import type { Location } from 'vscode-languageserver-protocol';
import type { MadeFile } from '../make/output.ts';

export interface OutputOffer {
  readonly kind: string;
  readonly title: string;
  readonly summary: string;
  /** The things that it can be made for one by one; empty where it is made for the whole site. */
  readonly subjects: readonly string[];
}

export interface WantedOutput {
  /** Address of the folder of the site, without a slash at its end. */
  readonly folder: string;
  readonly kind: string;
  readonly subject?: string | undefined;
}

export interface ShownOutput {
  readonly files: readonly MadeFile[];
  readonly refused: readonly { readonly at: Location; readonly message: string }[];
  readonly notes: readonly string[];
}

/** All that can be made for a site. */
export const outputs = new RequestType<{ readonly folder: string }, readonly OutputOffer[], void>('plumbline/outputs');

/** The files of one of them. An error where the site has no such kind or subject. */
export const make = new RequestType<WantedOutput, ShownOutput, void>('plumbline/make');

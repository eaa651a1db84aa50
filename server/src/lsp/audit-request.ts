/** What a client asks for to have a file or folder that a person chose held against the site. */

import { RequestType } from 'vscode-languageserver-protocol';
import type { Location, WorkDoneProgressParams } from 'vscode-languageserver-protocol';
import type { AuditKind, Saying } from '../audit/audited.ts';

/** Cancelled, it fails with the protocol's RequestCancelled. */
export interface AuditWanted extends Saying, WorkDoneProgressParams {
  /** Address of the folder of the site, without a slash at its end. A file of the site is open. */
  readonly folder: string;
  readonly kind: AuditKind;
  /** Address of the file or folder that is read, and nothing else is. */
  readonly uri: string;
}

export type AuditAnswer =
  | {
      readonly summary: readonly string[];
      /** Where something was found; it is told as diagnostics too. */
      readonly found: readonly Location[];
    }
  /** It is to be asked for again, saying of which of these it is; or it cannot be done. */
  | { readonly cannot: string; readonly choices?: readonly string[] };

export const audit = new RequestType<AuditWanted, AuditAnswer, void>('plumbline/audit');

/** Takes what all audits of a folder have found away. */
export const clearAudits = new RequestType<{ readonly folder: string }, void, void>('plumbline/clearAudits');

/** What a server says of itself at its start, among what is experimental, where it can read files for audits. */
export const AUDITS = 'plumblineAudits';

/** The request to audit a file or folder that a person chose against the site. */

import { RequestType } from 'vscode-languageserver-protocol';
import type { Location, WorkDoneProgressParams } from 'vscode-languageserver-protocol';
import type { AuditKind, Saying } from '../audit/audited.ts';

/** A cancelled request fails with the protocol's RequestCancelled. */
export interface AuditWanted extends Saying, WorkDoneProgressParams {
  /** Address of the folder of the site, without a slash at its end. A file of the site is open. */
  readonly folder: string;
  readonly kind: AuditKind;
  /** Address of the file or folder to read; nothing else is read. */
  readonly uri: string;
}

export type AuditAnswer =
  | {
      readonly summary: readonly string[];
      /** The places of the findings, which are published as diagnostics too. */
      readonly found: readonly Location[];
    }
  /** Why it cannot be done; with `choices` the client asks again and names one of them. */
  | { readonly cannot: string; readonly choices?: readonly string[] };

export const audit = new RequestType<AuditWanted, AuditAnswer, void>('plumbline/audit');

/** Removes the findings of all audits of a folder. */
export const clearAudits = new RequestType<{ readonly folder: string }, void, void>('plumbline/clearAudits');

/** The experimental capability of a server that can read files for audits. */
export const AUDITS = 'plumblineAudits';

/** The state that the handlers of requests share: one connection to one client. */

import type { ClientCapabilities, Connection, ServerCapabilities } from 'vscode-languageserver';
import { ErrorCodes, Position, ResponseError } from 'vscode-languageserver-protocol';
import type { Checked } from '../lint/check.ts';
import type { Findings } from '../lint/held-back.ts';
import type { Diagnostic } from '../lint/rule.ts';
import type { SiteFolder, SiteText } from '../site/folder.ts';
import type { AuditResults, Audits } from './audit-results.ts';
import type { Addresses } from './addresses.ts';
import { Converter } from './convert.ts';
import type { RulePages } from './rule-pages.ts';
import { type Settings, type StartOptions, readStartOptions, usual } from './settings.ts';
import type { Sites } from './sites.ts';

/** The file of a request, in its site as it is now. */
export interface Asked {
  readonly checked: Checked;
  /** The findings of audits, beside those of the rules. */
  readonly audited: readonly Diagnostic[];
  readonly file: SiteText;
  readonly convert: Converter;
  readonly offset: (position: Position) => number;
}

/** The site, or why there is none, as a sentence. */
export type LastCommit = (folder: string) => Promise<SiteFolder | string>;

type Parts = Pick<
  Session,
  'connection' | 'sites' | 'addresses' | 'pages' | 'auditResults' | 'audits' | 'lastCommit' | 'recheck' | 'shown'
>;

export class Session {
  readonly connection: Connection;
  readonly sites: Sites;
  readonly addresses: Addresses;
  readonly pages: RulePages;
  readonly auditResults: AuditResults;
  /** Reads files for audits; `undefined` where the host cannot. */
  readonly audits: (() => Promise<Audits>) | undefined;
  /** Reads the site of a folder from the last commit; `undefined` where the host has no git. */
  readonly lastCommit: LastCommit | undefined;
  /** Publishes the findings in the site of a folder again. */
  readonly recheck: (folder: string) => void;
  /** The findings of rules last shown for the site of a folder; `undefined` where none were published yet. */
  readonly shown: (folder: string) => Findings | undefined;
  client: ClientCapabilities = {};
  options: StartOptions = readStartOptions(undefined);
  settings: Settings = usual;
  private readonly closing: ((uri: string) => void)[] = [];

  constructor(parts: Parts) {
    this.connection = parts.connection;
    this.sites = parts.sites;
    this.addresses = parts.addresses;
    this.pages = parts.pages;
    this.auditResults = parts.auditResults;
    this.audits = parts.audits;
    this.lastCommit = parts.lastCommit;
    this.recheck = parts.recheck;
    this.shown = parts.shown;
  }

  /** `undefined` for a file that is in no open site. */
  async asked(written: string): Promise<Asked | undefined> {
    const uri = this.addresses.take(written);
    const site = this.sites.of(uri);
    await site?.loaded;
    const checked = site?.now();
    const file = checked?.files.find((candidate) => candidate.uri === uri);
    if (site === undefined || checked === undefined || file === undefined) return undefined;
    return {
      checked,
      audited: this.auditResults.of(site.folder, checked),
      file,
      convert: this.converter(checked.files),
      offset: (position) => {
        if (!Position.is(position)) throw new ResponseError(ErrorCodes.InvalidParams, 'It needs a position.');
        return file.lines().offset(position.line, position.character);
      },
    };
  }

  /** Runs `forget` with the address of each document that is closed. */
  onClosed(forget: (uri: string) => void): void {
    this.closing.push(forget);
  }

  closed(uri: string): void {
    for (const forget of this.closing) forget(uri);
  }

  converter(files: readonly SiteText[]): Converter {
    return new Converter(files, this.addresses, this.pages);
  }
}

/** One kind of request: its server capability, and the answer. */
export interface Handler {
  readonly capabilities: ServerCapabilities;
  register(session: Session): void;
}
